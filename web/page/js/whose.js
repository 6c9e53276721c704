// On the shop's own device: what the customer's page can say of a quote that comes back.
/** What a shop with this key can say of a quote that comes back to it. */
async function whose(link, hex) {
  if (!canSeal()) {
    return ['▲', 'Seal not checked: this browser checks seals on https pages only.'];
  }
  const [body, seal] = link.split('.');
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
async function ownKey() {
  let key = '';
  let newest = -1;
  for (const record of await keptRecords()) {
    try {
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

/** The records, wherever they are; for the customer's page, which writes none. */
async function keptRecords() {
  const found = await records().catch(() => []);
  return found.join('') ? found : formerly();
}
