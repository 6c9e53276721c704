#!/usr/bin/env node
// Draw assets/icons/torchside.svg as the PNG files that phones ask for. The results are committed; run this after the drawing changed.
//
// usage: tools/draw_icons.mjs        needs what 'tools/setup test' installs (Chromium, playwright-core)
import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const here = fileURLToPath(new URL('.', import.meta.url));
const { chromium } = createRequire(here + '../tests/browser/')('playwright-core');
const folder = here + '../assets/icons/';
const svg = readFileSync(folder + 'torchside.svg');
const drawing = 'data:image/svg+xml;base64,' + svg.toString('base64');

// name, side in px, share of the side that the drawing takes: a maskable icon is cut to a circle of 80 %
const icons = [['torchside-192', 192, 1], ['torchside-512', 512, 1], ['torchside-maskable-512', 512, 0.78], ['torchside-180', 180, 1]];
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM || '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] });
for (const [name, side, share] of icons) {
  const page = await browser.newPage({ viewport: { width: side, height: side } });
  await page.setContent(`<style>*{margin:0}body{background:#FAF8F2;display:grid;place-items:center;height:100vh}</style>
    <img src="${drawing}" width="${Math.round(side * share)}" height="${Math.round(side * share)}">`);
  await page.locator('img').evaluate((img) => img.decode());
  await page.screenshot({ path: folder + name + '.png' });
  console.log(name + '.png');
}
await browser.close();
