// Addresses that put a sealed quote and an unsealed one together, on the device of the shop that sealed: the page may refuse them, or say
// that they are not what was issued, but never show one quote under the word for another.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { test } from 'node:test';
import { clean, listen, PHONE, ROOT, settled } from './harness.mjs';
import { control, done, setUp, shared, start } from './person.mjs';

setUp();

/** The link of the demo's quote at another margin, which nobody sealed. */
function unsealed() {
  const torchside = path.join(ROOT, 'build/native/torchside');
  const demo = JSON.parse(execFileSync('cat', [path.join(ROOT, 'assets/demo.json')]).toString());
  demo.job.price.margin = 0.6;
  return execFileSync(torchside, ['link', 'quote', '-'], { input: JSON.stringify(demo) }).toString().trim();
}

/** The fragments, by how they are put together. */
function forgeries(body, seal, other) {
  const sealed = `${body}.${seal}`;
  return {
    'sealed, a dot, and another behind a second #': `#${sealed}.x#${other}`,
    'sealed, and another behind a second #': `#${sealed}#${other}`,
    'sealed body, and another with its seal behind a second #': `#${body}.#${other}.${seal}`,
    'sealed body without a dot, and another with its seal': `#${body}#${other}.${seal}`,
    'sealed, and another with the seal behind it': `#${sealed}.#${other}.${seal}`,
    'another under the seal': `#${other}.${seal}`,
    'another, the sealed one behind it': `#${other}#${sealed}`,
    'another, the sealed one behind a dot': `#${other}.${sealed}`,
    'two seals': `#${sealed}.${seal}`,
    'an empty seal before the seal': `#${body}..${seal}`,
    'a letter that base64url has not': `#${body}=.${seal}`,
    'sealed, cut by a zero, and another': `#${sealed}%00#${other}`,
    'sealed, and another behind a written #': `#${sealed}%23${other}`,
    'sealed, and another behind a blank': `#${sealed} ${other}`,
  };
}

test('no address shows one quote under the word of another', async () => {
  const page = await start(PHONE, { permissions: ['clipboard-read', 'clipboard-write'], url: shared.host.url + '#/quote/send' });
  await page.getByText('Sealed: opened on this device').waitFor({ state: 'attached' });
  await control(page, 'button', 'Copy the link').press('Enter');
  await settled(page);
  const address = await page.evaluate(() => navigator.clipboard.readText());
  const [base, fragment] = address.split('#');
  const [body, seal] = fragment.split('.');
  const look = async (text) => {
    const seen = listen(await page.context().newPage());
    await seen.goto(base + text);
    await seen.waitForFunction(() => performance.getEntriesByName('torchside-quote').length === 1);
    const paper = await seen.locator('.sheet').innerText();
    const own = !paper.includes('cannot be shown');
    const word = own ? await seen.locator('.seal').innerText() : '';
    await clean(seen);
    await seen.close();
    return { paper, word };
  };
  const genuine = await look('#' + fragment);
  assert.match(genuine.word, /Issued here/);
  const other = unsealed();
  const plain = await look('#' + other);
  assert.match(plain.word, /^▲? ?No seal/);
  assert.notEqual(plain.paper, genuine.paper, 'another price');
  const fooled = [];
  for (const [how, text] of Object.entries(forgeries(body, seal, other))) {
    const { paper, word } = await look(text);
    if (/Issued here|Sealed here/.test(word)) {
      fooled.push(`${how}: "${word.trim()}" over ${paper === genuine.paper ? 'the sealed quote, from a text that is not its link' : 'another price'}`);
    }
  }
  assert.deepEqual(fooled, []);
  await done(page);
});
