// The walk through all places and sheets: what it goes by is what stands on the screen, so a new sheet is walked without a word here.
import { Walker } from './walker.mjs';

const DEEPEST = 3; // a sheet that a sheet of a sheet opens
export const PLACES = ['cut', 'tune', 'part', 'quote', 'shop'].map((name) => 'place/' + name);

/** A way that goes from every place to every other, each pair once. */
export function everyPair(places) {
  const left = new Map(places.map((p) => [p, places.filter((q) => q !== p)]));
  const way = [places[0]];
  const whole = [];
  while (way.length) {
    const next = left.get(way.at(-1)).shift();
    next ? way.push(next) : whole.unshift(way.pop());
  }
  return whole;
}

const opener = (n) => n.control && n.state.includes('expanded=') && !n.state.includes('disabled');
const placeOf = (hash) => hash.split('/')[1];

export class Tour extends Walker {
  found = []; // every fault with the way to it
  faulty = []; // what was wrong after the steps since it was last noted
  sheets = new Map(); // place -> the sheets that were opened from it

  async begin(url, size) {
    this.url = url;
    await this.openAnew(size);
    await this.note();
  }
  async openAnew(size) {
    this.seen = null;
    await this.open(this.url, size);
    await this.arrived();
  }
  /** One message a step: at rest, is all well, what is on the screen. */
  async arrived() {
    const { wrong, seen } = await this.state();
    this.faulty.push(...wrong);
    this.seen = seen;
  }
  /** Was all well? When it was not, say so and go on with a page opened anew, so that one fault does not hide the next. */
  async note() {
    const wrong = this.faulty.splice(0);
    if (wrong.length) {
      this.found.push(`${this.story()}: ${[...new Set(wrong)].slice(0, 4).join('; ')}`);
      await this.openAnew(this.size);
      this.faulty.length = 0;
    }
    return wrong.length === 0;
  }
  async go(place) {
    await this.press(place);
    return (await this.note()) && this.expect(placeOf(this.seen.hash) === place.split('/')[1], `${place} is not where it leads to`);
  }
  expect(so, what) {
    if (!so) {
      this.found.push(`${this.story()}: ${what}`);
    }
    return so;
  }

  async pairs() {
    for (const place of everyPair(PLACES)) {
      await this.go(place);
    }
  }

  /** Every sheet that can be opened from every place. */
  async everySheet() {
    for (const place of PLACES) {
      await this.go(place);
      const from = this.seen;
      const known = { hashes: new Set([from.hash]), listed: new Set() };
      await this.openAll(from, known, 1);
      this.sheets.set(place, known.hashes.size - 1);
    }
  }
  async openAll(from, known, depth) {
    // In a wide window the place stands beside its sheets: what it opens need not be opened from each of them.
    const fresh = from.nodes.filter((n) => opener(n) && !known.listed.has(n.id));
    fresh.forEach((n) => known.listed.add(n.id));
    for (const { id } of fresh) {
      if (!(await this.comeBackTo(from.hash))) {
        return;
      }
      if (!(await this.reach(id))) {
        this.expect(!this.seen.nodes.some((n) => n.id === id), `${id} cannot be come by`);
        continue;
      }
      await this.press(id);
      if (!(await this.note())) {
        continue;
      }
      const here = this.seen;
      const unseen = !known.hashes.has(here.hash);
      known.hashes.add(here.hash);
      if (unseen && depth < DEEPEST && placeOf(here.hash) === placeOf(from.hash)) {
        await this.openAll(here, known, depth + 1);
      }
    }
  }
  /** Back to where a sheet was opened from: by its Close, by Back, and last by way of the places. */
  async comeBackTo(hash) {
    for (let tries = 0; tries < 3; tries++) {
      const here = this.seen;
      if (here.hash === hash) {
        return true;
      }
      const close = here.nodes.find((n) => n.control && n.shown && /\/close$/.test(n.id));
      if (close && tries === 0 && this.touches % 2) {
        await this.press(close.id);
      } else if (here.below > 0) {
        await this.back();
      }
      if (!(await this.note())) {
        break;
      }
    }
    const steps = hash.split('/').slice(1);
    await this.go('place/' + steps[0]);
    const here = this.seen;
    return here.hash === hash || steps.length > 1; // a sheet's own sheets are passed over then
  }

  /** The chart: each figure stands under its current and beside its plate, and a touch on it dials in just that. */
  async chart() {
    await this.go('place/cut');
    let { seen } = this;
    if (!seen.nodes.some((n) => n.id === 'chart/table')) {
      await this.touch('Chart');
      ({ seen } = this);
    }
    const cells = seen.nodes.filter((n) => /^chart\/\d+\/\d+\/use$/.test(n.id));
    this.expect(cells.length > 20, `the chart has ${cells.length} cells`);
    const find = (id) => seen.nodes.find((n) => n.id === id);
    for (const cell of cells) {
      const [, row, column] = cell.id.split('/');
      const [above, beside] = [find(`chart/head/${column}`), find(`chart/row/${row}/head`)];
      const [x, y] = [cell.box[0] + cell.box[2] / 2, cell.box[1] + cell.box[3] / 2];
      this.expect(above && x > above.box[0] && x < above.box[0] + above.box[2], `${cell.name} (${cell.value}) does not stand under ${above?.name}`);
      this.expect(beside && y > beside.box[1] && y < beside.box[1] + beside.box[3], `${cell.name} (${cell.value}) does not stand beside ${beside?.name}`);
      this.expect(above && cell.name.endsWith(` at ${above.name}`) && cell.name.startsWith(beside.name), `${cell.name} stands under ${above?.name} beside ${beside?.name}`);
    }
    const usable = cells.filter((c) => /^\d/.test(c.value));
    for (const cell of [usable[3], usable[Math.floor(usable.length / 2)]]) {
      await this.openChart(cell.id);
      await this.press(cell.id);
      await this.note();
      if (!this.seen.nodes.some((n) => n.id === 'place/cut')) { // on a phone the chart has the whole screen
        await this.press('chart/close');
      }
      await this.go('place/cut');
      const now = this.seen;
      const said = (id) => now.nodes.find((n) => n.id === id)?.value ?? '';
      const [plate, current] = cell.name.split(' at ');
      this.expect(said('title/thickness').startsWith(plate), `${cell.name} was touched, the plate is ${said('title/thickness')}`);
      this.expect(said('title/current') === current, `${cell.name} was touched, the current is ${said('title/current')}`);
      this.expect(parseFloat(said('cut/feed')) === parseFloat(cell.value), `the chart says ${cell.value} for ${cell.name}, Cut says ${said('cut/feed')}`);
    }
  }
  async openChart(cell) {
    if (!this.seen.nodes.some((n) => n.id === cell)) {
      await this.touch('Chart');
    }
  }
}
