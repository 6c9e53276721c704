// Nothing that a person can pick, drop, paste or open takes the page down, however large it is: 0 to 64 MB of each kind.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { DESKTOP, settled, until } from './harness.mjs';
import { keptWork } from './kept_shop.mjs';
import { control, done, reads, setUp, shared, start } from './person.mjs';

setUp();

const MB = 1 << 20;
const SIZES = [0, 1, 65535, MB - 1, MB, MB + 1, 1.3 * MB, 1.5 * MB, 5 * MB, 8 * MB, 20e6, 20e6 + 1, 64 * MB].map(Math.round);
// Runs in the page: what begins a file of this kind, and what fills it up. `name` says the rest.
const KINDS = [
  ['backup.json', '{"torchside": 1, "job": {"name": "', 'x'],
  ['spaces.json', '{', ' '],
  ['deep.json', '{"a":', '['],
  ['plate.dxf', '0\nSECTION\n2\nENTITIES\n', '0\nLINE\n8\n0\n10\n0\n20\n0\n11\n5\n21\n5\n'],
  ['plate.svg', '<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="40mm" viewBox="0 0 50 40">', '<rect width="5" height="4"/>'],
  ['deep.svg', '<svg xmlns="http://www.w3.org/2000/svg">', '<g>'],
  ['photo.png', '\u0089PNG', '\0'],
  ['notes.txt', '', 'a'],
];

/** The page still does what it is told: a touch is answered, and the answer is kept. */
async function lives(page, what) {
  const before = await reads(page, 'Units');
  await control(page, 'button', 'Units').click({ force: true });
  await until(async () => (await reads(page, 'Units')) !== before, `the page to answer after ${what}`, 30000);
  await until(async () => (await keptWork(page))?.shop.display.units === (await reads(page, 'Units')), `the page to keep its work after ${what}`, 30000);
  assert.equal(await page.getByRole('alert').filter({ hasText: 'stopped' }).count(), 0, what);
}

for (const [name, head, fill] of KINDS) {
  test(`${name} of 0 to 64 MB, dropped`, { timeout: 600e3 }, async () => {
    const page = await start(DESKTOP);
    for (const size of SIZES) {
      await page.evaluate(([file, first, more, bytes]) => {
        const parts = [first.slice(0, bytes)];
        const block = more.repeat(Math.ceil(65536 / more.length));
        let left = bytes - parts[0].length;
        for (; left > block.length; left -= block.length) {
          parts.push(block);
        }
        parts.push(block.slice(0, Math.max(0, left)));
        const carried = new DataTransfer();
        carried.items.add(new File(parts, file));
        document.getElementById('canvas').dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }));
      }, [name, head, fill, size]);
      await page.waitForTimeout(150);
      await lives(page, `${size} bytes of ${name}`);
    }
    await done(page);
  });
}

test('a text of 0 to 64 MB pasted into a field, and a link as long', { timeout: 600e3 }, async () => {
  const page = await start(DESKTOP, { permissions: ['clipboard-read', 'clipboard-write'] });
  await page.goto(shared.host.url + '#/shop/kept');
  await settled(page);
  const field = control(page, 'textbox', 'Shop name');
  for (const size of SIZES) {
    await field.focus();
    await page.evaluate((n) => navigator.clipboard.writeText('9'.repeat(n)), size);
    await page.keyboard.press('Control+A');
    await page.keyboard.press('Control+V');
    await page.keyboard.press('Escape');
    await lives(page, `${size} letters pasted`);
  }
  for (const kind of ['#j=', '#/cut/', '#q', '#']) {
    for (const size of [0, 1, 65535, MB, 1.5 * MB].map(Math.round)) { // the browser itself opens no address of more than 2 MB
      await page.evaluate(([k, n]) => { location.hash = k + 'A'.repeat(n); }, [kind, size]);
      await lives(page, `${kind} and ${size} letters`);
    }
  }
  await done(page);
});
