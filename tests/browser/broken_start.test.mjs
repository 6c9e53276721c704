// A first visit on a bad line: any one file that fails, is cut or is something else ends in a sentence and a way on, never in a blank
// page or an endless "getting ready"; and when the line is good again, the way on leads there.
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { test } from 'node:test';
import { answered, open, PHONE, settled, SITE, until } from './harness.mjs';
import { control, feed, setUp, shared } from './person.mjs';

setUp();

const WAYS = {
  'is not there': (route) => route.fulfill({ status: 404, body: 'not here', contentType: 'text/plain' }),
  'breaks off': (route) => route.abort('connectionreset'),
  'is cut': async (route) => {
    const answer = await route.fetch();
    const body = await answer.body();
    await route.fulfill({ response: answer, body: body.subarray(0, body.length >> 1), headers: { ...answer.headers(), 'content-length': String(body.length >> 1) } });
  },
  'is empty': async (route) => route.fulfill({ response: await route.fetch(), body: '' }),
  'is a page of the host\'s own': (route) => route.fulfill({ status: 200, body: '<!doctype html><title>Sign in</title>', contentType: 'text/html' }),
};
const QUOTE = '#q=AAAA';
// The file, where it is needed, and what its failing may leave: "stop" a sentence in the app's place, "late" the first answer with a sentence, "read" the
// quote's words without their style.
const FILES = [
  ['page-*.js', '', 'stop'], ['torchside-*.js', '', 'stop'], ['torchside-*.wasm', '', 'stop'], ['page-*.css', '', 'stop'],
  ['later-*.wasm', '', 'late'], ['later-*.js', '', 'late'], ['quote-*.js', QUOTE, 'stop'], ['quote-*.wasm', QUOTE, 'stop'], ['quote-*.css', QUOTE, 'read'],
];

const pattern = (name) => new RegExp('/' + name.replace('.', '\\.').replace('*', '[0-9a-f]+') + '$');

test('the table has every file that a first visit asks for', () => {
  const names = readdirSync(SITE).filter((name) => /-[0-9a-f]{8}\.(js|css|wasm)$/.test(name) && !/^(plain|reader|page-[a-z]{2})-/.test(name));
  assert.deepEqual(names.filter((name) => !FILES.some(([file]) => pattern(file).test('/' + name))), []);
});

for (const [file, where, left] of FILES) {
  test(`${file} ${Object.keys(WAYS).join(', ')}: a sentence and a way on`, async () => {
    for (const [what, spoil] of Object.entries(WAYS)) {
      const page = await open(shared.browser, PHONE, { serviceWorkers: 'block' });
      await page.route(pattern(file), spoil);
      await page.goto(shared.host.url + where);
      const alert = page.getByRole('alert');
      if (left === 'read') {
        await page.getByText('This quote cannot be shown').waitFor();
        await page.context().close();
        continue;
      }
      await until(async () => /[a-z]{3} .*\./.test((await alert.allTextContents()).join()), `${file} that ${what}: a sentence`);
      if (left === 'late') {
        await answered(page);
        assert.match(await feed(page), /\d/, 'the first answer stays');
        const box = await control(page, 'button', 'Thickness').boundingBox();
        await page.touchscreen.tap(box.x + 20, box.y + 20);
        await page.unroute(pattern(file));
        await settled(page); // by itself
        await page.getByRole('dialog').waitFor(); // what was touched is answered
        assert.equal(await alert.count(), 0);
      } else {
        assert.doesNotMatch(await page.locator('body').innerText(), /Getting the calculator ready/);
        await page.unroute(pattern(file));
        await alert.getByRole('link', { name: 'Load the page again' }).click();
        await (where ? page.getByText('This quote cannot be shown').waitFor() : settled(page));
      }
      await page.context().close();
    }
  });
}

test('a reader of drawings or a code that does not arrive is told where it was asked for, and comes the next time', async () => {
  for (const [what, spoil] of Object.entries(WAYS)) {
    for (const file of ['reader-*.js', 'reader-*.wasm']) {
      const page = await open(shared.browser, PHONE, { serviceWorkers: 'block' });
      await page.goto(shared.host.url + '#/part/shape');
      await settled(page);
      await page.route(pattern(file), spoil);
      const drop = () => page.evaluate(() => {
        const carried = new DataTransfer();
        carried.items.add(new File(['<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="40mm" viewBox="0 0 50 40"><rect width="50" height="40"/></svg>'],
          'plate.svg', { type: 'image/svg+xml' }));
        document.getElementById('canvas').dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }));
      });
      await drop();
      await until(async () => /plate\.svg could not be read/.test(await page.locator('#mirror').textContent()), `word of ${file} that ${what}`);
      await page.unroute(pattern(file));
      await drop();
      await until(async () => (await page.locator('[data-id="drawing/open"]').getAttribute('aria-description')) === 'plate.svg', 'the drawing');
      await page.context().close();
    }
  }
});
