// The start in two parts: the first answer stands on the first module alone, whatever is kept; what is touched before the rest is there
// waits for it; a start that needs all of it from the beginning gets it.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { answered, DESKTOP, open, PHONE, settled, until } from './harness.mjs';
import { keptRecords, shopRecord } from './kept_shop.mjs';
import { control, done as over, feed, setUp, shared, touch } from './person.mjs';

setUp();

const TABLET = { viewport: { width: 768, height: 1024 }, deviceScaleFactor: 2, hasTouch: true };

/** From now on the rest of the program waits for this page until page.letGo() is called. */
async function hold(page) {
  const free = new Promise((go) => { page.letGo = go; });
  await page.route('**/later-*.wasm', async (route) => {
    await free;
    await route.continue();
  });
  return page;
}

const fresh = (device, options) => open(shared.browser, device, { serviceWorkers: 'block', ...options });
const held = async (device = PHONE, options = {}) => hold(await fresh(device, options));

// A service worker would fetch the rest on its own; what the page says of having none is expected here.
const done = (page, but = /$^/) => over(page, new RegExp(`Service Worker registration|reading 'waiting'|${but.source}`));

const notYet = (page) => page.evaluate(() => performance.getEntriesByName('torchside-whole').length === 0);
const marked = (page) => page.evaluate(() => history.state?.whole ?? null);

test('the first answer stands on the first module alone, on every size and theme, whosever shop is kept', async () => {
  for (const device of [PHONE, TABLET, DESKTOP]) {
    for (const [colorScheme, kept] of [['light', ''], ['dark', ''], ['light', shopRecord()], ['dark', shopRecord({ example: true })]]) {
      const page = await held(device, { colorScheme, kept });
      await page.goto(shared.host.url);
      await answered(page);
      assert.match(await feed(page), /\d/);
      assert.ok(await notYet(page));
      assert.equal(await page.evaluate(() => window.torchsideCounters.drawn), 1);
      assert.equal(await marked(page), null, 'no stand-in was called');
      page.letGo();
      await settled(page);
      await done(page);
    }
  }
});

/** What has been entered is kept; the next start shows it on the first module alone. */
async function startsAgain(device, change) {
  const page = await fresh(device);
  await page.goto(shared.host.url);
  await settled(page);
  await change(page);
  await settled(page);
  await until(async () => (await keptRecords(page)).some(Boolean), 'something to be kept');
  await hold(page);
  await page.goto('about:blank');
  await page.goto(shared.host.url);
  await answered(page);
  assert.match(await feed(page), /\d/);
  assert.ok(await notYet(page));
  assert.equal(await marked(page), null, 'no stand-in was called');
  page.letGo();
  await settled(page);
  return page;
}

test('a workbook in inches starts on the first module alone', async () => {
  const page = await startsAgain(PHONE, async (p) => touch(p, 'button', 'Units'));
  assert.match(await feed(page), /ipm|in/);
  await done(page);
});

test('a workbook with an own drawing starts on the first module alone', async () => {
  const page = await startsAgain(DESKTOP, async (p) => {
    await p.evaluate(() => {
      const file = new File(['<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="40mm" viewBox="0 0 50 40"><rect width="50" height="40"/>'
        + '<circle cx="20" cy="20" r="8"/></svg>'], 'bracket.svg', { type: 'image/svg+xml' });
      const carried = new DataTransfer();
      carried.items.add(file);
      document.getElementById('canvas').dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }));
    });
    await until(async () => (await keptRecords(p)).some((kept) => kept.includes('bracket.svg')), 'the drawing to be kept');
  });
  await done(page);
});

test('what is touched before the rest is there is answered when it comes', async () => {
  const page = await held();
  await page.goto(shared.host.url);
  await answered(page);
  const box = await control(page, 'button', 'Thickness').boundingBox();
  await page.touchscreen.tap(box.x + 20, box.y + 20);
  await page.waitForTimeout(300);
  assert.equal(await page.getByRole('dialog').count(), 0);
  page.letGo();
  await page.getByRole('dialog').waitFor();
  assert.equal(await marked(page), null);
  await done(page);
});

test('another place than the first waits for all of the program', async () => {
  const page = await held();
  await page.goto(shared.host.url + '#/tune');
  await page.waitForTimeout(500);
  assert.equal(await page.locator('#mirror > *').count(), 0);
  page.letGo();
  await settled(page);
  await done(page);
});

test('when a stand-in is called after all, the next start waits for both parts and works', async () => {
  const page = await held();
  await page.goto(shared.host.url);
  await answered(page);
  await page.evaluate(() => { setTimeout(() => Module.ccall('torchside_notice', null, ['string', 'string'], ['theme', 'night']), 0); });
  await until(() => marked(page), 'the page to load again').catch(() => {});
  page.letGo();
  await settled(page);
  assert.match(await feed(page), /\d/);
  assert.equal(await marked(page), null, 'the mark is taken away again');
  await done(page, /^exception: Error$/);
});

test('when the rest cannot be had, the page says so, and the first answer stays', async () => {
  const page = await fresh(PHONE);
  await page.route('**/later-*.wasm', (route) => route.fulfill({ status: 404, body: '' }));
  await page.goto(shared.host.url);
  await page.getByRole('alert').filter({ hasText: 'has not arrived' }).waitFor();
  assert.match(await feed(page), /\d/);
  await done(page, /404|server answered/);
});
