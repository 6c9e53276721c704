// The first answer stands on the first part of the program alone, whatever is stored and however wide the window, and what a hand does
// before the rest is there waits for it. The optimiser lets one function stand for others of the same code, so a name in web/later.txt
// may take along what a start calls; no reading of that list finds it.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { answered, clean, open, PHONE, ROOT, settled } from './harness.mjs';
import { record, shopRecord } from './kept_shop.mjs';
import { setUp, shared } from './person.mjs';

setUp();

const stored = { nothing: '', 'a shop': shopRecord(), 'the example': shopRecord({ example: true }) };
for (const [width, height] of [[360, 740], [768, 1024], [1100, 800], [1440, 900]]) {
  test(`a start needs none of the rest, and what a hand does waits for it, ${width} px wide`, async () => {
    for (const [what, kept] of Object.entries(stored)) {
      const page = await open(shared.browser, { viewport: { width, height }, hasTouch: true }, { kept });
      let arrive;
      const held = new Promise((done) => { arrive = done; });
      await page.route('**/later-*.wasm', (route) => held.then(() => route.continue()));
      let loads = 0;
      page.on('load', () => { loads++; });
      await page.goto(shared.host.url);
      await answered(page);
      await page.mouse.move(width / 3, 300);
      await page.mouse.wheel(0, 200);
      await page.keyboard.press('Tab');
      await page.touchscreen.tap(width / 4, 30); // the title block: the stock panel opens once it can
      await page.setViewportSize({ width: width + 30, height });
      await page.evaluate(() => new Promise((done) => { requestAnimationFrame(() => requestAnimationFrame(done)); }));
      arrive();
      await settled(page);
      await clean(page);
      assert.equal(loads, 1, `with ${what} stored: a call of what was not there loads the page again`);
      await page.context().close();
    }
  });
}

/** Shops that between them read every table that a first answer may: metals, thick and thin, both units, supplies, stock, shapes. */
function shops() {
  const demo = readFileSync(path.join(ROOT, 'assets/demo.json'), 'utf8');
  const metals = ['mild_steel', 'stainless', 'aluminium', 'galvanised', 'copper', 'brass', 'wear_plate'];
  const changes = [
    (book) => { book.shop.display = { units: 'inch', theme: 'night' }; },
    (book) => { Object.assign(book.shop.circuit, { line_v: 120, breaker_a: 20, run_awg: 12, breaker_rule: 'ul489' }); },
    (book) => { Object.assign(book.shop.circuit, { line_v: 230, breaker_a: 16, breaker_rule: 'iec60898c', cord_m: 25, cord_mm2: 1.5 }); },
    (book) => { book.shop.circuit.generator_va = 6000; },
    (book) => { book.shop.tests = []; book.job.part = { shape: 'flange' }; },
    (book) => { book.job.thickness_mm = 25; },
    (book) => { book.job.thickness_mm = 0.9; book.job.current_a = 25; },
    (book) => { book.job.torch = 'hand_standoff'; },
  ];
  return changes.map((change, i) => {
    const book = JSON.parse(demo);
    book.job.material = metals[i % metals.length];
    change(book);
    return book;
  });
}

/** All but the scroll bar, which the rows that follow make shorter. */
const DRAWN = { x: 0, y: 0, width: 356, height: 740 };

/** What each thing of the mirror says, by its name. */
const said = (page) => page.evaluate(() => Object.fromEntries([...document.querySelectorAll('#mirror [data-id]')].map(
  (node) => [node.dataset.id, node.textContent])));

test('what the first part of the program says is what all of it says', async () => {
  for (const [i, book] of shops().entries()) {
    const texts = [];
    for (const held of [true, false]) {
      const page = await open(shared.browser, PHONE, { kept: record(book) });
      let arrive;
      const rest = new Promise((done) => { arrive = done; });
      if (held) {
        await page.route('**/later-*.wasm', (route) => rest.then(() => route.continue()));
      }
      await page.goto(shared.host.url);
      await (held ? answered(page) : settled(page));
      texts.push([await said(page), (await page.screenshot({ clip: DRAWN })).toString('base64')]);
      arrive();
      await settled(page);
      await clean(page);
      await page.context().close();
    }
    const [[first, picture], [whole, wholePicture]] = texts;
    assert.ok(Object.keys(first).length > 12, 'something is said');
    for (const [id, text] of Object.entries(first)) {
      assert.ok(whole[id]?.startsWith(text), `shop ${i}, ${id}: "${text}" is "${whole[id]}" with all of the program`); // more rows may follow
    }
    assert.ok(picture === wholePicture, `shop ${i}: the pictures differ`);
  }
});

/** Shops whose first answer takes more of the program than the usual one's. */
function shopsThatNeedMore() {
  const demo = () => JSON.parse(readFileSync(path.join(ROOT, 'assets/demo.json'), 'utf8'));
  const [contradictory, taught] = [demo(), demo()];
  const cut = (feed, verdict) => ({ material: 'mild_steel', thickness_mm: 6, current_a: 45, feed_mm_min: feed, verdict });
  contradictory.shop.tests = [cut(1300, 'too_fast'), cut(2400, 'too_slow'), cut(1300, 'too_fast'), cut(2400, 'too_slow')];
  taught.shop.others = [{ shop: 'a', ...cut(1500, 'too_fast') }];
  return { 'a log that contradicts itself': contradictory, 'cuts of others': taught };
}

test('a shop that needs more than the usual starts anew once, without a word, and waits for all of it from then on', async () => {
  const anew = [];
  for (const [what, book] of Object.entries(shopsThatNeedMore())) {
    const page = await open(shared.browser, PHONE, { kept: record(book) });
    let loads = 0;
    page.on('load', () => { loads++; });
    await page.route('**/later-*.wasm', async (route) => { await page.waitForTimeout(400); await route.continue(); });
    await page.goto(shared.host.url);
    await settled(page);
    const feed = await page.locator('[data-id="cut/feed"]').textContent();
    assert.ok(loads <= 2, `${what}: ${loads} loads`);
    anew.push(loads);
    loads = 0;
    await page.reload();
    await settled(page);
    assert.equal(loads, 1, `${what}: the next start is one`);
    assert.equal(await page.locator('[data-id="cut/feed"]').textContent(), feed);
    // Another tab has no history to go by.
    const second = await page.context().newPage();
    let again = 0;
    second.on('load', () => { again++; });
    await second.goto(shared.host.url);
    await settled(second);
    assert.equal(again, 1, `${what}: a new tab starts once`);
    await clean(page);
    await page.context().close();
  }
  assert.ok(anew.includes(2), 'the test knows a shop that needs more');
});
