// The quote that travels: the Quote screen, its links and seals, and the customer's page, light, printable and offline once seen.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { axe, clean, DESKTOP, listen, open, PHONE, ROOT, serve, settled, SINGLE, SITE, until } from './harness.mjs';
import { keptRecords, putRecords } from './kept_shop.mjs';
import { control, done, reads, setUp, shared, start } from './person.mjs';

setUp();
const pictures = path.join(ROOT, 'build/browser');
mkdirSync(pictures, { recursive: true });

const press = async (page, name) => {
  await control(page, 'button', name).press('Enter');
  await settled(page);
};

/** The app on the phone with clipboard, at this place. */
async function shop(place = '#/quote/send', more = {}) {
  const page = await start(PHONE, { permissions: ['clipboard-read', 'clipboard-write'], url: shared.host.url + place, ...more });
  return page;
}

/** The address that the app puts on the clipboard. */
async function copied(page) {
  await press(page, 'Copy the link');
  return page.evaluate(() => navigator.clipboard.readText());
}

/** The sealed quote's address, from the app. */
async function sealedQuote(page) {
  await page.getByText('Sealed: opened on this device').waitFor({ state: 'attached' });
  const address = await copied(page);
  assert.match(address, /#q=[\w-]+\.1[\w-]{27}$/);
  return address;
}

/** The customer's page in a context of its own, or in that of another page. */
async function customer(address, { context, device = PHONE, ...more } = {}) {
  const page = context ? listen(await context.newPage()) : await open(shared.browser, device, more);
  await page.goto(address);
  await page.waitForFunction(() => performance.getEntriesByName('torchside-quote').length === 1);
  return page;
}

const text = (page) => page.locator('main').innerText();

/** Another letter in place of the one at this index from the end. */
function changed(address, fromEnd) {
  const at = address.length - fromEnd;
  return address.slice(0, at) + (address[at] === 'A' ? 'B' : 'A') + address.slice(at + 1);
}

let quote = ''; // of the demo job, sealed
let secrets = []; // figures of its cost lines

test('the demo job on the Quote screen: price, cost lines that add up, consumables', async () => {
  const page = await shop('#/quote');
  assert.match(await control(page, 'button', 'Price of 24').textContent(), /USD/);
  await page.screenshot({ path: path.join(pictures, 'quote-screen.png') });
  await press(page, 'Cost line by line');
  const amount = async (id) => {
    const said = await page.locator(`[data-id="costs/${id}"]`).textContent();
    return Math.round(Number(/([\d.]+)$/.exec(said)[1]) * 100);
  };
  const lines = [];
  for (let i = 0; i < 6; i++) {
    lines.push(await amount(i));
  }
  const [cost, margin, price] = [await amount('cost'), await amount(7), await amount('total')];
  assert.equal(lines.reduce((sum, line) => sum + line), cost);
  assert.equal(cost + margin, price);
  secrets = [...lines, cost, margin].filter(Boolean).map((cents) => (cents / 100).toFixed(2));
  assert.ok(secrets.length >= 6);
  await done(page);
});

test('the link of the demo job and of its quote are short; the seal comes by itself', async () => {
  const page = await shop();
  quote = await sealedQuote(page);
  await page.goto(shared.host.url + '#/shop/devices');
  await settled(page);
  const job = await copied(page);
  console.log(`# letters: quote with seal ${quote.split('#')[1].length}, job ${job.split('#')[1].length}`);
  assert.ok(quote.split('#')[1].length <= 2000);
  assert.match(job, /#j=[\w-]+$/);
  assert.ok(job.split('#')[1].length <= 2000);
  const key = /"seal_key": "([0-9a-f]{64})"/.exec((await keptRecords(page)).join())[1];
  assert.ok(!Buffer.from(job.split('#j=')[1], 'base64url').includes(key), 'the key stays');
  assert.ok(!(await page.content()).includes(key), 'and is not shown');
  await done(page);
});

test('a customer on a phone gets a light page with the price and nothing of the shop\'s own figures', async () => {
  shared.host.asked.length = 0;
  const page = await customer(quote);
  const said = await text(page);
  for (const part of ['Harbour Gate and Rail', 'Estimate. Valid until', 'Handrail base plate', 'Mild steel', '6 mm', '120 × 120 mm', '24 parts', 'Price in USD']) {
    assert.ok(said.includes(part), part);
  }
  const held = Buffer.from(quote.split('#q=')[1].split('.')[0], 'base64url').toString('latin1');
  for (const secret of secrets) {
    assert.ok(!new RegExp('(?<![\\d.])' + secret.replace('.', '\\.') + '(?!\\d)').test(said + held), `${secret} is the shop's own`);
  }
  assert.ok(!/margin|markup|labour|per hour/i.test(said));
  assert.ok(!said.includes('Issued here'), 'no word of seals to a customer');
  assert.equal(await page.locator('canvas').count(), 0);
  assert.equal(await page.locator('svg path.part').count(), 1);
  assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), 'nothing sticks out');
  assert.deepEqual(await axe(page), []);
  await page.waitForTimeout(500);
  assert.deepEqual(shared.host.asked.filter((name) => /^(torchside|page)-.*\.(js|wasm)$/.test(name)), [], 'nothing of the app is asked for');
  await page.screenshot({ path: path.join(pictures, 'customer.png'), fullPage: true });
  for (const format of ['A4', 'Letter']) {
    const pdf = await page.pdf({ format, path: path.join(pictures, `customer-${format}.pdf`) });
    assert.equal(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g).length, 1, `one sheet of ${format}`);
  }
  await done(page);
});

