// What must not be lost: with no network, over an update, after a torn write, in another tab, without a graphics card.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { clean, DESKTOP, launch, offlineReady, open, pack, PHONE, serve, settled, SINGLE, SITE, until } from './harness.mjs';
import { keptRecords, keptWork, putRecords, record } from './kept_shop.mjs';
import { change, control, done, feed, reads, setUp, shared, start, thicknessIs, touch } from './person.mjs';

setUp();

test('rotation, and back, with the drawing at the full density of the screen', async () => {
  const page = await start(PHONE);
  const canvas = () => page.evaluate(() => [Module.canvas.width, Module.canvas.height]);
  assert.deepEqual(await canvas(), [1080, 2220]);
  await page.setViewportSize({ width: 740, height: 360 });
  await until(async () => (await canvas()).join() === '2220,1080', 'the canvas to turn');
  await settled(page);
  const box = await control(page, 'button', 'Shop').boundingBox();
  assert.ok(box.y + box.height <= 360 && box.x + box.width <= 740, 'the places are on screen');
  await page.setViewportSize({ width: 360, height: 740 });
  await until(async () => (await canvas()).join() === '1080,2220', 'the canvas to turn back');
  await done(page);
});

test('from the first visit it works with the server gone, and keeps the work', async () => {
  const own = await serve(SITE);
  const page = await start(PHONE, { url: own.url });
  await offlineReady(page);
  await own.stop();
  await assert.rejects(fetch(own.url), 'the server is really gone');
  await touch(page, 'button', 'Thickness');
  await touch(page, 'radio', '10');
  await page.reload();
  await settled(page);
  assert.match(await reads(page, 'Thickness'), /^10 mm/, 'the change was kept');
  const other = await page.context().newPage();
  await other.goto(own.url);
  await settled(other);
  assert.match(await reads(other, 'Thickness'), /^10 mm/);
  await done(page);
});

test('a new version is offered on screen, taken with the work kept; and the way back', async () => {
  const [one, two] = [pack('site-one', { mark: 'one' }), pack('site-two', { mark: 'two' })];
  const own = await serve(one);
  const page = await start(PHONE, { url: own.url });
  await offlineReady(page);
  await touch(page, 'button', 'Thickness');
  await touch(page, 'radio', '8');
  await touch(page, 'button', 'Close');
  let before = await page.evaluate(() => document.documentElement.dataset.version);
  for (const next of [two, one]) {
    own.folder = next;
    await page.reload();
    await settled(page);
    const offer = control(page, 'button', 'Update to the new version');
    await until(() => offer.count(), 'the offer');
    await settled(page);
    const box = await offer.boundingBox();
    await page.touchscreen.tap(box.x + 60, box.y + box.height / 2);
    await until(async () => (await page.evaluate(() => document.documentElement.dataset.version).catch(() => before)) !== before, 'the new version');
    await settled(page);
    before = await page.evaluate(() => document.documentElement.dataset.version);
    assert.match(await reads(page, 'Thickness'), /^8 mm/);
    assert.equal(await control(page, 'button', 'Update to the new version').count(), 0);
  }
  await own.stop();
  await done(page);
});

test('a torn write loses one change at most', async () => {
  const page = await start(PHONE);
  await change(page, '8');
  await until(async () => (await keptWork(page))?.job.thickness_mm === 8, 'the first change to be kept');
  await change(page, '10');
  await until(async () => (await keptRecords(page)).every(Boolean), 'both slots to be written');
  const slots = await keptRecords(page);
  const shown = [];
  for (const slot of [0, 1]) {
    for (const damage of ['cut', 'flip', 'gone']) {
      const broken = { cut: slots[slot].slice(0, slots[slot].length / 2), flip: slots[slot].replace(/\d(?=\D*$)/, (d) => (Number(d) + 1) % 10), gone: '' }[damage];
      await putRecords(page, slots.map((text, i) => (i === slot ? broken : text)));
      await page.reload();
      await settled(page);
      shown.push(`${slot} ${damage}: ${(await reads(page, 'Thickness')).slice(0, 5).trim()}`);
    }
  }
  const newest = shown.filter((s) => /: 10 mm/.test(s)).map((s) => s[0]);
  const older = shown.filter((s) => /: 8 mm/.test(s)).map((s) => s[0]);
  assert.equal(newest.length, 3, shown.join('; '));
  assert.equal(older.length, 3, shown.join('; '));
  assert.equal(new Set(newest).size + new Set(older).size, 2, 'whichever slot is damaged, the other one counts');
  await done(page);
});

