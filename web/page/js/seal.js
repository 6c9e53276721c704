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

/** What a shop can say of a quote that comes back to it: body and seal as the module took them from what it opened. '': the seal is right. */
async function whatIsWrong(body, seal, keys) {
  if (!canSeal()) {
    return '▲Seal not checked: this browser checks seals on https pages only.';
  }
  if (!seal) {
    return '▲No seal: this link alone cannot show that it was issued here.';
  }
  if (seal.length === 28 && seal[0] !== '1') {
    return '▲Seal not checked: a newer Torchside made it. Update first.';
  }
  let wrong = '■Not ours: sealed with another key.';
  for (const key of keys) {
    const [name, right] = await sealBy(body, key, seal.length);
    if (seal === right) {
      return '';
    }
    if (seal.startsWith(name)) {
      wrong = '■Altered: this is not the quote that was issued here.';
    }
  }
  return wrong;
}

/** The shop's keys, the one in use first, and its list of quotes handed out as lines for the module; no keys where there is no shop. */
function ownShop() {
  const own = { keys: [], rows: '' };
  let newest = -1;
  for (const slot of [0, 1]) {
    try {
      const record = load(slot);
      const at = record.indexOf('\n');
      const counter = Number(record.slice(0, at).split(' ')[2]);
      const { seal_key: key, old_keys: old = [], issued = [] } = JSON.parse(record.slice(at)).shop;
      if (counter > newest && /^[0-9a-f]{64}$/.test(key)) {
        newest = counter;
        own.keys = [key, ...old.map((one) => one.seal_key).reverse()];
        own.rows = issued.map((q) => [q.number, q.revision, q.part_name, q.issued_day, q.valid_days, q.ending].join('\t')).join('\n');
      }
    } catch {
      // no record there, or none that can be read
    }
  }
  return own;
}
