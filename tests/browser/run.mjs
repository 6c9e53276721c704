// Run the browser tests one after another (they measure, and they share the machine), the measuring ones last.
//
// usage: node tests/browser/run.mjs [WORD...]     only files whose names hold one of the words; -WORD: none whose names hold it
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { run } from 'node:test';
import { spec } from 'node:test/reporters';
import { fileURLToPath } from 'node:url';

const folder = fileURLToPath(new URL('.', import.meta.url));
const words = process.argv.slice(2).filter((w) => !w.startsWith('-'));
const without = process.argv.slice(2).filter((w) => w.startsWith('-')).map((w) => w.slice(1));
const files = readdirSync(folder)
  .filter((name) => name.endsWith('.test.mjs') && (!words.length || words.some((w) => name.includes(w))) && !without.some((w) => name.includes(w)))
  .sort((a, b) => a.startsWith('speed') - b.startsWith('speed') || (a < b ? -1 : 1))
  .map((name) => path.join(folder, name));
if (!files.length) {
  console.error(`no browser test is named like ${words.join(' or ')}`);
  process.exit(2);
}
let passed = 0;
let failed = 0;
const tests = run({ files, concurrency: false });
tests.on('test:pass', ({ details, skip }) => { if (details.type !== 'suite' && skip === undefined) passed++; });
tests.on('test:fail', () => { failed++; });
process.on('exit', () => {
  console.log(`${passed} passed, ${failed} failed`);
  process.exitCode = failed || !passed ? 1 : 0;
});
tests.compose(new spec()).pipe(process.stdout);
