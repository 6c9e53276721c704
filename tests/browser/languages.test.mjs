// Languages: the customer's page in the customer's, whatever happens to its words; the shop's screens in each, nothing past the edge at 360 px.
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { axe, open, PHONE, serve, settled, SINGLE, SITE, until } from './harness.mjs';
import { control, done, setUp, shared, start } from './person.mjs';

setUp();

const quoteFiles = () => readdirSync(SITE).filter((name) => /^quote-(es|en-GB)-\w+\.bin$/.test(name));
const text = (page) => page.locator('main').innerText();
const fits = (page) => page.evaluate(() => document.documentElement.scrollWidth <= innerWidth);

/** The address of the demo job's quote for a customer of that language, from the app. */
async function quoteIn(code) {
  const page = await start(PHONE, { permissions: ['clipboard-read', 'clipboard-write'], url: shared.host.url + '#/quote/terms' });
  if (code) {
    await control(page, 'radio', code).dispatchEvent('click'); // as a screen reader presses
    await settled(page);
  }
  await page.goto(shared.host.url + '#/quote/send');
  await settled(page);
  await control(page, 'button', 'Copy the link').press('Enter');
  await settled(page);
  const address = await page.evaluate(() => navigator.clipboard.readText());
  await done(page);
  return address;
}

async function customer(address, more = {}) {
  const page = await open(shared.browser, PHONE, more);
  await page.goto(address);
  await page.waitForFunction(() => performance.getEntriesByName('torchside-quote').length === 1);
  return page;
}

let spanish = '';

test('a quote for a Spanish customer is in Spanish: texts, decimals, months, title, button', async () => {
  spanish = await quoteIn('Español');
  const page = await customer(spanish);
  const said = await text(page);
  for (const part of ['Cotización', 'Estimación. Válida hasta el', 'Acero dulce', 'Cantidad', 'sin impuestos', 'Precio en USD', 'Imprimir', '0,2362 in']) {
    assert.ok(said.includes(part), `${part} in ${said}`);
  }
  const ours = said.replace(/Four holes for M12 anchors[^]*?dross\./, ''); // the shop's own words
  assert.doesNotMatch(ours, /\b(the|of|until|each|before|quote|print)\b/i);
  assert.doesNotMatch(said, /\d\.\d\d\b/, 'no point before decimals');
  assert.equal(await page.evaluate(() => document.documentElement.lang), 'es');
  assert.match(await page.title(), /: cotización$/);
  assert.ok(await fits(page));
  assert.deepEqual(await axe(page), []);
  await done(page);
});

test('British customers have British spelling; without a choice the page is as it was', async () => {
  const british = await customer(await quoteIn('English (UK)'));
  assert.equal(await british.evaluate(() => document.documentElement.lang), 'en-GB');
  assert.ok(await fits(british));
  await done(british);
  const address = await quoteIn('');
  const host = await serve(SITE);
  const plain = await customer(host.url + '#' + address.split('#')[1], { serviceWorkers: 'block' });
  assert.equal(await plain.evaluate(() => document.documentElement.lang), 'en');
  assert.match(await text(plain), /Estimate\. Valid until/);
  assert.deepEqual(host.asked.filter((name) => name.endsWith('.bin')), [], 'no words are asked for');
  await done(plain, /Service Worker registration blocked/);
  await host.stop();
});

test('where its words do not come, come cut, or are others, the page is in English and whole', async () => {
  const [file] = quoteFiles().filter((name) => name.startsWith('quote-es'));
  const good = readFileSync(path.join(SITE, file));
  const host = await serve(SITE);
  const address = host.url + '#' + spanish.split('#')[1];
  for (const bad of [good.subarray(0, good.length / 2), Buffer.from('nothing'), Buffer.alloc(0)]) {
    host.replace[file] = bad;
    const page = await customer(address, { serviceWorkers: 'block' });
    assert.match(await text(page), /Estimate\. Valid until[^]*Print/);
    assert.equal(await page.evaluate(() => document.documentElement.lang), 'en');
    await done(page, /./);
  }
  await host.stop();
});

