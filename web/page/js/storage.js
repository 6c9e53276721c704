// Two slots in the browser's storage. The app writes them in turn with a checksum; the page only stores, reads back and reports.
const slotKey = (slot) => 'torchside.' + slot;
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
    return localStorage.getItem(slotKey(slot)) || '';
  } catch {
    return '';
  }
}

/** A small thing the page keeps for itself: the theme, so that the first paint has the right ground. */
function remember(key, value) {
  try {
    localStorage.setItem('torchside.' + key, value);
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
    localStorage.setItem('torchside.probe', '1');
    localStorage.removeItem('torchside.probe');
  } catch {
    call('torchside_notice', 'storage-refused', '');
  }
})();
