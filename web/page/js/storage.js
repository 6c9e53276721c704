// Two slots in the browser's storage. The app writes them in turn with a checksum; the page only stores, reads back and reports.
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
