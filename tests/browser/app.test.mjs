// The built page in a browser: a person at the table, with a finger, with a keyboard, with a screen reader.
// Controls are found by role and name in the mirror; a finger then touches the canvas at the place that the mirror gives.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { axe, DESKTOP, PHONE, settled, until } from './harness.mjs';
import { control, done, feed, focused, reads, setUp, shared, start, tabTo, thicknessIs, touch } from './person.mjs';

setUp();

test('the first answer: mild steel, 6 mm, 45 A, with a band and what it rests on', async () => {
  for (const device of [PHONE, DESKTOP]) {
    const page = await start(device);
    const value = parseInt(await feed(page), 10);
    assert.ok(value >= 1300 && value <= 2100, `feed ${value}`);
    const [, low, high] = /(\d+) to (\d+)/.exec(await control(page, 'button', 'Feed').getAttribute('aria-description'));
    assert.ok(low < value && value < high && low < 1700 && 1700 < high, `${low} to ${high} holds 1700`);
    for (const figure of ['Arc volts', 'Pierce height', 'Pierce delay', 'Kerf']) {
      assert.match(await reads(page, figure), /^[\d.]+ (V|mm|s)\b/, figure);
    }
    await done(page);
  }
});

test('a finger changes the stock: 3/16 on the keypad', async () => {
  const page = await start(PHONE);
  const before = await feed(page);
  await touch(page, 'button', 'Thickness');
  await until(async () => (await focused(page)) === 'stock/thickness', 'the field to be ready');
  for (const key of ['3', 'over', '1', '6', 'inch']) {
    const box = await page.locator('[data-id="keypad"]').getByRole('button', { name: key, exact: true }).boundingBox();
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
    await settled(page);
  }
  assert.equal(await page.getByRole('textbox', { name: 'Thickness' }).inputValue(), '3/16"');
  await touch(page, 'button', 'Done');
  await touch(page, 'button', 'Close');
  await thicknessIs(page, /^4\.76 mm|3\/16/, before);
  await done(page);
});

test('a finger picks a plate from the usual sizes, another metal, and closes the sheet', async () => {
  const page = await start(PHONE);
  const before = await feed(page);
  await touch(page, 'button', 'Thickness');
  await touch(page, 'radio', '10');
  await touch(page, 'button', 'Close');
  await touch(page, 'button', 'Metal');
  await touch(page, 'radio', 'Stainless');
  await touch(page, 'button', 'Close');
  assert.equal(await page.getByRole('dialog').count(), 0);
  await thicknessIs(page, /^10 mm/, before);
  assert.equal(await reads(page, 'Metal'), 'Stainless');
  await done(page);
});

test('a keyboard alone changes the stock', async () => {
  const page = await start(DESKTOP);
  const before = await feed(page);
  await tabTo(page, 'stock/thickness');
  await page.keyboard.type('3/16');
  assert.equal(await page.getByRole('textbox', { name: 'Thickness' }).inputValue(), '3/16');
  await page.keyboard.press('Enter');
  await thicknessIs(page, /^4\.76 mm|3\/16/, before);
  await tabTo(page, 'title/units');
  await page.keyboard.press('Space');
  await until(async () => /^3\/16 in/.test(await reads(page, 'Thickness')), 'inches');
  await done(page);
});

test('paste, comma and a wrong entry in the field', async () => {
  const page = await start(DESKTOP);
  const field = page.getByRole('textbox', { name: 'Thickness' });
  await field.focus();
  await page.keyboard.press('Control+A');
  await page.keyboard.insertText('6,5');
  await page.keyboard.press('Enter');
  await until(async () => /^6\.5 mm/.test(await reads(page, 'Thickness')), '6,5 read as 6.5 mm');
  await field.focus();
  await page.keyboard.press('Control+A');
  await page.keyboard.insertText('1e3');
  await settled(page);
  assert.equal(await field.getAttribute('aria-invalid'), 'true');
  assert.ok((await field.getAttribute('aria-description')).length > 5, 'and says why');
  await page.keyboard.press('Escape');
  await settled(page);
  assert.match(await reads(page, 'Thickness'), /^6\.5 mm/, 'what cannot be read changes nothing');
  assert.equal(await field.getAttribute('aria-invalid'), null);
  await done(page);
});

