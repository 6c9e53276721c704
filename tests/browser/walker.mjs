// A walker: goes through the app in any engine as a person does, by what is seen, and looks after each step whether all is well.
import assert from 'node:assert/strict';
import { faults, look, opened, rest, stepBack, tame } from './walk_page.mjs';

const NOISE = /GPU stall due to ReadPixels|GL Driver Message/; // the software renderer's own remarks
const STATE = `async () => {
  const rested = await (${rest})();
  const wrong = rested ? (${faults})() : [];
  const stopped = !document.getElementById('first')?.hidden;
  return { rested, wrong, seen: stopped ? { nodes: [], hash: location.hash, below: 0 } : await (${look})() };
}`;
const DRAGS = 25; // to come from one end of the longest sheet to the other

export class Walker {
  touches = 0; // fingers down so far
  seen = null; // the screen as it stands, where a walk keeps it
  steps = []; // what was done, to say how a fault was come upon

  constructor(engine) { this.engine = engine; }

  async open(url, size) {
    this.size = size;
    this.steps = [`open at ${size.width} × ${size.height}`];
    await this.engine.open(url, size);
    await this.stand();
  }
  /** A start that finds it needs the later part of the program begins anew by itself, at any moment until it stands. */
  async stand(tries = 3) {
    try {
      assert.equal(await this.engine.evaluate(opened), '', this.story());
      await this.engine.evaluate(tame);
      await this.rest();
    } catch (e) {
      if (tries === 0 || !/context|navigat|unload/i.test(e.message)) {
        throw e;
      }
      await this.stand(tries - 1);
    }
  }
  async rest() { assert.ok(await this.engine.evaluate(rest), 'it comes to rest; ' + this.story()); }
  async look() { return this.engine.evaluate(look); }
  story() { return this.steps.slice(-12).join(' → '); }

  problems() { return this.engine.problems.splice(0).filter((p) => !NOISE.test(p)); }
  /** Everything that is wrong now; empty when all is well. */
  async wrong() {
    const found = await this.engine.evaluate(faults);
    return [...this.problems(), ...found];
  }
  /** At rest, in one message to the page: {wrong, seen}. */
  async state() {
    const { rested, wrong, seen } = await this.engine.evaluate(STATE);
    assert.ok(rested, 'it comes to rest; ' + this.story());
    return { wrong: [...this.problems(), ...wrong], seen };
  }
  async well() { assert.deepEqual(await this.wrong(), [], this.story()); }

  async resize(width, height) {
    this.steps.push(`window ${width} × ${height}`);
    await this.engine.resize(width, height);
    await this.engine.evaluate('() => new Promise((next) => { setTimeout(next, 60); })'); // a window's change of size comes by itself
    await this.rest();
  }

  /** The control of that name (or that begins so, its value following), shown or not. `which`: {role, within, nth}. */
  find(seen, name, which = {}) {
    const fits = (n) => n.control && (!which.role || n.role === which.role) && (!which.within || n.id.startsWith(which.within) || n.parent.startsWith(which.within));
    const named = seen.nodes.filter((n) => fits(n) && n.name === name);
    const begun = named.length ? named : seen.nodes.filter((n) => fits(n) && n.name.startsWith(name));
    assert.ok(begun.length, `no control "${name}" on ${seen.hash}: ${seen.nodes.filter((n) => n.control).map((n) => n.name).join(' | ')}; ${this.story()}`);
    return begun.find((n) => n.shown) ?? begun[0];
  }

  /** Bring a control under the finger, by scrolling what holds it. Gives it as it stands then, or null when it cannot be come by. */
  async reach(id) {
    let [part, way] = [1, 0]; // a drag may be a throw: whoever came past it goes back by less
    for (let drags = 0; drags < DRAGS; drags++) {
      const seen = (drags === 0 && this.seen) || (await this.look());
      this.seen = this.seen && seen;
      const node = seen.nodes.find((n) => n.id === id);
      if (!node || node.shown) {
        return node ?? null;
      }
      const view = this.viewOf(seen, node);
      const [x, y] = [view.x + view.w / 2, view.y + view.h / 2];
      const [cx, cy] = [node.box[0] + node.box[2] / 2, node.box[1] + node.box[3] / 2];
      part *= way * (cy - y) < 0 ? 0.5 : 1;
      way = cy - y;
      const some = (far, most) => part * Math.sign(far) * Math.min(Math.abs(far), most);
      const by = [Math.abs(cx - x) > view.w / 2 ? some(cx - x, view.w * 0.7) : 0, some(cy - y, view.h * 0.7)];
      await this.drag([x + by[0] / 2, y + by[1] / 2], [x - by[0] / 2, y - by[1] / 2]);
    }
    return null;
  }
  /** Scroll: a finger down where there are fingers, a wheel elsewhere. */
  async drag(from, to) {
    await this.engine.drag(from, to);
    this.touches += this.engine.touch ? 1 : 0;
    await this.rest();
  }
  /** What clips a control: the box it lies in that is not higher than the window. */
  viewOf(seen, node) {
    const byId = new Map(seen.nodes.map((n) => [n.id, n]));
    for (let n = byId.get(node.parent); n; n = byId.get(n.parent)) {
      const [x, y, w, h] = n.box;
      if ((['main', 'dialog', 'section'].includes(n.role)) && w > 40 && h > 40) {
        const [top, bottom] = [Math.max(y, 0), Math.min(y + h, seen.height)];
        return { x, y: top, w: Math.min(w, seen.width - x), h: bottom - top };
      }
    }
    return { x: 0, y: 0, w: seen.width, h: seen.height };
  }

  /** Press what stands there, with a finger or a mouse. */
  async press(id) {
    const node = await this.reach(id);
    assert.ok(node, `${id} can be come by; ${this.story()}`);
    this.steps.push(node.name + (node.value ? ` (${node.value})` : ''));
    this.touches++;
    await this.engine.press(node.box[0] + node.box[2] / 2, node.box[1] + node.box[3] / 2);
    await this.arrived();
    return node;
  }
  /** After each step. A walk that looks at everything does it here, and keeps what it saw. */
  async arrived() { await this.rest(); }
  async touch(name, which) { return this.press(this.find(this.seen ?? (await this.look()), name, which).id); }

  async back() {
    this.steps.push('Back');
    await this.engine.evaluate(stepBack);
    await this.arrived();
  }
  async reload() {
    this.steps.push('reload');
    await this.engine.reload();
    await this.stand();
  }
}
