// The tasks of tasks.json as a person does them: by what is seen, from the first screen, each finger down counted.
import assert from 'node:assert/strict';
import { Walker } from './walker.mjs';

const KEYS = { '.': 'key/.', '/': 'key/over', '"': 'key/inch' };

export class Thumb extends Walker {
  /** From here touches count. */
  begin() { this.touches = 0; }
  /** Press what has that name, or that id. */
  async touch(name) {
    const seen = await this.look();
    return this.press((seen.nodes.find((n) => n.control && n.id === name) ?? this.find(seen, name)).id);
  }
  /** A number into the field that is open: on the app's keypad, or on a keyboard where there is no finger. */
  async keys(text) {
    const pad = (await this.look()).nodes.some((n) => n.id === 'keypad');
    for (const sign of text) {
      if (pad) {
        await this.press(KEYS[sign] ?? 'key/' + sign);
      } else {
        await this.engine.type(sign);
        this.touches++;
      }
    }
    this.steps.push(`"${text}"`);
    return this.rest();
  }
  /** From the open field to the next: by Next when that is what comes, else by Done; on a keyboard by Tab. Gives whether it went on. */
  async next() {
    const { nodes } = await this.look();
    const key = nodes.find((n) => n.id === 'key/next') ?? nodes.find((n) => n.id === 'key/done');
    if (key) {
      await this.press(key.id);
      return key.id === 'key/next';
    }
    this.touches++;
    await this.engine.key('Tab');
    await this.rest();
    return true;
  }
  /** Whether that field is the one open now. */
  async at(field) {
    const { nodes, focus } = await this.look();
    return nodes.some((n) => n.id === focus && (n.id === field || n.name === field));
  }
  /** Several fields, one after the other. The last stays open: whatever is touched next takes what was typed. */
  async numbers(pairs) {
    for (const [i, [field, text]] of pairs.entries()) {
      if (i === 0 || !((await this.next()) && (await this.at(field)))) {
        await this.touch(field);
      }
      await this.keys(text);
    }
  }
  /** Bring what has this id, or says this, into view, and give its words. */
  async read(words) {
    for (let drags = 0; drags < 12; drags++) {
      const seen = await this.look();
      const said = (n) => [n.name, n.value, n.label].filter(Boolean).join(': ');
      const node = seen.nodes.find((n) => (words instanceof RegExp ? words.test(said(n)) : n.id === words) && n.box[2] > 0);
      assert.ok(node, `nothing on ${seen.hash} is ${words}: ${seen.nodes.map(said).join(' | ')}; ${this.story()}`);
      const view = this.viewOf(seen, node);
      const middle = node.box[1] + Math.min(node.box[3] / 2, 12);
      if (middle >= view.y && middle <= view.y + view.h) {
        return said(node);
      }
      const by = Math.sign(middle - view.y - view.h / 2) * Math.min(Math.abs(middle - view.y - view.h / 2), view.h * 0.7);
      const [x, y] = [view.x + view.w / 2, view.y + view.h / 2];
      await this.drag([x, y + by / 2], [x, y - by / 2]);
    }
    assert.fail(`${words} cannot be brought into view; ${this.story()}`);
  }
}

const FIGURES = ['cut/feed', 'cut/arc', 'cut/pierce_height', 'cut/pierce_delay'];

