// Every pair of places, and every sheet from every place, walked by what is seen on the screen, in three engines. A page without
// WebGL is walked too. A fault says the way to it.
//
// Every engine walks the pairs at all six widths, and Chromium every sheet. Firefox and WebKit, whose pages are the same program, walk
// the sheets at one width each, another one every day: the whole stage has some twelve minutes on two cores. TORCHSIDE_WALK_ALL=1 walks all in
// all of them, TORCHSIDE_WALK_DAY=N what was walked on that day (the log says the number).
import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { Chromium, engines } from './engines.mjs';
import { serve, SITE } from './harness.mjs';
import { PLACES, Tour } from './walk_places.mjs';

const WIDTHS = [360, 768, 1024, 1100, 1440, 1920];
const heightFor = (width) => (width < 700 ? 740 : width < 1100 ? 768 : 900);
const ALL = process.env.TORCHSIDE_WALK_ALL === '1';
const DAY = Number(process.env.TORCHSIDE_WALK_DAY || Math.floor(Date.now() / 86400e3));

/** Whether this engine walks the sheets at this width. The two that take turns are half a round apart. */
function walksSheets(Engine, width) {
  const turn = DAY + 3 * engines.indexOf(Engine);
  return ALL || Engine === Chromium || WIDTHS[turn % WIDTHS.length] === width;
}

let host;
before(async () => { host = await serve(SITE); });
after(() => host.stop());

describe('the walk through all places and sheets', { concurrency: true }, () => {
  for (const Engine of engines) {
    test(Engine.name, async (t) => {
      const engine = new Engine();
      const tour = new Tour(engine);
      try {
        for (const wanted of WIDTHS) {
          const width = Math.max(wanted, engine.narrowest);
          const start = performance.now();
          await tour.begin(host.url, { width, height: heightFor(wanted) });
          await tour.pairs();
          let sheets = '';
          if (walksSheets(Engine, wanted)) {
            await tour.everySheet();
            await tour.chart();
            sheets = `; sheets of day ${DAY}: ${PLACES.map((p) => `${p.slice(6)} ${tour.sheets.get(p)}`).join(', ')}`;
            assert.ok([...tour.sheets.values()].every((n) => n > 2), 'each place opens some: ' + sheets);
          }
          t.diagnostic(`${engine.name} ${width} px: ${tour.touches} touches in ${((performance.now() - start) / 1000).toFixed(0)} s${sheets}`);
          tour.touches = 0;
        }
      } finally {
        await engine.close();
      }
      assert.deepEqual(tour.found, []);
    });
  }
  test('the plain page, in Chromium without WebGL', async () => {
    const tour = new Tour(new Chromium());
    try {
      await tour.begin(host.url, { width: 360, height: 740, args: ['--disable-3d-apis'] });
      assert.ok(tour.seen.plain);
      await tour.pairs();
      await tour.everySheet();
      await tour.chart();
    } finally {
      await tour.engine.close();
    }
    assert.deepEqual(tour.found, []);
  });
});
