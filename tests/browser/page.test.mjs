// The mirror and its input, against a stand-in for the app: elements, focus, typing, taps. What the app makes of them is app.test.mjs.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { done, fake, setUp } from './fake.mjs';
import { all, change } from './fixtures/records.mjs';
import { PHONE } from './harness.mjs';

setUp('fake-page');

test('every role is a real element, found by role and name', async () => {
  const page = await fake();
  await page.publish(all);
  const one = (role, name, more = {}) => page.getByRole(role, { name, exact: true, ...more });
  for (const [role, name, more] of [
    ['region', 'Job'], ['button', 'Metal: Mild steel', { expanded: false }], ['main', 'Cut'], ['heading', 'Settings', { level: 1 }], ['group', 'Feed'],
    ['img', 'Torch over plate'], ['list', 'Verdicts'], ['button', 'Plate is within reach'], ['table', 'Feed by thickness'],
    ['columnheader', '45 A'], ['rowheader', '6 mm'], ['cell', '1110'], ['radiogroup', 'Units'], ['radio', 'mm', { checked: true }],
    ['radio', 'inch', { checked: false }], ['switch', 'Glove mode', { checked: true }], ['button', 'Print', { disabled: true }],
    ['textbox', 'Thickness'], ['navigation', 'Places'], ['button', 'Cut'],
  ]) {
    assert.equal(await one(role, name, more).count(), 1, `${role} "${name}"`);
  }
  assert.equal(await one('group', 'Feed').textContent(), '1620 mm/min, 1190 to 2210');
  assert.equal(await page.getByRole('status').textContent(), 'Feed 1620 mm/min');
  assert.equal(await page.getByRole('alert').textContent(), 'Kept nowhere');
  assert.equal(await one('button', 'Cut').getAttribute('aria-current'), 'page');
  assert.equal(await one('textbox', 'Thickness').getAttribute('aria-description'), '0.236 in');
  assert.equal(await page.getByRole('list').locator('> li').count(), 2, 'a button in a list stands in an item of its own');
  assert.equal(await page.locator('table > tr > th').count(), 3);
  await done(page);
});

test('places are those of the canvas, hidden from sight and open to fingers', async () => {
  const page = await fake();
  await page.publish(all);
  const box = await page.getByRole('button', { name: 'Shop' }).boundingBox();
  assert.deepEqual(box, { x: 180, y: 677, width: 180, height: 63 });
  const seen = await page.evaluate(() => ({
    hit: document.elementFromPoint(200, 700).id,
    opacity: getComputedStyle(document.querySelector('[data-id="place/shop"]')).opacity,
    text: getComputedStyle(document.querySelector('[data-id="p"] span')).opacity,
  }));
  assert.deepEqual(seen, { hit: 'canvas', opacity: '0', text: '0' });
  await done(page);
});

test('an update keeps elements, focus and order', async () => {
  const page = await fake();
  await page.publish(all);
  await page.evaluate(() => {
    window.kept = document.querySelector('[data-id="glove"]');
    window.kept.focus();
  });
  const moved = all.filter((r) => r.id !== 'pic');
  moved.splice(2, 0, { id: 'new', role: 'text', name: 'New on top' });
  await page.publish(moved.map((r) => (r.id === 'glove' ? { ...r, state: '' } : r)));
  const order = await page.evaluate(() => [...document.querySelectorAll('#mirror [data-id]')].map((el) => el.dataset.id));
  assert.deepEqual(order, moved.map((r) => r.id));
  assert.ok(await page.evaluate(() => document.activeElement === window.kept && window.kept.getAttribute('aria-checked') === 'false'));
  await done(page);
});

test('focus stays on what is hung into a part made anew', async () => {
  const page = await fake();
  await page.publish(all);
  await page.locator('[data-id="glove"]').focus();
  await page.publish([{ id: 'tune', role: 'main', name: 'Tune' }, ...all]); // so that the first main part is a column beside it
  assert.equal(await page.locator('[data-id="cut"]').evaluate((el) => el.tagName), 'SECTION');
  assert.equal(await page.evaluate(() => document.activeElement.dataset.id), 'glove');
  const order = await page.evaluate(() => [...document.querySelectorAll('#mirror [data-id]')].map((el) => el.dataset.id));
  assert.deepEqual(order, ['tune', ...all.map((r) => r.id)]);
  await done(page);
});

