// Whose shop is open, as a person meets it: an empty one at first, the example while it is looked at, then one's own. And what is
// sent from it: a link that the customer can open, or the quote as a file; and whether the page says what has happened.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { axe, DESKTOP, PHONE, settled, until } from './harness.mjs';
import { keptRecords, shopRecord } from './kept_shop.mjs';
import { control, done, feed, focused, reads, setUp, shared, start, tabTo, touch } from './person.mjs';

setUp();

const said = (page) => page.locator('#mirror').innerText();
const stored = async (page) => (await keptRecords(page)).join('\n');

async function makeItMine(page) {
  const touches = [['button', 'Start my shop'], ['radio', '40 A'], ['button', 'Next: the supply'], ['button', 'Next: the air'], ['radio', '12 cfm'],
    ['radio', '60 gal'], ['button', 'Next: the units'], ['button', 'Done: show my settings']];
  for (const [role, name] of touches) {
    await touch(page, role, name);
  }
  return touches.length;
}

test('a first visit opens an empty shop, and eight touches make it one\'s own', async () => {
  const page = await start(PHONE, { kept: '' });
  assert.match(await feed(page), /\d/);
  assert.doesNotMatch(await said(page), /Example shop|cuts? of yours|Harbour/);
  assert.ok((await makeItMine(page)) <= 8);
  assert.match(await said(page), /Log your first cut and this narrows/);
  assert.match(await reads(page, 'Current'), /^40 A/);
  assert.match(await feed(page), /ipm|in/);
  assert.equal(await control(page, 'button', 'See the example shop').count(), 0);
  await page.reload();
  await settled(page);
  assert.match(await reads(page, 'Current'), /^40 A/);
  assert.equal(await control(page, 'button', 'Start my shop').count(), 0);
  await done(page);
});

const asked = (page) => page.locator('[data-id="start/question"]').textContent();
const spoken = (page) => page.locator('[data-id="live"]').textContent();

test('the four questions: read out, with the browser\'s Back a question back, and a reload in the middle loses nothing', async () => {
  const page = await start(PHONE, { kept: '' });
  await touch(page, 'button', 'Start my shop');
  assert.match(await spoken(page), /^1 of 4: How strong is your machine\?/);
  assert.deepEqual(await axe(page), []);
  await touch(page, 'radio', '60 A');
  await touch(page, 'button', 'Next: the supply');
  assert.match(await spoken(page), /^2 of 4: What is the machine plugged into\?/);
  assert.equal(await focused(page), 'start/2', 'the focus comes to the new question');
  await touch(page, 'radio', '120 V');
  await touch(page, 'button', 'Next: the air');
  assert.deepEqual(await axe(page), []);
  await page.goBack();
  await settled(page);
  assert.equal(await asked(page), 'What is the machine plugged into?');
  await page.reload();
  await settled(page);
  assert.equal(await asked(page), 'What is the machine plugged into?');
  assert.equal(await page.getByRole('radiogroup', { name: 'Voltage' }).getByRole('radio', { checked: true }).textContent(), '120 V');
  await page.goBack();
  await settled(page);
  assert.equal(await asked(page), 'How strong is your machine?');
  assert.equal(await page.getByRole('radiogroup', { name: 'Largest current' }).getByRole('radio', { checked: true }).textContent(), '60 A');
  await page.goBack();
  await settled(page);
  assert.equal(await page.evaluate(() => location.hash), '#/cut');
  assert.match(await feed(page), /\d/);
  await done(page);
});

test('the four questions by keyboard alone', async () => {
  const page = await start(DESKTOP, { kept: '' });
  await tabTo(page, 'first/start');
  await page.keyboard.press('Enter');
  await settled(page);
  assert.equal(await focused(page), 'start');
  await tabTo(page, 'start/shop.machine.max_current_a/50 A'); // the marked one
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Space');
  await settled(page);
  assert.equal(await page.getByRole('radio', { name: '45 A' }).getAttribute('aria-checked'), 'true');
  for (const step of ['start', 'start/2', 'start/3', 'start/4']) {
    assert.equal(await page.locator(`[data-id="${step}"]`).getAttribute('role'), 'dialog');
    await tabTo(page, 'start/next');
    await page.keyboard.press('Enter');
    await settled(page);
  }
  assert.equal(await page.evaluate(() => location.hash), '#/cut');
  assert.match(await said(page), /Log your first cut and this narrows/);
  assert.match(await reads(page, 'Current'), /^45 A/);
  await tabTo(page, 'first/log');
  await page.keyboard.press('Enter');
  await settled(page);
  assert.equal(await page.evaluate(() => location.hash), '#/tune');
  await done(page);
});

test('each question is skipped by one touch on what it says it assumes, in Spain in Spanish', async () => {
  const page = await start(PHONE, { kept: '', locale: 'es-ES' });
  await touch(page, 'button', 'Crear mi taller');
  for (const assumed of [/50 A a una tensión/, /230 V, 16 A/, /150 L\/min con 100 L/, /mm y EUR/]) {
    const skip = page.locator('[data-id="start/skip"]');
    assert.match(await skip.textContent(), assumed);
    const box = await skip.boundingBox();
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
    await settled(page);
  }
  assert.match(await said(page), /Anote su primer corte/);
  await done(page);
});

