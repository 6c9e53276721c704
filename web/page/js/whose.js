// On the shop's own device: what the customer's page can say of a quote that comes back.
/** What a shop can say of a quote that comes back to it: body and seal as the module took them from what it opened. '': the seal is right. */
async function whatIsWrong(body, seal, keys) {
  if (!canSeal()) {
    return '▲' + say('no_crypto');
  }
  if (!seal) {
    return '▲' + say('no_seal');
  }
  if (seal.length === 28 && seal[0] !== '1') {
    return '▲' + say('newer');
  }
  let wrong = '■' + say('not_ours');
  for (const key of keys) {
    const [name, right] = await sealBy(body, key, seal.length);
    if (seal === right) {
      return '';
    }
    if (seal.startsWith(name)) {
      wrong = '■' + say('altered');
    }
  }
  return wrong;
}

/** The shop's keys, the one in use first, and its list of quotes handed out as lines for the module; no keys where there is no shop. */
async function ownShop() {
  const own = { keys: [], rows: '' };
  let newest = -1;
  for (const record of await keptRecords()) {
    try {
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

/** The records, wherever they are; for the customer's page, which writes none. */
async function keptRecords() {
  const found = await records().catch(() => []);
  return found.join('') ? found : formerly();
}
