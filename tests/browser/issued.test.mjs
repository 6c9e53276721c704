// The shop's word over time: revisions, quotes that ran out, seals from before and after a new key.
import assert from 'node:assert/strict';
import { createHmac } from 'node:crypto';
import path from 'node:path';
import { test } from 'node:test';
import { axe, clean, listen, open, PHONE, ROOT, settled, until } from './harness.mjs';
import { keptWork } from './kept_shop.mjs';
import { control, done, setUp, shared, start } from './person.mjs';

setUp();

const press = async (page, name) => {
  await control(page, 'button', name).press('Enter');
  await settled(page);
};

async function send(page) {
  await page.goto(shared.host.url + '#/quote/send');
  await settled(page);
  await page.getByText('Sealed: opened on this device').waitFor({ state: 'attached' });
  await press(page, 'Copy the link');
  const address = await page.evaluate(() => navigator.clipboard.readText());
  assert.match(address, /#q=[\w-]+\.1[\w-]{27}$/);
  return address;
}

const shop = () => start(PHONE, { permissions: ['clipboard-read', 'clipboard-write'], url: shared.host.url + '#/quote/send' });

/** What the customer's page says on the shop's own device, or to a customer: its word of the seal, and the paper. */
async function seen(address, context) {
  const page = context ? listen(await context.newPage()) : await open(shared.browser, PHONE);
  await page.goto(address);
  await page.waitForFunction(() => performance.getEntriesByName('torchside-quote').length === 1);
  const paper = await page.locator('.sheet').innerText();
  const word = context ? await page.locator('.seal').innerText() : '';
  assert.deepEqual(await axe(page), []);
  await page.screenshot({ path: path.join(ROOT, 'build/browser/issued.png'), fullPage: true });
  await clean(page);
  await (context ? page.close() : page.context().close());
  return { paper, word };
}

/** The newest record that the app keeps, read as the customer's page reads it. */
const kept = async (page) => (await keptWork(page)).shop;

const days = (count) => `(() => {
  const Before = Date;
  window.Date = class extends Before {
    constructor(...given) {
      super(...(given.length ? given : [Before.now() + ${count} * 864e5]));
    }
  };
})()`;

test('a changed quote is revision B; the first one is said to be replaced', async () => {
  const page = await shop();
  const first = await send(page);
  assert.match((await seen(first, page.context())).word, /Issued here, unaltered\./);
  await page.goto(shared.host.url + '#/quote/terms');
  await settled(page);
  await control(page, 'textbox', 'Note to the customer').fill('Painted.');
  await control(page, 'textbox', 'Note to the customer').press('Enter');
  await settled(page);
  await page.goto(shared.host.url + '#/quote/send');
  await settled(page);
  await page.getByText(/Q-118 went out on .* and has changed since: this goes out as revision B\./).waitFor({ state: 'attached' });
  await control(page, 'button', 'Use number Q-119').waitFor({ state: 'attached' });
  const second = await send(page);
  assert.notEqual(first, second);
  const customer = await seen(second);
  assert.match(customer.paper, /Quote Q-118 revision B/);
  assert.match(customer.paper, /Replaces the earlier quote with this number\./);
  assert.match((await seen(second, page.context())).word, /Issued here, unaltered\./);
  assert.match((await seen(first, page.context())).word, /Issued here, replaced by revision B on \d+ \w+ 20\d\d\./);
  assert.equal((await kept(page)).issued.length, 2);
  assert.equal(await send(page), second, 'sent again, it is the same');
  assert.equal((await kept(page)).issued.length, 2);
  await page.goto(shared.host.url + '#/quote/issued');
  await settled(page);
  await page.getByText('replaced by revision B').waitFor({ state: 'attached' });
  await page.screenshot({ path: path.join(ROOT, 'build/browser/issued-list.png') });
  await done(page);
});

test('what was not handed out is sealed, but not in the list', async () => {
  const page = await shop();
  const first = await send(page);
  await page.goto(shared.host.url + '#/quote/terms');
  await settled(page);
  await control(page, 'textbox', 'Quote number').fill('Q-200');
  await control(page, 'textbox', 'Quote number').press('Enter');
  await settled(page);
  await page.goto(shared.host.url + '#/quote/send');
  await settled(page);
  await page.getByText('Sealed: opened on this device').waitFor({ state: 'attached' });
  const [opened] = await Promise.all([page.context().waitForEvent('page'), press(page, "Open the customer's page, to print")]);
  await opened.getByText('Sealed here, unaltered. It is not in your list of quotes handed out.').waitFor();
  await opened.close();
  assert.match((await seen(first, page.context())).word, /Issued here, unaltered\./);
  await done(page);
});

test('after its last day a quote says to everybody that it ran out', async () => {
  const page = await shop();
  const address = await send(page);
  assert.match((await seen(address)).paper, /Estimate\. Valid until/);
  await page.context().addInitScript({ content: days(31) });
  const late = await seen(address, page.context());
  assert.match(late.paper, /Expired on \d+ \w+ 20\d\d\. Ask the shop for today's price\./);
  assert.match(late.word, /Issued here, expired on \d+ \w+ 20\d\d\./);
  await done(page);
});

test('seals from before, and of the key before, are still known; a shop without the old key does not know them', async () => {
  const page = await shop();
  const address = await send(page);
  const [base, fragment] = address.split('#');
  const [body, seal] = fragment.split('.');
  const { seal_key: key } = await kept(page);
  const hmac = (text) => createHmac('sha256', Buffer.from(key, 'hex')).update(text).digest();
  // The seal of this version by other code: the way, five letters of which key, 128 bits.
  const by = (name, text) => name + Buffer.concat([hmac(text).subarray(0, 16), Buffer.alloc(2)]).toString('base64url').slice(0, 22);
  const id = hmac('torchside key').toString('base64url');
  assert.equal(seal, by('1' + id.slice(0, 5), 'torchside seal 1\n' + body));
  const before = by(id.slice(0, 2), body); // as versions before sealed
  assert.equal(before.length, 24);
  const of = (tag) => `${base}#${body}.${tag}`;
  const word = async (tag) => (await seen(of(tag), page.context())).word;
  assert.match(await word(before), /Issued here, unaltered\./);
  assert.match(await word(before.slice(0, 23) + (before[23] === 'A' ? 'B' : 'A')), /Altered/);
  assert.match(await word('2' + seal.slice(1)), /Seal not checked: a newer Torchside made it\. Update first\./);
  assert.match(await word(by('1' + id.slice(0, 5), body)), /Altered/, 'a seal of the way before is none of this way');

  await page.goto(shared.host.url + '#/quote/issued');
  await settled(page);
  await press(page, 'Make a new seal key');
  await press(page, 'Make the new key');
  const own = await kept(page);
  assert.notEqual(own.seal_key, key);
  assert.deepEqual(own.old_keys, [{ seal_key: key }]);
  assert.match(await word(seal), /Issued here, unaltered\./);
  assert.match(await word(before), /Issued here, unaltered\./);
  const renewed = await send(page);
  assert.notEqual(renewed.split('.').pop().slice(0, 6), seal.slice(0, 6), 'another key, another name');
  assert.match((await seen(renewed, page.context())).word, /Issued here, unaltered\./);

  const other = await shop();
  await send(other);
  assert.match((await seen(address, other.context())).word, /Not ours: sealed with another key\./);
  await until(async () => (await kept(page)).issued.length === 1, 'one row: the same quote, sealed anew');
  await done(other);
  await done(page);
});
