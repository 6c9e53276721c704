// The page by itself, against a stand-in for the app: the mirror's elements, input, history, storage, print. What the app makes of
// them is app.test.mjs.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { axe, clean, DESKTOP, launch, open, pack, PHONE, serve, until } from './harness.mjs';

let browser;
let host;
before(async () => {
  host = await serve(pack('fake', { fake: true }));
  browser = await launch();
});
after(async () => {
  await browser?.close();
  await host?.stop();
});

async function fake(device = DESKTOP, options = {}) {
  const page = await open(browser, device, options);
  await page.goto(host.url + (options.query || ''));
  await page.waitForFunction(() => window.fakePublish);
  page.publish = async (records) => {
    await page.evaluate((r) => window.fakePublish(r), records);
    await page.evaluate(() => new Promise((done) => { requestAnimationFrame(() => requestAnimationFrame(done)); }));
  };
  page.calls = (name) => page.evaluate((n) => window.fakeCalls.filter((c) => !n || c[0] === n), name);
  page.forget = () => page.evaluate(() => { window.fakeCalls.length = 0; });
  return page;
}

const done = async (page, but) => {
  await clean(page, but);
  await page.context().close();
};

const all = [
  { id: 'title', role: 'group', name: 'Job', place: [0, 0, 360, 58] },
  { id: 'metal', parent: 'title', role: 'button', name: 'Metal', value: 'Mild steel', state: 'collapsed', about: 'Change the stock', place: [0, 0, 120, 58] },
  { id: 'cut', role: 'main', name: 'Cut', place: [0, 58, 360, 600] },
  { id: 'h', parent: 'cut', role: 'heading', name: 'Settings', state: 'level1' },
  { id: 'cut/feed', parent: 'cut', role: 'figure', name: 'Feed', value: '1620 mm/min, 1190 to 2210', about: 'from physics' },
  { id: 'p', parent: 'cut', role: 'text', name: 'Nearest sizes' },
  { id: 'pic', parent: 'cut', role: 'img', name: 'Torch over plate' },
  { id: 'verdicts', parent: 'cut', role: 'list', name: 'Verdicts' },
  { id: 'reach', parent: 'verdicts', role: 'button', name: 'Plate is within reach' },
  { id: 'note', parent: 'verdicts', role: 'listitem', name: 'Shade 8' },
  { id: 't', parent: 'cut', role: 'table', name: 'Feed by thickness', state: 'printable' },
  { id: 't/h', parent: 't', role: 'row' },
  { id: 't/h/1', parent: 't/h', role: 'columnheader', name: 'Plate' },
  { id: 't/h/2', parent: 't/h', role: 'columnheader', name: '45 A' },
  { id: 't/1', parent: 't', role: 'row' },
  { id: 't/1/0', parent: 't/1', role: 'rowheader', name: '6 mm' },
  { id: 't/1/1', parent: 't/1', role: 'cell', name: '1110', state: 'selected' },
  { id: 'units', parent: 'cut', role: 'group', name: 'Units' },
  { id: 'u/mm', parent: 'units', role: 'radio', name: 'mm', state: 'checked' },
  { id: 'u/in', parent: 'units', role: 'radio', name: 'inch' },
  { id: 'u/both', parent: 'units', role: 'radio', name: 'both' },
  { id: 'glove', parent: 'cut', role: 'switch', name: 'Glove mode', state: 'checked' },
  { id: 'off', parent: 'cut', role: 'button', name: 'Print', state: 'disabled' },
  { id: 'field', parent: 'cut', role: 'textbox', name: 'Thickness', value: '6 mm', state: 'mode-decimal', about: '0.236 in', place: [20, 500, 200, 36] },
  { id: 'live', role: 'status', name: 'Feed 1620 mm/min', state: 'live' },
  { id: 'warn', role: 'alert', name: 'Kept nowhere' },
  { id: 'places', role: 'navigation', name: 'Places', place: [0, 677, 360, 63] },
  { id: 'place/cut', parent: 'places', role: 'tab', name: 'Cut', state: 'current', place: [0, 677, 180, 63] },
  { id: 'place/shop', parent: 'places', role: 'tab', name: 'Shop', place: [180, 677, 180, 63] },
];
const change = (id, by) => all.map((r) => (r.id === id ? { ...r, ...by } : r));

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
  assert.deepEqual((await page.calls()).filter((c) => c[0] !== 'focus'), [['back']], 'nothing was typed: nothing is entered');
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
  assert.deepEqual((await page.calls('enter')).at(-1), ['enter', 'field', '47', 1]);
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

