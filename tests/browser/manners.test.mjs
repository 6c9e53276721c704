// What a phone and a desk expect of a page: found by a word, held, pulled, pasted, shared, made wider, installed, updated.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { axe, clean, DESKTOP, listen, offlineReady, open, pack, PHONE, serve, settled, until } from './harness.mjs';
import { keptWork, shopRecord } from './kept_shop.mjs';
import { control, done, focused, reads, setUp, shared, start, touch } from './person.mjs';

setUp();

const said = (page) => page.locator('[data-id="said"]').textContent({ timeout: 5000 }).catch(() => '');
const CLIPBOARD = { permissions: ['clipboard-read', 'clipboard-write'] };

async function type(page, text) {
  await page.keyboard.type(text, { delay: 20 });
  await settled(page);
}

async function key(page, name) {
  await page.keyboard.press(name);
  await settled(page);
}

/** A finger that stays, or goes down the page: by the browser's own touch. */
async function finger(page, from, to, ms) {
  const client = await page.context().newCDPSession(page);
  const at = (x, y) => [{ x, y }];
  await client.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(...from) });
  for (let i = 1; i <= 8 && (from[0] !== to[0] || from[1] !== to[1]); i++) {
    await client.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(from[0] + (to[0] - from[0]) * i / 8, from[1] + (to[1] - from[1]) * i / 8) });
    await page.waitForTimeout(30);
  }
  await page.waitForTimeout(ms);
  await client.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await settled(page);
}

