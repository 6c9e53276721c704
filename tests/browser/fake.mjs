// A page with the stand-in for the app behind it, for the tests of the page alone.
import { after, before } from 'node:test';
import { clean, DESKTOP, launch, listen, open, pack, serve } from './harness.mjs';

export const shared = {};

/** Before and after a file's tests: a host with the page packed around the stand-in, and a browser. */
export function setUp(name) {
  before(async () => {
    shared.host = await serve(pack(name, { fake: true }));
    shared.browser = await launch();
  });
  after(async () => {
    await shared.browser?.close();
    await shared.host?.stop();
  });
}

export async function fake(device = DESKTOP, options = {}) {
  const page = options.context ? listen(await options.context.newPage()) : await open(shared.browser, device, options);
  await page.goto(shared.host.url + (options.query || ''));
  await page.waitForFunction(() => window.fakePublish);
  page.publish = async (records) => {
    await page.evaluate((r) => window.fakePublish(r), records);
    await page.evaluate(() => new Promise((done) => { requestAnimationFrame(() => requestAnimationFrame(done)); }));
  };
  page.calls = (name) => page.evaluate((n) => window.fakeCalls.filter((c) => !n || c[0] === n), name);
  page.forget = () => page.evaluate(() => { window.fakeCalls.length = 0; });
  return page;
}

export const done = async (page, but) => {
  await clean(page, but);
  await page.context().close();
};
