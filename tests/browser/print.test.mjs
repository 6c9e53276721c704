// What comes out of the printer: the chart of the shop, or a card of the job for whoever stands at the table. One page, A4 and Letter.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { DESKTOP, PHONE, settled, until } from './harness.mjs';
import { control, done, feed, setUp, shared, start, touch } from './person.mjs';

setUp();

/** As the browser does it when a person asks for a print, by whichever way. */
async function printed(page) {
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  return page.evaluate(() => document.querySelector('#paper').innerText);
}

async function pages(page, ways = [{}, { preferCSSPageSize: true }]) {
  const counts = [];
  for (const format of ['A4', 'Letter']) {
    for (const options of ways.map((way) => ({ format, ...way }))) {
      counts.push((await page.pdf(options)).toString('latin1').match(/\/Type\s*\/Page\b/g).length);
    }
  }
  return counts;
}

test('the chart prints feed, volts, pierce and kerf of every plate on one page, and marks what is no clean cut', async () => {
  const page = await start(PHONE, { url: shared.host.url + '#/cut/chart' });
  await page.evaluate(() => { window.print = () => { window.asked = true; }; });
  await touch(page, 'button', 'Print this chart');
  await until(() => page.evaluate(() => window.asked), 'the print dialog');
  const text = await printed(page);
  assert.match(text, /\d{1,2} \w{3} \d{4} · machine \d+ to \d+ A/, 'day and machine');
  const chart = await page.evaluate(() => ({
    heads: [...document.querySelectorAll('#paper thead th')].slice(1).map((th) => th.innerText),
    unclean: [...document.querySelectorAll('#paper td.mark-unclean')].map((td) => ({ text: td.innerText, line: getComputedStyle(td).borderBottomStyle })),
    clean: [...document.querySelectorAll('#paper td[class]:not(.mark-unclean)')].map((td) => td.innerText),
  }));
  assert.ok(chart.heads.every((head) => /^\d+ A\s+(\d+ A nozzle|no nozzle rated for it)$/.test(head)), JSON.stringify(chart.heads));
  assert.ok(chart.unclean.length > 0 && chart.unclean.every((cell) => /edge start|no clean cut/.test(cell.text) && cell.line === 'double'), JSON.stringify(chart.unclean));
  assert.ok(chart.clean.length > 20 && chart.clean.every((cell) => /^[\d\s]+\n\d+ V · [\d.]+ s · [\d.]+$/.test(cell)), JSON.stringify(chart.clean));
  assert.deepEqual(await pages(page, [{}, { preferCSSPageSize: true }, { landscape: true }]), [1, 1, 1, 1, 1, 1]);
  await done(page);
});

for (const [place, device] of [['Cut', DESKTOP], ['Tune', PHONE], ['Part', PHONE], ['Quote', PHONE], ['Shop', PHONE]]) {
  test(`Ctrl+P on ${place} prints a card of the job`, async () => {
    const page = await start(device);
    const shown = (await feed(page)).replace(/ .*/, '');
    await control(page, 'button', place).first().dispatchEvent('click');
    await settled(page);
    const text = await printed(page);
    assert.match(text, /^Job card/);
    for (const word of [`Feed\\s+${shown}`, 'Arc volts at the torch\\s+\\d+ V', 'Arc volts at the controller', 'Pierce height', 'Pierce delay', 'Cut height', 'Kerf', 'Lead-in',
      'Time, each', 'Arc starts, each', 'nozzle', 'Shade \\d+ or darker', '\\d{4}']) {
      assert.match(text, new RegExp(word), text);
    }
    assert.equal(await page.locator('#paper svg').count(), 1);
    assert.equal(await page.locator('#paper button').count(), 0);
    assert.deepEqual(await pages(page), [1, 1, 1, 1]);
    await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    assert.equal(await page.locator('#paper *').count(), 0);
    await done(page);
  });
}

test('a plate past reach gives a card that says so', async () => {
  const page = await start(PHONE, { url: shared.host.url + '#/cut/stock' });
  await control(page, 'textbox', 'Thickness').first().focus();
  await settled(page);
  await control(page, 'textbox', 'Thickness').first().fill('99');
  await page.keyboard.press('Enter');
  await settled(page);
  assert.match(await printed(page), /■ No settings for this plate/);
  await done(page);
});
