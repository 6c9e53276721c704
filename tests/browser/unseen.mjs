// The tasks without eyes or without a pointer: by the keyboard alone, and by what a screen reader is given alone.
import assert from 'node:assert/strict';
import { Thumb } from './tasks.mjs';

const STOPS = 400; // of the Tab key, from one end of the longest page to the other

/** A keyboard and nothing else: Tab and arrows to come by a control, Enter to press it. */
export class Keyboard extends Thumb {
  focus() {
    return this.engine.evaluate(() => {
      const el = document.activeElement?.closest?.('[data-id]');
      return { id: el?.dataset.id ?? '', group: el?.closest('[role="radiogroup"]')?.dataset.id ?? '' };
    });
  }
  async press(id) {
    const target = await this.engine.evaluate((wanted) => {
      const el = document.querySelector(`#mirror [data-id="${CSS.escape(wanted)}"]`);
      return { name: el?.textContent ?? '', group: el?.closest('[role="radiogroup"]')?.dataset.id ?? '', cell: Boolean(el?.closest('table')), field: el?.tagName === 'LABEL' };
    }, id);
    this.steps.push(target.name);
    const there = ({ id: at, group }) => at === id || (target.group !== '' && group === target.group);
    let at = await this.focus();
    for (let stops = 0; !there(at); stops++) {
      assert.ok(stops < STOPS, `Tab never comes to ${id}; ${this.story()}`);
      await this.engine.key('Tab');
      at = await this.focus();
    }
    for (let arrows = 0; at.id !== id; arrows++) { // a choice is one stop, the arrows move in it
      assert.ok(arrows < 40, `the arrows never come to ${id}; ${this.story()}`);
      await this.engine.key('ArrowRight');
      await this.rest();
      at = await this.focus();
    }
    this.touches++;
    await (target.field || this.engine.key(target.group ? 'Space' : 'Enter'));
    await this.arrived();
  }
  /** In a wide window some sheets stand beside their place: they have no Close, and need none. */
  async touch(name) {
    const stands = name === 'Close' && !(await this.look()).nodes.some((n) => n.control && n.name === name);
    return stands ? undefined : super.touch(name);
  }
  async drag() { assert.fail('a keyboard drags nothing; ' + this.story()); }
  /** What the sheet says: to read it takes no key. */
  async read(words) { return readOf(await this.look(), words, this.story()); }
}

function readOf(seen, words, story) {
  const said = (n) => [n.name, n.value, n.label].filter(Boolean).join(': ');
  const node = seen.nodes.find((n) => (words instanceof RegExp ? words.test(said(n)) : n.id === words));
  assert.ok(node, `nothing is ${words}: ${seen.nodes.map(said).join(' | ')}; ${story}`);
  return said(node);
}

const PRESSED = new Set(['button', 'radio', 'switch', 'checkbox', 'tab', 'link', 'menuitem']);

/** Only what the accessibility tree of the browser holds, and the acts that a reader has: press a named thing, type into a named field. */
export class Reader extends Thumb {
  /** The tree as `look` gives a page, read from the browser's accessibility tree instead of from the screen. */
  async look() {
    const { client } = this.engine;
    const [{ nodes }, { root }] = await Promise.all([client.send('Accessibility.getFullAXTree'), client.send('DOM.getDocument', { depth: -1 })]);
    const ids = new Map();
    const visit = (node, above) => {
      const at = node.attributes?.indexOf('data-id') ?? -1;
      const id = at >= 0 ? node.attributes[at + 1] : above;
      ids.set(node.backendNodeId, { id, own: at >= 0 });
      node.children?.forEach((child) => visit(child, id));
    };
    visit(root, '');
    const heard = nodes.filter((n) => !n.ignored && n.name?.value).map((n) => {
      const { id = '', own = false } = ids.get(n.backendDOMNodeId) ?? {};
      const state = Object.fromEntries((n.properties ?? []).map((p) => [p.name, p.value.value]));
      const role = n.role.value;
      return { id, own, role, handle: n.backendDOMNodeId, control: PRESSED.has(role) || role === 'textbox', name: n.name.value.replace(/: $/, ''), value: n.value?.value ?? '',
        label: n.description?.value ?? '', parent: '', shown: !state.disabled, box: [0, 0, 1, 1], state: Object.keys(state).join(' ') };
    });
    const { hash, focus, left } = await this.engine.evaluate(() => ({ hash: location.hash, left: window.left, focus: document.activeElement?.closest?.('[data-id]')?.dataset.id ?? '' }));
    return { nodes: heard, hash, focus, left, below: 0 };
  }
  async press(id) {
    const node = (await this.look()).nodes.find((n) => n.control && n.id === id);
    assert.ok(node, `a reader is told of no control ${id}; ${this.story()}`);
    this.steps.push(node.name);
    this.touches++;
    const { object } = await this.engine.client.send('DOM.resolveNode', { backendNodeId: node.handle });
    await this.engine.client.send('Runtime.callFunctionOn', { objectId: object.objectId,
      functionDeclaration: node.role === 'textbox' ? 'function act() { this.focus(); }' : 'function act() { this.click(); }' });
    await this.arrived();
  }
  /** A reader types into the field that has its focus, or into the first that it comes to in the sheet, whatever keypad is drawn. */
  async keys(text) {
    await this.engine.evaluate(() => document.activeElement.tagName === 'INPUT' || document.querySelector('[role="dialog"] input').focus());
    await this.rest();
    for (const sign of text) {
      await this.engine.type(sign);
    }
    this.steps.push(`"${text}"`);
    return this.rest();
  }
  async next() {
    await this.engine.key('Tab');
    await this.rest();
    return true;
  }
  async drag() { assert.fail('a reader drags nothing; ' + this.story()); }
  async read(words) { return readOf(await this.look(), words, this.story()); }
}
