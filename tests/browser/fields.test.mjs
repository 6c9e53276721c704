// Fields and what is done with them, as a person has it in hand: what was changed comes back, what was refused stays in sight.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { DESKTOP, settled } from './harness.mjs';
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
  await tap(page, 'cut/chart'); // on a phone it has the whole screen
  const chosen = () => page.locator('[data-id^="chart/"][aria-pressed="true"]').first().getAttribute('data-id');
  const before = await chosen();
  await tap(page, 'chart/2/1/use');
  assert.equal(await chosen(), 'chart/2/1/use');
  await touch(page, 'button', 'Undo');
  assert.equal(await chosen(), before);
  assert.equal(await control(page, 'button', 'Redo').count(), 1);
  await touch(page, 'button', 'Close');
  assert.equal(await reads(page, 'Thickness'), thickness);
  await done(page);
});

test('a refused tax left by Tab, by touch and by Close stays in its field, and the customer\'s sheet says so', async () => {
  const page = await start(DESKTOP);
  const tax = page.getByRole('textbox', { name: 'Tax' });
  const type = async (text) => {
    await tax.focus();
    await page.keyboard.press('Control+A');
    await page.keyboard.insertText(text);
    await settled(page);
  };
  const marked = async () => {
    assert.equal(await tax.inputValue(), '8%5');
    assert.equal(await tax.getAttribute('aria-invalid'), 'true');
    assert.match(await tax.getAttribute('aria-description'), /^Enter 0 to 50 %/);
  };
  await control(page, 'tab', 'Quote').or(control(page, 'button', 'Quote')).first().click({ force: true });
  await settled(page);
  await page.locator('[data-id="quote/open/terms"]').dispatchEvent('click');
  await settled(page);
  await type('8%5');
  await page.keyboard.press('Tab');
  await settled(page);
  await marked();
  await page.locator('[data-id="quote/open/send"]').dispatchEvent('click');
  await settled(page);
  assert.match(await page.locator('[data-id="drafts"]').textContent(), /Tax was not changed/);
  await page.getByRole('button', { name: 'Correct it' }).dispatchEvent('click');
  await settled(page);
  await marked();
  await page.reload();
  await settled(page);
  await marked();
  await tax.focus();
  await page.keyboard.press('Escape');
  await settled(page);
  assert.equal(await tax.getAttribute('aria-invalid'), null, 'Escape drops it');
  await type('8.25');
  await page.keyboard.press('Enter');
  await settled(page);
  assert.equal(await tax.inputValue(), '8.25 %');
  await done(page);
});

test('on the phone: 999 mm typed on the keypad and left by Close stays, marked, and one touch puts 6 mm back', async () => {
  const page = await start();
  await touch(page, 'button', 'Thickness');
  for (const key of ['9', '9', '9']) {
    await touch(page, 'button', key);
  }
  await touch(page, 'button', 'Close');
  assert.match(await reads(page, 'Thickness'), /^6 mm/, 'what stood before the typing stands');
  await tap(page, 'draft');
  const field = page.locator('[data-id="stock/thickness"] input');
  assert.equal(await field.inputValue(), '999');
  assert.equal(await field.getAttribute('aria-invalid'), 'true');
  assert.match(await field.getAttribute('aria-description'), /^Enter 0\.3 to 150 mm\.$/);
  await touch(page, 'button', 'Close');
  await tap(page, 'draft');
  await tap(page, 'stock/thickness/back');
  assert.equal(await field.inputValue(), '6 mm');
  assert.equal(await field.getAttribute('aria-invalid'), null);
  await done(page);
});
