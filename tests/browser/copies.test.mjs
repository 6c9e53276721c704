// Torchside in a folder of a host, and more than one copy on the same origin: each has its own name, worker, caches and work. And what
// the device learns of it: pictures, and the files it opens.
import assert from 'node:assert/strict';
import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { test } from 'node:test';
import { draw, folder, pictures } from '../../tools/draw_screenshots.mjs';
import { clean, DESKTOP, offlineReady, open, PHONE, ROOT, serve, settled, SITE, until } from './harness.mjs';
import { keptRecords, putRecords } from './kept_shop.mjs';
import { change, control, done, reads, setUp, shared, start } from './person.mjs';

setUp();

const FOLDERS = ['', 'a/', 'a/b/'];

/** The built site at the root of a host, and again in folders of it. */
async function copies(t) {
  const folder = ROOT + 'build/browser/copies';
  rmSync(folder, { recursive: true, force: true });
  for (const at of FOLDERS) {
    mkdirSync(`${folder}/${at}`, { recursive: true });
    cpSync(SITE, `${folder}/${at}`, { recursive: true });
  }
  const host = await serve(folder);
  t.after(host.stop);
  return host;
}

const named = async (page) => (await page.evaluate(() => caches.keys())).sort();
const pathsOf = (page) => page.evaluate(async () => {
  const found = {};
  for (const name of await caches.keys()) {
    found[name] = (await (await caches.open(name)).keys()).map((r) => new URL(r.url).pathname.replace(/[^/]*$/, '')).filter((p) => !p.endsWith('icons/'));
  }
  return found;
});

test('three copies on one origin: each installs, keeps its own work, and stands without the network', async (t) => {
  const host = await copies(t);
  const page = await open(shared.browser, PHONE);
  const plates = { '': '10', 'a/': '3', 'a/b/': '5' };
  for (const at of FOLDERS) { // the copy at the root first: its worker sees what the others ask for
    await page.goto(host.url + at);
    await settled(page);
    await offlineReady(page);
    await change(page, plates[at]);
    assert.match(await reads(page, 'Thickness'), new RegExp(`^${plates[at]} mm`));
  }
  const caches = await named(page);
  assert.deepEqual(caches.map((name) => name.split(' ')[1]), ['/', '/a/', '/a/b/']);
  for (const [name, paths] of Object.entries(await pathsOf(page))) {
    assert.deepEqual([...new Set(paths)], [name.split(' ')[1]], 'a cache holds one copy');
  }
  await host.stop();
  for (const at of FOLDERS) {
    await page.goto(host.url + at);
    await settled(page);
    assert.match(await reads(page, 'Thickness'), new RegExp(`^${plates[at]} mm`), `${at || 'the root'} has kept its own`);
  }
  assert.deepEqual(await named(page), caches, 'none has thrown another\'s cache away');
  await done(page);
});