test('words that come late are put into the page when they come', async () => {
  const page = await open(shared.browser, PHONE, { serviceWorkers: 'block' });
  await page.route(/quote-es-.*\.bin$/, async (route) => {
    await new Promise((later) => { setTimeout(later, 5000); });
    await route.continue();
  });
  await page.goto(spanish);
  await page.getByText('Estimate. Valid until').waitFor();
  await page.getByText('Estimación. Válida hasta').waitFor();
  await page.getByRole('button', { name: 'Imprimir' }).waitFor();
  assert.equal(await page.getByRole('button').count(), 1);
  await done(page, /Service Worker registration blocked/);
});

test('the one-file page speaks the customer\'s language, too', async () => {
  const page = await customer('file://' + SINGLE + '#' + spanish.split('#')[1]);
  assert.match(await text(page), /Estimación\. Válida hasta/);
  await done(page);
});

for (const [locale, code, cut] of [['en-US', 'en', 'Cut'], ['en-GB', 'en-GB', 'Cut'], ['en-AU', 'en-GB', 'Cut'], ['es-MX', 'es', 'Corte']]) {
  test(`a browser set to ${locale} opens in ${code}, and nothing runs past the edge of 360 px`, { timeout: 240e3 }, async () => {
    const page = await start(PHONE, { locale });
    await until(() => page.evaluate((wanted) => (document.documentElement.lang || 'en') === wanted, code), code);
    await control(page, 'button', cut).or(control(page, 'tab', cut)).or(page.getByText(cut, { exact: true })).first().waitFor({ state: 'attached' });
    for (const place of ['cut', 'cut/stock', 'cut/circuit', 'cut/air', 'tune', 'tune/coupons', 'part', 'quote', 'quote/terms', 'quote/send', 'shop', 'shop/machine', 'shop/screen']) {
      await page.goto(shared.host.url + '#/' + place);
      await settled(page);
      const past = await page.evaluate(() => [...document.querySelectorAll('#mirror [data-id]')].map((el) => [el.dataset.id, el.getBoundingClientRect()])
        .filter(([id, box]) => box.width > 0 && !id.startsWith('part/contour/') && (box.x < -1 || box.right > innerWidth + 1)).map(([id]) => id));
      assert.deepEqual(past, [], place);
      assert.ok(await fits(page), place);
    }
    await done(page);
  });
}

test('the fault of a drawing is said in Spanish', async () => {
  const page = await start(PHONE, { locale: 'es-ES', url: shared.host.url + '#/part' });
  await until(() => page.evaluate(() => document.documentElement.lang === 'es'), 'es');
  await page.evaluate(() => {
    const carried = new DataTransfer();
    carried.items.add(new File(['0\nSECTION\n2\nENTITIES\n0\nLINE\n'], 'cut.dxf'));
    document.getElementById('canvas').dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }));
  });
  await page.getByText(/es el fin del archivo y deja a medias|no tiene línea ni curva|sin su grupo/).first().waitFor({ state: 'attached' });
  await done(page);
});

test('the manifest is there in Spanish, and a page that speaks it names it', async () => {
  const manifest = JSON.parse(readFileSync(path.join(SITE, 'manifest-es.webmanifest'), 'utf8'));
  const base = JSON.parse(readFileSync(path.join(SITE, 'manifest.webmanifest'), 'utf8'));
  assert.equal(manifest.lang, 'es');
  assert.equal(manifest.shortcuts[0].short_name, 'Corte');
  assert.equal(manifest.start_url, base.start_url, 'the same app');
  assert.ok(manifest.screenshots.every((shot, i) => shot.src === base.screenshots[i].src && shot.label !== base.screenshots[i].label));
  const page = await start(PHONE, { locale: 'es-ES' });
  assert.match(await page.locator('link[rel=manifest]').getAttribute('href'), /manifest-es/);
  await done(page);
});
