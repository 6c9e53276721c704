// Two slots in the browser's storage. The app writes them in turn with a checksum; the page only stores, reads back and reports.
//
// Keys carry the folder that the page lies in, so that two copies on one origin do not write over each other. The one-file page on a
// disk keeps the short keys: it may be moved, and its work goes with the browser.
const folder = location.protocol === 'file:' ? '' : new URL('.', location.href).pathname + '.';
const slotKey = (slot) => 'torchside.' + folder + slot;
let asked = false;

function save(record, slot) {
  try {
    localStorage.setItem(slotKey(slot), record);
    if (localStorage.getItem(slotKey(slot)) !== record) {
      return 0;
    }
  } catch {
    return 0; // refused, or full
  }
  if (!asked) {
    asked = true;
    navigator.storage?.persist?.().catch(() => {});
  }
  return 1;
}

function load(slot) {
  try {
    const own = [0, 1].some((one) => localStorage.getItem(slotKey(one)) !== null);
    // Work from before keys had the folder in them is taken over, as long as this copy has kept none of its own.
    return localStorage.getItem(slotKey(slot)) || (own ? '' : localStorage.getItem('torchside.' + slot)) || '';
  } catch {
    return '';
  }
}

/** A small thing the page keeps for itself: the theme, so that the first paint has the right ground. */
function remember(key, value) {
  try {
    localStorage.setItem(slotKey(key), value);
  } catch {
    // kept nowhere; nothing depends on it
  }
}

window.addEventListener('storage', (e) => {
  if (e.key === slotKey(0) || e.key === slotKey(1)) {
    call('torchside_notice', 'other-tab', '');
  }
});

(() => {
  try {
    localStorage.setItem(slotKey('probe'), '1');
    localStorage.removeItem(slotKey('probe'));
  } catch {
    call('torchside_notice', 'storage-refused', '');
  }
})();
