// Part: the shape by touch, the picture that grows under two fingers, and what is measured on it.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { axe, DESKTOP, PHONE, settled, until } from './harness.mjs';
import { control, done, reads, setUp, shared, start, touch } from './person.mjs';

setUp();

const at = (place) => ({ url: shared.host.url + place });

async function size(page, name, text) {
  const field = page.getByRole('textbox', { name, exact: true });
  await field.focus();
  await page.keyboard.press('Control+A');
  await page.keyboard.insertText(text);
  await page.keyboard.press('Enter');
  await settled(page);
}

test('a flange by its sizes: a finger picks the shape, the picture and the figures follow', async () => {
  const page = await start(PHONE, at('#/part'));
  const before = await reads(page, 'Cut length');
  await touch(page, 'button', 'Shape and sizes');
  await touch(page, 'radio', 'Flange');
  await size(page, 'Outside diameter', '120');
  await size(page, 'Bore', '40');
  await size(page, 'Hole diameter', '11');
  await size(page, 'Bolt circle', '90');
  await touch(page, 'button', 'Close');
  await until(async () => (await reads(page, 'Cut length')) !== before, 'another length of cut');
  assert.match(await reads(page, 'Outside 1'), /^120 × 120 mm/);
  assert.match(await reads(page, 'Hole 2'), /^40 mm/);
  await touch(page, 'button', 'Hole 2');
  assert.equal(await control(page, 'button', 'Hole 2').getAttribute('aria-expanded'), 'true');
  await page.getByText(/^Hole 2: 40 mm, 125\.7 mm/).waitFor();
  await done(page);
});

test('a size that does not fit is refused by name, and the part stays', async () => {
  const page = await start(DESKTOP, at('#/part/shape'));
  await control(page, 'radio', 'Ring').dispatchEvent('click');
  await settled(page);
  await size(page, 'Outside diameter', '60');
  await size(page, 'Bore', '80');
  await page.getByText(/bore/i).first().waitFor();
  await size(page, 'Bore', '30');
  await until(async () => /^60 × 60 mm/.test(await reads(page, 'Outside 1')), 'the ring');
  await done(page);
});

test('two fingers enlarge the picture, one finger moves it, Whole shows all again', async () => {
  const page = await start(PHONE, at('#/part'));
  const client = await page.context().newCDPSession(page);
  const fingers = (type, ...points) => client.send('Input.dispatchTouchEvent', { type, touchPoints: points.map(([x, y], id) => ({ x, y, id })) });
  const width = async () => (await control(page, 'button', 'Outside 1').boundingBox()).width;
  const whole = await width();
  await fingers('touchStart', [160, 230]);
  await fingers('touchStart', [160, 230], [200, 230]);
  for (let d = 5; d <= 60; d += 5) {
    await fingers('touchMove', [160 - d, 230], [200 + d, 230]);
  }
  await fingers('touchEnd', [100, 230]);
  await fingers('touchEnd');
  await settled(page);
  const grown = await width();
  assert.ok(grown > 3 * whole && grown < 5 * whole, `${whole} px grew to ${grown} px: the fingers went from 40 to 160 px apart`);
  const left = async () => (await control(page, 'button', 'Outside 1').boundingBox()).x;
  const x = await left();
  await fingers('touchStart', [180, 230]);
  for (let d = 10; d <= 60; d += 10) {
    await fingers('touchMove', [180 - d, 230]);
  }
  await page.waitForTimeout(120); // rest, so that nothing glides on
  await fingers('touchEnd');
  await settled(page);
  assert.ok(Math.abs((await left()) - (x - 60)) < 14, `moved by ${(await left()) - x}`);
  await touch(page, 'button', 'Fit');
  await until(async () => Math.abs((await width()) - whole) < 1, 'the whole part');
  await touch(page, 'button', '+');
  await until(async () => Math.abs((await width()) - 2 * whole) < 2, 'twice as large');
  await done(page);
});

test('the time of one part opens, and its lines add up to it', async () => {
  const page = await start(DESKTOP, at('#/part/time'));
  const seconds = async (name) => {
    const text = await page.getByText(new RegExp(`^${name}`)).first().textContent();
    const [, minutes, rest] = /(?:(\d+) min )?(\d+(?:\.\d+)?) s/.exec(text);
    return 60 * Number(minutes ?? 0) + Number(rest);
  };
  const parts = (await seconds('Cutting')) + (await seconds('Piercing')) + (await seconds('Rapids and lifts')) + (await seconds('Cooling, duty cycle'));
  const each = await seconds('Each');
  assert.ok(Math.abs(parts - each) <= 2.5, `${parts} s against ${each} s; each line is rounded to a second at most`);
  await done(page);
});

test('a bar grating by touch: its gaps are restarts, timed, warned of, and typed over', async () => {
  const page = await start(PHONE, at('#/part'));
  const starts = async () => Number.parseInt(await reads(page, 'Arc starts'), 10);
  const solid = await starts();
  await page.goto(shared.host.url + '#/part/stock');
  await settled(page);
  await control(page, 'radio', 'Bar grating').focus(); // scrolls there
  await settled(page);
  await touch(page, 'radio', 'Bar grating');
  assert.equal(await control(page, 'radio', 'Bar grating').getAttribute('aria-checked'), 'true');
  await size(page, 'Bar pitch', '40');
  await size(page, 'Bar gap', '30');
  await size(page, 'Cross bar pitch', '100');
  await size(page, 'Cross bar gap', '70');
  const says = (words) => until(async () => words.test(await page.locator('#mirror').textContent()), String(words));
  await says(/Gaps in a meter of cut 16/); // 50 / pi
  await size(page, 'Cross bar gap', '100');
  await says(/These sizes don't work. Make the opening more than 0 and less than its pitch/);
  await size(page, 'Cross bar gap', '70');
  await page.goto(shared.host.url + '#/part');
  await settled(page);
  const grating = await starts();
  assert.ok(grating >= solid + 5, `${solid} starts, ${grating} on grating`);
  const described = async () => page.locator('#mirror').innerHTML(); // what stands below a row's title is its description
  await until(async () => /About 16 times in a meter of cut[^<]*<span>The arc goes out at each gap/.test(await described()), 'the warning of gaps');
  await page.goto(shared.host.url + '#/part/stock');
  await settled(page);
  await size(page, 'Gaps counted', '40');
  await says(/From your count/);
  await page.goto(shared.host.url + '#/part/time');
  await settled(page);
  await says(/Gaps in a meter of cut 40/);
  await page.reload();
  await settled(page);
  await says(/Gaps in a meter of cut 40/);
  await done(page);
});

test('axe finds no fault on Part', async () => {
  for (const device of [PHONE, DESKTOP]) {
    for (const place of ['#/part', '#/part/shape', '#/part/time', '#/part/stock']) {
      const page = await start(device, at(place));
      assert.deepEqual(await axe(page), [], place);
      await done(page);
    }
  }
});
