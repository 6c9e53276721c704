// Every pair of places, and every sheet from every place, walked by what is seen on the screen, in three engines. A page without
// WebGL is walked too. A fault says the way to it.
//
// The stage has eight minutes on two cores, so not every engine walks everything. Chromium walks the pairs at all six widths and the
// sheets at one width of each layout (one column, the chart beside it, sheets beside the place). Firefox and WebKit, whose pages are the
// same program, walk the pairs at the narrowest and at a wide window and the sheets at the narrowest.
import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { Chromium, engines } from './engines.mjs';
import { serve, SITE } from './harness.mjs';
import { PLACES, Tour } from './walk_places.mjs';

const WIDTHS = [360, 768, 1024, 1100, 1440, 1920];
const heightFor = (width) => (width < 700 ? 740 : width < 1100 ? 768 : 900);
const SHEETS = [360, 768, 1100];
const IN_OTHERS = { pairs: [360, 1440], sheets: [360] };

let host;
before(async () => { host = await serve(SITE); });
after(() => host.stop());

describe('the walk through all places and sheets', { concurrency: true }, () => {
  for (const Engine of engines) {
    test(Engine.name, async (t) => {
      const engine = new Engine();
      const tour = new Tour(engine);
      try {
        const whole = Engine === Chromium;
        for (const wanted of whole ? WIDTHS : IN_OTHERS.pairs) {
          const width = Math.max(wanted, engine.narrowest);
          const start = performance.now();
          await tour.begin(host.url, { width, height: heightFor(wanted) });
          await tour.pairs();
          let sheets = '';
          if ((whole ? SHEETS : IN_OTHERS.sheets).includes(wanted)) {
            await tour.everySheet();
            await tour.chart();
            sheets = `; sheets: ${PLACES.map((p) => `${p.slice(6)} ${tour.sheets.get(p)}`).join(', ')}`;
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
      assert.ok((await tour.look()).plain);
      await tour.pairs();
      await tour.everySheet();
      await tour.chart();
    } finally {
      await tour.engine.close();
    }
    assert.deepEqual(tour.found, []);
  });
});
