// What must not be lost: with no network, over an update, after a torn write, in another tab, without a graphics card.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { clean, DESKTOP, launch, offlineReady, open, pack, PHONE, serve, settled, SINGLE, SITE, until } from './harness.mjs';
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
    const offer = control(page, 'button', 'New version'); // "New version: use it now"
    await until(() => offer.count(), 'the offer');
    await settled(page);
    const box = await offer.boundingBox();
    await page.touchscreen.tap(box.x + 60, box.y + box.height / 2);
    await until(async () => (await page.evaluate(() => document.documentElement.dataset.version).catch(() => before)) !== before, 'the new version');
    await settled(page);
    before = await page.evaluate(() => document.documentElement.dataset.version);
    assert.match(await reads(page, 'Thickness'), /^8 mm/);
    assert.equal(await control(page, 'button', 'New version').count(), 0);
  }
  await own.stop();
  await done(page);
});

test('a torn write loses one change at most', async () => {
  const page = await start(PHONE);
  await change(page, '8');
  await change(page, '10');
  const slots = await page.evaluate(() => [localStorage.getItem('torchside./.0'), localStorage.getItem('torchside./.1')]);
  assert.ok(slots[0] && slots[1], 'both slots are written');
  const shown = [];
  for (const slot of [0, 1]) {
    for (const damage of ['cut', 'flip', 'gone']) {
      const broken = { cut: slots[slot].slice(0, slots[slot].length / 2), flip: slots[slot].replace(/\d(?=\D*$)/, (d) => (Number(d) + 1) % 10), gone: '' }[damage];
      await page.evaluate(([s, all, b]) => {
        all.forEach((text, i) => localStorage.setItem('torchside./.' + i, i === s ? b : text));
      }, [slot, slots, broken]);
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

test('both slots damaged: the page starts, and says nothing false', async () => {
  const page = await start(PHONE, { init: () => { localStorage.setItem('torchside./.0', 'x'.repeat(5000)); localStorage.setItem('torchside./.1', '\u0000{"torchside":1'); } });
  assert.match(await feed(page), /mm\/min/);
  await done(page);
});

test('storage refused: everything works, and the page says that nothing is kept', async () => {
  const page = await start(PHONE, { init: () => { Storage.prototype.setItem = () => { throw new DOMException('no', 'QuotaExceededError'); }; } });
  await change(page, '10');
  assert.match(await reads(page, 'Thickness'), /^10 mm/);
  assert.match((await page.getByRole('alert').allTextContents()).join(), /keeps nothing|nothing is kept|not kept/i);
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

test('a change made in another tab is announced', async () => {
  const page = await start(PHONE);
  const other = await page.context().newPage();
  await other.goto(shared.host.url);
  await settled(other);
  await other.bringToFront();
  await change(other, '10');
  await page.bringToFront();
  await until(async () => /another tab/.test((await page.getByRole('alert').allTextContents()).join()), 'the announcement');
  await done(page);
});
