// Three browsers that a walk can be walked in, all driven in the same words. Chromium by Playwright, Firefox by Puppeteer (the
// distribution's Firefox, which Playwright does not drive), WebKit (the engine of iPhones) by WebDriver.
//
// An engine has: name, narrowest (px of the narrowest window it can be given), open(url, size), resize(width, height), press(x, y),
// drag(from, to), key(name), type(text), reload(), evaluate(function, ...arguments), screenshot(), problems (what went wrong), close().
// `size` is {width, height, touch, kept}; with `touch` a press is a finger, else a mouse; `kept` is the record that the browser keeps
// from before (see kept_shop.mjs), without it nothing is stored.
import { spawn } from 'node:child_process';
import { launch, listen } from './harness.mjs';
import { keepRecord } from './kept_shop.mjs';
import { session } from './webdriver.mjs';

const HEIGHT_MAX = 1080;
const WIDTH_MAX = 1940;
const CHROME_ROOM = 200; // above the page: a window's own bars

/** A display that nobody sees: Firefox and WebKit have WebGL only in a window. */
async function display() {
  const server = spawn('Xvfb', ['-displayfd', '1', '-screen', '0', `${WIDTH_MAX}x${HEIGHT_MAX + CHROME_ROOM}x24`, '-nolisten', 'tcp'],
    { stdio: ['ignore', 'pipe', 'ignore'] });
  const number = await new Promise((found, failed) => {
    server.stdout.once('data', (text) => found(String(text).trim()));
    server.once('error', () => failed(new Error('there is no Xvfb here; run tools/setup test')));
    server.once('exit', (code) => failed(new Error(`Xvfb ended with status ${code}`)));
  });
  const ended = new Promise((done) => { server.once('exit', done); });
  return { environment: { ...process.env, DISPLAY: ':' + number, LIBGL_ALWAYS_SOFTWARE: '1', LC_ALL: 'en_US.UTF-8' }, close: () => { server.kill(); return ended; } };
}

export class Chromium {
  name = 'Chromium';
  narrowest = 320;
  get problems() { return this.page.problems; }

  async open(url, { width, height, touch = width < 1000, kept = '', args = [], context = {} }) {
    this.browser ??= await launch(args);
    await this.page?.context().close();
    this.touch = touch;
    const device = { viewport: { width, height }, deviceScaleFactor: 1, hasTouch: touch, isMobile: touch, reducedMotion: 'reduce', ...context };
    this.page = listen(await (await this.browser.newContext(device)).newPage());
    await (kept && this.page.addInitScript(keepRecord, kept));
    this.client = await this.page.context().newCDPSession(this.page);
    await this.page.goto(url);
  }
  resize(width, height) { return this.page.setViewportSize({ width, height }); }
  press(x, y) { return this.touch ? this.page.touchscreen.tap(x, y) : this.page.mouse.click(x, y); }
  async drag(from, to) {
    const finger = (type, [x, y]) => this.client.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x, y }] });
    if (!this.touch) {
      await this.page.mouse.move(...from);
      return this.page.mouse.wheel(from[0] - to[0], from[1] - to[1]);
    }
    await finger('touchStart', from);
    for (const part of [0.25, 0.5, 0.75, 1, 1]) {
      await finger('touchMove', [from[0] + (to[0] - from[0]) * part, from[1] + (to[1] - from[1]) * part]);
    }
    return finger('touchEnd', to);
  }
  key(name) { return this.page.keyboard.press(name); }
  type(text) { return this.page.keyboard.insertText(text); }
  reload() { return this.page.reload(); }
  evaluate(what, ...args) { return this.page.evaluate(`(${what}).apply(null, ${JSON.stringify(args)})`); }
  screenshot() { return this.page.screenshot(); }
  async close() { await this.browser?.close(); }
}

export class Firefox {
  name = 'Firefox';
  narrowest = 320;
  touch = false;
  problems = [];

