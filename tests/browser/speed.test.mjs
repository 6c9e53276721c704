// The page's own figures: the first usable answer from the service worker on a slow processor, stillness, tap to frame.
// The processor is slowed 4 times by the browser; a busy machine only makes these figures worse, so the best of several runs counts.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { clean, launch, offlineReady, open, PHONE, serve, settled, SITE } from './harness.mjs';

const START_MS = 600;
let browser;
let host;
before(async () => {
  host = await serve(SITE);
  browser = await launch();
});
after(async () => {
  await browser?.close();
  await host?.stop();
});

async function ready(url = host.url) {
  const page = await open(browser, PHONE);
  await page.goto(url);
  await settled(page);
  await offlineReady(page);
  return page;
}

async function slow(page, rate = 4) {
  const client = await page.context().newCDPSession(page);
  await client.send('Emulation.setCPUThrottlingRate', { rate });
}

test(`first usable answer from the service worker, processor slowed 4 times: at most ${START_MS} ms`, async (t) => {
  const own = await serve(SITE);
  const page = await ready(own.url);
  await own.stop();
  await slow(page);
  const times = [];
  while (times.length < 6 || (times.length < 20 && Math.min(...times) > START_MS)) {
    await page.goto('about:blank'); // as an app is opened: nothing of ours is running
    await page.goto(own.url);
    await settled(page);
    times.push(Math.round(await page.evaluate(() => performance.getEntriesByName('torchside-answer')[0].startTime)));
  }
  t.diagnostic(`first usable answer, ms after navigation: ${times.join(' ')}`);
  assert.ok(Math.min(...times) <= START_MS, `${times}`);
  await clean(page);
  await page.context().close();
});

test('idle for 60 s: no frame drawn, no callback requested', async (t) => {
  const page = await ready();
  await settled(page);
  const counts = () => page.evaluate(() => ({ ...window.torchsideCounters, callbacks: window.seen.callbacks }));
  const before = await counts();
  await page.waitForTimeout(60000);
  assert.deepEqual(await counts(), before);
  t.diagnostic(`frames to stand still after the start: ${before.drawn}`);
  await clean(page);
  await page.context().close();
});

test('a field that is being edited: at most 2 frames a second', async () => {
  const page = await ready();
  const box = await page.getByRole('button', { name: /^Thickness/ }).boundingBox();
  await page.touchscreen.tap(box.x + 20, box.y + 20);
  await page.getByRole('dialog').waitFor();
  await settled(page);
  const drawn = () => page.evaluate(() => window.torchsideCounters.drawn);
  const before = await drawn();
  await page.waitForTimeout(5000);
  assert.ok((await drawn()) - before <= 10);
  await page.context().close();
});

test('sixty taps are sixty answers, and none costs more than four frames', async (t) => {
  const page = await ready();
  await page.evaluate(() => {
    window.taps = 0;
    window.builds = [];
    const { mirror } = Module.shell;
    const frame = Module._torchside_frame;
    Module.shell.mirror = (text) => {
      window.taps++;
      mirror(text);
    };
    Module._torchside_frame = () => {
      const from = performance.now();
      frame();
      window.builds.push(performance.now() - from);
    };
  });
  const box = await page.getByRole('button', { name: /^Units/ }).boundingBox();
  const before = await page.evaluate(() => window.torchsideCounters.drawn);
  for (let i = 0; i < 60; i++) {
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
    await settled(page);
  }
  const { taps, builds, drawn } = await page.evaluate(() => ({ taps: window.taps, builds: window.builds, drawn: window.torchsideCounters.drawn }));
  builds.sort((a, b) => a - b);
  t.diagnostic(`frame with its drawing calls and mirror, this machine: median ${builds[builds.length >> 1].toFixed(1)} ms, 95th of 100 ${builds[Math.floor(builds.length * 0.95)].toFixed(1)} ms; ${((drawn - before) / 60).toFixed(1)} frames a tap`);
  assert.ok(taps >= 60 && taps <= 120, `${taps} texts of the mirror: an answer for each tap, and one that it is saved where that came before the next`);
  assert.ok(drawn - before <= 240, `${drawn - before} frames`);
  await clean(page);
  await page.context().close();
});
