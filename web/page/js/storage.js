// The app's two records: read while the program is on its way, written in turn. The app makes them, with a checksum; the page stores
// them, reads them back and says how that went. A save names what it builds on: where another tab has kept something since, nothing
// is written, and the app puts both together.
let latest = ['', '']; // what lies there, as far as this tab has seen
let taken = ['', '']; // of that, what the app has read or written
let local = false; // there is no database: localStorage, then
let saving = null;
let keeps = true; // as far as the page knows
const tabs = window.BroadcastChannel && new BroadcastChannel('torchside.' + folder);
const is = (one, other) => one[0] === other[0] && one[1] === other[1];

/** A small thing the page keeps for itself: the theme, so that the first paint has the right ground. */
function remember(key, value) {
  try {
    localStorage.setItem(slotKey(key), value);
    return recall(slotKey(key)) === value;
  } catch {
    return false; // refused, or full
  }
}

/** Once: from localStorage, where older versions kept it, into the database. Only then is this copy's own taken away there. */
async function moveOver(old) {
  await records((found, put) => found.join('') || old.forEach(put));
  [0, 1].forEach((slot) => localStorage.removeItem(slotKey(slot)));
}

const read = (async () => {
  try {
    latest = await records();
    if (!latest.join('') && formerly().join('')) {
      latest = formerly();
      moveOver(latest).catch(() => {}); // the next start tries again
    }
    remember('base', '1');
  } catch {
    // A database that has been there and does not answer is no reason to show older work: that is as good as unreadable.
    local = !recall(slotKey('base'));
    latest = local ? formerly() : ['?', '?'];
    keeps = !local || remember('probe', '1');
    if (!keeps) {
      call('torchside_notice', 'storage-refused', '');
    }
  }
})();

function load(slot) {
  taken[slot] = latest[slot];
  return latest[slot];
}

async function write(record, slot, on) {
  let written = false;
  if (local) {
    const there = is(formerly(), on);
    written = there && remember(slot, record);
    if (there && !written) {
      return 'not-kept';
    }
    latest = formerly();
  } else {
    latest = await records((found, put) => {
      written = is(found, on);
      if (written) {
        put(record, slot);
      }
    });
  }
  if (!written) {
    return 'behind';
  }
  taken = [...latest]; // what it was built on, and itself
  tabs?.postMessage('');
  return 'kept';
}

let asked = false;
function save(record, slot) {
  saving = write(record, slot, [...taken]).catch(() => 'not-kept').then((word) => {
    call('torchside_notice', word, '');
    if (word === 'kept' && !asked) {
      asked = true;
      Promise.resolve(navigator.storage?.persist?.()).catch(() => {}).then((sure) => sure || call('torchside_notice', 'may-be-cleared', ''));
    }
  });
}

/** What has been entered is kept: now the page may go. */
async function settledSaves() {
  for (let last; last !== saving;) {
    last = saving;
    await Promise.race([last, new Promise((done) => { setTimeout(done, 3e3); })]);
  }
}

async function again() {
  await settledSaves();
  location.reload();
}

/** Another tab kept something, or may have while this one was frozen. */
async function look() {
  const found = local ? formerly() : await records().catch(() => latest);
  if (!is(found, taken)) {
    latest = found;
    call('torchside_notice', 'other-tab', '');
  }
}

if (tabs) {
  tabs.onmessage = look;
}
window.addEventListener('storage', (e) => {
  if (local && (e.key === slotKey(0) || e.key === slotKey(1))) {
    look();
  }
});
window.addEventListener('pageshow', (e) => e.persisted && look());

/** All that lies there, as it is. */
function saveKept() {
  download('torchside-kept-work.txt', 'text/plain', latest.join('\n'));
}
