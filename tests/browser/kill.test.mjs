// The whole browser is killed at any moment, and what was entered a second before or earlier is there afterwards.
//
// TORCHSIDE_KILLS: how often (10); each time the browser starts anew on the same profile, says what it holds, and is edited until it
// is killed with all its processes.
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { test } from 'node:test';
import { chromium } from 'playwright-core';
import { FLAGS, serve, settled, SITE, until } from './harness.mjs';

const KILLS = Number(process.env.TORCHSIDE_KILLS || 10);
const site = process.env.TORCHSIDE_KILL_SITE || SITE; // another build, to compare with
const held = 1000; // ms after which an edit must not be lost

async function startBrowser(profile) {
  const port = path.join(profile, 'DevToolsActivePort');
  rmSync(port, { force: true });
  const process = spawn('/usr/bin/chromium', [...FLAGS, '--headless=new', '--remote-debugging-port=0', `--user-data-dir=${profile}`, 'about:blank'],
    { detached: true, stdio: 'ignore' });
  await until(() => existsSync(port) && readFileSync(port, 'utf8').includes('\n'), 'the browser', 60000);
  const browser = await chromium.connectOverCDP(`http://127.0.0.1:${readFileSync(port, 'utf8').split('\n')[0]}`);
  return { browser, kill: () => globalThis.process.kill(-process.pid, 'SIGKILL') };
}

async function openPage(browser, url) {
  const page = await browser.contexts()[0].newPage();
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto(url + '#/shop/kept');
  await settled(page);
  return page;
}

/** What the page shows in the field that the test counts up. */
const field = (page) => page.getByRole('textbox', { name: /^Shop name/ });
const shown = async (page) => Number(/^edit (\d+)/.exec(await field(page).inputValue())?.[1] ?? 0);

async function enter(page, number) {
  await field(page).fill('edit ' + number);
  await field(page).press('Enter');
}

test(`${KILLS} kills of the whole browser lose no edit older than ${held / 1000} s`, { timeout: 4 * 3600e3 }, async () => {
  const host = await serve(site);
  const profile = mkdtempSync(path.join(tmpdir(), 'torchside-kill-'));
  const lost = [];
  let last = 0;
  let edits = [];
  let killed = 0;
  for (let turn = 0; turn <= KILLS; turn++) {
    const { browser, kill } = await startBrowser(profile);
    const page = await openPage(browser, host.url + '?' + turn);
    const now = await shown(page);
    const owed = edits.filter((e) => e.at < killed - held && e.number > now);
    if (owed.length) {
      lost.push({ turn, edits: owed.length, ms: Math.round(killed - owed[0].at) });
    }
    if (turn === KILLS) {
      kill();
      break;
    }
    last = Math.max(last, now);
    edits = [];
    const end = performance.now() + 1500 + Math.random() * 4000;
    while (performance.now() < end) {
      const number = ++last;
      await enter(page, number);
      edits.push({ number, at: performance.now() });
      await new Promise((go) => { setTimeout(go, Math.random() * 150); });
    }
    killed = performance.now();
    kill();
    await browser.close().catch(() => {});
  }
  await host.stop();
  rmSync(profile, { recursive: true, force: true });
  console.log(`kills ${KILLS}, with losses ${lost.length}, edits lost ${lost.reduce((sum, l) => sum + l.edits, 0)}, `
    + `the oldest ${Math.max(0, ...lost.map((l) => l.ms))} ms before the kill`);
  assert.deepEqual(lost, []);
});
