// At the table, as a person with a phone, a mouse or keys: from Cut by one touch, a cut logged and taken back, the next plate by a
// swipe, countdowns that are heard, felt and spoken, a screen that stays on or says that it does not.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { axe, DESKTOP, PHONE, settled, until } from './harness.mjs';
import { control, done, reads, setUp, start, touch } from './person.mjs';

setUp();

/** A browser that lends everything, and notes what it was asked for. `wake`: gives, refuses or lacks the lock of the screen. */
function device(wake) {
  const seen = (window.benchSeen = { buzzes: [], beeps: 0, locks: [] });
  navigator.vibrate = (ms) => seen.buzzes.push(ms);
  const make = AudioContext.prototype.createOscillator;
  AudioContext.prototype.createOscillator = function () {
    seen.beeps++;
    return make.call(this);
  };
  const request = async () => {
    if (wake === 'refuses') {
      throw new DOMException('no', 'NotAllowedError');
    }
    const lock = new EventTarget();
    lock.release = async () => {
      lock.released = true;
      lock.dispatchEvent(new Event('release'));
    };
    seen.locks.push(lock);
    return lock;
  };
  Object.defineProperty(navigator, 'wakeLock', { value: wake === 'lacks' ? undefined : { request }, configurable: true });
}
const lent = (wake) => `(${device})(${JSON.stringify(wake)})`;
const begin = (size, wake = 'gives', more = {}) => start(size, { init: { content: lent(wake) }, ...more });

const seen = (page) => page.evaluate(() => ({ ...window.benchSeen, locks: window.benchSeen.locks.map((lock) => Boolean(lock.released)) }));
const frames = (page) => page.evaluate(() => window.torchsideCounters.drawn);
const text = (page, id) => page.locator(`[data-id="${id}"]`).textContent();
const address = (page) => page.evaluate(() => location.hash);
const thick = async (page) => /[\d.]+ mm/.exec(await text(page, 'bench/title'))[0];

async function swipe(page, from, to) {
  const client = await page.context().newCDPSession(page);
  const began = Date.now() / 1000;
  const at = (type, x, ms) => client.send('Input.dispatchTouchEvent', { type, timestamp: began + ms / 1000, touchPoints: type === 'touchEnd' ? [] : [{ x, y: 330 }] });
  await at('touchStart', from, 0);
  for (let i = 1; i <= 8; i++) {
    await at('touchMove', from + ((to - from) * i) / 8, 25 * i);
  }
  await at('touchEnd', 0, 210);
  await settled(page);
}

