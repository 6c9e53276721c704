// The seal of a quote: HMAC-SHA-256 by the browser's own crypto, which it lends to secure pages only (https, a file, this machine).
// A link "q=..." is sealed as "q=....TT" + 22 letters: two letters of which key, then the first 128 bits of the HMAC over all before
// the dot. The key is in the workbook (shop.seal_key), so in the app's records and the backup, never in a link.
const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

const canSeal = () => Boolean(globalThis.crypto?.subtle);

function letters(bytes, count) {
  let out = '';
  for (let i = 0; out.length < count; i++) {
    let six = 0;
    for (let bit = 6 * i; bit < 6 * i + 6; bit++) {
      six = six * 2 + ((bytes[bit >> 3] >> (7 - bit % 8)) & 1);
    }
    out += LETTERS[six];
  }
  return out;
}

async function hmac(hex, text) {
  const raw = Uint8Array.from(hex.match(/../g), (pair) => parseInt(pair, 16));
  const key = await crypto.subtle.importKey('raw', raw, { name: 'HMAC', hash: 'SHA-256' }, false, ['sign']);
  return new Uint8Array(await crypto.subtle.sign('HMAC', key, new TextEncoder().encode(text)));
}

/** What goes after the dot: which key, and the seal. */
async function sealOf(link, hex) {
  const bytes = new Uint8Array(17);
  bytes.set((await hmac(hex, link)).subarray(0, 16));
  return letters(await hmac(hex, 'torchside key'), 2) + letters(bytes, 22);
}