test('a figure that need not be given can be taken back', async () => {
  const page = await start(DESKTOP, { url: shared.host.url + '#/shop/height' });
  const field = page.getByRole('textbox', { name: 'Volts per height' });
  const type = async (text) => {
    await field.focus();
    await page.keyboard.press('Control+A');
    await page.keyboard.press('Delete');
    await page.keyboard.insertText(text);
    await page.keyboard.press('Enter');
    await settled(page);
  };
  assert.equal(await field.inputValue(), 'not set');
  await type('4');
  await until(async () => /^4\b/.test(await field.inputValue()), 'the figure to be taken');
  await type('');
  await until(async () => (await field.inputValue()) === 'not set', 'the figure to be taken back');
  await done(page);
});

test('the mirror alone changes the stock', async () => {
  const page = await start(PHONE);
  const before = await feed(page);
  await control(page, 'button', 'Metal').dispatchEvent('click'); // as a screen reader presses
  await page.getByRole('dialog', { name: 'Stock' }).waitFor();
  const field = page.getByRole('textbox', { name: 'Thickness' });
  await field.focus();
  await field.evaluate((el) => {
    el.value = '3/16';
    el.dispatchEvent(new InputEvent('input', { bubbles: true }));
  });
  await field.press('Enter');
  await until(async () => /^4\.76 mm|3\/16/.test(await reads(page, 'Thickness')), '3/16');
  await control(page, 'radio', 'Stainless').dispatchEvent('click');
  await until(async () => (await reads(page, 'Metal')) === 'Stainless', 'the metal');
  await control(page, 'button', 'Close').dispatchEvent('click');
  await until(async () => (await page.getByRole('dialog').count()) === 0, 'the sheet to close');
  assert.notEqual(await feed(page), before);
  await done(page);
});

test('plain mode: the whole job without a canvas', async () => {
  const page = await start(PHONE, { url: shared.host.url + '?plain=1' });
  assert.ok(await page.evaluate(() => document.documentElement.classList.contains('plain')));
  assert.equal(await page.locator('canvas').isVisible(), false);
  const before = await feed(page);
  await control(page, 'button', 'Metal').tap();
  const field = page.getByRole('textbox', { name: 'Thickness' });
  await field.fill('1/4');
  await field.press('Enter');
  await until(async () => /^6\.35 mm|1\/4/.test(await reads(page, 'Thickness')), '1/4');
  await control(page, 'button', 'Close').tap();
  await until(async () => (await feed(page)) !== before, 'another feed');
  assert.deepEqual(await axe(page), []);
  await done(page);
});

test('nothing that a finger must hit is under 48 px', async () => {
  const page = await start(PHONE);
  for (const open of [null, 'Thickness', 'Metal']) {
    if (open) {
      await touch(page, 'button', open);
    }
    const small = await page.evaluate(() => [...document.querySelectorAll('#mirror :is(button, input)')].map((el) => {
      const { width, height } = el.getBoundingClientRect();
      return [el.closest('[data-id]').dataset.id, width, height];
    }).filter(([id, w, h]) => Math.min(w, h) < 47.5 && !document.querySelector(`[data-id="${id}"] .live`)));
    assert.deepEqual(small, [], open || 'Cut');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await settled(page);
  }
  await done(page);
});

test('Back closes the sheet, Escape too, and the address opens the same place again', async () => {
  const page = await start(PHONE);
  await touch(page, 'button', 'Metal');
  assert.equal(await page.evaluate(() => location.hash), '#/cut/stock');
  await page.goBack();
  await until(async () => (await page.getByRole('dialog').count()) === 0, 'the sheet to close');
  await touch(page, 'button', 'Shop');
  assert.equal(await page.evaluate(() => location.hash), '#/shop');
  await page.reload();
  await settled(page);
  assert.equal(await control(page, 'button', 'Shop').getAttribute('aria-current'), 'page');
  await page.goBack();
  await until(async () => (await control(page, 'button', 'Cut').getAttribute('aria-current')) === 'page', 'Cut');
  await touch(page, 'button', 'Metal');
  await page.keyboard.press('Escape');
  await until(async () => (await page.getByRole('dialog').count()) === 0, 'Escape to close the sheet');
  await done(page);
});

