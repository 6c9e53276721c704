// What every browser test needs: a static server that can be killed, Chromium, a page that reports all that goes wrong.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { keepRecord } from './kept_shop.mjs';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));
export const SITE = path.join(ROOT, 'build/site');
export const SINGLE = path.join(ROOT, 'build/torchside.html');
const WORK = path.join(ROOT, 'build/browser');

const TYPES = { '.html': 'text/html; charset=utf-8', '.js': 'text/javascript', '.css': 'text/css', '.wasm': 'application/wasm', '.svg': 'image/svg+xml',
  '.png': 'image/png', '.webmanifest': 'application/manifest+json', '.txt': 'text/plain; charset=utf-8' };

/** A static host as plain as they come. `folder` may be changed while it runs; `down` breaks every connection while it is set; `stop` refuses every connection from then on. */
export async function serve(folder) {
  const host = { folder, asked: [], replace: {} };
  const server = createServer((request, response) => {
    if (host.down) {
      request.socket.destroy();
      return;
    }
    const name = decodeURIComponent(new URL(request.url, 'http://x').pathname).slice(1).replace(/(^|\/)$/, '$1index.html');
    host.asked.push(name);
    const file = path.join(host.folder, path.normalize('/' + name));
    const data = host.replace[name] ?? (existsSync(file) && path.extname(file) ? readFileSync(file) : null);
    if (data === null) {
      response.writeHead(404, { 'content-type': 'text/plain' }).end('not here\n');
    } else {
      response.writeHead(200, { 'content-type': TYPES[path.extname(name)] || 'application/octet-stream', 'cache-control': 'no-cache' }).end(data);
    }
  });
  await new Promise((done) => { server.listen(0, '127.0.0.1', done); });
  host.url = `http://127.0.0.1:${server.address().port}/`;
  host.stop = () => !server.listening || new Promise((done) => {
    server.close(done);
    server.closeAllConnections();
  });
  return host;
}

/** Pack a site of its own under build/browser; `fake` puts the stand-in in the app's place. */
export function pack(name, { fake = false, mark = '' } = {}) {
  mkdirSync(WORK, { recursive: true });
  const args = [...(process.env.TORCHSIDE_PACK || '').split(' ').filter(Boolean), '--out', path.join(WORK, name), '--single', '', '--mark', mark];
  if (fake) {
    const empty = path.join(WORK, 'empty.wasm');
    writeFileSync(empty, Buffer.from([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0]));
    args.push('--js', path.join(ROOT, 'tests/browser/fixtures/fake_torchside.js'), '--wasm', empty, '--later', empty);
  }
  execFileSync(path.join(ROOT, 'tools/pack_site'), args);
  return path.join(WORK, name);
}

export const FLAGS = ['--no-sandbox', '--disable-gpu', '--enable-unsafe-swiftshader', '--disable-quic', '--no-first-run',
  '--disable-background-networking', '--disable-component-update', '--disable-sync'];

export function launch(args = []) {
  return chromium.launch({ executablePath: process.env.CHROMIUM || '/usr/bin/chromium', args: [...FLAGS, ...args] });
}

export const PHONE = { viewport: { width: 360, height: 740 }, deviceScaleFactor: 3, hasTouch: true, isMobile: true };
export const DESKTOP = { viewport: { width: 1440, height: 900 }, deviceScaleFactor: 1 };

/** Runs in the page before anything else: notes policy reports and counts the calls of requestAnimationFrame. */
function watchPage() {
  window.seen = { reports: [], callbacks: 0 };
  document.addEventListener('securitypolicyviolation', (e) => window.seen.reports.push(`${e.violatedDirective}: ${e.blockedURI}`));
  const ask = window.requestAnimationFrame;
  window.requestAnimationFrame = (f) => {
    window.seen.callbacks++;
    return ask.call(window, f);
  };
}

/** A page in a context of its own. `page.problems` collects console errors, exceptions and policy reports; see `clean`. */
export async function open(browser, device = PHONE, { init, kept = '', ...more } = {}) {
  const context = await browser.newContext({ ...device, ...more });
  await context.addInitScript(watchPage);
  if (kept) {
    await context.addInitScript(keepRecord, kept);
  }
  if (init) {
    await context.addInitScript(init);
  }
  return listen(await context.newPage());
}

export function listen(page) {
  page.problems = [];
  page.on('console', (m) => { if (m.type() === 'error' || m.type() === 'warning') page.problems.push(`console ${m.type()}: ${m.text()}`); });
  page.on('pageerror', (e) => page.problems.push(`exception: ${e.message}`));
  return page;
}

/** Nothing went wrong on this page, and nothing was refused by its policy. `but` is what this test expects. */
export async function clean(page, but = /$^/) {
  const reports = await page.evaluate(() => window.seen?.reports ?? []);
  const noise = /GPU stall due to ReadPixels|GL Driver Message/; // the software renderer's own remarks
  assert.deepEqual([...page.problems, ...reports].filter((p) => !but.test(p) && !noise.test(p)), []);
}

/** Wait until `look` (run here) gives a truth, and give it back. */
export async function until(look, what, ms = 15000) {
  for (const end = Date.now() + ms; ;) {
    const found = await look();
    if (found) {
      return found;
    }
    if (Date.now() > end) {
      assert.fail(`waited ${ms} ms in vain for ${what}`);
    }
    await new Promise((done) => { setTimeout(done, 50); });
  }
}

/** The first answer stands. */
export async function answered(page) {
  await page.waitForFunction(() => document.getElementById('first')?.hidden && document.querySelector('#mirror > *'), null, { timeout: 20000 });
}

/** The page stands, all of the program is there, and it has nothing more to draw. */
export async function settled(page) {
  await answered(page);
  await page.waitForFunction(() => !document.getElementById('later-wasm') || performance.getEntriesByName('torchside-whole').length, null, { timeout: 20000 });
  let before = -1;
  await until(async () => {
    const now = await page.evaluate(() => window.torchsideCounters.drawn);
    const still = now === before;
    before = now;
    await page.waitForTimeout(60);
    return still;
  }, 'a still page');
}

/** The worker controls the page, so that the server may go. */
export async function offlineReady(page) {
  await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated', null, { timeout: 20000 });
}

/** Every rule of axe-core that the page breaks, as short lines. Runs in a world of its own, which the page's policy does not bind. */
export async function axe(page) {
  const source = readFileSync(new URL('./node_modules/axe-core/axe.min.js', import.meta.url), 'utf8');
  const client = await page.context().newCDPSession(page);
  const { frameTree } = await client.send('Page.getFrameTree');
  const { executionContextId } = await client.send('Page.createIsolatedWorld', { frameId: frameTree.frame.id, worldName: 'axe' });
  await client.send('Runtime.evaluate', { contextId: executionContextId, expression: source });
  const { result, exceptionDetails } = await client.send('Runtime.evaluate', {
    contextId: executionContextId, awaitPromise: true, returnByValue: true,
    expression: `axe.run(document).then((r) => r.violations.map((v) => v.id + ': ' + v.help + ' at ' + v.nodes.map((n) => n.html.slice(0, 90)).join(' | ')))`,
  });
  assert.equal(exceptionDetails, undefined);
  return result.value;
}
