// Fields and what is done with them, as a person has it in hand: what was changed comes back, what was refused stays in sight.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { settled } from './harness.mjs';
import { control, done, reads, setUp, shared, start, touch } from './person.mjs';

setUp();

/** Scroll until this node is in sight, then touch the canvas where the mirror says that it is. */
async function tap(page, id) {
  const middle = async () => {
    const box = await page.locator(`[data-id="${id}"]`).boundingBox();
    return [box.x + box.width / 2, box.y + box.height / 2];
  };
  for (let i = 0; i < 12 && (await middle())[1] > 540; i++) {
    await page.mouse.move(180, 300);
    await page.mouse.wheel(0, 240);
    await settled(page);
  }
  await page.touchscreen.tap(...await middle());
  await settled(page);
}

test('a row taken out of the log by one touch is back by one touch, and the bar is spoken', async () => {
  const page = await start();
  await touch(page, 'button', 'Tune');
  await tap(page, 'tune/log');
  const rows = () => page.locator('[data-id^="log/"][data-id$="/out"]').count();
  const before = await rows();
  await tap(page, `log/${before - 1}/out`);
  assert.equal(await rows(), before - 1);
  assert.match(await page.locator('[data-id="live"]').textContent(), /^Cut deleted from the log\./);
  await touch(page, 'button', 'Undo');
  assert.equal(await rows(), before);
  await touch(page, 'button', 'Redo');
  assert.equal(await rows(), before - 1);
  await touch(page, 'button', 'Undo');
  await page.reload();
  await settled(page);
  assert.equal(await rows(), before, 'what was undone is what is kept');
  await done(page);
});

test('a chart cell touched by mistake is undone where it was touched', async () => {
  const page = await start();
  const thickness = await reads(page, 'Thickness');
  await tap(page, 'cut/chart');
  await tap(page, 'chart/2/1/use');
  assert.notEqual(await reads(page, 'Thickness'), thickness);
  await touch(page, 'button', 'Undo');
  assert.equal(await reads(page, 'Thickness'), thickness);
  assert.equal(await control(page, 'button', 'Redo').count(), 1);
  await done(page);
});
