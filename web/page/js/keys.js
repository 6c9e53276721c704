// Where in the browser's storage this copy's work lies; the customer's page looks there for the shop's key.
//
// The work is two records in a database of this copy (IndexedDB: localStorage reaches the disk seconds later). Names carry the folder
// that the page lies in, so that two copies on one origin do not write over each other. The one-file page on a disk keeps the short
// name: it may be moved, and its work goes with the browser.
const folder = location.protocol === 'file:' ? '' : new URL('.', location.href).pathname + '.';
const slotKey = (slot) => 'torchside.' + folder + slot;

/** What localStorage holds there; '' too where the browser lends none. */
function recall(key) {
  try {
    return localStorage.getItem(key) || '';
  } catch {
    return '';
  }
}

/** What older versions kept in localStorage. From before keys had the folder in them, too, as long as this copy has none of its own. */
function formerly() {
  const own = [0, 1].map((slot) => recall(slotKey(slot)));
  return own.join('') ? own : [0, 1].map((slot) => recall('torchside.' + slot));
}

let connection = null;

function database() {
  connection ||= new Promise((done, fail) => {
    const ask = indexedDB.open('torchside.' + folder, 1);
    ask.onupgradeneeded = () => ask.result.createObjectStore('kept');
    ask.onsuccess = () => {
      ask.result.onclose = () => { connection = null; }; // the user cleared it: the next act makes it anew
      done(ask.result);
    };
    ask.onerror = () => fail(ask.error);
    setTimeout(fail, 8e3, new Error(words.page.no_answer)); // a browser's fault that a page can only wait out
  });
  connection.catch(() => { connection = null; });
  return connection;
}

/** Both records, and in found.late the heads of the last few that were written, read in one act; `change(found, put)` may write in the same act, before any other tab can. */
async function records(change) {
  const act = (await database()).transaction('kept', change ? 'readwrite' : 'readonly', { durability: 'strict' });
  const store = act.objectStore('kept');
  return new Promise((done, fail) => {
    const found = ['', ''];
    [0, 1, 'late'].forEach((slot) => {
      store.get(slot).onsuccess = ({ target }) => {
        found[slot] = target.result || '';
        if (slot === 'late') {
          change?.(found, (record, to) => store.put(found[to] = record, to));
          act.commit?.();
        }
      };
    });
    act.oncomplete = () => done(found);
    act.onabort = () => fail(act.error);
  });
}