test('/ and Ctrl+K find by a word: arrows, Enter and Escape lead through it', async () => {
  const page = await start(DESKTOP);
  await key(page, '/');
  assert.equal(await focused(page), 'find/text');
  await type(page, 'hose');
  const rows = page.locator('[data-id="find/found"] button');
  assert.ok(await rows.count() >= 2, 'more than one hose');
  await key(page, 'ArrowDown');
  const first = await focused(page);
  assert.match(first, /^find\/field\/air\/shop\.air\.hose/);
  await key(page, 'ArrowDown');
  assert.notEqual(await focused(page), first);
  await key(page, 'ArrowUp');
  await key(page, 'ArrowUp');
  assert.equal(await focused(page), 'find/text', 'and back into the field');
  await key(page, 'ArrowDown');
  await key(page, 'Enter');
  assert.match(page.url(), /#\/shop\/air$/);
  assert.match(await focused(page), /^field\/shop\.air\.hose/, 'the field is open');
  await key(page, 'Escape');
  await key(page, 'Control+k');
  assert.equal(await focused(page), 'find/text');
  await type(page, 'corner tol');
  await key(page, 'Enter');
  assert.match(page.url(), /#\/shop\/table$/);
  await key(page, 'Escape');
  await key(page, 'Escape');
  await key(page, 'Control+k');
  assert.deepEqual(await axe(page), []);
  await key(page, 'Escape');
  assert.doesNotMatch(page.url(), /find/, 'one Escape closes it');
  await key(page, '?');
  assert.match(page.url(), /\/keys$/);
  await done(page);
});

test('single keys can be turned off; Ctrl+K stays', async () => {
  const page = await start(DESKTOP);
  await key(page, '?');
  await control(page, 'switch', 'Number keys').dispatchEvent('click');
  await settled(page);
  await key(page, 'Escape');
  await page.evaluate(() => document.activeElement.blur());
  for (const single of ['/', '?', '2']) {
    await key(page, single);
    assert.match(page.url(), /#\/cut$/, single);
  }
  await key(page, 'Control+k');
  assert.match(page.url(), /\/find$/);
  await done(page);
});

test('Ctrl+Z takes the last change back, Ctrl+Shift+Z puts it there again; in a field it is the typing that goes back', async () => {
  const page = await start(DESKTOP);
  const last = () => page.locator('[data-id="change/what"]').textContent();
  await page.locator('[data-id="title/units"]').dispatchEvent('click');
  await settled(page);
  const inches = await reads(page, 'Feed');
  assert.match(inches, /in\/min/);
  for (const time of ['first', 'second']) { // there is one step, and it is not undone twice
    await key(page, 'Control+z');
    assert.match(await reads(page, 'Feed'), /mm\/min/, `the ${time} time`);
    assert.match(await last(), /^Undone: /);
  }
  await key(page, 'Control+Shift+Z');
  assert.equal(await reads(page, 'Feed'), inches);
  await control(page, 'textbox', 'Thickness').focus();
  await key(page, 'Control+z');
  assert.equal(await reads(page, 'Feed'), inches, 'the field has the key');
  await done(page);
});

test('on a phone Find is a row; a metal that is found is this job\'s', async () => {
  const page = await start(PHONE);
  await control(page, 'button', 'Find').focus();
  await settled(page);
  await touch(page, 'button', 'Find');
  assert.equal(await focused(page), 'find/text');
  await type(page, 'alum');
  await touch(page, 'button', 'Aluminum');
  assert.match(await reads(page, 'Metal'), /Aluminum/);
  await done(page);
});

test('a figure that a finger holds is copied, and says so', async () => {
  const page = await start(PHONE, CLIPBOARD);
  const box = await control(page, 'button', 'Feed').boundingBox();
  const at = [box.x + box.width / 2, box.y + 40];
  await finger(page, at, at, 750);
  await until(async () => /^Copied: Feed \d/.test(await said(page)), 'the word of it');
  assert.match(await page.evaluate(() => navigator.clipboard.readText()), /^\d+ mm\/min$/);
  assert.match(page.url(), /#\/cut$/, 'nothing opened');
  await done(page);
});

test('a page pulled down shows what is new', async () => {
  const page = await start(PHONE);
  await finger(page, [180, 250], [180, 300], 50);
  assert.match(page.url(), /#\/cut$/, 'a short pull is none');
  await finger(page, [180, 250], [180, 420], 50);
  assert.match(page.url(), /#\/cut\/news$/);
  await done(page);
});

test('rows copied in a spreadsheet are logged by Ctrl+V, and refused with the column\'s name', async () => {
  const page = await start(DESKTOP, CLIPBOARD);
  const paste = async (text) => {
    await page.evaluate((t) => navigator.clipboard.writeText(t), text);
    await key(page, 'Control+v');
  };
  await key(page, '2');
  const before = (await keptWork(page)).shop.tests.length;
  await paste('6\t45\t1500\tclean\n8\t45\t1000\ttoo fast');
  assert.match(await said(page), /^2 cuts logged/);
  assert.equal((await keptWork(page)).shop.tests.length, before + 2);
  await paste('6\t45\t1\tclean');
  assert.match(await said(page), /Row 1, Feed: Enter 10 to /);
  assert.equal((await keptWork(page)).shop.tests.length, before + 2);
  await page.evaluate(() => navigator.clipboard.writeText('3\t40\t2500'));
  await control(page, 'button', 'Paste rows from a spreadsheet').dispatchEvent('click');
  await until(async () => /^1 cut logged/.test(await said(page)), 'the button does the same');
  await done(page);
});

test('the edges of columns are dragged, moved by keys, and where they were after a reload', async () => {
  const page = await start(DESKTOP);
  const width = async () => Number(await page.getByRole('separator', { name: 'Width of the first column' }).getAttribute('aria-valuenow'));
  assert.equal(await width(), 360);
  await page.mouse.move(361, 450);
  await page.mouse.down();
  await page.mouse.move(400, 450, { steps: 4 });
  await page.mouse.up();
  await settled(page);
  assert.equal(await width(), 399);
  await page.getByRole('separator', { name: 'Width of the first column' }).focus();
  await key(page, 'ArrowRight');
  assert.equal(await width(), 415);
  await page.reload();
  await settled(page);
  assert.equal(await width(), 415);
  assert.deepEqual(await axe(page), []);
  await page.getByRole('separator', { name: 'Width of the first column' }).focus();
  await key(page, 'Home');
  assert.equal(await width(), 360);
  await done(page);
});

/** Runs in the page: a browser that shares as `how` says. */
function sharing(how) {
  window.sharedTexts = [];
  navigator.share = (what) => {
    window.sharedTexts.push(what.text || what.url || '');
    return how === 'takes' ? Promise.resolve() : Promise.reject(Object.assign(new Error(how), { name: how }));
  };
}

test('settings are shared; where the browser refuses they are copied, where the user thinks better of it nothing is', async () => {
  for (const how of ['takes', 'NotAllowedError', 'AbortError']) {
    const page = await start(PHONE, CLIPBOARD);
    await page.evaluate(sharing, how);
    await page.evaluate(() => Module.shell.requestFrame());
    await settled(page);
    await control(page, 'button', 'Share settings as text').dispatchEvent('click');
    await settled(page);
    assert.match((await page.evaluate(() => window.sharedTexts))[0], /^Mild steel, 6 mm, 45 A\nFeed: /);
    if (how === 'NotAllowedError') {
      await until(async () => /^Copied/.test(await said(page)), 'copied instead');
      assert.match(await page.evaluate(() => navigator.clipboard.readText()), /Feed: /);
    } else {
      assert.equal(await said(page), '', how);
    }
    await done(page);
  }
});

test('the offer to install comes from the second visit on, as a row, and goes when it is taken', async () => {
  const page = await start(PHONE);
  const offer = () => page.evaluate(() => {
    const event = new Event('beforeinstallprompt', { cancelable: true });
    event.prompt = () => { window.asked = true; };
    window.dispatchEvent(event);
    return event.defaultPrevented;
  });
  assert.equal(await offer(), true, 'the browser itself does not ask');
  await settled(page);
  assert.equal(await control(page, 'button', 'Install on this device').count(), 0, 'not at the first visit');
  await page.reload();
  await settled(page);
  await offer();
  await settled(page);
  assert.equal(await control(page, 'button', 'Install on this device').count(), 0, 'nor when it is loaded again');
  const second = listen(await page.context().newPage());
  await second.goto(shared.host.url);
  await settled(second);
  await second.evaluate(() => {
    const event = new Event('beforeinstallprompt', { cancelable: true });
    event.prompt = () => { window.asked = true; };
    window.dispatchEvent(event);
  });
  await settled(second);
  await control(second, 'button', 'Install on this device').dispatchEvent('click');
  await settled(second);
  assert.equal(await second.evaluate(() => window.asked), true);
  assert.equal(await control(second, 'button', 'Install on this device').count(), 0);
  await clean(second);
  await done(page);
});

test('an update says in two lines what it brings, in the language that is spoken', async () => {
  const host = await serve(pack('manners-1', { mark: '1' }));
  for (const locale of ['en-US', 'es-ES']) {
    host.folder = pack('manners-1', { mark: '1' });
    const page = await open(shared.browser, PHONE, { kept: shopRecord(), locale });
    await page.goto(host.url);
    await settled(page);
    await offlineReady(page);
    host.folder = pack('manners-2', { mark: '2' });
    await page.evaluate(() => navigator.serviceWorker.ready.then((ready) => ready.update()));
    const strip = page.locator('[data-id="notice/update"]');
    const lines = locale === 'en-US' ? /Find anything by its name/ : /Busque cualquier cosa/;
    await until(async () => lines.test((await strip.getAttribute('aria-description', { timeout: 20000 })) || ''), 'what it brings', 30000);
    await page.context().close();
  }
  await host.stop();
});
