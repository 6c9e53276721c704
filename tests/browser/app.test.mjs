// The built page in a browser: a person at the table, with a finger, with a keyboard, with a screen reader, and with no network.
// Controls are found by role and name in the mirror; a finger then touches the canvas at the place that the mirror gives.
import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { axe, clean, DESKTOP, launch, offlineReady, open, pack, PHONE, serve, settled, SINGLE, SITE, until } from './harness.mjs';

let browser;
let host;
before(async () => {
  assert.ok(existsSync(SITE + '/index.html'), 'build/site is not there: build it first (tools/serve, or the preset wasm)');
  host = await serve(SITE);
  browser = await launch();
});
after(async () => {
  await browser?.close();
  await host?.stop();
});

async function start(device = PHONE, { url = host.url, ...options } = {}) {
  const page = await open(browser, device, options);
  await page.goto(url);
  await settled(page);
  return page;
}

async function done(page, but) {
  await clean(page, but);
  await page.context().close();
}

/** The mirrored control whose name begins so; the name of a button goes on with its value. */
const control = (page, role, name) => page.getByRole(role, { name: new RegExp('^' + name.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&') + '(:|$)') });
const reads = async (page, name) => (await control(page, 'button', name).textContent()).replace(name + ': ', '');
const feed = (page) => reads(page, 'Feed');

/** Touch the canvas where the mirror says that the control is. */
async function touch(page, role, name) {
  const box = await control(page, role, name).boundingBox();
  const at = [box.x + box.width / 2, box.y + box.height / 2];
  assert.ok(at[0] >= 0 && at[1] >= 0 && at[0] < page.viewportSize().width && at[1] < page.viewportSize().height, `${name} is on screen`);
  await (page.touching ?? true ? page.touchscreen.tap(...at) : page.mouse.click(...at));
  await settled(page);
}

const focused = (page) => page.evaluate(() => document.activeElement.closest('[data-id]')?.dataset.id ?? '');

/** Press Tab until the control has the focus. */
async function tabTo(page, id) {
  for (let i = 0; i < 120; i++) {
    if ((await focused(page)) === id) {
      return;
    }
    await page.keyboard.press('Tab');
  }
  assert.fail(`Tab never came to ${id}`);
}

async function thicknessIs(page, wanted, before) {
  await until(async () => wanted.test(await reads(page, 'Thickness')), `the thickness to be ${wanted}, it is ${await reads(page, 'Thickness')}`);
  await settled(page);
  const now = await feed(page);
  assert.match(now, /^\d+ mm\/min/);
  assert.notEqual(now, before, 'another plate, another feed');
}

test('the first answer: mild steel, 6 mm, 45 A, with a band and what it rests on', async () => {
  for (const device of [PHONE, DESKTOP]) {
    const page = await start(device);
    const value = parseInt(await feed(page), 10);
    assert.ok(value >= 1300 && value <= 2100, `feed ${value}`);
    const [, low, high] = /(\d+) to (\d+)/.exec(await control(page, 'button', 'Feed').getAttribute('aria-description'));
    assert.ok(low < value && value < high && low < 1700 && 1700 < high, `${low} to ${high} holds 1700`);
    for (const figure of ['Arc volts', 'Pierce height', 'Pierce delay', 'Kerf']) {
      assert.match(await reads(page, figure), /^[\d.]+ (V|mm|s)\b/, figure);
    }
    await done(page);
  }
});

test('a finger changes the stock: 3/16 on the keypad', async () => {
  const page = await start(PHONE);
  const before = await feed(page);
  await touch(page, 'button', 'Thickness');
  await until(async () => (await focused(page)) === 'stock/thickness', 'the field to be ready');
  for (const key of ['3', 'over', '1', '6', 'inch']) {
    const box = await page.locator('[data-id="keypad"]').getByRole('button', { name: key, exact: true }).boundingBox();
    await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
    await settled(page);
  }
  assert.equal(await page.getByRole('textbox', { name: 'Thickness' }).inputValue(), '3/16"');
  await touch(page, 'button', 'Done');
  await touch(page, 'button', 'Close');
  await thicknessIs(page, /^4\.76 mm|3\/16/, before);
  await done(page);
});

test('a finger picks a plate from the usual sizes, another metal, and closes the sheet', async () => {
  const page = await start(PHONE);
  const before = await feed(page);
  await touch(page, 'button', 'Metal');
  await touch(page, 'radio', '10');
  await touch(page, 'radio', 'Stainless');
  await touch(page, 'button', 'Close');
  assert.equal(await page.getByRole('dialog').count(), 0);
  await thicknessIs(page, /^10 mm/, before);
  assert.equal(await reads(page, 'Metal'), 'Stainless');
  await done(page);
});

test('a keyboard alone changes the stock', async () => {
  const page = await start(DESKTOP);
  const before = await feed(page);
  await tabTo(page, 'stock/thickness');
  await page.keyboard.type('3/16');
  assert.equal(await page.getByRole('textbox', { name: 'Thickness' }).inputValue(), '3/16');
  await page.keyboard.press('Enter');
  await thicknessIs(page, /^4\.76 mm|3\/16/, before);
  await tabTo(page, 'title/units');
  await page.keyboard.press('Space');
  await until(async () => /^3\/16 in/.test(await reads(page, 'Thickness')), 'inches');
  await done(page);
});

test('paste, comma and a wrong entry in the field', async () => {
  const page = await start(DESKTOP);
  const field = page.getByRole('textbox', { name: 'Thickness' });
  await field.focus();
  await page.keyboard.press('Control+A');
  await page.keyboard.insertText('6,5');
  await page.keyboard.press('Enter');
  await until(async () => /^6\.5 mm/.test(await reads(page, 'Thickness')), '6,5 read as 6.5 mm');
  await field.focus();
  await page.keyboard.press('Control+A');
  await page.keyboard.insertText('1e3');
  await settled(page);
  assert.equal(await field.getAttribute('aria-invalid'), 'true');
  assert.ok((await field.getAttribute('aria-description')).length > 5, 'and says why');
  await page.keyboard.press('Escape');
  await settled(page);
  assert.match(await reads(page, 'Thickness'), /^6\.5 mm/, 'what cannot be read changes nothing');
  assert.equal(await field.getAttribute('aria-invalid'), null);
  await done(page);
});

test('the mirror alone changes the stock', async () => {
  const page = await start(PHONE);
  const before = await feed(page);
  await control(page, 'button', 'Metal').dispatchEvent('click'); // as a screen reader presses
  await page.getByRole('dialog', { name: 'Stock' }).waitFor();
  const field = page.getByRole('textbox', { name: 'Thickness' });
  await field.focus();
  await field.evaluate((el) => {
    el.value = '3/16';
    el.dispatchEvent(new InputEvent('input', { bubbles: true }));
  });
  await field.press('Enter');
  await until(async () => /^4\.76 mm|3\/16/.test(await reads(page, 'Thickness')), '3/16');
  await control(page, 'radio', 'Stainless').dispatchEvent('click');
  await until(async () => (await reads(page, 'Metal')) === 'Stainless', 'the metal');
  await control(page, 'button', 'Close').dispatchEvent('click');
  await until(async () => (await page.getByRole('dialog').count()) === 0, 'the sheet to close');
  assert.notEqual(await feed(page), before);
  await done(page);
});

test('plain mode: the whole job without a canvas', async () => {
  const page = await start(PHONE, { url: host.url + '?plain=1' });
  assert.ok(await page.evaluate(() => document.documentElement.classList.contains('plain')));
  assert.equal(await page.locator('canvas').isVisible(), false);
  const before = await feed(page);
  await control(page, 'button', 'Metal').tap();
  const field = page.getByRole('textbox', { name: 'Thickness' });
  await field.fill('1/4');
  await field.press('Enter');
  await until(async () => /^6\.35 mm|1\/4/.test(await reads(page, 'Thickness')), '1/4');
  await control(page, 'button', 'Close').tap();
  await until(async () => (await feed(page)) !== before, 'another feed');
  assert.deepEqual(await axe(page), []);
  await done(page);
});

test('rotation, and back, with the drawing at the full density of the screen', async () => {
  const page = await start(PHONE);
  const canvas = () => page.evaluate(() => [Module.canvas.width, Module.canvas.height]);
  assert.deepEqual(await canvas(), [1080, 2220]);
  await page.setViewportSize({ width: 740, height: 360 });
  await until(async () => (await canvas()).join() === '2220,1080', 'the canvas to turn');
  await settled(page);
  const box = await control(page, 'button', 'Shop').boundingBox();
  assert.ok(box.y + box.height <= 360 && box.x + box.width <= 740, 'the places are on screen');
  await page.setViewportSize({ width: 360, height: 740 });
  await until(async () => (await canvas()).join() === '1080,2220', 'the canvas to turn back');
  await done(page);
});

test('nothing that a finger must hit is under 48 px', async () => {
  const page = await start(PHONE);
  for (const open of [null, 'Thickness', 'Metal']) {
    if (open) {
      await touch(page, 'button', open);
    }
    const small = await page.evaluate(() => [...document.querySelectorAll('#mirror :is(button, input)')].map((el) => {
      const { width, height } = el.getBoundingClientRect();
      return [el.closest('[data-id]').dataset.id, width, height];
    }).filter(([id, w, h]) => Math.min(w, h) < 47.5 && !document.querySelector(`[data-id="${id}"] .live`)));
    assert.deepEqual(small, [], open || 'Cut');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await settled(page);
  }
  await done(page);
});

test('Back closes the sheet, Escape too, and the address opens the same place again', async () => {
  const page = await start(PHONE);
  await touch(page, 'button', 'Metal');
  assert.equal(await page.evaluate(() => location.hash), '#/cut/stock');
  await page.goBack();
  await until(async () => (await page.getByRole('dialog').count()) === 0, 'the sheet to close');
  await touch(page, 'button', 'Shop');
  assert.equal(await page.evaluate(() => location.hash), '#/shop');
  await page.reload();
  await settled(page);
  assert.equal(await control(page, 'button', 'Shop').getAttribute('aria-current'), 'page');
  await page.goBack();
  await until(async () => (await control(page, 'button', 'Cut').getAttribute('aria-current')) === 'page', 'Cut');
  await touch(page, 'button', 'Metal');
  await page.keyboard.press('Escape');
  await until(async () => (await page.getByRole('dialog').count()) === 0, 'Escape to close the sheet');
  await done(page);
});

test('from the first visit it works with the server gone, and keeps the work', async () => {
  const own = await serve(SITE);
  const page = await start(PHONE, { url: own.url });
  await offlineReady(page);
  await own.stop();
  await assert.rejects(fetch(own.url), 'the server is really gone');
  await touch(page, 'button', 'Metal');
  await touch(page, 'radio', '10');
  await page.reload();
  await settled(page);
  assert.match(await reads(page, 'Thickness'), /^10 mm/, 'the change was kept');
  const other = await page.context().newPage();
  await other.goto(own.url);
  await settled(other);
  assert.match(await reads(other, 'Thickness'), /^10 mm/);
  await done(page);
});

test('a new version is offered on screen, taken with the work kept; and the way back', async () => {
  const [one, two] = [pack('site-one', { mark: 'one' }), pack('site-two', { mark: 'two' })];
  const own = await serve(one);
  const page = await start(PHONE, { url: own.url });
  await offlineReady(page);
  await touch(page, 'button', 'Metal');
  await touch(page, 'radio', '8');
  await touch(page, 'button', 'Close');
  let before = await page.evaluate(() => document.documentElement.dataset.version);
  for (const next of [two, one]) {
    own.folder = next;
    await page.reload();
    await settled(page);
    const offer = control(page, 'button', 'New version'); // "New version: use it now"
    await until(() => offer.count(), 'the offer');
    await settled(page);
    const box = await offer.boundingBox();
    await page.touchscreen.tap(box.x + 60, box.y + box.height / 2);
    await until(async () => (await page.evaluate(() => document.documentElement.dataset.version).catch(() => before)) !== before, 'the new version');
    await settled(page);
    before = await page.evaluate(() => document.documentElement.dataset.version);
    assert.match(await reads(page, 'Thickness'), /^8 mm/);
    assert.equal(await control(page, 'button', 'New version').count(), 0);
  }
  await own.stop();
  await done(page);
});

async function change(page, size) {
  await touch(page, 'button', 'Metal');
  await touch(page, 'radio', size);
  await touch(page, 'button', 'Close');
}

test('a torn write loses one change at most', async () => {
  const page = await start(PHONE);
  await change(page, '8');
  await change(page, '10');
  const slots = await page.evaluate(() => [localStorage.getItem('torchside.0'), localStorage.getItem('torchside.1')]);
  assert.ok(slots[0] && slots[1], 'both slots are written');
  const shown = [];
  for (const slot of [0, 1]) {
    for (const damage of ['cut', 'flip', 'gone']) {
      const broken = { cut: slots[slot].slice(0, slots[slot].length / 2), flip: slots[slot].replace(/\d(?=\D*$)/, (d) => (Number(d) + 1) % 10), gone: '' }[damage];
      await page.evaluate(([s, all, b]) => {
        all.forEach((text, i) => localStorage.setItem('torchside.' + i, i === s ? b : text));
      }, [slot, slots, broken]);
      await page.reload();
      await settled(page);
      shown.push(`${slot} ${damage}: ${(await reads(page, 'Thickness')).slice(0, 5).trim()}`);
    }
  }
  const newest = shown.filter((s) => /: 10 mm/.test(s)).map((s) => s[0]);
  const older = shown.filter((s) => /: 8 mm/.test(s)).map((s) => s[0]);
  assert.equal(newest.length, 3, shown.join('; '));
  assert.equal(older.length, 3, shown.join('; '));
  assert.equal(new Set(newest).size + new Set(older).size, 2, 'whichever slot is damaged, the other one counts');
  await done(page);
});

test('both slots damaged: the page starts, and says nothing false', async () => {
  const page = await start(PHONE, { init: () => { localStorage.setItem('torchside.0', 'x'.repeat(5000)); localStorage.setItem('torchside.1', '\u0000{"torchside":1'); } });
  assert.match(await feed(page), /mm\/min/);
  await done(page);
});

test('storage refused: everything works, and the page says that nothing is kept', async () => {
  const page = await start(PHONE, { init: () => { Storage.prototype.setItem = () => { throw new DOMException('no', 'QuotaExceededError'); }; } });
  await change(page, '10');
  assert.match(await reads(page, 'Thickness'), /^10 mm/);
  assert.match((await page.getByRole('alert').allTextContents()).join(), /keeps nothing|nothing is kept|not kept/i);
  await done(page);
});

test('the one-file page from disk', async () => {
  for (const device of [PHONE, DESKTOP]) {
    const page = await start(device, { url: 'file://' + SINGLE });
    const before = await feed(page);
    page.touching = device === PHONE;
    if (device === PHONE) {
      await change(page, '10');
    } else {
      await touch(page, 'radio', '10');
    }
    await thicknessIs(page, /^10 mm/, before);
    await page.reload();
    await settled(page);
    assert.match(await reads(page, 'Thickness'), /^10 mm/, 'kept in the browser from a file too');
    assert.equal(await page.evaluate(() => navigator.serviceWorker?.controller ?? null), null);
    await done(page);
  }
});

test('a lost graphics context shows the figures as a page, and the drawing comes back', async () => {
  const page = await start(PHONE);
  await change(page, '10');
  await page.evaluate(() => {
    window.loser = Module.canvas.getContext('webgl').getExtension('WEBGL_lose_context');
    window.loser.loseContext();
  });
  await page.waitForFunction(() => document.documentElement.classList.contains('plain'));
  assert.ok(await control(page, 'button', 'Feed').isVisible());
  await control(page, 'button', 'Metal').tap();
  await control(page, 'radio', '8').tap();
  await until(async () => /^8 mm/.test(await reads(page, 'Thickness')), 'a change without the canvas');
  await page.evaluate(() => { window.old = true; window.loser.restoreContext(); });
  await page.waitForFunction(() => !window.old && !document.documentElement.classList.contains('plain'));
  await settled(page);
  assert.match(await reads(page, 'Thickness'), /^8 mm/);
  await done(page, /WebGL/);
});

test('a browser without WebGL gets the plain page', async () => {
  const bare = await launch(['--disable-3d-apis']);
  const page = await open(bare, PHONE);
  await page.goto(host.url);
  await settled(page);
  assert.ok(await page.evaluate(() => document.documentElement.classList.contains('plain')));
  assert.match(await feed(page), /mm\/min/);
  await clean(page, /WebGL|webgl/);
  await bare.close();
});

test('the chart prints as one clean page', async () => {
  const page = await start(DESKTOP);
  await page.evaluate(() => { window.print = () => { window.printed = (window.printed || 0) + 1; }; });
  await control(page, 'button', 'Print this chart').dispatchEvent('click');
  await until(() => page.evaluate(() => window.printed === 1), 'the print dialog');
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  const sheet = await page.evaluate(() => ({ rows: document.querySelectorAll('#paper tr').length, cells: [...document.querySelectorAll('#paper td')].filter((td) => /\d/.test(td.innerText)).length,
    words: document.querySelector('#paper').innerText, canvas: getComputedStyle(document.querySelector('canvas')).display }));
  assert.ok(sheet.rows > 8 && sheet.cells > 30, JSON.stringify(sheet));
  assert.match(sheet.words, /Feed, mm\/min/);
  assert.doesNotMatch(sheet.words, / at \d+ A:/, 'figures only, no controls');
  assert.equal(sheet.canvas, 'none');
  const pdf = (await page.pdf({ format: 'A4' })).toString('latin1');
  assert.equal(pdf.match(/\/Type\s*\/Page\b/g).length, 1);
  await done(page);
});

test('axe finds no fault in any screen, hidden or plain', async () => {
  for (const device of [PHONE, DESKTOP]) {
    for (const at of ['', '#/cut/stock', '#/cut/chart', '#/shop', '#/cut/figure/feed']) {
      const page = await start(device, { url: host.url + at });
      assert.deepEqual(await axe(page), [], at || 'start');
      await done(page);
    }
  }
});

test('settings of the system: a dark screen gives the night theme', async () => {
  const page = await start(PHONE, { colorScheme: 'dark' });
  assert.deepEqual(await page.evaluate(() => [document.documentElement.dataset.theme, document.querySelector('meta[name=theme-color]').content]), ['night', '#101418']);
  const corner = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  assert.equal(corner, 'rgb(16, 20, 24)');
  await done(page);
});

test('a spoilt address does not spoil what is stored', async () => {
  const page = await start(PHONE);
  await change(page, '10');
  for (const hash of ['#/nowhere/at/all', '#%00%ff', '#' + 'x'.repeat(4000), '#/cut/' + '<script>']) {
    await page.goto('about:blank');
    await page.goto(host.url + hash);
    await settled(page);
    assert.match(await reads(page, 'Thickness'), /^10 mm/, hash.slice(0, 20));
  }
  await done(page);
});

test('a drag scrolls and presses nothing; momentum carries on and comes to rest', async () => {
  const page = await start(PHONE);
  await touch(page, 'button', 'Metal');
  const top = async () => (await control(page, 'radio', '6').boundingBox()).y;
  const before = await top();
  const stock = await reads(page, 'Thickness');
  const client = await page.context().newCDPSession(page);
  const touchAt = (type, y) => client.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x: 100, y }] });
  const y = before + 20;
  await touchAt('touchStart', y);
  for (let d = 10; d <= 150; d += 10) {
    await touchAt('touchMove', y - d);
  }
  await touchAt('touchEnd', 0);
  await settled(page);
  assert.ok(before - (await top()) >= 130, `scrolled by ${before - (await top())}`);
  assert.equal(await reads(page, 'Thickness'), stock);
  const drawn = await page.evaluate(() => window.torchsideCounters.drawn);
  await page.waitForTimeout(500);
  assert.equal(await page.evaluate(() => window.torchsideCounters.drawn), drawn, 'at rest');
  await done(page);
});

