// A shop that is kept in the browser from before the page opens: the record that the app itself would have written.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { ROOT } from './harness.mjs';

/** CRC-32 (ITU-T V.42), as core/store/record.hpp has it. */
function crc32(bytes) {
  let crc = ~0;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) {
      crc = (crc >>> 1) ^ (crc & 1 ? 0xEDB88320 : 0);
    }
  }
  return ~crc >>> 0;
}

export function record(workbook, counter = 1) {
  const json = Buffer.from(JSON.stringify(workbook));
  const head = `torchside-record 1 ${counter} ${json.length} `;
  const check = crc32(Buffer.concat([Buffer.from(head), json])).toString(16).padStart(8, '0');
  return `${head}${check}\n${json}`;
}

/** The shop of assets/demo.json: somebody's own, or marked as the example. */
export function shopRecord({ example = false } = {}) {
  const workbook = JSON.parse(readFileSync(path.join(ROOT, 'assets/demo.json'), 'utf8'));
  workbook.shop.example = example;
  return record(workbook);
}

/** Runs in the page before anything else: keeps the record where nothing is kept yet. */
export function keepRecord(text) {
  try {
    if (!localStorage.getItem('torchside.0') && !localStorage.getItem('torchside.1')) {
      localStorage.setItem('torchside.0', text);
    }
  } catch {
    // about:blank has no storage, and a test may refuse it
  }
}

/** Runs in the page: what lies in its database, or, given `put`, what is to lie there from now on. */
function inDatabase([name, put]) {
  return new Promise((done, fail) => {
    const ask = indexedDB.open(name, 1);
    ask.onupgradeneeded = () => ask.result.createObjectStore('kept');
    ask.onerror = () => fail(ask.error);
    ask.onsuccess = () => {
      const act = ask.result.transaction('kept', put ? 'readwrite' : 'readonly');
      const store = act.objectStore('kept');
      const found = ['', ''];
      [0, 1].forEach((slot) => {
        if (put) {
          store.put(put[slot], slot);
        } else {
          store.get(slot).onsuccess = (e) => { found[slot] = e.target.result || ''; };
        }
      });
      act.oncomplete = () => { ask.result.close(); done(found); };
      act.onabort = () => fail(act.error);
    };
  });
}

/** The two records that this page's copy keeps, a moment after the last change; `folder`: of a copy elsewhere on the origin, '' for a file. */
export async function keptRecords(page, folder = '/.') {
  await page.waitForTimeout(350); // a change is kept 300 ms after the last one
  return page.evaluate(inDatabase, ['torchside.' + folder]);
}
export const putRecords = (page, records, folder = '/.') => page.evaluate(inDatabase, ['torchside.' + folder, records]);
/** The workbook of the newest record. */
export async function keptWork(page, folder) {
  const found = (await keptRecords(page, folder)).filter(Boolean).map((text) => [Number(text.split(' ')[2]), text.slice(text.indexOf('\n'))]);
  const newest = found.sort((a, b) => b[0] - a[0])[0];
  return newest ? JSON.parse(newest[1]) : null;
}