  // No fingers: this Firefox refuses them from outside (their width must be a whole number, and the driver gives a half).
  async open(url, { width, height, kept = '', headless = false }) {
    if (!this.browser) {
      const { default: puppeteer } = await import('puppeteer-core');
      this.display = headless ? null : await display();
      this.browser = await puppeteer.launch({ browser: 'firefox', executablePath: process.env.FIREFOX || '/usr/bin/firefox-esr', headless,
        env: this.display?.environment ?? process.env, extraPrefsFirefox: { 'ui.prefersReducedMotion': 1 } });
    }
    await this.context?.close();
    this.context = await this.browser.createBrowserContext();
    this.page = await this.context.newPage();
    this.problems = [];
    this.page.on('console', (m) => { if (m.type() === 'error') this.problems.push('console error: ' + m.text()); });
    this.page.on('pageerror', (e) => this.problems.push('exception: ' + e.message));
    await this.resize(width, height);
    await (kept && this.page.evaluateOnNewDocument(keepRecord, kept));
    await this.page.goto(url);
  }
  resize(width, height) { return this.page.setViewport({ width, height, deviceScaleFactor: 1 }); }
  press(x, y) { return this.page.mouse.click(x, y); }
  async drag(from, to) {
    await this.page.mouse.move(...from);
    await this.page.mouse.wheel({ deltaX: Math.round(from[0] - to[0]), deltaY: Math.round(from[1] - to[1]) });
  }
  key(name) { return this.page.keyboard.press(name); }
  type(text) { return this.page.keyboard.type(text); }
  reload() { return this.page.reload(); }
  evaluate(what, ...args) { return this.page.evaluate(`(${what}).apply(null, ${JSON.stringify(args)})`); }
  screenshot() { return this.page.screenshot(); }
  async close() {
    await this.browser?.close();
    await this.display?.close();
  }
}

export class WebKit {
  name = 'WebKit';
  narrowest = 447; // of a window with its toolbar
  problems = [];
  touch = false;

  async open(url, { width, height, kept = '' }) {
    if (!this.window) {
      this.display = await display();
      const environment = { ...this.display.environment, ...(process.getuid() === 0 ? { WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1' } : {}) };
      this.window = await session('WebKitWebDriver', { 'webkitgtk:browserOptions': {
        binary: process.env.WEBKIT || '/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser', args: ['--automation'] } }, environment);
    }
    await this.window.go(new URL('nothing-here', url).href); // one window for all: what is stored is set from a page beside the app
    await this.evaluate('(kept) => { localStorage.clear(); indexedDB.deleteDatabase("torchside./."); if (kept) localStorage.setItem("torchside.0", kept); }', kept);
    await this.resize(width, height); // here too: a start that begins anew would take the question for its size away
    await this.window.go(url);
  }
  /** The page's size is asked for; what can be set is the window's, which takes it when it comes to it. */
  async resize(width, height) {
    const arrived = `async (width, height) => {
      for (let waits = 0; waits < 20 && (innerWidth !== width || innerHeight !== height); waits++) await new Promise((next) => { setTimeout(next, 25); });
      return [innerWidth, innerHeight];
    }`;
    await this.window.post('/window/rect', { x: 0, y: 0, width, height: height + this.bars });
    const [w, h] = await this.evaluate(arrived, width, height);
    if (w !== width || h !== height) {
      this.bars += height - h;
      await this.window.post('/window/rect', { x: 0, y: 0, width: Math.max(width + width - w, this.narrowest), height: height + this.bars });
      await this.evaluate(arrived, width, height);
    }
  }
  bars = 0;
  press(x, y) { return this.window.press('mouse', [x, y]); }
  drag(from, to) { return this.window.drag('mouse', from, to); }
  key(name) { return this.window.key(...name.split('+')); }
  async type(text) {
    for (const sign of text) {
      await this.window.key(sign);
    }
  }
  reload() { return this.window.post('/refresh'); }
  evaluate(what, ...args) { return this.window.evaluate(String(what), args); }
  screenshot() { return this.window.screenshot(); }
  async close() {
    await this.window?.close();
    await this.display?.close();
  }
}

export const engines = [Chromium, Firefox, WebKit];