/** The contrast of the darkest and the lightest pixel of what a node shows, by WCAG 2. Decoded on an empty page, which no policy binds. */
async function contrast(page, id) {
  const box = await page.locator(`[data-id="${id}"]`).boundingBox();
  const png = await page.screenshot({ clip: { x: box.x + 8, y: box.y + 30, width: box.width - 16, height: box.height - 70 } });
  const blank = await page.context().newPage();
  const found = await blank.evaluate(async (data) => {
    const bytes = Uint8Array.from(atob(data), (c) => c.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const canvas = new OffscreenCanvas(image.width, image.height).getContext('2d');
    canvas.drawImage(image, 0, 0);
    const pixels = canvas.getImageData(0, 0, image.width, image.height).data;
    const linear = (v) => (v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4);
    let low = 1;
    let high = 0;
    for (let i = 0; i < pixels.length; i += 4) {
      const l = 0.2126 * linear(pixels[i]) + 0.7152 * linear(pixels[i + 1]) + 0.0722 * linear(pixels[i + 2]);
      low = Math.min(low, l);
      high = Math.max(high, l);
    }
    return (high + 0.05) / (low + 0.05);
  }, png.toString('base64'));
  await blank.close();
  return found;
}

test('a thumb: from Cut to the table, a cut logged and taken back, the next plate, and out by Back', async () => {
  const page = await begin(PHONE);
  const feed = await reads(page, 'Feed');
  await touch(page, 'button', 'At the table');
  assert.equal(await address(page), '#/cut/bench');
  assert.ok(feed.startsWith(await text(page, 'bench/feed')), `${feed} on Cut, ${await text(page, 'bench/feed')} at the table`);
  await until(async () => (await seen(page)).locks.length === 1, 'the screen to be kept on');
  await until(async () => (await text(page, 'bench/awake')) === 'Screen stays on', 'the screen to say so');
  await settled(page);
  assert.deepEqual(await axe(page), []);

  await touch(page, 'button', 'Clean');
  assert.match(await text(page, 'live'), /^Clean cut logged\. Feed /);
  await touch(page, 'button', 'Undo');
  assert.ok(feed.startsWith(await text(page, 'bench/feed')));

  assert.equal(await thick(page), '6 mm');
  await swipe(page, 300, 140);
  assert.equal(await thick(page), '10 mm');
  assert.notEqual(await text(page, 'bench/feed'), feed);
  await swipe(page, 300, 230); // as far as a drop runs
  assert.equal(await thick(page), '10 mm');
  await swipe(page, 80, 240);
  assert.equal(await thick(page), '6 mm');

  await page.goBack();
  await until(async () => (await address(page)) === '#/cut', 'Back to lead to Cut');
  await settled(page);
  assert.equal((await seen(page)).locks[0], true, 'the screen may go dark again');
  await done(page);
});

test('figures reach 12:1 in the picture itself, on paper and at night', async () => {
  for (const colorScheme of ['light', 'dark']) {
    const page = await begin(PHONE, 'gives', { colorScheme });
    await touch(page, 'button', 'At the table');
    for (const id of ['bench/feed', 'bench/volts', 'bench/height', 'bench/pierce', 'bench/arc']) {
      const found = await contrast(page, id);
      assert.ok(found >= 12, `${id}, ${colorScheme}: ${found.toFixed(1)}`);
    }
    await done(page);
  }
});

test('the pierce is heard, felt and spoken at its start and end, and draws no more than that', async () => {
  const page = await begin(PHONE);
  await touch(page, 'button', 'At the table');
  const quiet = await frames(page);
  await page.waitForTimeout(1500);
  assert.equal(await frames(page), quiet, 'a table at rest draws nothing');
  await page.evaluate(() => {
    window.spoken = [];
    const live = document.querySelector('[data-id="bench/said"]');
    new MutationObserver(() => window.spoken.push(live.textContent)).observe(live, { childList: true, subtree: true, characterData: true });
  });
  await touch(page, 'button', 'Count down the pierce');
  await until(async () => (await seen(page)).buzzes.length === 2, 'both ends to be felt');
  await settled(page);
  const { buzzes, beeps } = await seen(page);
  assert.deepEqual(buzzes, [60, 400]);
  assert.equal(beeps, 2);
  assert.deepEqual(await page.evaluate(() => window.spoken), ['Pierce: 0.5 s.', 'Pierce over. Move.']);
  await done(page);
});

test('arc time draws one frame a second and speaks at its start alone', async () => {
  const page = await begin(PHONE);
  await touch(page, 'button', 'At the table');
  await page.evaluate(() => {
    window.spoken = [];
    const live = document.querySelector('[data-id="bench/said"]');
    new MutationObserver(() => window.spoken.push(live.textContent)).observe(live, { childList: true, subtree: true, characterData: true });
  });
  const box = await control(page, 'button', 'The arc starts').boundingBox();
  await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
  await until(async () => (await page.evaluate(() => window.spoken.length)) === 1, 'the start to be spoken');
  await page.waitForTimeout(300);
  const [before, left] = [await frames(page), await text(page, 'bench/left')];
  await page.waitForTimeout(3000);
  const drawn = (await frames(page)) - before;
  assert.ok(drawn >= 2 && drawn <= 4, `${drawn} frames in 3 s`);
  assert.notEqual(await text(page, 'bench/left'), left);
  assert.equal(await page.evaluate(() => window.spoken.length), 1);
  const stop = await control(page, 'button', 'The arc stops').boundingBox();
  await page.touchscreen.tap(stop.x + stop.width / 2, stop.y + stop.height / 2);
  await until(async () => (await page.evaluate(() => window.spoken.length)) === 2, 'the rest to be spoken');
  await done(page);
});

test('where the screen cannot be kept on, the table says so', async () => {
  for (const [wake, says] of [['refuses', 'The screen may go dark'], ['lacks', 'This browser can\'t keep the screen on']]) {
    const page = await begin(PHONE, wake);
    await touch(page, 'button', 'At the table');
    await until(async () => (await text(page, 'bench/awake').catch(() => '')) === says, says);
    await settled(page);
    await done(page);
  }
});

test('a screen that was away is kept on again when it is shown', async () => {
  const page = await begin(PHONE);
  await touch(page, 'button', 'At the table');
  await until(async () => (await seen(page)).locks.length === 1, 'the screen to be kept on');
  const show = (hidden) => page.evaluate((is) => {
    Object.defineProperty(document, 'hidden', { value: is, configurable: true });
    if (is) {
      window.benchSeen.locks[0].release(); // as the browser does
    }
    document.dispatchEvent(new Event('visibilitychange'));
  }, hidden);
  await show(true);
  await show(false);
  await until(async () => (await seen(page)).locks.length === 2, 'the lock to be asked for again');
  assert.deepEqual((await seen(page)).locks, [true, false]);
  await settled(page);
  assert.equal(await text(page, 'bench/awake'), 'Screen stays on');
  await done(page);
});

test('keys alone: the plates by arrows, a card by its number, out by Escape', async () => {
  const page = await begin(DESKTOP);
  page.touching = false;
  await touch(page, 'button', 'At the table');
  await page.keyboard.press('ArrowRight');
  await settled(page);
  assert.equal(await thick(page), '10 mm');
  await page.keyboard.press('ArrowLeft');
  await settled(page);
  assert.equal(await thick(page), '6 mm');
  await page.keyboard.press('2');
  await settled(page);
  assert.match(await text(page, 'live'), /^Clean cut logged/);
  await page.keyboard.press('4');
  await until(async () => (await text(page, 'bench/said')) === 'Pierce over. Move.', 'the pierce to be counted');
  await page.keyboard.press('Escape');
  await until(async () => (await address(page)) === '#/cut', 'Escape to lead to Cut');
  await settled(page);
  await done(page);
});

test('in every window what can be touched is there, and a reload stays at the table', async () => {
  for (const viewport of [{ width: 740, height: 360 }, { width: 360, height: 225 }, { width: 768, height: 1024 }, { width: 1440, height: 900 }]) {
    const page = await begin({ ...PHONE, deviceScaleFactor: 1, viewport }, 'gives');
    await page.evaluate(() => { location.hash = '#/cut/bench'; });
    await settled(page);
    const close = await control(page, 'button', 'Close').boundingBox();
    assert.ok(close.x >= 0 && close.x + close.width <= viewport.width + 1 && close.y >= 0 && close.y + close.height <= viewport.height, JSON.stringify(close));
    await page.reload();
    await settled(page);
    assert.equal(await address(page), '#/cut/bench');
    await touch(page, 'button', 'Close');
    assert.equal(await address(page), '#/cut');
    await done(page);
  }
});
