// 2000 random acts: 500 at each of four sizes, in four minutes on two cores. A slower machine does as many as go into the time, and
// says how many.
// After each: nothing went wrong, something is drawn, the mirror is the picture; after a reload the screen says what it said.
// TORCHSIDE_SEED=N walks another way, TORCHSIDE_WALK_SECONDS=N longer; a failure prints a script that
// repeats it, and leaves a picture in build.
import assert from 'node:assert/strict';
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { after, before, describe, test } from 'node:test';
import { Chromium } from './engines.mjs';
import { ROOT, serve, SITE } from './harness.mjs';
import { dice, RandomWalk, script, shorten } from './walk_random.mjs';

const SEED = Number(process.env.TORCHSIDE_SEED || 11);
const ACTS = 500; // at each size
const LEAST = 100; // on a machine so slow that the time runs out
const BUDGET_MS = 1000 * Number(process.env.TORCHSIDE_WALK_SECONDS || 240);
const SHORTEN_MS = 40e3;
const SIZES = [{ width: 360, height: 740, touch: true }, { width: 768, height: 1024, touch: true }, { width: 1100, height: 800, touch: false }, { width: 1440, height: 900, touch: false }];

let host;
before(async () => { host = await serve(SITE); });
after(() => host.stop());

describe('random acts', { concurrency: true }, () => {
  for (const [i, size] of SIZES.entries()) {
    test(`at ${size.width} × ${size.height}`, async (t) => {
      const end = Date.now() + BUDGET_MS;
      const walk = new RandomWalk(new Chromium());
      const roll = dice(SEED * 1000 + i);
      try {
        await walk.begin(host.url, size);
        while (walk.acts.length < ACTS && Date.now() < end) {
          const found = await walk.perform(walk.choose(roll, walk.seen)).catch((e) => [e.message]);
          if (found.length) {
            const done = walk.acts.length;
            writeFileSync(path.join(ROOT, `build/walk-${SEED}-${size.width}.png`), await walk.engine.screenshot());
            const acts = await shorten(walk, [...walk.acts], Date.now() + SHORTEN_MS); // what went wrong last may differ: any fault counts
            assert.fail(`seed ${SEED}, act ${done}: ${found.join('; ')}\nThis repeats it:\n\n${script(size, acts)}\n`);
          }
        }
        t.diagnostic(`seed ${SEED}: ${walk.acts.length} acts in ${((Date.now() - end + BUDGET_MS) / 1000).toFixed(0)} s`);
        assert.ok(walk.acts.length >= LEAST, `only ${walk.acts.length} acts in the time`);
      } finally {
        await walk.engine.close();
      }
    });
  }
});