test('history is as deep as the app', async () => {
  const page = await fake();
  const place = (p) => page.evaluate((q) => Module.shell.place(q), p);
  const length = () => page.evaluate(() => history.length);
  const hash = () => page.evaluate(() => location.hash);
  await place('#/cut');
  const start = await length();
  await place('#/cut/stock');
  assert.equal(await length(), start + 1);
  await page.goBack();
  assert.equal((await page.calls('back')).length, 1, 'Back goes to the app');
  await place('#/cut');
  assert.equal(await hash(), '#/cut');
  for (let i = 0; i < 3; i++) { // opened and closed by its own button: no entries pile up
    await place('#/cut/stock');
    await place('#/cut');
    await until(async () => (await hash()) === '#/cut', 'the entry to go');
  }
  assert.equal(await length(), start + 1);
  await place('#/shop');
  await place('#/shop/machine');
  assert.equal(await length(), start + 2);
  await page.goBack();
  await place('#/shop');
  await page.goBack();
  await place('#/cut');
  assert.deepEqual([await hash(), (await page.calls('back')).length], ['#/cut', 3]);
  await page.evaluate(() => { location.hash = '#/shop'; });
  await until(async () => (await page.calls('notice')).some((c) => c[1] === 'route' && c[2] === '#/shop'), 'the typed address');
  await done(page);
});

test('Back that only left a field keeps the sheet and its entry', async () => {
  const page = await fake();
  await page.evaluate(() => { Module.shell.place('#/cut'); Module.shell.place('#/cut/stock'); });
  await page.goBack();
  await page.evaluate(() => Module.shell.requestFrame()); // the app stays where it is
  await until(async () => (await page.evaluate(() => location.hash)) === '#/cut/stock', 'the entry to be made again');
  assert.equal(await page.evaluate(() => history.state.below), 1);
  await done(page);
});

