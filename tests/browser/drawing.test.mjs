// A drawing opened from the device's files, dropped on the page, asked for its unit, refused, cancelled, kept, and opened
// without a network: by a person at the built page.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { DESKTOP, offlineReady, PHONE, settled, SINGLE, until } from './harness.mjs';
import { keptRecords } from './kept_shop.mjs';
import { control, done, setUp, start } from './person.mjs';

setUp();

const square = (side) => [[0, 0, side, 0], [side, side, side, 0], [side, side, 0, side], [0, side, 0, 0]]
  .map(([a, b, c, d]) => `0\nLINE\n8\n0\n10\n${a}\n20\n${b}\n11\n${c}\n21\n${d}\n`).join('');
const circle = (x, y, r) => `0\nCIRCLE\n8\n0\n10\n${x}\n20\n${y}\n40\n${r}\n`;
const dxf = (entities, unit = '9\n$INSUNITS\n70\n4\n') =>
  `0\nSECTION\n2\nHEADER\n${unit}0\nENDSEC\n0\nSECTION\n2\nENTITIES\n${entities}0\nENDSEC\n0\nEOF\n`;

const file = (name, text) => ({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(text) });

/** By the keyboard, which reaches what lies below the fold too. */
async function use(page, where) {
  await where.focus();
  await page.keyboard.press('Enter');
  await settled(page);
}

/** Pick a file in the device's own picker. */
async function pick(page, name, text) {
  const chooser = page.waitForEvent('filechooser');
  await use(page, page.locator('[data-id="drawing/open"]'));
  await (await chooser).setFiles(file(name, text));
}

async function toShape(page) {
  await page.goto(page.url().split('#')[0] + '#/part');
  await settled(page);
  await use(page, page.locator('[data-id="part/open/shape"]'));
}

const says = (page, words, what) => until(async () => words.test(await page.locator('#mirror').textContent()), what);
const opened = (page, name) => until(async () => (await page.locator('[data-id="drawing/open"]').getAttribute('aria-description')) === name,
  `${name} to be the part`);
const kept = async (page) => (await keptRecords(page)).join('\n');

test('a DXF picked on a phone becomes the part, and is there again after a reload', async () => {
  const page = await start(PHONE);
  await toShape(page);
  await pick(page, 'base plate.dxf', dxf(square(80) + circle(40, 40, 10)));
  await opened(page, 'base plate.dxf');
  await until(async () => /"shape": ?"drawing"/.test(await kept(page)), 'the drawing to be kept');
  await page.reload();
  await settled(page);
  await toShape(page);
  await opened(page, 'base plate.dxf');
  await done(page);
});

test('an SVG without a unit is asked about, and read in the unit chosen', async () => {
  const page = await start(DESKTOP);
  await toShape(page);
  await pick(page, 'sign.svg', '<svg viewBox="0 0 10 5"><rect width="4" height="2"/></svg>');
  await says(page, /sign\.svg does not say its unit\. It is 4 by 2 units/, 'the question');
  assert.doesNotMatch(await kept(page), /"shape": ?"drawing"/);
  await use(page, page.locator('[data-id="drawing/unit/inch"]'));
  await until(async () => /101\.6/.test(await kept(page)), '4 in as 101.6 mm in the workbook');
  await done(page);
});

test('a broken drawing is refused with its line; the part stays', async () => {
  const page = await start(PHONE);
  await toShape(page);
  await pick(page, 'broken.dxf', dxf('0\nCIRCLE\n8\n0\n10\nzero\n'));
  await says(page, /broken\.dxf line 19 has no number as its value\. Use a decimal number/, 'the reason');
  assert.doesNotMatch(await kept(page), /"shape": ?"drawing"/);
  await done(page);
});

test('a drawing dropped on the page is read, and what was left out is named', async () => {
  const page = await start(DESKTOP);
  await toShape(page);
  const text = dxf(square(80) + square(80) + '0\nTEXT\n8\n0\n1\n6 mm\n');
  const data = await page.evaluateHandle((t) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([t], 'dropped.dxf'));
    return transfer;
  }, text);
  await page.dispatchEvent('#canvas', 'dragover', { dataTransfer: data });
  await page.dispatchEvent('#canvas', 'drop', { dataTransfer: data });
  await says(page, /4 places: The same piece is drawn twice; one was left out\./, 'the duplicates');
  await says(page, /Text, dimensions, hatches and the like/, 'the text');
  await done(page);
});