test('the example says so on every screen and on paper, sends nothing, and is left for good', async () => {
  const page = await start(PHONE, { kept: '' });
  await touch(page, 'button', 'See the example shop');
  for (let again = 0; again < 2; again++) {
    for (const place of ['Cut', 'Tune', 'Part', 'Quote', 'Shop']) {
      await touch(page, 'button', place);
      assert.match(await said(page), /Example shop/, place);
      assert.doesNotMatch(await said(page), /cuts? of yours/, place);
    }
    await page.reload();
    await settled(page);
  }
  await touch(page, 'button', 'Quote');
  await control(page, 'button', 'Send to the customer').press('Enter');
  await settled(page);
  assert.match(await said(page), /Nothing of the example shop can be sent\. Start your own shop first\./);
  for (const way of ['Copy the link', 'Share', 'Show a QR code', 'Save the quote as one file', 'Open the customer']) {
    assert.equal(await control(page, 'button', way).count(), 0, way);
  }
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  assert.match(await page.evaluate(() => document.querySelector('#paper').textContent), /^Job card.*Example shop: its figures are not yours/);
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  assert.deepEqual(await axe(page), []);
  await touch(page, 'button', 'Cut');
  await makeItMine(page);
  await touch(page, 'button', 'Units');
  await touch(page, 'button', 'Units');
  assert.doesNotMatch(await stored(page), /Harbour|Q-118|Handrail|"example": true/);
  await done(page);
});

test('a copy is said only when the browser made it', async () => {
  const page = await start(PHONE, { permissions: ['clipboard-read', 'clipboard-write'], url: shared.host.url + '#/quote/send' });
  const press = async () => { await control(page, 'button', 'Copy the link').press('Enter'); await settled(page); };
  const status = () => page.locator('[data-id="said"]').textContent().catch(() => '');
  assert.match(await said(page), /Your customer can't open this link/, 'the tests\' page stands on this machine');
  await press();
  await until(async () => /^Copied/.test(await status()), 'the word');
  assert.equal(await page.locator('[data-id="said"]').getAttribute('role'), 'status');
  assert.match(await page.evaluate(() => navigator.clipboard.readText()), /#q=/);
  await page.evaluate(() => {
    Object.defineProperty(navigator, 'clipboard', { value: { writeText: () => Promise.reject(new Error('no')) } });
    document.execCommand = () => false;
  });
  await press();
  await until(async () => /^Not copied/.test(await status()), 'the truth');
  await done(page);
});

test('links stand on the public address once there is one', async () => {
  const page = await start(DESKTOP, { permissions: ['clipboard-read', 'clipboard-write'], url: shared.host.url + '#/quote/send' });
  const field = page.getByRole('textbox', { name: 'Public address' });
  await field.fill('https://shop.example/torchside/');
  await field.press('Enter');
  await settled(page);
  assert.doesNotMatch(await said(page), /Your customer can't open this link/);
  await control(page, 'button', 'Copy the link').press('Enter');
  await until(async () => /^https:\/\/shop\.example\/torchside\/#q=/.test(await page.evaluate(() => navigator.clipboard.readText())), 'the address');
  await done(page);
});

test('the quote as one file opens from a disk, dressed, without a script, and asks for nothing', async () => {
  const page = await start(PHONE, { url: shared.host.url + '#/quote/send', acceptDownloads: true });
  const coming = page.waitForEvent('download');
  await control(page, 'button', 'Save the quote as one file').press('Enter');
  const file = await coming;
  assert.equal(file.suggestedFilename(), 'quote-Q-118.html');
  const where = await file.path();
  const text = readFileSync(where, 'utf8');
  assert.doesNotMatch(text, /<script|margin"|markup|abour,/i);
  const seen = await page.context().newPage();
  const asked = [];
  seen.on('request', (r) => { if (!r.url().startsWith('file:')) asked.push(r.url()); });
  await seen.setContent(text);
  assert.match(await seen.locator('main').innerText(), /Harbour Gate and Rail[^]*Handrail base plate[^]*24 parts/);
  assert.equal(await seen.locator('svg path.part').count(), 1);
  assert.equal(await seen.evaluate(() => getComputedStyle(document.querySelector('.sheet')).backgroundColor), 'rgb(250, 248, 242)');
  assert.ok(await seen.evaluate(() => document.documentElement.scrollWidth <= innerWidth), 'nothing sticks out');
  assert.deepEqual(asked, []);
  await seen.close();
  await until(async () => /Saved as quote-Q-118\.html/.test(await said(page)), 'the word');
  await done(page);
});

test('an old record of one\'s own shop is opened as it was', async () => {
  const page = await start(PHONE, { kept: shopRecord() });
  assert.doesNotMatch(await said(page), /Example shop/);
  assert.match(await control(page, 'button', 'Feed').getAttribute('aria-description'), /cuts? of yours/);
  await done(page);
});