test('a new version of one copy leaves the others as they are, and takes its own old caches away', async (t) => {
  const host = await copies(t);
  const page = await open(shared.browser, PHONE);
  for (const at of ['', 'a/']) {
    await page.goto(host.url + at);
    await settled(page);
    await offlineReady(page);
  }
  const [root] = await named(page);
  // What a copy from before names had the folder in them left behind, of this folder and of the one above.
  await page.evaluate(async () => {
    for (const [name, url] of [['torchside-old-a', './index.html'], ['torchside-old-root', '../index.html']]) {
      await (await caches.open(name)).put(new URL(url, location.href), new Response('old'));
    }
  });
  const worker = host.folder + '/a/sw.js';
  writeFileSync(worker, readFileSync(worker, 'utf8').replace(/const VERSION = "[^"]+"/, 'const VERSION = "next"'));
  await page.evaluate(async () => { await (await navigator.serviceWorker.ready).update(); });
  await page.evaluate(() => new Promise((taken) => {
    navigator.serviceWorker.addEventListener('controllerchange', taken);
    const look = setInterval(() => navigator.serviceWorker.getRegistration().then((r) => {
      if (r.waiting) {
        clearInterval(look);
        r.waiting.postMessage('use-update');
      }
    }), 50);
  })).catch(() => {}); // the page loads itself anew
  await settled(page);
  await until(async () => (await named(page)).includes('torchside /a/ next'), 'the new version');
  await until(async () => !(await named(page)).includes('torchside-old-a'), 'its old cache to go');
  assert.deepEqual(await named(page), [root, 'torchside /a/ next', 'torchside-old-root'].sort());
  await clean(page);
  await page.context().close();
});

test('work from before keys had the folder in them is taken over, and not again once there is own work', async (t) => {
  const host = await copies(t);
  const page = await open(shared.browser, PHONE);
  await page.goto(host.url);
  await settled(page);
  await change(page, '10');
  await until(async () => (await keptRecords(page)).some(Boolean), 'the work to be kept');
  await page.evaluate((work) => {
    localStorage.clear();
    work.forEach((record, slot) => record && localStorage.setItem('torchside.' + slot, record));
  }, await keptRecords(page));
  await putRecords(page, ['', '']);
  for (const visit of ['first', 'second']) {
    await page.goto(host.url + 'a/');
    await settled(page);
    assert.match(await reads(page, 'Thickness'), /^10 mm/, visit);
  }
  await change(page, '3');
  await page.reload();
  await settled(page);
  assert.match(await reads(page, 'Thickness'), /^3 mm/);
  await done(page);
});

test('each copy is an app of its own to the device, and may be installed', async (t) => {
  const host = await copies(t);
  const ids = [];
  for (const at of FOLDERS) {
    const page = await open(shared.browser, DESKTOP);
    await page.goto(host.url + at);
    await settled(page);
    const client = await page.context().newCDPSession(page);
    const { errors } = await client.send('Page.getAppManifest');
    assert.deepEqual(errors, []);
    ids.push((await client.send('Page.getAppId')).appId);
    await done(page);
  }
  assert.deepEqual(ids, FOLDERS.map((at) => host.url + at));
});

test('the manifest shows a narrow and a wide picture, each of the size it says, and names the files that open', async () => {
  const manifest = JSON.parse(readFileSync(SITE + '/manifest.webmanifest', 'utf8'));
  for (const shape of ['narrow', 'wide']) {
    const pictures = manifest.screenshots.filter((s) => s.form_factor === shape);
    assert.ok(pictures.length >= 1, shape);
    for (const { src, sizes, label } of pictures) {
      const png = readFileSync(`${SITE}/${src}`);
      const [w, h] = [png.readUInt32BE(16), png.readUInt32BE(20)];
      assert.equal(sizes, `${w}x${h}`);
      assert.ok(shape === 'narrow' ? w < h && h / w <= 2.3 : w > h && w / h <= 2.3, `${sizes} is ${shape}`);
      assert.ok(Math.min(w, h) >= 320 && Math.max(w, h) <= 3840);
      assert.match(label, /\w{3}/);
    }
  }
  const opens = manifest.file_handlers.flatMap((h) => Object.values(h.accept).flat());
  assert.deepEqual(opens.sort(), ['.dxf', '.json', '.svg']);
  for (const { action } of manifest.file_handlers) {
    assert.ok(existsSync(`${SITE}/${action}/index.html`));
  }
});

/** Share of the points that differ by more than a browser's own smoothing. */
const apart = (page, one, two) => page.evaluate(async (pngs) => {
  const [a, b] = await Promise.all(pngs.map(async (png) => {
    const image = await createImageBitmap(await (await fetch(`data:image/png;base64,${png}`)).blob());
    const pen = new OffscreenCanvas(image.width, image.height).getContext('2d');
    pen.drawImage(image, 0, 0);
    return pen.getImageData(0, 0, image.width, image.height).data;
  }));
  let count = 0;
  for (let i = 0; i < a.length; i += 4) {
    count += Math.abs(a[i] - b[i]) + Math.abs(a[i + 1] - b[i + 1]) + Math.abs(a[i + 2] - b[i + 2]) > 96;
  }
  return a.length === b.length ? count / (a.length / 4) : 1;
}, [one, two].map((png) => png.toString('base64')));

test('the manifest\'s pictures are of the page as it is', async () => {
  const blank = await (await shared.browser.newContext()).newPage();
  for (const picture of pictures) {
    const kept = readFileSync(`${folder}${picture[0]}.png`);
    const share = await apart(blank, kept, await draw(shared.browser, shared.host.url, picture));
    assert.ok(share < 0.01, `${picture[0]}: ${(100 * share).toFixed(1)} % has changed; run tools/draw_screenshots.mjs`);
  }
  assert.ok(await apart(blank, ...pictures.slice(0, 2).map(([name]) => readFileSync(`${folder}${name}.png`))) > 0.01, 'two pictures are apart');
  await blank.context().close();
});

/** The device hands a file over, as it does to an installed app. */
const launched = (page, name, text) => page.evaluate(([n, t]) => window.handOver({ files: [{ getFile: async () => new File([t], n) }] }), [name, text]);
const init = () => Object.defineProperty(window, 'launchQueue', { value: { setConsumer: (consumer) => { window.handOver = consumer; } } });

test('a drawing opened from the device\'s files goes to the part', async () => {
  const page = await start(PHONE, { init, url: shared.host.url + '#/part/shape' });
  await launched(page, 'bracket.svg', '<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="40mm" viewBox="0 0 50 40"><rect width="50" height="40"/></svg>');
  await page.waitForFunction(() => /bracket\.svg/.test(document.getElementById('mirror').textContent));
  await done(page);
});

test('a backup opened from the device\'s files asks, and is the work', async () => {
  const page = await start(PHONE, { init });
  const { job, ...rest } = JSON.parse(readFileSync(ROOT + 'assets/demo.json', 'utf8'));
  await launched(page, 'shop.json', JSON.stringify({ ...rest, job: { ...job, thickness_mm: 12 } }));
  await control(page, 'button', 'Use this backup').dispatchEvent('click');
  await until(async () => /^12 mm/.test(await reads(page, 'Thickness')), 'the plate of the backup');
  await launched(page, 'broken.json', '{"torchside": 1');
  await settled(page);
  assert.match(await reads(page, 'Thickness'), /^12 mm/, 'a file that is no backup changes nothing');
  await control(page, 'button', 'Shop').dispatchEvent('click');
  await done(page);
});
