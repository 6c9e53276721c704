// For someone who cannot see the screen, or uses no pointer: the tasks by keyboard alone and by a screen reader alone, what is spoken,
// and what axe finds at all places, sizes, languages and on the plain page.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, before, describe, test } from 'node:test';
import { Chromium } from './engines.mjs';
import { axe, DESKTOP, launch, open, PHONE, serve, settled, SITE } from './harness.mjs';
import { shopRecord } from './kept_shop.mjs';
import { TASKS } from './tasks.mjs';
import { Keyboard, Reader } from './unseen.mjs';

const { tasks } = JSON.parse(readFileSync(new URL('./tasks.json', import.meta.url), 'utf8'));
const WAYS = [['by the keyboard alone', Keyboard, { width: 1440, height: 900, touch: false }], ['by a screen reader alone', Reader, { width: 360, height: 740, touch: true }]];

let host;
let browser;
before(async () => {
  host = await serve(SITE);
  browser = await launch();
});
after(async () => {
  await browser?.close();
  await host?.stop();
});

for (const [way, Person, size] of WAYS) {
  describe(`the tasks ${way}`, { concurrency: false }, () => {
    const engine = new Chromium();
    after(() => engine.close());
    for (const { number, task, shop, todo } of tasks.filter((t) => TASKS[t.number])) {
      test(`${number}. ${task}`, { todo }, async (t) => {
        const person = new Person(engine);
        await person.open(host.url, { ...size, kept: shop ? shopRecord() : '' });
        person.begin();
        await TASKS[number](person);
        await person.well();
        t.diagnostic(`${person.touches} presses`);
      });
    }
  });
}

test('a changed figure is spoken once', async () => {
  const page = await open(browser, DESKTOP, { kept: shopRecord() });
  await page.goto(host.url);
  await settled(page);
  await page.evaluate(() => {
    window.spoken = [];
    new MutationObserver((list) => {
      const live = new Set(list.map((m) => (m.target.nodeType === 3 ? m.target.parentElement : m.target)?.closest('[aria-live], [role="status"], [role="alert"]')).filter(Boolean));
      live.forEach((el) => el.textContent && window.spoken.push(el.textContent));
    }).observe(document.getElementById('mirror'), { subtree: true, childList: true, characterData: true });
  });
  await page.getByRole('textbox', { name: 'Thickness' }).focus();
  await page.keyboard.press('Control+A');
  await page.keyboard.insertText('8');
  await page.keyboard.press('Enter');
  await settled(page);
  const spoken = await page.evaluate(() => window.spoken);
  const feed = await page.locator('#mirror [data-id="cut/feed"]').textContent();
  const figure = /[\d ]{3,} mm\/min/.exec(feed)[0];
  assert.equal(spoken.filter((text) => text.includes(figure)).length, 1, `${figure}: ${spoken.join(' | ')}`);
  await page.context().close();
});

const PLACES = ['#/cut', '#/tune', '#/part', '#/quote', '#/shop', '#/cut/stock', '#/cut/chart', '#/cut/figure/feed', '#/quote/rates', '#/shop/machine'];
for (const language of ['en', 'es']) {
  for (const plain of [false, true]) {
    test(`axe finds nothing: ${language}${plain ? ', the plain page' : ''}`, async () => {
      for (const device of plain ? [PHONE] : [PHONE, { viewport: { width: 768, height: 1024 } }, DESKTOP, { viewport: { width: 320, height: 256 } }]) {
        const page = await open(browser, device, { kept: shopRecord(), locale: language });
        await page.goto(host.url + (plain ? '?plain=1' : ''));
        await settled(page);
        for (const place of PLACES) {
          await page.evaluate((to) => { location.hash = to; }, place);
          await settled(page);
          assert.deepEqual(await axe(page), [], `${place} at ${device.viewport.width}`);
        }
        await page.context().close();
      }
    });
  }
}
