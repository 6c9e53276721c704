// What a page that is closed leaves behind: nothing of it is lost, nothing is put in twice, and nothing spoilt stays.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { PHONE, settled, until } from './harness.mjs';
import { keptRecords, keptWork, record } from './kept_shop.mjs';
import { change, done, reads, setUp, shared, start, touch } from './person.mjs';

setUp();

/** What pages that were closed while a write was under way have left in localStorage. */
const leftBehind = (page) => page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('torchside./.late')).map((key) => localStorage.getItem(key)));
const nothingLeft = async (page) => (await leftBehind(page)).length === 0;

/** Writes that this page does not live to see done. */
const neverDone = (page) => page.evaluate(() => { Object.defineProperty(IDBTransaction.prototype, 'oncomplete', { set() {} }); });

test('what a closed page could not finish: a spoilt one is dropped, one overtaken by other work is put together with it, by one tab only', async () => {
  const page = await start(PHONE);
  await change(page, '8');
  await until(async () => (await keptWork(page))?.job.thickness_mm === 8, 'the first change to be kept');
  for (const spoilt of ['null', '7', '{"on":["",""],"slot":7,"record":"x"}', '{"record":', '{"on":["",""],"slot":0,"record":5}']) {
    await page.evaluate((text) => localStorage.setItem('torchside./.late', text), spoilt);
    await page.reload();
    await settled(page);
    assert.match(await reads(page, 'Thickness'), /^8 mm/);
    await until(() => nothingLeft(page), `${spoilt} to be dropped`);
  }
  // A page that built on this work logged a cut and was closed; since then another tab changed the plate.
  const base = (await keptRecords(page)).sort((a, b) => Number(b.split(' ')[2]) - Number(a.split(' ')[2]));
  const [counter, json] = [Number(base[0].split(' ')[2]), JSON.parse(base[0].slice(base[0].indexOf('\n')))];
  const rows = json.shop.tests.length;
  json.shop.tests.push({ ...json.shop.tests[0], feed_mm_min: 1234 });
  const late = { record: record(json, counter + 1), slot: 0, on: base.map((text) => text.slice(0, 80)), sent: '', base: base[0] };
  const other = await page.context().newPage();
  await other.goto(shared.host.url);
  await settled(other);
  await other.bringToFront();
  await change(other, '10');
  await until(async () => (await keptWork(other))?.job.thickness_mm === 10, 'the change of the other tab');
  const third = await page.context().newPage();
  await third.goto(new URL('licences.txt', shared.host.url).href);
  await third.evaluate((text) => localStorage.setItem('torchside./.late', text), JSON.stringify(late));
  await until(async () => (await keptWork(other)).shop.tests.length > rows, 'the cut of the closed page');
  await page.waitForTimeout(1500);
  const work = await keptWork(other);
  assert.deepEqual([work.job.thickness_mm, work.shop.tests.length, work.shop.tests.at(-1).feed_mm_min], [10, rows + 1, 1234]);
  assert.ok(await nothingLeft(other));
  for (const tab of [page, other]) {
    await tab.bringToFront();
    await until(async () => /^10 mm/.test(await reads(tab, 'Thickness')), 'all tabs to show the same');
  }
  await done(page);
});

test('a change behind a write under way survives the page that is closed', async () => {
  const page = await start(PHONE);
  const other = await page.context().newPage();
  await other.goto(shared.host.url);
  await settled(other);
  await page.bringToFront();
  await neverDone(page);
  await change(page, '8');
  await page.waitForTimeout(700);
  await change(page, '10');
  await page.waitForTimeout(700);
  await page.close();
  await until(async () => /^10 mm/.test(await reads(other, 'Thickness')), 'the change behind the write');
  assert.equal((await keptWork(other)).job.thickness_mm, 10);
  await until(() => nothingLeft(other), 'nothing to be left over');
  await done(Object.assign(other, { problems: page.problems }));
});

test('two tabs that are closed at once, each with a change behind a write under way, lose neither', async () => {
  const page = await start(PHONE);
  const tabs = [page, await page.context().newPage(), await page.context().newPage()];
  for (const tab of tabs.slice(1)) {
    await tab.goto(shared.host.url);
    await settled(tab);
  }
  const [one, two, stays] = tabs;
  const hears = () => { BroadcastChannel.prototype.postMessage = () => {}; }; // neither hears of the other
  await Promise.all([one, two].map((tab) => tab.evaluate(hears)));
  await Promise.all([one, two].map(neverDone));
  await one.bringToFront();
  await change(one, '8');
  await one.waitForTimeout(700);
  await change(one, '10');
  await two.bringToFront();
  await touch(two, 'button', 'Units');
  await two.waitForTimeout(700);
  await Promise.all([one.close({ runBeforeUnload: false }), two.close({ runBeforeUnload: false })]);
  await until(async () => (await keptWork(stays)).job.thickness_mm === 10, 'the change of the first');
  await until(async () => (await keptWork(stays)).shop.display.units === 'inch', 'the change of the second');
  await until(() => nothingLeft(stays), 'nothing to be left over');
  await done(Object.assign(stays, { problems: page.problems }));
});

test('what a closed page left is there until it is written: a tab that finds it and dies first takes nothing along', async () => {
  const page = await start(PHONE);
  await change(page, '8');
  await until(async () => (await keptWork(page))?.job.thickness_mm === 8, 'the first change to be kept');
  await change(page, '10');
  await until(async () => (await keptWork(page))?.job.thickness_mm === 10, 'other work');
  const [now, before] = (await keptRecords(page)).sort((a, b) => Number(b.split(' ')[2]) - Number(a.split(' ')[2]));
  const json = JSON.parse(before.slice(before.indexOf('\n')));
  const rows = json.shop.tests.length;
  json.shop.tests.push({ ...json.shop.tests[0], feed_mm_min: 1234 });
  const late = { record: record(json, Number(before.split(' ')[2]) + 1), slot: 0, on: [before.slice(0, 80), ''], sent: '', base: before };
  await page.evaluate((text) => localStorage.setItem('torchside./.late0.5', text), JSON.stringify(late));
  const dying = await page.context().newPage();
  await dying.addInitScript(() => { // none of its records reaches the storage; what it notes beside them may
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function (...args) {
      if (args[1] !== 'late') {
        window.died = true;
        this.transaction.abort();
      }
      return put.apply(this, args);
    };
  });
  await dying.goto(shared.host.url);
  await until(() => dying.evaluate(() => window.died), 'it to begin');
  await dying.close();
  assert.ok((await keptRecords(page)).includes(now), 'it wrote nothing');
  await page.reload();
  await until(async () => (await keptWork(page)).shop.tests.length > rows, 'the cut of the closed page');
  const work = await keptWork(page);
  assert.deepEqual([work.job.thickness_mm, work.shop.tests.length, work.shop.tests.at(-1).feed_mm_min], [10, rows + 1, 1234]);
  await until(() => nothingLeft(page), 'nothing to be left over');
  await done(page);
});
