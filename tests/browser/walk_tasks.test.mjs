// What people come for, done as a person does it, in three engines: each task's touches counted against tasks.json.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, before, describe, test } from 'node:test';
import { engines } from './engines.mjs';
import { serve, SITE } from './harness.mjs';
import { shopRecord } from './kept_shop.mjs';
import { TASKS, Thumb } from './tasks.mjs';

const { tasks } = JSON.parse(readFileSync(new URL('./tasks.json', import.meta.url), 'utf8'));
const PHONE = { width: 360, height: 740, touch: true };

let host;
before(async () => { host = await serve(SITE); });
after(() => host.stop());

/** Yesterday's job on a phone, the server gone: what stands there before anything is touched. */
async function nextMorning(engine, size) {
  const own = await serve(SITE);
  const thumb = new Thumb(engine);
  await thumb.open(own.url, size);
  await thumb.touch('Metal');
  await thumb.touch('Stainless');
  await thumb.touch('Close');
  const said = [await thumb.read('cut/feed'), await thumb.read('title/current')];
  await engine.evaluate('async () => { await navigator.serviceWorker.ready; }');
  await own.stop();
  const start = performance.now();
  await thumb.reload();
  const ms = performance.now() - start;
  thumb.begin();
  assert.deepEqual([await thumb.read('cut/feed'), await thumb.read('title/current')], said);
  return { touches: thumb.touches, note: `, ${(ms / 1000).toFixed(1)} s with the network gone` };
}

async function perform(engine, size, { number, shop }) {
  if (number === 11) {
    return nextMorning(engine, size);
  }
  const thumb = new Thumb(engine);
  await thumb.open(host.url, { ...size, kept: shop ? shopRecord() : '' });
  thumb.begin();
  await TASKS[number](thumb);
  await thumb.well();
  return { touches: thumb.touches, note: '' };
}

describe('the tasks', { concurrency: true }, () => {
  for (const Engine of engines) {
    describe(Engine.name, { concurrency: false }, () => {
      const engine = new Engine();
      const size = { ...PHONE, width: Math.max(PHONE.width, engine.narrowest) };
      after(() => engine.close());
      for (const wanted of tasks) {
        const { number, task, most, today, todo } = wanted;
        if (todo) {
          test.todo(`${number}. ${task}: ${todo}`);
          continue;
        }
        test(`${number}. ${task}`, async (t) => {
          assert.ok(today <= most, `tasks.json lets it take ${today} touches, more than ${most}`);
          const { touches, note } = await perform(engine, size, wanted);
          t.diagnostic(`${touches} touches, today ${today}, at most ${most}${note}`);
          assert.ok(touches <= today, `${touches} touches, until now ${today}`);
        });
      }
    });
  }
});