test('hostile text in a quote stays text', async () => {
  const page = await shop('#/quote/terms');
  await control(page, 'textbox', 'Note to the customer').fill('<img src=x onerror=alert(1)>&amp;"\'');
  await control(page, 'textbox', 'Note to the customer').press('Enter');
  await settled(page);
  await page.goto(shared.host.url + '#/quote/send');
  const seen = await customer(await sealedQuote(page), { device: DESKTOP });
  assert.ok((await text(seen)).includes('<img src=x onerror=alert(1)>&amp;"\''));
  assert.equal(await seen.locator('main img').count(), 0);
  await done(seen);
  await done(page);
});

test('the shop that issued a quote sees whether it is unaltered; another shop sees that it is not its own', async () => {
  const page = await shop();
  const own = await sealedQuote(page);
  const context = page.context();
  const says = async (address, words) => {
    const seen = await customer(address, { context });
    await seen.getByText(words).waitFor();
    await clean(seen);
    await seen.close();
  };
  await says(own, 'Issued here, unaltered.');
  await says(changed(own, 2), 'Altered: this is not the quote that was issued here.'); // one letter of the seal
  await says(own.split('.').slice(0, -1).join('.'), 'No seal');
  await says(quote, 'Not ours: sealed with another key.');
  // One bit of the content, with a checksum that fits again: only the seal can tell.
  const forged = await page.evaluate((address) => {
    const [head, rest] = address.split('#q=');
    const [body, seal] = rest.split('.');
    const bytes = Uint8Array.from(atob(body.replace(/-/g, '+').replace(/_/g, '/')), (c) => c.charCodeAt(0));
    const at = String.fromCharCode(...bytes).indexOf('Harbour');
    bytes[at] ^= 1; // "Iarbour"
    let crc = ~0;
    for (const byte of bytes.subarray(0, -4)) {
      crc ^= byte;
      for (let bit = 0; bit < 8; bit++) {
        crc = (crc >>> 1) ^ (crc & 1 ? 0xEDB88320 : 0);
      }
    }
    new DataView(bytes.buffer).setUint32(bytes.length - 4, ~crc >>> 0);
    return head + '#q=' + btoa(String.fromCharCode(...bytes)).replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '') + '.' + seal;
  }, own);
  await says(forged, 'Altered: this is not the quote that was issued here.');
  await done(page);
});