test('storage keeps, answers and never throws', async () => {
  const page = await fake();
  const kept = await page.evaluate(() => [Module.shell.load(0), Module.shell.save('one\u{1F525}', 0), Module.shell.save('two', 1), Module.shell.load(0), Module.shell.load(1)]);
  assert.deepEqual(kept, ['', 1, 1, 'one\u{1F525}', 'two']);
  const other = await page.context().newPage();
  await other.goto(host.url);
  await other.evaluate(() => Module.shell.save('three', 0));
  await until(async () => (await page.calls('notice')).some((c) => c[1] === 'other-tab'), 'word of the other tab');
  await done(page);
  const refused = await fake(DESKTOP, { init: () => { Storage.prototype.setItem = () => { throw new DOMException('no', 'QuotaExceededError'); }; } });
  assert.equal(await refused.evaluate(() => Module.shell.save('x', 0)), 0);
  assert.ok((await refused.calls('notice')).some((c) => c[1] === 'storage-refused'));
  await done(refused);
  const none = await fake(DESKTOP, { init: () => { Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError'); } }); } });
  assert.deepEqual(await none.evaluate(() => [Module.shell.save('x', 0), Module.shell.load(0)]), [0, '']);
  await done(none);
});

test('frames: one at a time, none while hidden, one timer', async () => {
  const page = await fake();
  await page.publish(all);
  const counts = () => page.evaluate(() => ({ ...window.torchsideCounters }));
  const before = await counts();
  await page.evaluate(() => { for (let i = 0; i < 5; i++) Module.shell.requestFrame(); });
  await until(async () => (await counts()).drawn === before.drawn + 1, 'the frame');
  assert.equal((await counts()).requested, before.requested + 1);
  await page.evaluate(() => { Module.shell.wake(30); Module.shell.wake(60); });
  await page.waitForTimeout(250);
  assert.equal((await counts()).drawn, before.drawn + 2);
  await page.evaluate(() => { Module.shell.wake(20); Module.shell.wake(-1); });
  await page.waitForTimeout(150);
  assert.equal((await counts()).drawn, before.drawn + 2);
  await page.evaluate(() => {
    Object.defineProperty(document, 'hidden', { configurable: true, get: () => true });
    Module.shell.requestFrame();
  });
  await page.waitForTimeout(100);
  assert.equal((await counts()).requested, before.requested + 2);
  await page.evaluate(() => {
    Object.defineProperty(document, 'hidden', { configurable: true, get: () => false });
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await until(async () => (await counts()).drawn === before.drawn + 3, 'the frame that was owed');
  await done(page);
});

test('print shows the marked table alone, on one page', async () => {
  const page = await fake();
  await page.publish(all);
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  const shown = await page.evaluate(() => ({ text: document.body.innerText.replace(/\s+/g, ' ').trim(),
    colour: getComputedStyle(document.querySelector('#paper td')).color, ids: document.querySelectorAll('#paper [id], #paper [style]').length }));
  assert.deepEqual(shown, { text: 'Plate 45 A 6 mm 1110', colour: 'rgb(0, 0, 0)', ids: 0 });
  const pdf = (await page.pdf({ format: 'A4' })).toString('latin1');
  assert.equal(pdf.match(/\/Type\s*\/Page\b/g).length, 1);
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  assert.equal(await page.locator('#paper *').count(), 0);
  await done(page);
});

test('theme, copy, download, a picked file', async () => {
  const page = await fake(DESKTOP, { permissions: ['clipboard-read', 'clipboard-write'] });
  await page.evaluate(() => Module.shell.theme('night', '#101418'));
  assert.deepEqual(await page.evaluate(() => [document.documentElement.dataset.theme, document.querySelector('meta[name=theme-color]').content,
    getComputedStyle(document.body).backgroundColor]), ['night', '#101418', 'rgb(16, 20, 24)']);
  await page.evaluate(() => Module.shell.copy('1620 mm/min'));
  await until(async () => (await page.evaluate(() => navigator.clipboard.readText())) === '1620 mm/min', 'the copy');
  const [got] = await Promise.all([page.waitForEvent('download'), page.evaluate(() => Module.shell.download('shop.json', 'application/json', '{"a":"ü"}'))]);
  assert.equal(got.suggestedFilename(), 'shop.json');
  const [picker] = await Promise.all([page.waitForEvent('filechooser'), page.evaluate(() => Module.shell.pickFile('.json'))]);
  await picker.setFiles({ name: 'in.json', mimeType: 'application/json', buffer: Buffer.from('{"torchside":1}') });
  await until(async () => (await page.calls('file')).length, 'the file');
  assert.deepEqual(await page.calls('file'), [['file', 'in.json', '{"torchside":1}']]);
  const facts = await page.evaluate(() => { const s = Module.shell; return [s.prefersDark(), s.reducedMotion(), s.touch(), s.density(), s.fragment(), s.share && typeof s.share('x')]; });
  assert.deepEqual(facts, [0, 0, 0, 1, '', 'number']);
  assert.match(await page.evaluate(() => Module.shell.version()), /^\d+\.\d+\.\d+-[0-9a-f]{8}$/);
  await done(page);
});

test('without WebGL and with ?plain=1 the mirror is an ordinary page; a lost context shows it until it is back', async () => {
  const page = await fake(PHONE, { query: '?plain=1' });
  await page.evaluate(() => Module.canvas.getContext('webgl')); // as SDL does
  await page.publish(all);
  assert.ok(await page.evaluate(() => document.documentElement.classList.contains('plain')));
  await page.getByRole('button', { name: 'Shop' }).tap();
  assert.deepEqual((await page.calls('activate')).at(-1), ['activate', 'place/shop']);
  const tall = await page.getByRole('button', { name: 'Metal' }).boundingBox();
  assert.ok(tall.height >= 48 && tall.width >= 48);
  await done(page);

  const lost = await fake(DESKTOP);
  await lost.evaluate(() => { window.context = Module.canvas.getContext('webgl'); });
  await lost.publish(all);
  assert.equal(await lost.evaluate(() => document.documentElement.classList.contains('plain')), false);
  await lost.evaluate(() => { window.loser = window.context.getExtension('WEBGL_lose_context'); window.loser.loseContext(); });
  await lost.waitForFunction(() => document.documentElement.classList.contains('plain'));
  await lost.evaluate(() => { window.old = true; window.loser.restoreContext(); });
  await lost.waitForFunction(() => !window.old && window.fakePublish);
  await done(lost, /CONTEXT_LOST|context lost/i);
});

test('what cannot be loaded is said in words', async () => {
  host.replace = Object.fromEntries(host.asked.filter((n) => n.endsWith('.wasm')).map((n) => [n, Buffer.from('no wasm')]));
  const page = await fake();
  assert.match(await page.getByRole('alert').textContent(), /could not be loaded: .*Load the page again/s);
  host.replace = {};
  await done(page);
});

test('the mirror, hidden and plain, has no fault that axe knows', async () => {
  for (const query of ['', '?plain=1']) {
    const page = await fake(DESKTOP, { query });
    await page.evaluate(() => Module.canvas.getContext('webgl'));
    await page.publish(all);
    const found = await axe(page);
    assert.deepEqual(found, [], query || 'hidden');
    await done(page);
  }
});
