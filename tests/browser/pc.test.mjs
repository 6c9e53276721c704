// A desk in a browser: a mouse that shows what it would press, keys that lead everywhere, and nothing drawn for nothing.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { DESKTOP, settled } from './harness.mjs';
import { control, done, focused, setUp, start, tabTo } from './person.mjs';

setUp();

const drawn = (page) => page.evaluate(() => window.torchsideCounters.drawn);
const cursor = (page) => page.evaluate(() => getComputedStyle(document.getElementById('canvas')).cursor);
const middle = async (page, role, name) => {
  const box = await control(page, role, name).boundingBox();
  return [box.x + box.width / 2, box.y + box.height / 2, box];
};

test('a mouse over a control shows it, and draws only when it comes to another one', async () => {
  const page = await start(DESKTOP);
  const [x, y, box] = await middle(page, 'button', 'Feed');
  const clip = { x: box.x, y: box.y, width: box.width, height: box.height };
  await page.mouse.move(700, 5);
  await settled(page);
  const cold = await page.screenshot({ clip });
  const before = await drawn(page);
  await page.mouse.move(x, y);
  await settled(page);
  assert.equal(await cursor(page), 'pointer');
  const first = await drawn(page);
  assert.ok(first > before && first <= before + 3, `${first - before} frames to show it`);
  assert.notDeepEqual(await page.screenshot({ clip }), cold, 'it looks otherwise');
  for (let i = 0; i < 40; i++) {
    await page.mouse.move(x - 20 + i, y - 10 + (i % 20));
  }
  await settled(page);
  assert.equal(await drawn(page), first, 'wandering within it draws nothing');
  const [tx, ty] = await middle(page, 'textbox', 'Thickness');
  await page.mouse.move(tx, ty);
  await settled(page);
  assert.equal(await cursor(page), 'text');
  await page.mouse.move(x, y + 100); // the picture of the torch: nothing to press
  await settled(page);
  assert.equal(await cursor(page), 'default');
  assert.deepEqual(await page.screenshot({ clip }), cold, 'and cold again');
  const rest = await drawn(page);
  await page.waitForTimeout(500);
  assert.equal(await drawn(page), rest, 'idle draws nothing');
  await done(page);
});

test('the chart is one stop of the Tab key; arrows lead from figure to figure', async () => {
  const page = await start(DESKTOP);
  const inChart = () => page.evaluate(() => [...document.querySelectorAll('#mirror td button')].filter((b) => b.tabIndex === 0).map((b) => b.dataset.id ?? b.id));
  assert.equal((await inChart()).length, 1);
  const [job] = await inChart();
  assert.match(await page.locator(`[data-id="${job}"]`).textContent(), /^6 mm at 45 A/, 'it is that of the job');
  await tabTo(page, job);
  const [, row, column] = /chart\/(\d+)\/(\d+)/.exec(job).map(Number);
  for (const [key, r, c] of [['ArrowDown', 1, 0], ['ArrowLeft', 1, -1], ['ArrowUp', 0, -1], ['ArrowRight', 0, 0], ['ArrowDown', 1, 0]]) {
    await page.keyboard.press(key);
    await settled(page);
    assert.equal(await focused(page), `chart/${row + r}/${column + c}/use`, key);
  }
  await page.keyboard.press('Home');
  await page.keyboard.press('ArrowLeft');
  assert.equal(await focused(page), `chart/${row + 1}/0/use`, 'the row ends there');
  await page.keyboard.press('End');
  await page.keyboard.press('Tab');
  assert.doesNotMatch(await focused(page), /^chart\/\d/, 'one Tab leaves it');
  await page.keyboard.press('Shift+Tab');
  assert.match(await focused(page), new RegExp(`^chart/${row + 1}/`), 'and comes back to where it was');
  await page.keyboard.press('Home');
  await page.keyboard.press('Enter');
  await settled(page);
  assert.match(await control(page, 'button', 'Thickness').textContent(), /8 mm/);
  assert.equal(await focused(page), `chart/${row + 1}/0/use`);
  await done(page);
});

test('1 to 5 go to the places, not while typing', async () => {
  const page = await start(DESKTOP);
  const here = () => page.locator('nav [aria-current="page"]').textContent();
  for (const [key, place] of [['2', 'Tune'], ['3', 'Part'], ['4', 'Quote'], ['5', 'Shop'], ['1', 'Cut']]) {
    await page.keyboard.press(key);
    await settled(page);
    assert.equal(await here(), place);
    assert.equal(await control(page, 'button', place).getAttribute('aria-keyshortcuts'), key);
  }
  await page.getByRole('textbox', { name: 'Thickness' }).click({ force: true });
  await page.keyboard.type('5');
  await settled(page);
  assert.equal(await here(), 'Cut');
  assert.equal(await page.getByRole('textbox', { name: 'Thickness' }).inputValue(), '5');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Control+2');
  await settled(page);
  assert.equal(await here(), 'Cut');
  await done(page);
});

test('the number keys can be switched off, and stay so', async () => {
  const page = await start(DESKTOP);
  const here = () => page.locator('nav [aria-current="page"]').textContent();
  await page.keyboard.press('5');
  await settled(page);
  await control(page, 'button', 'Screen').click({ force: true });
  await settled(page);
  await page.getByRole('switch', { name: 'Number keys' }).press('Enter');
  await settled(page);
  for (let again = 0; again < 2; again++) {
    await page.keyboard.press('1');
    await settled(page);
    assert.equal(await here(), 'Shop');
    assert.equal(await page.locator('nav [aria-keyshortcuts]').count(), 0);
    await page.reload();
    await settled(page);
  }
  await done(page);
});

test('a mouse opens no keypad for fingers', async () => {
  const page = await start(DESKTOP);
  const [x, y] = await middle(page, 'textbox', 'Thickness');
  await page.mouse.click(x, y);
  await settled(page);
  assert.equal(await focused(page), 'stock/thickness');
  assert.equal(await page.locator('[data-id="keypad"]').count(), 0);
  await page.keyboard.type('10');
  await page.keyboard.press('Enter');
  await settled(page);
  assert.match(await control(page, 'button', 'Thickness').textContent(), /10 mm/);
  await done(page);
});

test('the settings are on the clipboard after one click', async () => {
  const page = await start(DESKTOP, { permissions: ['clipboard-read', 'clipboard-write'] });
  await control(page, 'button', 'Copy settings as text').dispatchEvent('click');
  await settled(page);
  const text = await page.evaluate(() => navigator.clipboard.readText());
  assert.match(text, /^Mild steel, 6 mm, 45 A\nFeed: \d+ mm\/min/);
  await done(page);
});
