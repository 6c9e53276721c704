// A shop that is kept in the browser from before the page opens: the record that the app itself would have written.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { ROOT } from './harness.mjs';

/** CRC-32 (ITU-T V.42), as core/document/record.hpp has it. */
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
