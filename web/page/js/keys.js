// Where in the browser's storage this copy's work lies; the customer's page looks there for the shop's key.
//
// Keys carry the folder that the page lies in, so that two copies on one origin do not write over each other. The one-file page on a
// disk keeps the short keys: it may be moved, and its work goes with the browser.
const folder = location.protocol === 'file:' ? '' : new URL('.', location.href).pathname + '.';
const slotKey = (slot) => 'torchside.' + folder + slot;

function load(slot) {
  try {
    const own = [0, 1].some((one) => localStorage.getItem(slotKey(one)) !== null);
    // Work from before keys had the folder in them is taken over, as long as this copy has kept none of its own.
    return localStorage.getItem(slotKey(slot)) || (own ? '' : localStorage.getItem('torchside.' + slot)) || '';
  } catch {
    return '';
  }
}
