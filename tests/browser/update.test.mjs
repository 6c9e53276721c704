// Versions come and go on the host, with any one of their files failing, in two tabs: the version in use stays whole until another
// whole one is in use, so that every start works without a network.
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { clean, launch, listen, offlineReady, open, pack, serve, until } from './harness.mjs';

let browser;
const sites = {};
before(async () => {
  for (const name of ['N', 'N+1', 'N+2']) {
    sites[name] = pack('fake-' + name.replace('+', ''), { fake: true, mark: name });
  }
  browser = await launch();
});
after(() => browser?.close());

const versionIn = (folder) => /data-version="([^"]+)"/.exec(readFileSync(folder + '/index.html', 'utf8'))[1];
const version = (page) => page.evaluate(() => document.documentElement.dataset.version).catch(() => '');
/** Every file beside index.html; one in a folder is fetched in the same way. */
const listed = (folder) => readdirSync(folder, { withFileTypes: true }).filter((f) => f.isFile() && f.name !== 'sw.js').map((f) => f.name);

/** Runs in the page: the stand-in gives the first answer, after which the worker is asked for. */
function answers() {
  const feed = [{ id: 'cut/feed', role: 'figure', name: 'Feed', value: '1620 mm/min' }];
  const publish = () => (window.fakePublish ? window.fakePublish(feed) : setTimeout(publish, 20)); // what fails may come later, or never
  window.addEventListener('load', publish);
}

/** The worker has looked at the host and is done with what it found. */
async function lookedAt(page) {
  await page.evaluate(async () => {
    const worker = await navigator.serviceWorker.ready;
    await worker.update().catch(() => {});
    for (let still = 0; still < 3; still = worker.installing ? 0 : still + 1) {
      await new Promise((next) => { setTimeout(next, 30); });
    }
  });
}

/** A new tab without a network shows a whole page of one of these versions. */
async function startsOffline(host, context, may) {
  host.down = true;
  const page = listen(await context.newPage());
  await page.goto(host.url);
  await page.waitForFunction(() => window.fakePublish);
  const seen = await version(page);
  assert.ok(may.includes(seen), `${seen} is one of ${may}`);
  await clean(page, /sw\.js|Failed to load|fetching the script/);
  await page.close();
  host.down = false;
  return seen;
}

// host: what lies there from now on; fails: every file of it in turn; take: the offer is taken; then: what must start offline.
const STORIES = [
  ['N+1 with a file that fails keeps N', [['N+1', 'fails', 'N']]],
  ['N+1 waits, the host goes back to N with a file that fails', [['N+1', 'waits', 'N'], ['N', 'fails', 'N']]],
  ['N, N+1, N, N+2, each taken', [['N+1', 'taken', 'N+1'], ['N', 'taken', 'N'], ['N+2', 'taken', 'N+2']]],
  ['N+1 waits, then N+2 with a file that fails', [['N+1', 'waits', 'N'], ['N+2', 'fails', 'N']]],
  ['N+1 taken, the host goes back to N with a file that fails, then N+2', [['N+1', 'taken', 'N+1'], ['N', 'fails', 'N+1'], ['N+2', 'taken', 'N+2']]],
];

for (const [name, steps] of STORIES) {
  test(name, { timeout: 300e3 }, async (t) => {
    const failing = steps.findIndex(([, how]) => how === 'fails');
    const files = failing < 0 ? [null] : listed(sites[steps[failing][0]]);
    for (const file of files) {
      const host = await serve(sites.N);
      t.after(() => host.stop()); // a story that fails must not keep the runner waiting
      const page = await open(browser, undefined, { init: answers });
      await page.goto(host.url);
      await offlineReady(page);
      const other = listen(await page.context().newPage());
      await other.goto(host.url);
      for (const [site, how, then] of steps) {
        host.folder = sites[site];
        host.replace = how === 'fails' ? { [file]: Buffer.from('something else') } : {};
        await lookedAt(page);
        if (how === 'taken') {
          await until(() => page.evaluate(async () => Boolean((await navigator.serviceWorker.ready).waiting)).catch(() => false), 'a version that waits');
          await page.evaluate(() => Module.shell.useUpdate());
          for (const tab of [page, other]) {
            await until(async () => (await version(tab)) === versionIn(sites[site]), `${site} in every tab`);
          }
        }
        const seen = await startsOffline(host, page.context(), [versionIn(sites[then])]);
        assert.equal(seen, versionIn(sites[then]), `${file}: ${site} ${how}`);
      }
      await page.context().close();
      await host.stop();
    }
  });
}