test('a crossing and a duplicate are listed and marked, one touch shows where, a reload keeps them, a shape takes them away', async () => {
  const page = await start(PHONE);
  await toShape(page);
  await pick(page, 'plate.dxf', dxf(square(200) + square(200) + circle(160, 100, 10) + circle(170, 100, 10)));
  await opened(page, 'plate.dxf');
  await page.goto(page.url().split('#')[0] + '#/part');
  await settled(page);
  const row = (code) => page.locator(`[data-id^="part/verdict/${code}/"]`);
  const outside = () => page.getByRole('button', { name: /^Outside \d/ }).boundingBox();
  const listed = async () => {
    await until(async () => (await row('crossing').count()) === 1, 'both crossings in one row');
    assert.match(await row('crossing').textContent(), /Lines cross or touch here/);
    assert.match(await row('crossing').getAttribute('aria-description'), /2 places · show where/);
    assert.equal(await row('duplicate').count(), 1);
    assert.match(await row('duplicate').textContent(), /same piece is drawn twice/);
    assert.match(await row('duplicate').getAttribute('aria-description'), /4 places of 200 mm · show where/);
  };
  await listed();
  for (const reloaded of [false, true]) {
    if (reloaded) {
      await page.reload();
      await settled(page);
      await listed();
    }
    const whole = await outside();
    await use(page, row('crossing'));
    await until(async () => (await outside()).width > 6 * whole.width, 'the picture to be enlarged');
    // The circles meet at x = 165 of 200: the place is in the middle of the picture now, which stands on the screen.
    const near = await outside();
    const middle = near.x + (165 / 200) * near.width;
    assert.ok(Math.abs(middle - (whole.x + whole.width / 2)) < 12, `the crossing lies at ${middle}`);
    assert.ok(await page.evaluate((id) => document.querySelector(id).getBoundingClientRect().top >= 0, '[data-id="part/picture"]'));
    await use(page, control(page, 'button', 'Fit'));
    await until(async () => Math.abs((await outside()).width - whole.width) < 1, 'the whole part');
  }
  await toShape(page);
  await says(page, /2 places: Lines cross or touch here\./, 'the crossings in the sheet too');
  await use(page, control(page, 'radio', 'Ring'));
  await page.goto(page.url().split('#')[0] + '#/part');
  await settled(page);
  assert.equal(await row('crossing').count() + await row('duplicate').count(), 0);
  assert.match(await kept(page), /"findings": ?\[\]/);
  await done(page);
});

test('a long drawing shows how far it is, leaves the app awake, and can be stopped', async () => {
  const page = await start(DESKTOP);
  await toShape(page);
  let lines = '';
  for (let i = 0; i < 60000; i++) {
    const [x, y] = [(i % 245) * 8, Math.floor(i / 245) * 8];
    lines += circle(x, y, 3);
  }
  await page.evaluate(() => { // watch the worker's word
    const post = Worker.prototype.postMessage;
    window.shares = [];
    Worker.prototype.postMessage = function (...args) {
      this.addEventListener('message', (e) => e.data.share && window.shares.push(e.data.share));
      post.apply(this, args);
    };
  });
  const text = dxf(lines);
  await pick(page, 'long.dxf', text);
  await says(page, /Reading long\.dxf: \d+ %/, 'the progress');
  await use(page, page.locator('[data-id="drawing/cancel"]'));
  assert.doesNotMatch(await page.locator('#mirror').textContent(), /Reading long/);
  await page.waitForTimeout(1500);
  assert.doesNotMatch(await kept(page), /"shape": ?"drawing"/, 'what was stopped is not taken');
  await pick(page, 'long.dxf', text);
  await until(async () => /"drawing_name": ?"long\.dxf"/.test(await kept(page)), 'the whole drawing', 60000);
  const shares = await page.evaluate(() => window.shares);
  assert.ok(shares.length > 20 && shares.every((s, i) => s <= 1 && (i === 0 || s >= shares[i - 1] || s < 0.1)), `${shares.length} shares`);
  assert.match(await kept(page), /"drawing": ?null/, '120 000 points are used, not kept');
  await done(page);
});

test('the reader is kept: a drawing opens with the network cut', async () => {
  const page = await start(PHONE);
  await offlineReady(page);
  await page.context().setOffline(true);
  await page.reload();
  await settled(page);
  await toShape(page);
  await pick(page, 'cut.dxf', dxf(circle(0, 0, 30)));
  await until(async () => /"drawing_name": ?"cut\.dxf"/.test(await kept(page)), 'the drawing without a network');
  await page.context().setOffline(false);
  await done(page);
});

test('the page in one file reads a drawing too', async () => {
  await readFile(SINGLE);
  const page = await start(DESKTOP, { url: pathToFileURL(SINGLE).href });
  await toShape(page);
  await pick(page, 'single.dxf', dxf(circle(0, 0, 30)));
  await opened(page, 'single.dxf');
  await done(page);
});