test('hostile text stays text', async () => {
  const page = await fake();
  const text = '<img src=x onerror="window.bad=1"><b>bold</b>';
  await page.publish(change('p', { name: text, about: text }));
  assert.equal(await page.locator('[data-id="p"]').textContent(), text);
  assert.equal(await page.locator('#mirror img, [data-id="p"] :not(span)').count(), 0);
  await done(page);
});

test('a status is written only when its text changes', async () => {
  const page = await fake();
  await page.publish(all);
  await page.evaluate(() => {
    window.writes = 0;
    new MutationObserver((m) => { window.writes += m.length; })
      .observe(document.querySelector('[role=status]'), { childList: true, characterData: true, subtree: true });
  });
  await page.publish(change('cut/feed', { value: '1700 mm/min' }));
  assert.equal(await page.evaluate(() => window.writes), 0);
  await page.publish(change('live', { name: 'Feed 1700 mm/min' }));
  assert.ok(await page.evaluate(() => window.writes > 0));
  await done(page);
});

test('buttons answer to Enter, Space and a click; a disabled one does not', async () => {
  const page = await fake();
  await page.publish(all);
  await page.getByRole('button', { name: 'Shop' }).focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Space');
  await page.getByRole('switch').dispatchEvent('click');
  await page.getByRole('button', { name: 'Print' }).dispatchEvent('click');
  assert.deepEqual((await page.calls('activate')).map((c) => c[1]), ['place/shop', 'place/shop', 'glove']);
  await done(page);
});

test('Tab goes through the controls in reading order, a choice is one stop, arrows move in it', async () => {
  const page = await fake();
  await page.publish(all);
  const stops = [];
  for (let i = 0; i < 9; i++) {
    await page.keyboard.press('Tab');
    stops.push(await page.evaluate(() => document.activeElement.closest('[data-id]')?.dataset.id));
  }
  assert.deepEqual(stops, ['metal', 'reach', 'u/mm', 'glove', 'off', 'field', 'place/cut', 'place/shop', undefined]);
  assert.ok((await page.calls('focus')).some((c) => c[1] === 'glove'), 'the app is told where the ring belongs');
  await page.locator('[data-id="u/mm"]').focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Space');
  assert.deepEqual((await page.calls('activate')).map((c) => c[1]), ['u/both']);
  await done(page);
});

test('typing goes in as it is typed, Enter is final, an untouched field is left alone', async () => {
  const page = await fake();
  await page.publish(all);
  const field = page.getByRole('textbox');
  await field.focus();
  await page.keyboard.press('Enter');
  assert.deepEqual(await page.calls('activate'), [['activate', 'field']]);
  await page.publish(change('field', { state: 'mode-decimal focused' }));
  await page.forget();
  await page.keyboard.press('Enter');
  assert.deepEqual((await page.calls()).filter((c) => c[0] !== 'focus' && c[0] !== 'notice'), [['back']], 'nothing was typed: nothing is entered');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('3/');
  await page.publish(change('field', { value: '3/', state: 'mode-decimal focused' }));
  await page.keyboard.type('16');
  await page.keyboard.press('Enter');
  assert.deepEqual((await page.calls('enter')).map((c) => c.slice(1)),
    [['field', '3', 0], ['field', '3/', 0], ['field', '3/1', 0], ['field', '3/16', 0], ['field', '3/16', 1]]);
  await done(page);
});

test('leaving a changed field enters it; going to the keypad does not', async () => {
  const page = await fake();
  const keypad = [{ id: 'keypad', role: 'group', name: 'Keypad', place: [0, 0, 0, 0] }, { id: 'key/7', parent: 'keypad', role: 'button', name: '7' }];
  await page.publish([...change('field', { state: 'mode-decimal focused' }), ...keypad]);
  assert.equal(await page.evaluate(() => document.activeElement.tagName), 'INPUT', 'the app asked for focus there');
  await page.keyboard.type('4');
  await page.locator('[data-id="key/7"]').focus();
  assert.deepEqual((await page.calls('enter')).map((c) => c[3]), [0]);
  await page.getByRole('textbox').focus();
  await page.publish([...change('field', { value: '47', state: 'mode-decimal focused' }), ...keypad]);
  assert.equal(await page.getByRole('textbox').inputValue(), '47');
  assert.deepEqual(await page.evaluate(() => [document.activeElement.selectionStart, document.activeElement.selectionEnd]), [2, 2]);
  await page.getByRole('button', { name: 'Shop' }).focus();
  assert.deepEqual((await page.calls('enter')).at(-1), ['enter', 'field', '47', 2]);
  await done(page);
});

