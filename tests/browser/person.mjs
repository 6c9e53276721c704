// A person at the built page: what they read, touch and reach, by role and name.
import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { after, before } from 'node:test';
import { shopRecord } from './kept_shop.mjs';
import { clean, launch, open, PHONE, serve, settled, SITE, until } from './harness.mjs';

export const shared = {};

/** Before and after a file's tests: a host with the built site, and a browser. */
export function setUp() {
  before(async () => {
    assert.ok(existsSync(SITE + '/index.html'), 'build/site is not there: build it first (tools/serve, or the preset wasm)');
    shared.host = await serve(SITE);
    shared.browser = await launch();
  });
  after(async () => {
    await shared.browser?.close();
    await shared.host?.stop();
  });
}

/** The page, with the shop of assets/demo.json as the person's own from before; `kept`: another record, or '' for a first visit. */
export async function start(device = PHONE, { url = shared.host.url, kept = shopRecord(), ...options } = {}) {
  const page = await open(shared.browser, device, { kept, ...options });
  await page.goto(url);
  await settled(page);
  return page;
}

export async function done(page, but) {
  await clean(page, but);
  await page.context().close();
}

/** The mirrored control whose name begins so; the name of a button goes on with its value. */
export const control = (page, role, name) => page.getByRole(role, { name: new RegExp('^' + name.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&') + '(:|$)') });
export const reads = async (page, name) => (await control(page, 'button', name).textContent()).replace(name + ': ', '');
export const feed = (page) => reads(page, 'Feed');

/** Touch the canvas where the mirror says that the control is. */
export async function touch(page, role, name) {
  const box = await control(page, role, name).boundingBox();
  const at = [box.x + box.width / 2, box.y + box.height / 2];
  assert.ok(at[0] >= 0 && at[1] >= 0 && at[0] < page.viewportSize().width && at[1] < page.viewportSize().height, `${name} is on screen`);
  await (page.touching ?? true ? page.touchscreen.tap(...at) : page.mouse.click(...at));
  await settled(page);
}

export const focused = (page) => page.evaluate(() => document.activeElement.closest('[data-id]')?.dataset.id ?? '');

/** Press Tab until the control has the focus. */
export async function tabTo(page, id) {
  for (let i = 0; i < 120; i++) {
    if ((await focused(page)) === id) {
      return;
    }
    await page.keyboard.press('Tab');
  }
  assert.fail(`Tab never came to ${id}`);
}

export async function thicknessIs(page, wanted, before) {
  await until(async () => wanted.test(await reads(page, 'Thickness')), `the thickness to be ${wanted}, it is ${await reads(page, 'Thickness')}`);
  await settled(page);
  const now = await feed(page);
  assert.match(now, /^\d+ mm\/min/);
  assert.notEqual(now, before, 'another plate, another feed');
}

/** Another plate, picked from the usual sizes by a finger. */
export async function change(page, size) {
  await touch(page, 'button', 'Thickness');
  await touch(page, 'radio', size);
  await touch(page, 'button', 'Close');
}