test('the keyboard brings what it reaches into view', async () => {
  const page = await start(PHONE);
  await control(page, 'button', 'Metal').dispatchEvent('click');
  await page.getByRole('dialog').waitFor();
  await control(page, 'radio', 'On the table').focus();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Shift+Tab');
  await settled(page);
  const box = await control(page, 'radio', 'On the table').boundingBox();
  const bar = await page.getByRole('navigation').boundingBox();
  assert.ok(box.y > 100 && box.y + box.height <= bar.y + 1, JSON.stringify([box, bar]));
  await done(page);
});

test('the browser keeps its own keys and its zoom', async () => {
  const page = await start(DESKTOP);
  await page.mouse.click(700, 450);
  await page.evaluate(() => {
    window.eaten = [];
    for (const type of ['keydown', 'wheel']) {
      window.addEventListener(type, (e) => { if (e.defaultPrevented) window.eaten.push(type + ' ' + (e.key || 'zoom')); });
    }
  });
  for (const key of ['F3', 'F6', 'F11', 'F12', 'Control+Equal', 'Control+Minus', 'Control+0', 'Alt+ArrowDown', 'Tab']) {
    await page.keyboard.press(key);
  }
  await page.keyboard.down('Control');
  await page.mouse.wheel(0, 5);
  await page.keyboard.up('Control');
  await page.waitForTimeout(200);
  assert.deepEqual(await page.evaluate(() => window.eaten), []);
  await done(page);
});

test('a change made in another tab is announced', async () => {
  const page = await start(PHONE);
  const other = await page.context().newPage();
  await other.goto(host.url);
  await settled(other);
  await other.bringToFront();
  await change(other, '10');
  await page.bringToFront();
  await until(async () => /another tab/.test((await page.getByRole('alert').allTextContents()).join()), 'the announcement');
  await done(page);
});