test('without the browser\'s crypto there is no seal, and both pages say so', async () => {
  const init = () => Object.defineProperty(Crypto.prototype, 'subtle', { value: undefined });
  const page = await shop('#/quote/send', { init });
  await page.getByText('Not sealed: a browser seals on https pages only.').waitFor({ state: 'attached' });
  assert.match(await copied(page), /#q=[\w-]+$/);
  await putRecords(page, [`torchside-record 1 9 0 0\n{"shop": {"seal_key": "${'ab'.repeat(32)}"}}`, '']);
  const seen = await customer(quote, { context: page.context() });
  await seen.getByText('Seal not checked').waitFor();
  await done(page, /./);
});

test('a link that was altered or cut short says so in plain words', async () => {
  const bare = quote.split('.').slice(0, -1).join('.');
  for (const address of [changed(bare, 20), bare.slice(0, -5), bare.slice(0, bare.indexOf('#') + 3)]) {
    const page = await customer(address);
    assert.match(await text(page), /This quote cannot be shown[^]*damaged: letters are missing or changed[^]*Ask the shop to send it again/);
    await done(page);
  }
});

test('the customer\'s page works offline once seen, and gives way to the app', async () => {
  const host = await serve(SITE);
  const address = host.url + '#' + quote.split('#')[1];
  const page = await customer(address);
  await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
  await page.reload();
  const wasm = /torchside-\w+\.wasm/;
  assert.ok(!host.asked.some((name) => wasm.test(name)));
  await host.stop();
  await page.reload();
  await page.waitForFunction(() => performance.getEntriesByName('torchside-quote').length === 1);
  assert.match(await text(page), /Harbour Gate and Rail/);
  await done(page);
});

test('the app opened after a quote installs itself whole, without a reload', async () => {
  const host = await serve(SITE);
  const page = await customer(host.url + '#' + quote.split('#')[1]);
  await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
  await page.goto('about:blank');
  await page.goto(host.url);
  await settled(page);
  await page.evaluate(() => { window.stayed = true; });
  await page.waitForFunction(() => navigator.serviceWorker.controller && !navigator.serviceWorker.controller.scriptURL.endsWith('?quote'));
  await page.waitForTimeout(300);
  assert.equal(await page.evaluate(() => window.stayed), true);
  await host.stop();
  await page.reload();
  await settled(page);
  await done(page);
});

test('the one-file page shows a quote too', async () => {
  const page = await customer('file://' + SINGLE + '#' + quote.split('#')[1]);
  assert.match(await text(page), /Harbour Gate and Rail/);
  await done(page);
});

test('the QR code is read back by another program', async () => {
  const page = await shop();
  const address = await sealedQuote(page);
  await press(page, 'Show a QR code');
  await page.getByRole('img', { name: 'QR code of the link' }).waitFor({ state: 'attached' });
  await page.getByRole('img', { name: 'QR code of the link' }).scrollIntoViewIfNeeded();
  await page.mouse.move(180, 400);
  await page.mouse.wheel(0, 2000);
  await settled(page);
  await page.waitForTimeout(1000);
  const file = path.join(pictures, 'qr.png');
  writeFileSync(file, await page.screenshot());
  assert.equal(execFileSync('zbarimg', ['--quiet', '--raw', file]).toString().trim(), address);
  await done(page);
});

test('a job link is shown and asks; what was kept can be had back', async () => {
  const page = await shop('#/cut/stock');
  await control(page, 'textbox', 'Thickness').fill('3 mm');
  await control(page, 'textbox', 'Thickness').press('Enter');
  await settled(page);
  const stored = () => keptRecords(page);
  await page.goto(shared.host.url + '#/shop/devices');
  await settled(page);
  const job = await copied(page);
  await page.goto(shared.host.url + '#/cut/stock');
  await control(page, 'textbox', 'Thickness').fill('10 mm');
  await control(page, 'textbox', 'Thickness').press('Enter');
  await settled(page);
  const before = await stored();
  await page.goto(job);
  await page.getByRole('dialog', { name: 'A job from a link' }).waitFor({ state: 'attached' });
  assert.deepEqual(await stored(), before, 'opening changes nothing that is kept');
  const thickness = () => reads(page, 'Thickness');
  assert.match(await thickness(), /^10 mm/);
  await press(page, 'Keep as my job');
  assert.match(await thickness(), /^3 mm/);
  await press(page, 'Undo');
  assert.match(await thickness(), /^10 mm/);
  await done(page);
});

test('a job link that was altered is refused, and nothing changes', async () => {
  const page = await shop('#/shop/devices');
  const job = await copied(page);
  await page.goto('about:blank');
  await page.goto(changed(job, 9));
  await settled(page);
  await page.getByText(/Nothing was taken\. The link is damaged/).waitFor({ state: 'attached' });
  await done(page);
});