/** By number. What a task takes as given is done before `begin()`, from where touches count. */
export const TASKS = {
  1: async (thumb) => {
    for (const choices of [['Start my shop', '40 A'], ['240 V', '30 A'], ['12 cfm', '60 gal'], ['inch']]) {
      for (const choice of choices) {
        const marked = (await thumb.look()).nodes.some((n) => n.role === 'radio' && n.name === choice && n.state.includes('checked=true'));
        await (marked || thumb.touch(choice));
      }
      await thumb.press('start/next');
    }
    assert.match(await thumb.read('first/log'), /^Log your first cut/);
    assert.match(await thumb.read('cut/feed'), /in/);
    assert.match(await thumb.read('title/current'), /40 A/);
    assert.ok(!(await thumb.look()).nodes.some((n) => /example/i.test(n.name + n.label + n.value)), 'nothing of the example is left');
  },
  2: async (thumb) => {
    for (const choice of ['Thickness', '10 ga', '40 A', 'Close']) {
      await thumb.touch(choice);
    }
    assert.match(await thumb.read('title/current'), /40 A/);
    for (const figure of FIGURES) {
      assert.match(await thumb.read(figure), /\d/);
    }
  },
  3: async (thumb) => {
    await thumb.press('cut/verdict/circuit');
    const summary = async () => (await thumb.look()).nodes.find((n) => n.id === 'circuit/summary').name;
    const before = await summary();
    await thumb.touch('120 V');
    await thumb.touch('20 A, 12 AWG');
    await thumb.read(/on a 20 A breaker/);
    await thumb.read('circuit/there'); // what can be cut there
    await thumb.touch('Undo');
    assert.equal(await summary(), before, 'back at the shop');
  },
  4: async (thumb) => {
    for (const choice of ['Tune', 'Read a cut', 'Part narrower at top, both sides', 'Dross, must be ground off']) {
      await thumb.touch(choice);
    }
    assert.match(await thumb.read('read/what'), /too fast/);
    assert.match(await thumb.read('read/turn'), /^Change the feed to \d+ mm\/min/);
  },
  5: async (thumb) => {
    await thumb.touch('Tune');
    thumb.begin(); // whoever logs cuts stands there
    const chance = async () => (await thumb.look()).nodes.find((n) => n.id === 'tune/chance').name;
    const said = [];
    for (const choice of ['Too fast', 'Too slow', 'Clean', 'Undo']) {
      await thumb.touch(choice);
      said.push(await chance());
    }
    assert.notEqual(said[2], said[1], 'the third cut counts');
    assert.equal(said[3], said[1], 'and is taken back');
  },
  6: async (thumb) => {
    await thumb.press('cut/verdict/air');
    await thumb.touch('Humid 85 %');
    await thumb.read('air/summary');
  },
  7: async (thumb) => {
    await thumb.touch('Shop');
    await thumb.touch('Height control');
    await thumb.numbers([['field/shop.height_control.divider_ratio', '50']]);
    await thumb.touch('Close');
    await thumb.touch('Cut');
    thumb.begin();
    await thumb.touch('Arc volts');
    await thumb.keys('2.7');
    await thumb.read(/2\.7 V × 50 = 135 V/);
  },
  8: async (thumb) => {
    for (const choice of ['Tune', 'Test coupons', 'Save the program']) {
      await thumb.touch(choice);
    }
    assert.match((await thumb.look()).left.join(), /save .*ladder/);
  },
  9: async (thumb) => {
    for (const choice of ['Thickness', '3/8', 'Part', 'Shape and sizes', 'Bracket']) {
      await thumb.touch(choice);
    }
    await thumb.numbers([['Length', '80'], ['Width', '120'], ['Holes', '2'], ['Hole diameter', '14'], ['How many parts', '40']]);
    for (const choice of ['Close', 'Parts per sheet', '4 × 8 ft']) {
      await thumb.touch(choice);
    }
    assert.match(await thumb.read(/^Sheets for 40/), /\d$/);
    await thumb.touch('Close');
    assert.match(await thumb.read('part/batch'), /\d/);
    await thumb.read(/^Holes 14 mm: good/);
  },
  10: async (thumb) => {
    await thumb.touch('Quote');
    await thumb.touch('What you charge');
    await thumb.numbers([['field/shop.rates.labour_per_h', '55'], ['field/shop.rates.machine_per_h', '60'], ['field/job.price.material_per_kg', '1.8'],
      ['field/job.price.margin', '35']]);
    for (const choice of ['Close', 'Send to the customer', 'Copy the link']) {
      await thumb.touch(choice);
    }
    await thumb.read(/^Copied/);
  },
};
