#!/usr/bin/env node
// Draw assets/screenshots: what a device shows before it installs the page (manifest: screenshots). The built page is opened in Chromium
// with the example shop, and its picture taken, on a phone and on a desk. The results are committed, as the icons are: tools/serve builds
// the page on machines without a browser. Run this after the page's look has changed (a browser test says when); tools/pack_site puts them into the manifest.
//
// usage: tools/draw_screenshots.mjs        needs the built page (tools/serve) and what 'tools/setup test' installs
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { DESKTOP, launch, open, PHONE, serve, settled, SITE } from '../tests/browser/harness.mjs';
import { shopRecord } from '../tests/browser/kept_shop.mjs';

export const folder = fileURLToPath(new URL('../assets/screenshots/', import.meta.url));
// name (the label that the device shows, with spaces), window, place
export const pictures = [
  ['Cut-settings-for-the-plate', { ...PHONE, deviceScaleFactor: 2 }, '#/cut'],
  ['A-chart-of-the-whole-shop', { ...PHONE, deviceScaleFactor: 2 }, '#/cut/chart'],
  ['Settings-chart-and-stock-side-by-side', { ...DESKTOP, viewport: { width: 1280, height: 800 } }, '#/cut'],
];

/** The picture as PNG. */
export async function draw(browser, url, [, device, place]) {
  const page = await open(browser, device, { colorScheme: 'light', kept: shopRecord() });
  await page.goto(url);
  await settled(page);
  await page.evaluate((to) => { location.hash = to; }, place);
  await settled(page);
  const png = await page.screenshot();
  await page.context().close();
  return png;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  mkdirSync(folder, { recursive: true });
  readdirSync(folder).filter((name) => name.endsWith('.png')).forEach((name) => rmSync(folder + name));
  const host = await serve(SITE);
  const browser = await launch();
  for (const picture of pictures) {
    writeFileSync(`${folder}${picture[0]}.png`, await draw(browser, host.url, picture));
    console.log(`${picture[0]}.png`);
  }
  await browser.close();
  await host.stop();
}
