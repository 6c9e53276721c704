// Run the browser tests, two files at a time; those that measure time or memory come last, one after another, with the machine to themselves.
//
// usage: node tests/browser/run.mjs [WORD...]     only files whose names hold one of the words; -WORD: none whose names hold it
// TORCHSIDE_FILES=N   how many files at a time (2)
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { run } from 'node:test';
import { spec } from 'node:test/reporters';
import { fileURLToPath } from 'node:url';

const MEASURING = /^(kill|soak|speed|walk)/; // the walks fill the machine by themselves
const folder = fileURLToPath(new URL('.', import.meta.url));
const words = process.argv.slice(2).filter((w) => !w.startsWith('-'));
const without = process.argv.slice(2).filter((w) => w.startsWith('-')).map((w) => w.slice(1));
const names = readdirSync(folder)
  .filter((name) => name.endsWith('.test.mjs') && (!words.length || words.some((w) => name.includes(w))) && !without.some((w) => name.includes(w)))
  .sort();
if (!names.length) {
  console.error(`no browser test is named like ${words.join(' or ')}`);
  process.exit(2);
}
let passed = 0;
let failed = 0;

/** Run these files, `concurrency` of them at a time. */
function runFiles(chosen, concurrency) {
  if (!chosen.length) {
    return Promise.resolve();
  }
  const tests = run({ files: chosen.map((name) => path.join(folder, name)), concurrency });
  tests.on('test:pass', ({ details, skip }) => { if (details.type !== 'suite' && skip === undefined) passed++; });
  tests.on('test:fail', () => { failed++; });
  const shown = tests.compose(new spec());
  shown.pipe(process.stdout, { end: false });
  return new Promise((done) => { shown.on('end', done); });
}

await runFiles(names.filter((name) => !MEASURING.test(name)), Number(process.env.TORCHSIDE_FILES || 2));
await runFiles(names.filter((name) => MEASURING.test(name)), false);
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed || !passed ? 1 : 0;
