// The tasks of tasks.json as a person does them: by what is seen, from the first screen, each finger down counted.
import assert from 'node:assert/strict';
import { Walker } from './walker.mjs';

const KEYS = { '.': 'key/.', '/': 'key/over', '"': 'key/inch' };

export class Thumb extends Walker {
  /** The first of these names that is there. */
  async touch(...names) {
    const seen = await this.look();
    const name = names.find((n) => seen.nodes.some((node) => node.control && (node.name === n || node.id === n))) ?? names[0];
    const node = seen.nodes.find((n) => n.control && n.id === name) ?? this.find(seen, name);
    return this.press(node.id);
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
  /** A number into that field, and on: by Next to the next field when that is what comes, else by Done. */
  async number(field, text, next = false) {
    if (field) {
      await this.touch(field);
    }
    await this.keys(text);
    const { nodes } = await this.look();
    const key = nodes.find((n) => n.id === 'key/next' && next) ?? nodes.find((n) => n.id === 'key/done');
    if (key) {
      await this.press(key.id);
      return key.id === 'key/next';
    }
    this.touches++;
    await this.engine.key('Enter');
    await this.rest();
    return false;
  }
  /** Whether that field is the one open now. */
  async at(field) {
    const { nodes, focus } = await this.look();
    return nodes.some((n) => n.id === focus && (n.id === field || n.name === field));
  }
  /** Several fields, one after the other. */
  async numbers(pairs) {
    let there = false;
    for (const [i, [field, text]] of pairs.entries()) {
      there = (await this.number(there ? null : field, text, i + 1 < pairs.length)) && (await this.at(pairs[i + 1][0]));
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
  async has(name) { return (await this.look()).nodes.some((n) => n.control && n.name === name); }
  async feed() { return this.read(/^Feed: /); }
}

export const TASKS = {
  2: async (thumb) => {
    await thumb.touch('Thickness');
    if (await thumb.has('10 ga')) {
      await thumb.touch('10 ga');
    } else {
      await thumb.number(null, '3.4');
    }
    if (await thumb.has('40 A')) {
      await thumb.touch('40 A');
    } else {
      await thumb.number('Current', '40');
    }
    await thumb.touch('Close');
    assert.match(await thumb.read(/^Current: /), /40 A/);
    for (const figure of ['Feed', 'Arc volts', 'Pierce height', 'Pierce delay']) {
      assert.match(await thumb.read(new RegExp(`^${figure}: `)), /\d/);
    }
  },
  3: async (thumb) => {
    await thumb.press('cut/verdict/circuit');
    await thumb.touch('120 V');
    if (await thumb.has('20 A, 12 AWG')) {
      await thumb.touch('20 A, 12 AWG');
      await thumb.read('circuit/there'); // what can be cut there
    } else {
      await thumb.numbers([['Breaker', '20'], ['Wiring gauge', '12']]);
      await thumb.touch('Close');
      await thumb.read('cut/feed');
    }
  },
  4: async (thumb) => {
    await thumb.touch('Tune');
    await thumb.touch('Read a cut');
    await thumb.touch('narrower at the top, both sides', 'Narrower at the top, both sides');
    await thumb.touch('dross, hard', 'Dross, hard');
    await thumb.read('read/what');
    await thumb.read('read/turn');
  },
  5: async (thumb) => {
    await thumb.touch('Tune');
    thumb.touches = 0; // whoever logs cuts stands there
    for (const showed of ['Too fast', 'Too slow', 'Clean']) {
      await thumb.touch(showed);
    }
    if (await thumb.has('Undo')) {
      await thumb.touch('Undo');
    } else {
      await thumb.touch('The log');
      await thumb.press('log/0');
      await thumb.touch('Delete this cut', 'Take out of the log', 'Take out');
    }
  },
  6: async (thumb) => {
    await thumb.press('cut/verdict/air');
    if (await thumb.has('Humid, 85 %')) {
      await thumb.touch('Humid, 85 %');
    } else {
      await thumb.number('Humidity', '0.85');
    }
    await thumb.read('air/summary');
  },
  8: async (thumb) => {
    await thumb.touch('Tune');
    await thumb.touch('Test coupons');
    await thumb.touch('Save the program');
    assert.match((await thumb.look()).left.join(), /save .*ladder/);
  },
  9: async (thumb) => {
    await thumb.touch('Thickness');
    if (await thumb.has('3/8')) {
      await thumb.touch('3/8');
    } else {
      await thumb.number(null, '3/8"');
      await thumb.touch('Close');
    }
    await thumb.touch('Part');
    await thumb.touch('Shape and sizes');
    await thumb.touch('Bracket');
    await thumb.numbers([['Length', '80'], ['Width', '120'], ['Holes', '2'], ['Hole diameter', '14'], ['How many parts', '40']]);
    await thumb.touch('Close');
    await thumb.touch('From the plate');
    if (await thumb.has('4 × 8 ft')) {
      await thumb.touch('4 × 8 ft');
    } else {
      await thumb.numbers([['Sheet length', '2440'], ['Sheet width', '1220']]);
    }
    await thumb.read(/Sheets/);
    await thumb.touch('Close');
    assert.match(await thumb.read(/^Whole batch/), /\d/);
    await thumb.read(/ole/);
  },
  10: async (thumb) => {
    await thumb.touch('Quote');
    await thumb.touch('What you charge');
    await thumb.numbers([['field/shop.rates.labour_per_h', '55'], ['field/shop.rates.machine_per_h', '60'], ['field/job.price.material_per_kg', '1.8'],
      ['field/job.price.margin', '35']]);
    await thumb.touch('Close');
    await thumb.touch('To the customer');
    await thumb.touch('Copy the link');
  },
};