test('the chart prints as one clean page', async () => {
  const page = await start(DESKTOP);
  await page.evaluate(() => { window.print = () => { window.printed = (window.printed || 0) + 1; }; });
  await control(page, 'button', 'Print this chart').dispatchEvent('click');
  await until(() => page.evaluate(() => window.printed === 1), 'the print dialog');
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  const sheet = await page.evaluate(() => ({ rows: document.querySelectorAll('#paper tr').length, cells: [...document.querySelectorAll('#paper td')].filter((td) => /\d/.test(td.innerText)).length,
    words: document.querySelector('#paper').innerText, canvas: getComputedStyle(document.querySelector('canvas')).display }));
  assert.ok(sheet.rows > 8 && sheet.cells > 30, JSON.stringify(sheet));
  assert.match(sheet.words, /feed in mm\/min/);
  assert.doesNotMatch(sheet.words, / at \d+ A:/, 'figures only, no controls');
  assert.equal(sheet.canvas, 'none');
  const pdf = (await page.pdf({ format: 'A4' })).toString('latin1');
  assert.equal(pdf.match(/\/Type\s*\/Page\b/g).length, 1);
  await done(page);
});

test('axe finds no fault in any screen, hidden or plain', async () => {
  for (const device of [PHONE, DESKTOP]) {
    for (const at of ['', '#/cut/stock', '#/cut/chart', '#/shop', '#/cut/figure/feed']) {
      const page = await start(device, { url: shared.host.url + at });
      assert.deepEqual(await axe(page), [], at || 'start');
      await done(page);
    }
  }
});

test('settings of the system: a dark screen gives the night theme', async () => {
  const page = await start(PHONE, { colorScheme: 'dark' });
  assert.deepEqual(await page.evaluate(() => [document.documentElement.dataset.theme, document.querySelector('meta[name=theme-color]').content]), ['night', '#101418']);
  const corner = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  assert.equal(corner, 'rgb(16, 20, 24)');
  await done(page);
});

test('a drag scrolls and presses nothing; momentum carries on and comes to rest', async () => {
  const page = await start(PHONE);
  await touch(page, 'button', 'Metal');
  const top = async () => (await control(page, 'radio', 'Stainless').boundingBox()).y;
  const before = await top();
  const stock = await reads(page, 'Thickness');
  const client = await page.context().newCDPSession(page);
  const touchAt = (type, y) => client.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x: 100, y }] });
  const y = before + 20;
  await touchAt('touchStart', y);
  for (let d = 10; d <= 150; d += 10) {
    await touchAt('touchMove', y - d);
  }
  await touchAt('touchEnd', 0);
  await settled(page);
  assert.ok(before - (await top()) >= 130, `scrolled by ${before - (await top())}`);
  assert.equal(await reads(page, 'Thickness'), stock);
  const drawn = await page.evaluate(() => window.torchsideCounters.drawn);
  await page.waitForTimeout(500);
  assert.equal(await page.evaluate(() => window.torchsideCounters.drawn), drawn, 'at rest');
  await done(page);
});

test('the keyboard brings what it reaches into view', async () => {
  const page = await start(PHONE);
  await control(page, 'button', 'Metal').dispatchEvent('click');
  await page.getByRole('dialog').waitFor();
  await control(page, 'radio', 'On the table').focus();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Shift+Tab');
  await settled(page);
  const box = await control(page, 'radio', 'On the table').boundingBox();
  const bar = await page.getByRole('navigation').boundingBox();
  assert.ok(box.y > 100 && box.y + box.height <= bar.y + 1, JSON.stringify([box, bar]));
  await done(page);
});

test('the browser keeps its own keys and its zoom', async () => {
  const page = await start(DESKTOP);
  await page.mouse.click(700, 450);
  await page.evaluate(() => {
    window.eaten = [];
    for (const type of ['keydown', 'wheel']) {
      window.addEventListener(type, (e) => { if (e.defaultPrevented) window.eaten.push(type + ' ' + (e.key || 'zoom')); });
    }
  });
  for (const key of ['F3', 'F6', 'F11', 'F12', 'Control+Equal', 'Control+Minus', 'Control+0', 'Alt+ArrowDown', 'Tab']) {
    await page.keyboard.press(key);
  }
  await page.keyboard.down('Control');
  await page.mouse.wheel(0, 5);
  await page.keyboard.up('Control');
  await page.waitForTimeout(200);
  assert.deepEqual(await page.evaluate(() => window.eaten), []);
  await done(page);
});
