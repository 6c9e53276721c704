// Random acts by a seed, each written down as plain data, so that what was found can be repeated, shortened and printed as a script.
import { Walker } from './walker.mjs';

/** Numbers from 0 to 1 that follow from the seed (mulberry32). */
export function dice(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6D2B79F5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

const TYPED = ['6', '3/8', '10 ga', '0', '-5', '999', '12.5', '1e9', '30 %', '8.25', '', 'abc', '2,7', '45', '1640', '120', '½', '  7 ', '60', '0.001', 'ÄÖ "<b>'];
const KEYS = ['Tab', 'Tab', 'Tab', 'Shift+Tab', 'Enter', 'Escape', 'ArrowRight', 'ArrowLeft', 'ArrowDown', 'Space', '1', '5'];
const WINDOWS = [[360, 740], [740, 360], [360, 225], [768, 1024], [1100, 800], [1440, 900], [412, 915], [640, 400]];

/** What the app keeps only while it is open: read off instruments, half typed, one step of undo, what the page has to say. */
const PASSING = /scratch|^(keypad|key|notice|undo|live|chart|read|coupon|tune|log|incoming|links?|quote\/link)\b/;
const WRITTEN_WITHIN_MS = 3000;
const FIGURES = /^(title|cut|part|quote)\//;
const KEPT = /^(title|cut|part|quote|shop|field)\//;

export class RandomWalk extends Walker {
  acts = [];
  offline = false;
  dark = false;

  async begin(url, size) {
    this.url = url;
    this.start = size;
    this.acts = [];
    this.offline = false;
    this.dark = false;
    await this.open(url, size);
    await this.engine.page.waitForFunction(() => navigator.serviceWorker?.controller?.state === 'activated', null, { timeout: 20000 });
    this.engine.problems.length = 0;
    this.seen = (await this.state()).seen;
  }

  /** The next act, by the dice, out of what is on screen. */
  choose(roll, seen) {
    const among = (list) => list[Math.floor(roll() * list.length)];
    const shown = seen.nodes.filter((n) => n.shown && !n.state.includes('disabled'));
    const fields = shown.filter((n) => n.role === 'textbox');
    const others = shown.filter((n) => !n.id.startsWith('chart/') || n.id === 'chart/close');
    const kind = roll();
    if (kind < 0.44 && others.length) {
      return { do: 'press', id: among(others).id };
    }
    if (kind < 0.50) {
      return { do: 'press', id: among(shown).id };
    }
    if (kind < 0.62 && fields.length) {
      const id = among(fields).id;
      const text = among(TYPED);
      return { do: 'type', id, text, then: among(['Enter', 'Enter', 'Tab', 'Escape', '']) };
    }
    if (kind < 0.74) {
      return { do: 'key', name: among(KEYS) };
    }
    if (kind < 0.79) {
      return { do: 'back' };
    }
    if (kind < 0.84) {
      return { do: 'drag', x: roll(), y: roll(), by: (roll() - 0.5) * 600 };
    }
    if (kind < 0.87) {
      return { do: 'touch', x: roll(), y: roll() };
    }
    if (kind < 0.90) {
      const [width, height] = roll() < 0.6 ? [this.start.width, this.start.height] : among(WINDOWS);
      return { do: 'resize', width, height };
    }
    if (kind < 0.95) {
      return { do: 'reload' };
    }
    return kind < 0.965 ? { do: 'offline' } : kind < 0.98 ? { do: 'dark' } : { do: 'press', id: 'title/units' };
  }

  /** Do it, and say what went wrong: nothing, mostly. What cannot be done is passed over: a control that is not there, no way back. */
  async perform(act) {
    const before = this.seen;
    const node = before.nodes.find((n) => n.id === act.id && n.shown);
    if ((act.id && !node) || (act.do === 'back' && before.below === 0)) {
      return [];
    }
    this.acts.push(act);
    if (node) {
      await this.engine.press(node.box[0] + node.box[2] / 2, node.box[1] + node.box[3] / 2);
    }
    const lost = await this.act(act, before);
    let { wrong, seen } = await this.state();
    // A change is written a moment after the last one, so that a burst of them is one write.
    for (const end = Date.now() + WRITTEN_WITHIN_MS; !wrong.length && this.unwritten(before, seen).length && Date.now() < end;) {
      await new Promise((go) => { setTimeout(go, 100); });
      ({ wrong, seen } = await this.state());
    }
    this.seen = seen;
    const found = [...lost, ...wrong.filter((p) => !this.offline || !/ERR_INTERNET_DISCONNECTED/.test(p))];
    return found.length ? found : [...this.unwritten(before, seen), ...(act.do === 'key' && /Tab/.test(act.name) ? this.focusSeen(seen) : [])];
  }

  /** What an act is beside its press; gives what a reload has lost. */
  async act(act, { width, height }) {
    const { engine } = this;
    switch (act.do) {
    case 'type':
      await this.rest();
      await engine.key('Control+A');
      await engine.type(act.text);
      await (act.then && engine.key(act.then));
      break;
    case 'key':
      await engine.key(act.name);
      break;
    case 'back':
      await this.back();
      break;
    case 'drag': {
      const [x, y] = [act.x * width, height / 2 + (act.y - 0.5) * 100];
      await engine.drag([x, y], [x, Math.max(1, Math.min(height - 1, y + act.by))]);
      break;
    }
    case 'touch':
      await engine.press(act.x * (width - 1), act.y * (height - 1));
      break;
    case 'resize':
      await this.resize(act.width, act.height);
      break;
    case 'reload':
      return this.reloadAndCompare();
    case 'offline':
      this.offline = !this.offline;
      await engine.page.context().setOffline(this.offline);
      break;
    case 'dark':
      this.dark = !this.dark;
      await engine.page.emulateMedia({ colorScheme: this.dark ? 'dark' : 'light', reducedMotion: 'reduce' });
      break;
    }
    return [];
  }

  /** Figures of the job have changed: then something has been written. */
  unwritten(before, now) {
    const said = new Map(before.nodes.filter((n) => FIGURES.test(n.id)).map((n) => [n.id, n.value]));
    const other = now.nodes.find((n) => FIGURES.test(n.id) && n.value && said.has(n.id) && said.get(n.id) !== n.value);
    return other && before.kept === now.kept ? [`${other.name} was ${said.get(other.id)} and is ${other.value}, but nothing was written`] : [];
  }

  /** What has the focus of the keyboard can be seen. What is disabled takes no press: it is seen where its middle is in its view. */
  focusSeen(seen) {
    const node = seen.nodes.find((n) => n.id === seen.focus);
    const off = node?.state.includes('disabled');
    const [view, middle] = off ? [this.viewOf(seen, node), node.box[1] + node.box[3] / 2] : [];
    const inView = off ? middle > view.y && middle < view.y + view.h : node?.shown;
    return node?.control && !inView && !seen.plain ? [`the keyboard is at ${node.id}, which is not in view`] : [];
  }

  /** What the screen said is what it says after a reload: no change was lost. What is half typed is left first. */
  async reloadAndCompare() {
    const typing = async () => (await this.look()).nodes.some((n) => n.id === 'keypad') || this.engine.evaluate(() => document.activeElement?.tagName === 'INPUT');
    for (let i = 0; i < 2 && await typing(); i++) {
      await this.engine.key('Escape');
      await this.rest();
    }
    const said = ({ nodes }) => new Map(nodes.filter((n) => KEPT.test(n.id) && !PASSING.test(n.id) && n.value && !n.state.includes('invalid')).map((n) => [n.id, `${n.name}: ${n.value}`]));
    const then = await this.look();
    const before = said(then);
    await this.reload();
    const now = await this.look();
    const after = said(now);
    if (now.hash !== then.hash) {
      return [`before the reload the page was at ${then.hash}, after it at ${now.hash}`];
    }
    return [...before].filter(([id, text]) => after.has(id) && after.get(id) !== text).map(([id, text]) => `${id} said "${text}" before the reload, "${after.get(id)}" after it`).slice(0, 3);
  }
}

/** The same acts from a new page: what goes wrong, if anything. */
export async function repeat(walk, acts) {
  await walk.begin(walk.url, walk.start);
  for (const act of acts) {
    const found = await walk.perform(act).catch((e) => [e.message]);
    if (found.length) {
      return found;
    }
  }
  return [];
}

/** Fewer acts that come upon a fault as well: the shortest end of them, then each left out that can be. */
export async function shorten(walk, acts, until) {
  let best = acts;
  for (let n = 1; n < acts.length && Date.now() < until; n *= 2) {
    if ((await repeat(walk, acts.slice(-n))).length) {
      best = acts.slice(-n);
      break;
    }
  }
  for (let i = best.length - 2; i >= 0 && Date.now() < until; i--) {
    const less = [...best.slice(0, i), ...best.slice(i + 1)];
    if ((await repeat(walk, less)).length) {
      best = less;
    }
  }
  return best;
}

const quoted = JSON.stringify;
const LINES = {
  press: (a) => [`await press(${quoted(a.id)});`],
  type: (a) => [`await press(${quoted(a.id)});`, "await page.keyboard.press('Control+A');", `await page.keyboard.insertText(${quoted(a.text)});`,
    ...(a.then ? [`await page.keyboard.press(${quoted(a.then)});`] : [])],
  key: (a) => [`await page.keyboard.press(${quoted(a.name)});`],
  back: () => ['await page.goBack();'],
  drag: (a) => [`await page.mouse.move(${a.x.toFixed(3)} * width, height / 2);`, `await page.mouse.wheel(0, ${Math.round(-a.by)});`],
  touch: (a) => [`await page.mouse.click(${a.x.toFixed(3)} * (width - 1), ${a.y.toFixed(3)} * (height - 1));`],
  resize: (a) => [`await page.setViewportSize({ width: ${a.width}, height: ${a.height} });`],
  reload: () => ['await page.reload();'],
  offline: () => ['await page.context().setOffline((offline = !offline));'],
  dark: () => ["await page.emulateMedia({ colorScheme: (dark = !dark) ? 'dark' : 'light' });"],
};

/** A script for tests/browser that does just this and nothing else. */
export function script({ width, height, touch }, acts) {
  return `import { clean, launch, open, serve, settled, SITE } from './harness.mjs';
const [width, height, host, browser] = [${width}, ${height}, await serve(SITE), await launch()];
let [offline, dark] = [false, false];
const page = await open(browser, { viewport: { width, height }, hasTouch: ${Boolean(touch)} });
const press = async (id) => {
  const box = await page.locator(\`[data-id="\${id}"]\`).boundingBox();
  await page.${touch ? 'touchscreen.tap' : 'mouse.click'}(box.x + box.width / 2, box.y + box.height / 2);
};
await page.goto(host.url);
await settled(page);
${acts.flatMap((act) => [...LINES[act.do](act), 'await settled(page);']).join('\n')}
await page.screenshot({ path: 'found.png' });
await clean(page);
await browser.close();
await host.stop();`;
}