test('a text being composed is not overwritten', async () => {
  const page = await fake();
  await page.publish(change('field', { state: 'mode-text focused', value: '' }));
  const client = await page.context().newCDPSession(page);
  await client.send('Input.imeSetComposition', { text: 'zwö', selectionStart: 3, selectionEnd: 3 });
  await page.publish(change('field', { state: 'mode-text focused', value: 'z' }));
  assert.equal(await page.getByRole('textbox').inputValue(), 'zwö');
  await client.send('Input.insertText', { text: 'zwölf' });
  assert.deepEqual((await page.calls('enter')).at(-1).slice(2), ['zwölf', 0]);
  await done(page);
});

test('a tap on a field of the canvas puts the real input under the finger', async () => {
  const page = await fake(PHONE);
  await page.publish(all);
  await page.touchscreen.tap(100, 520);
  assert.ok(await page.evaluate(() => document.activeElement.matches('[data-id="field"] input')));
  assert.equal(await page.locator('input.live').count(), 0, 'not shown before the app edits it');
  await page.publish(change('field', { state: 'mode-keypad focused', place: [180, 500, 160, 36] }));
  const live = page.locator('input.live');
  assert.deepEqual(await live.boundingBox(), { x: 180, y: 500, width: 160, height: 36 });
  assert.equal(await live.getAttribute('inputmode'), 'none');
  const look = await live.evaluate((el) => ({ opacity: getComputedStyle(el).opacity, size: parseFloat(getComputedStyle(el).fontSize),
    chosen: el.selectionEnd - el.selectionStart, top: document.elementFromPoint(200, 510) === el }));
  assert.ok(look.opacity === '1' && look.size >= 16 && look.chosen === 4 && look.top, JSON.stringify(look));
  await page.touchscreen.tap(50, 300);
  assert.equal(await live.count(), 1, 'a press elsewhere on the canvas takes no focus: the keypad is there');
  await page.publish(all);
  assert.equal(await page.evaluate(() => document.activeElement.tagName), 'BODY', 'the app ended it: the keyboard goes');
  await done(page);
});

test('a tap does not reach a field that something else covers, or that lies outside its sheet', async () => {
  const page = await fake(PHONE);
  await page.publish([...all, { id: 'over', role: 'button', name: 'Over', place: [0, 480, 360, 80] }]);
  await page.touchscreen.tap(100, 520);
  assert.equal(await page.evaluate(() => document.activeElement.tagName), 'BODY');
  await page.publish(change('field', { place: [20, 700, 200, 36] }).map((r) => (r.id.startsWith('place') ? { ...r, place: [0, 0, 1, 1] } : r)));
  await page.touchscreen.tap(100, 710);
  assert.equal(await page.evaluate(() => document.activeElement.tagName), 'BODY');
  await done(page);
});

test('a sheet takes focus and gives it back; a modal one shuts the rest', async () => {
  const page = await fake();
  await page.publish(all);
  await page.getByRole('button', { name: 'Metal' }).focus();
  const sheet = (state) => [...all, { id: 'stock', role: 'dialog', name: 'Stock', state }, { id: 'stock/title', parent: 'stock', role: 'heading', name: 'Stock' },
    { id: 'stock/close', parent: 'stock', role: 'button', name: 'Close' }];
  await page.publish(sheet(''));
  assert.equal(await page.evaluate(() => document.activeElement.dataset.id), 'stock');
  assert.equal(await page.getByRole('dialog', { name: 'Stock' }).getAttribute('aria-modal'), null);
  await page.publish(all);
  assert.equal(await page.evaluate(() => document.activeElement.dataset.id), 'metal');
  await page.publish(sheet('modal'));
  assert.equal(await page.getByRole('dialog').getAttribute('aria-modal'), 'true');
  const reach = () => page.evaluate(() => [...document.querySelectorAll('#mirror :is(button, input)')].filter((el) => !el.closest('[inert]')).map((el) => el.textContent));
  assert.deepEqual(await reach(), ['Close'], 'only the sheet is in reach');
  await page.keyboard.press('Escape');
  assert.equal((await page.calls('back')).length, 1);
  await page.publish(all);
  assert.equal((await reach()).length, 10);
  await done(page);
});
