// A person with a mouse at a wide window: starts at the root and clicks what is seen, place after place.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { done, setUp, start, touch } from './person.mjs';

setUp();

const PLACES = ['Cut', 'Tune', 'Part', 'Quote', 'Shop'];
const window_ = (width, height = 900) => ({ viewport: { width, height }, deviceScaleFactor: 1 });

/** From the root, by the mouse. */
async function atRoot(width, height) {
  const page = await start(window_(width, height));
  page.touching = false;
  return page;
}

const here = (page) => page.locator('nav [aria-current="page"]').textContent();
const bodies = (page) => page.evaluate(() => [...document.querySelectorAll('#mirror > :is(main, section)')].map((el) => el.dataset.id));

for (const width of [768, 1100, 1440, 1920]) {
  test(`every place is reached from every other by a click, ${width} px wide`, async () => {
    const page = await atRoot(width);
    for (const from of PLACES) {
      for (const to of PLACES.filter((name) => name !== from)) {
        for (const name of [from, to]) {
          await touch(page, 'button', name);
          assert.equal(await here(page), name, `${from} to ${to}`);
          assert.equal(await page.locator('#mirror main').count(), 1, `one main part on ${name}`);
        }
      }
    }
    await done(page);
  });
}

test('the reading order is that of the picture after every click', async () => {
  const page = await atRoot(1440);
  const fresh = {};
  for (const name of PLACES) {
    const other = await atRoot(1440);
    await touch(other, 'button', name);
    fresh[name] = await bodies(other);
    await done(other);
  }
  for (const name of ['Tune', 'Cut', 'Shop', 'Quote', 'Part', 'Cut', 'Quote', 'Tune', 'Shop', 'Cut']) {
    await touch(page, 'button', name);
    assert.deepEqual(await bodies(page), fresh[name], name);
  }
  await done(page);
});
