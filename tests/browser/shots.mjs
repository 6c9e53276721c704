// Pictures of the built page for the eye: every place at three sizes in both themes, into build/shots/.
//
// usage: node tests/browser/shots.mjs [PLACE...]     places are addresses such as '#/cut' or '#/shop'; without any, all that are known
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { shopRecord } from './kept_shop.mjs';
import { launch, open, ROOT, serve, settled, SITE } from './harness.mjs';

const sizes = {
  phone: { viewport: { width: 360, height: 740 }, deviceScaleFactor: 3, hasTouch: true, isMobile: true },
  tablet: { viewport: { width: 768, height: 1024 }, deviceScaleFactor: 2, hasTouch: true },
  desk: { viewport: { width: 1440, height: 900 }, deviceScaleFactor: 1 },
};
const known = ['#/cut', '#/cut/stock', '#/cut/chart', '#/cut/figure/feed', '#/cut/reach', '#/cut/circuit', '#/cut/air', '#/cut/safety', '#/shop', '#/shop/machine', '#/shop/table'];
const places = process.argv.length > 2 ? process.argv.slice(2) : known;
const folder = path.join(ROOT, 'build/shots');
mkdirSync(folder, { recursive: true });
const host = await serve(SITE);
const browser = await launch();
for (const [size, device] of Object.entries(sizes)) {
  for (const [theme, colorScheme] of [['paper', 'light'], ['night', 'dark']]) {
    const page = await open(browser, device, { colorScheme, serviceWorkers: 'block', kept: shopRecord() });
    for (const place of places) {
      await page.goto('about:blank');
      await page.goto(host.url + place);
      await settled(page);
      const name = `${place.replace(/^#\//, '').replace(/\W+/g, '-')}-${size}-${theme}.png`;
      await page.screenshot({ path: path.join(folder, name) });
    }
    await page.context().close();
  }
}
await browser.close();
await host.stop();
console.log(`${places.length * 6} pictures in build/shots`);
