// What the page does for the app besides the mirror: history, storage, frames, print, files, plain mode.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { done, fake, setUp, shared } from './fake.mjs';
import { keptRecords } from './kept_shop.mjs';
import { all } from './fixtures/records.mjs';
import { axe, DESKTOP, PHONE, until } from './harness.mjs';

setUp('fake-services');

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
  const words = async (tab) => (await tab.calls('notice')).map((c) => c[1]).filter((word) => /kept|behind|other|refused/.test(word));
  const loads = (tab) => tab.evaluate(() => [Module.shell.load(0), Module.shell.load(1)]);
  const save = (tab, record, slot) => tab.evaluate(([r, s]) => Module.shell.save(r, s), [record, slot]);
  const told = (tab, count, what) => until(async () => (await words(tab)).length === count, what);
  assert.deepEqual(await loads(page), ['', '']);
  await save(page, 'one\u{1F525}', 0);
  await told(page, 1, 'the first answer');
  await save(page, 'two', 1);
  await told(page, 2, 'the second answer');
  assert.deepEqual(await loads(page), ['one\u{1F525}', 'two']);
  const other = await fake(DESKTOP, { context: page.context() });
  await until(async () => (await loads(other)).join() === 'one\u{1F525},two', 'the other tab to read the same');
  await save(other, 'three', 0);
  await told(page, 3, 'word of the other tab');
  await save(page, 'on old work', 0);
  await told(page, 4, 'the refusal');
  assert.deepEqual(await words(page), ['kept', 'kept', 'other-tab', 'behind']);
  assert.deepEqual(await loads(page), ['three', 'two'], 'nothing was written over');
  await save(page, 'four', 1);
  await told(page, 5, 'the last answer');
  assert.deepEqual(await keptRecords(page), ['three', 'four']);
  await done(page);
  const refused = await fake(DESKTOP, { init: () => {
    Object.defineProperty(window, 'indexedDB', { value: undefined });
    Storage.prototype.setItem = () => { throw new DOMException('no', 'QuotaExceededError'); };
  } });
  await save(refused, 'x', 0);
  await until(async () => (await words(refused)).join() === 'storage-refused,not-kept', 'both refusals');
  await done(refused);
  const none = await fake(DESKTOP, { init: () => {
    for (const name of ['localStorage', 'sessionStorage', 'indexedDB']) {
      Object.defineProperty(window, name, { get() { throw new DOMException('no', 'SecurityError'); } });
    }
  } });
  assert.deepEqual(await loads(none), ['', '']);
  await save(none, 'x', 0);
  await until(async () => (await words(none)).join() === 'storage-refused,not-kept', 'both refusals');
  await done(none);
  const stuck = await fake(DESKTOP, { init: () => {
    localStorage.setItem('torchside./.base', '1');
    localStorage.setItem('torchside./.0', 'old work');
    IDBFactory.prototype.open = () => { throw new DOMException('no', 'UnknownError'); };
  } });
  await until(async () => (await loads(stuck)).join() === '?,?', 'a database that has been there and does not answer gives no older work');
  await done(stuck);
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
  const facts = await page.evaluate(() => { const s = Module.shell; return [s.wishes(), s.reducedMotion(), s.finePointer(), s.density(), s.fragment(), typeof s.canShare()]; });
  assert.deepEqual(facts, [0, 0, 1, 1, '', 'number']);
  const phone = await fake(PHONE);
  assert.equal(await phone.evaluate(() => Module.shell.finePointer()), 0, 'a finger is no fine pointer');
  await done(phone);
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
  shared.host.replace = Object.fromEntries(shared.host.asked.filter((n) => n.endsWith('.wasm')).map((n) => [n, Buffer.from('no wasm')]));
  const page = await fake();
  assert.match(await page.getByRole('alert').textContent(), /could not be loaded: .*Load the page again/s);
  shared.host.replace = {};
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
