// The first answer stands on the first part of the program alone, whatever is stored and however wide the window, and what a hand does
// before the rest is there waits for it. The optimiser lets one function stand for others of the same code, so a name in web/later.txt
// may take along what a start calls; no reading of that list finds it.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { answered, clean, open, settled } from './harness.mjs';
import { shopRecord } from './kept_shop.mjs';
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
