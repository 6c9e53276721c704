// The seal of a quote: HMAC-SHA-256 by the browser's own crypto, which it lends to secure pages only (https, a file, this machine).
// A link "q=..." is sealed as "q=....1KKKKK" + 22 letters: how it is sealed (1, the only way so far), which key, then the first 128 bits of
// the HMAC over WAY_1 and all before the dot. Links from before have "TT" + 22 letters: two letters of which key, and the HMAC over all
// before the dot. The keys are in the workbook (shop.seal_key, shop.old_keys), so in the app's records and the backup, never in a link.
const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const WAY_1 = 'torchside seal 1\n'; // no link begins so: a seal of one kind is never one of the other

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

/** What stands before the HMAC in a seal of this length, and the whole seal. */
async function sealBy(body, hex, length = 28) {
  const old = length === 24;
  const bytes = new Uint8Array(17);
  bytes.set((await hmac(hex, old ? body : WAY_1 + body)).subarray(0, 16));
  const name = (old ? '' : '1') + letters(await hmac(hex, 'torchside key'), old ? 2 : 5);
  return [name, name + letters(bytes, 22)];
}

/** What goes after the dot. */
const sealOf = async (body, hex) => (await sealBy(body, hex))[1];
