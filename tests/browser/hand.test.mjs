// A thumb on a phone: it throws lists, opens sheets, touches what is drawn; upright and lying down.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { PHONE, settled, until } from './harness.mjs';
import { control, done, focused, setUp, start, touch } from './person.mjs';

setUp();

const LYING = { ...PHONE, viewport: { width: 740, height: 360 } };
const topOf = async (page, id) => (await page.locator(`[data-id="${id}"]`).boundingBox()).y;

/** A thumb that goes up by `step` px every 16 ms and leaves `rest` ms after. The times are the finger's own: a slow machine changes nothing. */
async function swipe(page, { from, step, moves, rest }) {
  const client = await page.context().newCDPSession(page);
  const began = Date.now() / 1000;
  const at = (type, y, ms) => client.send('Input.dispatchTouchEvent', { type, timestamp: began + ms / 1000, touchPoints: type === 'touchEnd' ? [] : [{ x: 100, y }] });
  await at('touchStart', from, 0);
  for (let i = 1; i <= moves; i++) {
    await at('touchMove', from - step * i, 16 * i);
  }
  await at('touchEnd', 0, 16 * moves + rest);
  await until(async () => { // until it rests
    const before = await page.evaluate(() => window.torchsideCounters.drawn);
    await page.waitForTimeout(400);
    return before === (await page.evaluate(() => window.torchsideCounters.drawn));
  }, 'the list to rest');
}

test('a list goes on when the thumb has thrown it, and stays when the thumb held it', async () => {
  const page = await start(PHONE);
  await touch(page, 'button', 'Metal');
  const before = await topOf(page, 'stock/metal/title');
  await swipe(page, { from: 600, step: 8, moves: 8, rest: 12 });
  const thrown = before - (await topOf(page, 'stock/metal/title'));
  // 64 px less the slop, and then 0.5 px/ms times 325 ms.
  assert.ok(thrown > 56 + 110 && thrown < 56 + 210, `thrown by ${thrown}`);
  await swipe(page, { from: 600, step: 8, moves: 8, rest: 300 });
  const held = before - thrown - (await topOf(page, 'stock/metal/title'));
  assert.ok(held > 50 && held < 66, `held, it went ${held}`);
  await touch(page, 'button', 'Close');
  await touch(page, 'button', 'Metal');
  assert.equal(await topOf(page, 'stock/metal/title'), before, 'opened again, the sheet begins at its top');
  await done(page);
});

test('a touch on the drawn breaker opens its field, and the verdict answers while it is typed', async () => {
  const page = await start(PHONE);
  await swipe(page, { from: 500, step: 20, moves: 12, rest: 300 }); // past what is worse
  await touch(page, 'button', await page.getByRole('button', { name: /^Circuit / }).first().textContent());
  await until(() => control(page, 'textbox', 'Breaker').isVisible(), 'the circuit');
  const before = await page.locator('[data-id="circuit/summary"]').textContent();
  await swipe(page, { from: 500, step: 20, moves: 12, rest: 300 });
  await touch(page, 'button', 'Breaker');
  await until(async () => (await focused(page)) === 'field/shop.circuit.breaker_a', 'the field of the breaker');
  for (const key of ['2', '0']) {
    const box = await page.locator('[data-id="keypad"]').getByRole('button', { name: key, exact: true }).boundingBox();
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
    await settled(page);
  }
  const summary = page.locator('[data-id="circuit/summary"]');
  assert.notEqual(await summary.textContent(), before);
  const [says, keys] = [await summary.boundingBox(), await page.locator('[data-id="keypad"]').boundingBox()];
  assert.ok(says.y > 0 && says.y + says.height < keys.y, 'the verdict stands above the keys');
  await done(page);
});

test('a phone lying down: field and keys share the height', async () => {
  const page = await start(LYING);
  await touch(page, 'button', 'Thickness');
  await until(async () => (await focused(page)) === 'stock/thickness', 'the field to be ready');
  for (const key of ['9', '9', '9']) {
    const box = await page.locator('[data-id="keypad"]').getByRole('button', { name: key, exact: true }).boundingBox();
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
    await settled(page);
  }
  const field = await page.getByRole('textbox', { name: 'Thickness' }).boundingBox();
  const keys = await page.locator('[data-id="keypad"]').boundingBox();
  assert.ok(field.y >= 0 && field.y + field.height + 18 <= keys.y, JSON.stringify([field, keys]));
  assert.ok(keys.y + keys.height <= 360.5, JSON.stringify(keys));
  await done(page);
});