test('a change is kept when the page goes a moment after it, however it goes', async () => {
  const page = await start(PHONE);
  for (const [size, leave] of [['8', () => page.reload()], ['10', () => page.goto('about:blank').then(() => page.goto(shared.host.url))]]) {
    await change(page, size);
    await leave();
    await settled(page);
    assert.match(await reads(page, 'Thickness'), new RegExp(`^${size} mm`));
  }
  const other = await page.context().newPage();
  await other.goto(shared.host.url);
  await settled(other);
  await change(page, '12');
  await page.close();
  await until(async () => /^12 mm/.test(await reads(other, 'Thickness')), 'what the closed tab had just changed');
  assert.equal((await keptWork(other)).job.thickness_mm, 12);
  await until(() => other.evaluate(() => !Object.keys(localStorage).some((key) => key.includes('late'))), 'nothing to be left over');
  await done(Object.assign(other, { problems: page.problems }));
});

test('a burst of changes is one write, a page at rest writes and draws nothing, a hidden one keeps at once', async () => {
  const page = await start(PHONE);
  await page.evaluate(() => {
    window.writes = 0;
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...args) { window.writes += args[1] === 'late' ? 0 : 1; return put.apply(this, args); }; // its head goes along
  });
  const writes = () => page.evaluate(() => window.writes);
  await touch(page, 'button', 'Units');
  await touch(page, 'button', 'Units');
  await page.waitForTimeout(1000);
  const [written, drawn] = [await writes(), await page.evaluate(() => window.torchsideCounters.drawn)];
  assert.ok(written >= 1 && written <= 2, `${written} writes`);
  await page.waitForTimeout(1000);
  assert.deepEqual([await writes(), await page.evaluate(() => window.torchsideCounters.drawn)], [written, drawn], 'at rest');
  await touch(page, 'button', 'Units');
  await page.evaluate(() => {
    Object.defineProperty(document, 'hidden', { value: true, configurable: true });
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await page.waitForTimeout(50);
  assert.equal(await writes(), written + 1, 'kept while hidden');
  await page.evaluate(() => { delete document.hidden; document.dispatchEvent(new Event('visibilitychange')); });
  await done(page);
});

test('work that cannot be read is never replaced: it is said, saved as a file, read as far as it can be, and taken over', async () => {
  const page = await start(PHONE);
  await change(page, '8');
  await until(async () => (await keptWork(page))?.job.thickness_mm === 8, 'the first change to be kept');
  await change(page, '10');
  await until(async () => (await keptRecords(page)).every((text) => text.includes('thickness_mm')), 'two generations');
  const damaged = (await keptRecords(page)).map((text) => text.replace(/"quantity": \d+/, '"quantity": "many"').replace('"name": "', '"name": "\u00e9'));
  await putRecords(page, damaged);
  await page.reload();
  await settled(page);
  const alert = () => page.getByRole('alert').allTextContents().then((all) => all.join());
  assert.match(await alert(), /can't be read/);
  await change(page, '3');
  await page.reload();
  await settled(page);
  assert.deepEqual(await keptRecords(page), damaged, 'nothing is kept over it');
  await touch(page, 'button', "Your saved work can't be read. This page starts empty and saves nothing over it.");
  const [file] = await Promise.all([page.waitForEvent('download'), touch(page, 'button', 'Save what is there as a file')]);
  assert.equal(readFileSync(await file.path(), 'utf8'), damaged.join('\n'), 'byte for byte');
  await touch(page, 'button', 'See what can be read');
  await control(page, 'button', 'Use what was read').evaluate((button) => button.click()); // it may lie below, to be scrolled to
  await settled(page);
  assert.match(await reads(page, 'Thickness'), /^10 mm/);
  assert.doesNotMatch(await alert(), /can't be read/);
  await until(async () => (await keptWork(page))?.job.thickness_mm === 10, 'what was taken over to be kept');
  await page.reload();
  await settled(page);
  assert.match(await reads(page, 'Thickness'), /^10 mm/);
  await done(page, /not there yet/); // saying why takes the rest of the program: one start more
});

test('work of a newer version is left alone, and nothing says that it is shown', async () => {
  const page = await start(PHONE);
  await change(page, '10');
  await until(() => keptWork(page), 'the work');
  const newer = [record({ torchside: 99, shop: {}, job: {} }, 400), record({ torchside: 99, shop: {}, job: {} }, 399)];
  await putRecords(page, newer);
  await page.reload();
  await settled(page);
  assert.match((await page.getByRole('alert').allTextContents()).join(), /newer Torchside and is left alone/);
  assert.doesNotMatch(await page.locator('#mirror').textContent(), /shown, not overwritten/);
  await change(page, '3');
  await page.waitForTimeout(300);
  assert.deepEqual(await keptRecords(page), newer);
  await done(page, /not there yet/); // saying why takes the rest of the program: one start more
});

// What a browser does that keeps nothing for a page: each of these was seen to end the page, or to be told too late.
const REFUSALS = {
  'all site data blocked': () => {
    for (const name of ['localStorage', 'sessionStorage', 'indexedDB']) {
      Object.defineProperty(window, name, { get() { throw new DOMException('denied', 'SecurityError'); } });
    }
    Object.defineProperty(navigator, 'storage', { value: undefined });
  },
  'databases that do not open, and a full localStorage': () => {
    IDBFactory.prototype.open = () => { throw new DOMException('no', 'InvalidStateError'); };
    Storage.prototype.setItem = () => { throw new DOMException('no', 'QuotaExceededError'); };
  },
  'no database at all, and a full localStorage': () => {
    Object.defineProperty(window, 'indexedDB', { value: undefined });
    Storage.prototype.setItem = () => { throw new DOMException('no', 'QuotaExceededError'); };
  },
};
for (const [what, init] of Object.entries(REFUSALS)) {
  test(`${what}: the page runs, says before the first edit that nothing is kept, and offers the file`, async () => {
    const page = await start(PHONE, { init, kept: '' });
    await until(async () => /saves nothing/.test((await page.getByRole('alert').allTextContents()).join()), 'the word before the first edit');
    await change(page, '10');
    assert.match(await reads(page, 'Thickness'), /^10 mm/);
    await touch(page, 'button', 'This browser saves nothing');
    const [file] = await Promise.all([page.waitForEvent('download'), touch(page, 'button', 'Save a backup file')]);
    assert.equal(JSON.parse(readFileSync(await file.path(), 'utf8')).job.thickness_mm, 10);
    await page.evaluate(() => Module.shell.mirror && Module.onAbort());
    assert.doesNotMatch(await page.getByRole('alert').last().textContent(), /is kept/, 'nothing false when it stops');
    await done(page, /SecurityError|denied/);
  });
}

test('a database that fills up is told, and what was entered is kept as soon as it can be', async () => {
  const page = await start(PHONE);
  await page.evaluate(() => {
    window.put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError'); };
  });
  await change(page, '10');
  await until(async () => /saves nothing/.test((await page.getByRole('alert').allTextContents()).join()), 'the alert');
  await page.evaluate(() => { IDBObjectStore.prototype.put = window.put; });
  await change(page, '8');
  await until(async () => (await keptWork(page))?.job.thickness_mm === 8, 'the work to be kept');
  await until(async () => (await page.getByRole('alert').count()) === 0, 'the alert to go');
  await done(page, /full/);
});

test('what older versions kept in localStorage is moved over once', async () => {
  const page = await start(PHONE, { kept: '' });
  await change(page, '10');
  await until(() => keptWork(page), 'the work');
  const records = await keptRecords(page);
  await page.evaluate((all) => all.forEach((text, i) => text && localStorage.setItem('torchside./.' + i, text)), records);
  await putRecords(page, ['', '']);
  await page.reload();
  await settled(page);
  assert.match(await reads(page, 'Thickness'), /^10 mm/);
  await until(async () => (await keptRecords(page)).join() === records.join(), 'the move');
  await until(() => page.evaluate(() => localStorage.getItem('torchside./.0') === null && localStorage.getItem('torchside./.1') === null), 'the old place to be empty');
  await done(page);
});

test('where there is no database the work is kept in localStorage', async () => {
  const page = await start(PHONE, { kept: '', init: () => { Object.defineProperty(window, 'indexedDB', { value: undefined }); } });
  await change(page, '10');
  await page.reload();
  await settled(page);
  assert.match(await reads(page, 'Thickness'), /^10 mm/);
  assert.equal(await page.getByRole('alert').count(), 0);
  await done(page);
});

test('the one-file page from disk', async () => {
  for (const device of [PHONE, DESKTOP]) {
    const page = await start(device, { url: 'file://' + SINGLE });
    const before = await feed(page);
    page.touching = device === PHONE;
    if (device === PHONE) {
      await change(page, '10');
    } else {
      await touch(page, 'radio', '10');
    }
    await thicknessIs(page, /^10 mm/, before);
    await page.reload();
    await settled(page);
    assert.match(await reads(page, 'Thickness'), /^10 mm/, 'kept in the browser from a file too');
    assert.equal(await page.evaluate(() => navigator.serviceWorker?.controller ?? null), null);
    await done(page);
  }
});

test('a lost graphics context shows the figures as a page, and the drawing comes back', async () => {
  const page = await start(PHONE);
  await change(page, '10');
  await page.evaluate(() => {
    window.loser = Module.canvas.getContext('webgl').getExtension('WEBGL_lose_context');
    window.loser.loseContext();
  });
  await page.waitForFunction(() => document.documentElement.classList.contains('plain'));
  assert.ok(await control(page, 'button', 'Feed').isVisible());
  await control(page, 'button', 'Metal').tap();
  await control(page, 'radio', '8').tap();
  await until(async () => /^8 mm/.test(await reads(page, 'Thickness')), 'a change without the canvas');
  await page.evaluate(() => { window.old = true; window.loser.restoreContext(); });
  await page.waitForFunction(() => !window.old && !document.documentElement.classList.contains('plain'));
  await settled(page);
  assert.match(await reads(page, 'Thickness'), /^8 mm/);
  await done(page, /WebGL/);
});

test('a browser without WebGL gets the plain page', async () => {
  const bare = await launch(['--disable-3d-apis']);
  const page = await open(bare, PHONE);
  await page.goto(shared.host.url);
  await settled(page);
  assert.ok(await page.evaluate(() => document.documentElement.classList.contains('plain')));
  assert.match(await feed(page), /mm\/min/);
  await clean(page, /WebGL|webgl/);
  await bare.close();
});

test('a spoilt address does not spoil what is stored', async () => {
  const page = await start(PHONE);
  await change(page, '10');
  for (const hash of ['#/nowhere/at/all', '#%00%ff', '#' + 'x'.repeat(4000), '#/cut/' + '<script>']) {
    await page.goto('about:blank');
    await page.goto(shared.host.url + hash);
    await settled(page);
    assert.match(await reads(page, 'Thickness'), /^10 mm/, hash.slice(0, 20));
  }
  await done(page);
});

test('two tabs: what one changes the other shows at once, and a change made on old work drops nothing', async () => {
  const page = await start(PHONE);
  const other = await page.context().newPage();
  await other.goto(shared.host.url);
  await settled(other);
  await other.bringToFront();
  await change(other, '10');
  await page.bringToFront();
  await until(async () => /^10 mm/.test(await reads(page, 'Thickness')), 'the other tab\'s plate');
  // Both change something before either has heard of the other.
  await Promise.all([page, other].map((tab) => tab.evaluate(() => { BroadcastChannel.prototype.postMessage = () => {}; })));
  await other.bringToFront();
  await change(other, '8');
  await page.bringToFront();
  await touch(page, 'button', 'Units');
  await until(async () => (await keptWork(page))?.shop.display.units === 'inch', 'the change of this tab');
  assert.equal((await keptWork(page)).job.thickness_mm, 8, 'and that of the other');
  await touch(page, 'button', 'Units');
  await until(async () => (await keptWork(page))?.shop.display.units === 'metric', 'the units again');
  await other.bringToFront();
  await change(other, '12');
  await page.bringToFront();
  await change(page, '6');
  await until(async () => /changed in another tab/.test((await page.getByRole('alert').allTextContents()).join()), 'the question');
  await touch(page, 'button', 'The same entry was changed in another tab. Choose which one to use.');
  await touch(page, 'button', "Use this tab's");
  await until(async () => (await keptWork(page))?.job.thickness_mm !== 12, 'the answer');
  await done(page);
});
