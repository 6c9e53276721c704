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

/** What a shop with this key can say of a quote that comes back to it: body and seal as the module took them from what it opened. */
async function whose(body, seal, hex) {
  if (!canSeal()) {
    return ['▲', 'Seal not checked: this browser checks seals on https pages only.'];
  }
  if (!seal) {
    return ['▲', 'No seal: this link alone cannot show that it was issued here.'];
  }
  const right = await sealOf(body, hex);
  if (seal === right) {
    return ['●', 'Issued here, unaltered.'];
  }
  return seal.slice(0, 2) === right.slice(0, 2) ? ['■', 'Altered: this is not the quote that was issued here.']
    : ['■', 'Not ours: sealed with another key.'];
}

/** The key in the newest of the app's two records. */
function ownKey() {
  let key = '';
  let newest = -1;
  for (const slot of [0, 1]) {
    try {
      const record = load(slot);
      const at = record.indexOf('\n');
      const counter = Number(record.slice(0, at).split(' ')[2]);
      const held = JSON.parse(record.slice(at)).shop.seal_key;
      if (counter > newest && /^[0-9a-f]{64}$/.test(held)) {
        newest = counter;
        key = held;
      }
    } catch {
      // no record there, or none that can be read
    }
  }
  return key;
}
