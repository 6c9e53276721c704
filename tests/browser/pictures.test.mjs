// Pictures that people look at and take hold of: from the page's root, by finger and by mouse.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { axe, DESKTOP, PHONE, settled, until } from './harness.mjs';
import { control, done, setUp, start, touch } from './person.mjs';

setUp();

const text = (page, id) => page.locator(`[data-id="${id}"]`).textContent();
const length = (page) => page.getByRole('textbox', { name: 'Length', exact: true }).inputValue();
const middle = async (page, id) => {
  const box = await page.locator(`[data-id="${id}"]`).boundingBox();
  return [box.x + box.width / 2, box.y + box.height / 2];
};

test('a finger takes the end of a size along, and one touch takes that back', async () => {
  const page = await start(PHONE);
  await touch(page, 'button', 'Part');
  await touch(page, 'button', 'Shape and sizes');
  await touch(page, 'radio', 'Rectangle');
  const before = await length(page);
  const [x, y] = await middle(page, 'shape/grip/length_mm');
  const client = await page.context().newCDPSession(page);
  const finger = (type, at) => client.send('Input.dispatchTouchEvent', { type, touchPoints: at === undefined ? [] : [{ x: at, y }] });
  await finger('touchStart', x);
  for (let i = 1; i <= 6; i++) {
    await finger('touchMove', x + 5 * i);
    await page.waitForTimeout(30);
  }
  await finger('touchEnd');
  await settled(page);
  const after = await length(page);
  assert.ok(parseFloat(after) > parseFloat(before) + 5, `${before} became ${after}`);
  assert.equal((parseFloat(after) * 2) % 1, 0, 'by steps');
  assert.match(await text(page, 'change/what'), new RegExp(`^Length ${parseFloat(before)} → ${after}`));
  assert.deepEqual(await axe(page), []);
  await touch(page, 'button', 'Undo');
  assert.equal(await length(page), before);
  await done(page);
});

test('the mouse does the same, and a click on the end types the size', async () => {
  const page = await start(DESKTOP);
  page.touching = false;
  await touch(page, 'button', 'Part');
  await touch(page, 'radio', 'Rectangle');
  const before = await length(page);
  const [x, y] = await middle(page, 'shape/grip/length_mm');
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x - 40, y, { steps: 8 });
  await page.mouse.up();
  await settled(page);
  assert.ok(parseFloat(await length(page)) < parseFloat(before) - 5, `${before} became ${await length(page)}`);
  await page.mouse.click(...(await middle(page, 'shape/grip/length_mm')));
  await until(() => page.evaluate(() => document.activeElement.closest('[data-id]')?.dataset.id === 'field/job.part.length_mm'), 'the field to be open');
  await done(page);
});

test('the question mark beside a figure: two lines and a drawing, then the formula and where it is from', async () => {
  const page = await start(PHONE);
  await touch(page, 'button', 'Pierce delay');
  await page.getByText('Touch off').first().waitFor(); // the pierce, step by step
  await touch(page, 'button', 'What is this? Pierce delay');
  await page.getByText('How long the torch waits before it moves.', { exact: true }).first().waitFor();
  assert.equal(await page.locator('[data-id="help/drawing"]').count(), 1);
  assert.equal(await page.locator('[data-id="help/formula"]').count(), 0);
  await touch(page, 'button', 'Formula and source');
  assert.match(await text(page, 'help/formula'), /time to melt the hole/);
  assert.match(await text(page, 'help/from'), /rules of thumb/);
  assert.equal(await control(page, 'button', 'Formula and source').getAttribute('aria-expanded'), 'true');
  assert.deepEqual(await axe(page), []);
  await done(page);
});

test('the chart covers the whole phone, every plate in view, and says what its marks mean when asked', async () => {
  const page = await start(PHONE);
  await page.evaluate(() => { location.hash = '#/cut/chart'; });
  await settled(page);
  const heads = page.locator('[data-id^="chart/row/"][data-id$="/head"]');
  const boxes = await Promise.all((await heads.all()).map((head) => head.boundingBox()));
  assert.ok(boxes.length >= 12, `${boxes.length} plates`);
  assert.ok(boxes.every((box) => box.y >= 0 && box.y + box.height <= 740.5), JSON.stringify(boxes));
  await touch(page, 'button', '?');
  assert.ok((await page.locator('[data-id="chart/key"]').boundingBox()).height > 15);
  await touch(page, 'button', 'Close');
  await control(page, 'button', 'Feed').waitFor();
  await done(page);
});
