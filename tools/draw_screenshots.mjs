#!/usr/bin/env node
// Draw assets/screenshots: what a device shows before it installs the page (manifest: screenshots). The built page is opened in Chromium
// with the example shop, and its picture taken, on a phone and on a desk. The results are committed, as the icons are: tools/serve builds
// the page on machines without a browser. Run this after the page's look has changed; tools/pack_site puts them into the manifest.
//
// usage: tools/draw_screenshots.mjs        needs the built page (tools/serve) and what 'tools/setup test' installs
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { DESKTOP, launch, open, PHONE, serve, settled, SITE } from '../tests/browser/harness.mjs';
import { shopRecord } from '../tests/browser/kept_shop.mjs';

const folder = fileURLToPath(new URL('../assets/screenshots/', import.meta.url));
// name (the label that the device shows, with spaces), window, place
const pictures = [
  ['Cut-settings-for-the-plate', { ...PHONE, deviceScaleFactor: 2 }, '#/cut'],
  ['A-chart-of-the-whole-shop', { ...PHONE, deviceScaleFactor: 2 }, '#/cut/chart'],
  ['Settings-chart-and-stock-side-by-side', { ...DESKTOP, viewport: { width: 1280, height: 800 } }, '#/cut'],
];

mkdirSync(folder, { recursive: true });
readdirSync(folder).filter((name) => name.endsWith('.png')).forEach((name) => rmSync(folder + name));
const host = await serve(SITE);
const browser = await launch();
for (const [name, device, place] of pictures) {
  const page = await open(browser, device, { colorScheme: 'light', kept: shopRecord() });
  await page.goto(host.url);
  await settled(page);
  await page.evaluate((to) => { location.hash = to; }, place);
  await settled(page);
  await page.screenshot({ path: folder + name + '.png' });
  console.log(name + '.png');
  await page.context().close();
}
await browser.close();
await host.stop();
