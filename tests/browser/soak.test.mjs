// Many acts of one page (TORCHSIDE_ACTS=N): its memory, its listeners and its elements are what they were.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { DESKTOP, settled, until } from './harness.mjs';
import { keptWork } from './kept_shop.mjs';
import { done, setUp, start } from './person.mjs';

setUp();

const ACTS = Number(process.env.TORCHSIDE_ACTS || 400); // 10 000 take ten minutes

test(`${ACTS} acts leave heap, listeners and elements flat`, { timeout: 1800e3 }, async () => {
  const page = await start(DESKTOP);
  const client = await page.context().newCDPSession(page);
  await client.send('Performance.enable');
  const act = (count) => page.evaluate(async (n) => {
    const button = (id) => document.querySelector(`[data-id="${id}"]`);
    const turn = () => new Promise((next) => { requestAnimationFrame(() => setTimeout(next, 0)); });
    const places = ['place/cut', 'place/tune', 'place/part', 'place/quote', 'place/shop'];
    for (let i = 0; i < n; i++) {
      button(i % 2 ? 'title/units' : places[(i / 2) % 5]).click();
      await turn();
    }
    button('place/cut').click();
    await turn();
  }, count);
  const weigh = async () => {
    await settled(page);
    await client.send('HeapProfiler.collectGarbage');
    const { metrics } = await client.send('Performance.getMetrics');
    const of = (name) => metrics.find((m) => m.name === name).value;
    return { heap: of('JSHeapUsedSize'), listeners: of('JSEventListeners'), nodes: of('Nodes'), wasm: await page.evaluate(() => Module.HEAPU8.length) };
  };
  await act(ACTS / 10); // every list, cache and buffer has its size
  const before = await weigh();
  await act(ACTS);
  const after = await weigh();
  console.log(`# before ${JSON.stringify(before)}, after ${JSON.stringify(after)}`);
  assert.equal(after.wasm, before.wasm, 'the app\'s memory');
  assert.ok(after.heap < before.heap * 1.1 + 500e3, 'the page\'s memory');
  assert.ok(after.listeners <= before.listeners + 20, 'listeners');
  assert.ok(after.nodes <= before.nodes * 1.1 + 200, 'elements');
  await until(async () => (await keptWork(page)) !== null, 'the work to be kept');
  await done(page);
});
