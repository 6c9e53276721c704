// The service worker: all or nothing, one version at a time, offered and not forced, and a way out. With the stand-in for the app,
// whose two packs differ only in their version; app.test.mjs does the same with the app and the user's work in it.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { clean, launch, listen, offlineReady, open, pack, ROOT, serve, until } from './harness.mjs';
import { keptRecords } from './kept_shop.mjs';

const feed = [{ id: 'cut/feed', role: 'figure', name: 'Feed', value: '1620 mm/min' }];
let browser;
let one;
let two;
before(async () => {
  one = pack('fake-one', { fake: true });
  two = pack('fake-two', { fake: true, mark: 'two' });
  browser = await launch();
});
after(() => browser?.close());

const versionIn = (folder) => /data-version="([^"]+)"/.exec(readFileSync(folder + '/index.html', 'utf8'))[1];
const version = (page) => page.evaluate(() => document.documentElement.dataset.version);
const caches = (page) => page.evaluate(() => window.caches.keys());
const notices = (page) => page.evaluate(() => window.fakeCalls.filter((c) => c[0] === 'notice').map((c) => c[1]));

/** Let the stand-in answer on this page, now and after every load. */
async function answering(page) {
  await page.addInitScript((records) => {
    const publish = () => (window.fakePublish ? window.fakePublish(records) : setTimeout(publish, 20));
    window.addEventListener('load', publish);
  }, feed);
  return page;
}

async function visit(host) {
  const page = await answering(await open(browser));
  await page.goto(host.url);
  await offlineReady(page);
  await until(async () => (await notices(page)).includes('offline-ready'), 'word that it works offline');
  return page;
}

async function leave(page, but) {
  await clean(page, but);
  await page.context().close();
}

test('works from the first visit with the server gone', async () => {
  const host = await serve(one);
  const page = await visit(host);
  await host.stop();
  await assert.rejects(fetch(host.url), 'the server is really gone');
  await page.reload();
  assert.equal(await version(page), versionIn(one));
  await page.waitForFunction(() => performance.getEntriesByName('torchside-answer').length === 1);
  const deep = await page.context().newPage();
  await deep.goto(host.url + '?from=shortcut#/cut/stock');
  assert.equal(await version(deep), versionIn(one));
  assert.match(await deep.evaluate(async () => (await fetch('licences.txt')).text()), /SIL OPEN FONT LICENSE/);
  const missing = await deep.evaluate(async () => { const r = await fetch('page-00000000.js'); return [r.status, r.headers.get('content-type')]; });
  assert.deepEqual(missing, [404, 'text/plain'], 'a missing file is missing, never the start page');
  await deep.goto(host.url + 'no/such/place');
  assert.equal(deep.url(), host.url, 'an unknown address leads to the start');
  await leave(page, /404/);
});

test('a new version waits, is offered, and is taken by all tabs at once; in both directions', async () => {
  const host = await serve(one);
  const page = await visit(host);
  const other = listen(await answering(await page.context().newPage()));
  await other.goto(host.url);
  for (const [from, to] of [[one, two], [two, one]]) {
    host.folder = to;
    await page.reload();
    assert.equal(await version(page), versionIn(from), 'nobody is moved without asking');
    await until(async () => (await notices(page)).includes('update-ready'), 'the offer');
    await page.reload();
    assert.equal(await version(page), versionIn(from), 'still not');
    assert.equal(await page.evaluate(async (f) => (await fetch(f)).status, `page-${/page-(\w+)\.js/.exec(readFileSync(from + '/index.html', 'utf8'))[1]}.js`), 200);
    await until(async () => (await notices(page)).includes('update-ready'), 'the offer again');
    await page.evaluate(() => Module.shell.useUpdate());
    for (const tab of [page, other]) {
      await until(async () => (await version(tab).catch(() => '')) === versionIn(to), 'the new version in every tab');
    }
    assert.deepEqual(await caches(page), ['torchside / ' + versionIn(to)], 'the old cache is gone, after the new one is in use');
  }
  await clean(other);
  await leave(page);
  await host.stop();
});

test('the offer is not forced: it is taken when the last tab has been closed', async () => {
  const host = await serve(one);
  const page = await visit(host);
  host.folder = two;
  await page.reload();
  await until(async () => (await notices(page)).includes('update-ready'), 'the offer');
  const next = await page.context().newPage();
  await next.goto('about:blank');
  await page.close();
  await until(async () => {
    await next.goto(host.url);
    const now = await version(next);
    await next.goto('about:blank');
    return now === versionIn(two);
  }, 'the version that waited');
  await next.context().close();
  await host.stop();
});

for (const [what, spoil] of [
  ['a file with other content', (name) => Buffer.from(readFileSync(`${two}/${name}`).toString() + '\n')],
  ['a file of another type', () => Buffer.from('<!doctype html><title>start page</title>')],
]) {
  test(`all or nothing: ${what} keeps the whole version out`, async () => {
    const host = await serve(one);
    const page = await visit(host);
    host.folder = two;
    host.replace['licences.txt'] = spoil('licences.txt');
    await page.evaluate(async () => { await (await navigator.serviceWorker.ready).update().catch(() => {}); });
    await until(() => page.evaluate(async () => { const r = await navigator.serviceWorker.ready; return !r.installing && !r.waiting; }), 'the refusal');
    assert.deepEqual(await caches(page), ['torchside / ' + versionIn(one)]);
    await page.reload();
    assert.equal(await version(page), versionIn(one));
    host.replace = {};
    await page.evaluate(async () => { await (await navigator.serviceWorker.ready).update(); });
    await until(async () => (await notices(page)).includes('update-ready'), 'the offer, once the host is right');
    await leave(page, /licences|not what version|ServiceWorker script|register/i);
    await host.stop();
  });
}

test('the kill switch takes worker and caches away, and leaves the work', async () => {
  const host = await serve(one);
  const page = await visit(host);
  await page.evaluate(() => { Module.shell.load(0); Module.shell.save('work', 0); });
  await until(async () => (await keptRecords(page))[0] === 'work', 'the work to be kept');
  host.replace['sw.js'] = readFileSync(ROOT + 'web/page/sw-off.js');
  host.folder = two;
  await page.evaluate(async () => { await (await navigator.serviceWorker.ready).update().catch(() => {}); });
  await until(async () => (await version(page).catch(() => '')) === versionIn(two), 'the page from the server');
  assert.equal((await keptRecords(page))[0], 'work');
  host.replace = {};
  await page.context().close();
  await host.stop();
});
