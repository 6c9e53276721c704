// A person with a mouse at a wide window: starts at the root and clicks what is seen, place after place.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { axe, PHONE, settled } from './harness.mjs';
import { control, done, setUp, start, touch } from './person.mjs';

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

test('the keyboard keeps its place when what has it is made anew', async () => {
  const page = await atRoot(1440);
  await control(page, 'button', 'Feed').focus();
  for (const name of ['Tune', 'Cut', 'Shop']) { // the settings are the page's main part, then a column beside it
    await control(page, 'button', name).dispatchEvent('click');
    await settled(page);
    assert.equal(await page.evaluate(() => document.activeElement.dataset.id), 'cut/feed', name);
  }
  await done(page);
});

test('the window is named after the place and the sheet', async () => {
  for (const [device, touching] of [[window_(1440), false], [PHONE, true]]) {
    const page = await start(device);
    page.touching = touching;
    assert.equal(await page.title(), 'Cut · Torchside');
    await touch(page, 'button', 'Feed');
    assert.equal(await page.title(), 'Feed · Cut · Torchside');
    await touch(page, 'button', 'Close');
    await touch(page, 'button', 'Quote');
    assert.equal(await page.title(), 'Quote · Torchside');
    await touch(page, 'button', 'Cost line by line');
    assert.match(await page.title(), touching ? /^Cost.* · Quote · Torchside$/ : /^Quote · Torchside$/, 'a column that always stands there is no sheet');
    await done(page);
  }
  const page = await start(PHONE);
  await touch(page, 'button', 'Quote');
  await touch(page, 'button', 'Thickness'); // the keypad takes the place of the places
  assert.match(await page.title(), / · Quote · Torchside$/);
  await done(page);
});

test('columns that always stand there are regions; what was opened is a dialog', async () => {
  const page = await atRoot(1440);
  for (const [place, region] of [['Cut', 'Stock'], ['Tune', 'The log'], ['Quote', 'Cost line by line'], ['Shop', 'Machine']]) {
    await touch(page, 'button', place);
    assert.equal(await page.getByRole('region', { name: region, exact: true }).count(), 1, region);
    assert.equal(await page.getByRole('dialog').count(), 0, place);
    assert.deepEqual(await axe(page), [], place);
  }
  await touch(page, 'button', 'Cut');
  await touch(page, 'button', 'Feed');
  assert.equal(await page.getByRole('dialog', { name: 'Feed', exact: true }).count(), 1);
  await touch(page, 'button', 'Close');
  assert.equal(await page.getByRole('region', { name: 'Stock', exact: true }).count(), 1);
  await done(page);
});
