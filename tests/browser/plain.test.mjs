// The plain page: for browsers without WebGL, and for people who chose the colours of everything. Read by eye, that is by where things
// stand, not by what they are called.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { axe, PHONE, settled } from './harness.mjs';
import { control, done, setUp, shared, start, touch } from './person.mjs';

setUp();

const DESK = { viewport: { width: 1100, height: 800 }, deviceScaleFactor: 1 };
const plain = async (device, options = {}) => {
  const page = await start(device, { url: shared.host.url + '?plain=1', ...options });
  assert.ok(await isPlain(page));
  return page;
};
/** The plain page, with its style there. */
const isPlain = (page) => page.evaluate(async () => {
  const style = document.getElementById('plain-css');
  while (style.rel === 'stylesheet' && !style.sheet) {
    await new Promise((later) => { setTimeout(later, 10); });
  }
  return document.documentElement.classList.contains('plain');
});

/** What an eye reads: each figure of the chart with the heads above and beside it, and what the figure is said to be. */
const readChart = (page) => page.evaluate(() => {
  const table = document.querySelector('#mirror table');
  const middle = (el) => {
    const box = el.getBoundingClientRect();
    return { el, x: box.x + box.width / 2, y: box.y + box.height / 2, box };
  };
  const spoken = (el) => el.querySelector(':scope > span').textContent;
  const cells = [...table.querySelectorAll('td')];
  return cells.map((td) => {
    td.scrollIntoView({ block: 'center', inline: 'center' });
    const at = middle(td);
    const above = [...table.querySelectorAll('tr:first-of-type th')].map(middle).filter((h) => h.box.left <= at.x && at.x < h.box.right);
    const beside = [...table.querySelectorAll('tr:not(:first-of-type) th')].map(middle).filter((h) => h.box.top <= at.y && at.y < h.box.bottom);
    const says = td.querySelector('button').textContent; // "6 mm at 45 A: 1640"
    return { eye: `${beside.map((h) => spoken(h.el))} at ${above.map((h) => spoken(h.el))}: ${spoken(td)}`, says };
  });
});

for (const [how, device, options] of [['on a phone', PHONE, {}], ['on a desk', DESK, {}], ['in forced colours', PHONE, { forcedColors: 'active' }]]) {
  test(`every figure of the chart stands under its current and beside its plate, ${how}`, async () => {
    const page = options.forcedColors ? await start(device, options) : await plain(device, options);
    assert.ok(await isPlain(page));
    await control(page, 'button', 'Chart for this shop').click();
    for (const figure of ['Feed', 'Volts', 'Pierce', 'Kerf']) {
      await page.getByRole('radio', { name: figure, exact: true }).click();
      await page.locator('#mirror table').waitFor();
      const seen = await readChart(page);
      assert.ok(seen.length >= 40, `${seen.length} figures`);
      for (const { eye, says } of seen) {
        assert.equal(eye, says);
      }
    }
    await done(page);
  });
}

test('a figure of the chart is pressed where it stands', async () => {
  const page = await plain(DESK);
  await control(page, 'button', 'Chart for this shop').click();
  const cell = page.locator('#mirror td', { has: page.getByRole('button', { name: /^10 mm at 45 A/ }) });
  await cell.scrollIntoViewIfNeeded();
  const box = await cell.boundingBox();
  await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
  await control(page, 'button', 'Close').click();
  await page.waitForFunction(() => /10 mm/.test(document.querySelector('[data-id="title/thickness"]')?.textContent));
  await done(page);
});

test('the first screen: the job in one row, the places in one row, then the figures', async () => {
  for (const options of [{}, { forcedColors: 'active' }]) {
    const page = options.forcedColors ? await start(PHONE, options) : await plain(PHONE);
    const row = async (ids) => {
      const boxes = await Promise.all(ids.map((id) => page.locator(`[data-id="${id}"]`).boundingBox()));
      assert.equal(new Set(boxes.map((b) => Math.round(b.y))).size, 1, `${ids} stand in one row`);
      boxes.forEach((b, i) => assert.ok(b.width >= 48 && b.height >= 48 && b.x >= 0 && b.x + b.width <= 360, `${ids[i]} can be touched`));
      return Math.max(...boxes.map((b) => b.y + b.height));
    };
    const job = await row(['title/metal', 'title/thickness', 'title/current', 'title/units']);
    const places = await row(['place/cut', 'place/tune', 'place/part', 'place/quote', 'place/shop']);
    assert.ok(job <= 84 && places <= 150, `${job}, ${places}`);
    const feed = await page.locator('[data-id="cut/feed"]').boundingBox();
    assert.ok(feed.y < places + 20, 'the feed comes next');
    await row(['cut/arc', 'cut/cut_height', 'cut/pierce_height']);
    await row(['cut/pierce_delay', 'cut/kerf', 'cut/lead_in']);
    const last = await row(['cut/min_hole', 'cut/pressure', 'cut/post_flow']);
    assert.ok(last <= 590, `all ten figures within the first screen, the last ends at ${last}`);
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= 360), 'nothing to the side');
    await done(page);
  }
});

test('places and sheets by touch, nothing to the side, and no fault of axe', async () => {
  const page = await plain(PHONE);
  for (const place of ['Tune', 'Part', 'Quote', 'Shop', 'Cut']) {
    await touch(page, 'button', place);
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= 360), `${place}: nothing to the side`);
    assert.deepEqual(await axe(page), [], place);
  }
  await control(page, 'button', 'Chart for this shop').tap();
  await page.locator('#mirror table').waitFor();
  assert.deepEqual(await axe(page), []);
  await done(page);
});

test('a sheet opens at its top however far down its opener stands, and Back is there again', async () => {
  const page = await plain(PHONE);
  const opener = control(page, 'button', 'Chart for this shop');
  await opener.scrollIntoViewIfNeeded();
  assert.ok(await page.evaluate(() => scrollY > 200), 'the opener stands below the first screen');
  await opener.tap();
  const close = page.locator('[data-id="chart/close"]');
  await close.waitFor();
  await settled(page);
  const box = await close.boundingBox();
  assert.ok(box.y >= 0 && box.y < 120, `Close stands ${box.y} px from the top`);
  await page.goBack();
  await opener.waitFor();
  await settled(page);
  const back = await opener.boundingBox();
  assert.ok(back.y >= 0 && back.y + back.height <= 740, `its opener stands ${back.y} px from the top`);
  await done(page);
});

test('who turns forced colours on has the plain page at once, with the work kept', async () => {
  const page = await start(DESK);
  page.touching = false;
  await touch(page, 'radio', '10');
  assert.ok(!(await isPlain(page)));
  await page.emulateMedia({ forcedColors: 'active' });
  await page.waitForFunction(() => document.documentElement.classList.contains('plain') && document.querySelector('[data-id="title/thickness"]'));
  assert.match(await control(page, 'button', 'Thickness').textContent(), /10 mm/);
  await page.emulateMedia({ forcedColors: 'none' });
  await page.waitForFunction(() => !document.documentElement.classList.contains('plain') && document.querySelector('[data-id="title/thickness"]'));
  await done(page);
});
