// The page inside a frame: in that of another site nothing starts and nothing can be touched; in one of its own it works.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { answered, clean, DESKTOP, open, ROOT, serve, SINGLE, SITE } from './harness.mjs';
import { setUp, shared } from './person.mjs';

setUp();

const frame = (address, more = '') => `<!doctype html><title>A page</title><link rel="icon" href="data:,"><iframe src="${address}" width="400" height="700" ${more}></iframe>`;

/** The page that a host shows under this name, with our page in its frame. */
async function framed(host, html) {
  host.replace['around.html'] = Buffer.from(html);
  shared.host.asked.length = 0;
  const page = await open(shared.browser, DESKTOP);
  await page.goto(host.url + 'around.html');
  return page;
}

const quoteLink = () => execFileSync(path.join(ROOT, 'build/native/torchside'), ['link', 'quote', path.join(ROOT, 'assets/demo.json')]).toString().trim();

async function refuses(page, address, inside = page.frameLocator('iframe')) {
  await inside.getByText('Torchside does not work inside a page of another site.').waitFor();
  const link = inside.getByRole('link');
  assert.equal(await link.count(), 1);
  assert.equal(await link.getAttribute('href'), address);
  assert.equal(await link.getAttribute('target'), '_blank');
  assert.equal(await inside.locator('canvas, button, input, textarea, select, [tabindex], #mirror').count(), 0, 'nothing else to touch');
  await page.waitForTimeout(500);
  assert.deepEqual(shared.host.asked.filter((name) => /\.wasm$|^(page|torchside|quote)-.*\.js$|^sw\.js/.test(name)), [], 'nothing of the app is asked for');
  await clean(page);
  await page.context().close();
}

test('in the frame of another site the app, a job and a quote refuse to start, and lead out', async () => {
  const other = await serve(SITE);
  for (const end of ['', '#/quote/send', '#j=AQGgxxxx', '#' + quoteLink()]) {
    const address = shared.host.url + end;
    await refuses(await framed(other, frame(address)), address);
    await refuses(await framed(other, frame(address, 'sandbox="allow-scripts allow-popups"')), address);
  }
  // A frame of our own inside a page of another site is in that site's hands too.
  shared.host.replace['inner.html'] = Buffer.from(frame(shared.host.url));
  const page = await framed(other, frame(shared.host.url + 'inner.html'));
  await refuses(page, shared.host.url, page.frameLocator('iframe').frameLocator('iframe'));
  await other.stop();
});

test('the one-file page refuses too', async () => {
  const other = await serve(SITE);
  shared.host.replace['one.html'] = readFileSync(SINGLE);
  for (const end of ['one.html', 'one.html#' + quoteLink()]) {
    await refuses(await framed(other, frame(shared.host.url + end)), shared.host.url + end);
  }
  await other.stop();
});

test('in a frame of its own site, and by itself, it works', async () => {
  const page = await framed(shared.host, frame(shared.host.url));
  await page.frameLocator('iframe').locator('#mirror > *').first().waitFor({ state: 'attached' });
  await page.frameLocator('iframe').locator('canvas').waitFor();
  await clean(page);
  await page.goto(shared.host.url);
  await answered(page);
  await page.context().close();
});

test('the site carries the headers for hosts that read them from a file', () => {
  const text = readFileSync(path.join(SITE, '_headers'), 'utf8');
  assert.match(text, /^\/\*\n  Content-Security-Policy: frame-ancestors 'self'\n/m);
  const index = readFileSync(path.join(SITE, 'index.html'), 'utf8');
  for (const name of index.match(/[\w-]+-[0-9a-f]{8}\.(js|css|wasm)/g)) {
    assert.ok(text.includes(`/${name}\n  Cache-Control: public, max-age=31536000, immutable\n`), name);
  }
  assert.ok(text.includes('/sw.js\n  Cache-Control: no-cache\n'));
});
