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

/**
 * A page that goes does not live to see its last write done. That is left in localStorage, which needs no answer, with the heads
 * (counter and checksum) of what it was built on; the next start writes it, or another tab that is open, where those still lie there.
 */
const heads = (all) => all.map((record) => record.slice(0, 80));
let flying = null; // the write on its way
let left = false;

function forgetLate() {
  left = false;
  localStorage.removeItem(slotKey('late'));
}

async function takeLate() {
  const text = recall(slotKey('late'));
  if (text) {
    let late = {};
    try {
      late = JSON.parse(text);
    } catch {
      forgetLate(); // a closing page was cut short as it wrote it
      return;
    }
    await records((found, put) => is(heads(found), late.on) && put(late.record, late.slot));
    forgetLate();
  }
}

const read = (async () => {
  await takeLate().catch(() => {}); // it waits for the next start
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
  const on = [...taken];
  flying = { record, slot, on: heads(on) };
  saving = write(record, slot, on).catch(() => 'not-kept').then((word) => {
    flying = null;
    if (left) {
      forgetLate();
    }
    call('torchside_notice', word, '');
    if (word === 'kept' && !asked) {
      asked = true;
      Promise.resolve(navigator.storage?.persist?.()).catch(() => {}).then((sure) => sure || call('torchside_notice', 'may-be-cleared', ''));
    }
  });
}

// The app keeps a burst of changes by one write: it asks to be called a moment after the last. No frame is drawn for that. A page
// that is hidden may not come back, so there it is done at once.
let keeping = 0;
const keep = () => call('torchside_notice', 'keep', '');
function keepIn(ms) {
  clearTimeout(keeping);
  keeping = setTimeout(keep, ms);
}
document.addEventListener('visibilitychange', () => document.hidden && keep());
window.addEventListener('pagehide', () => {
  keep();
  left = Boolean(flying) && !local && remember('late', JSON.stringify(flying));
});

/** What has been entered is kept: now the page may go. */
async function settledSaves() {
  keep();
  await null; // asked for while the app draws: it hears of it when it has drawn
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
  } else if (!local && e.key === slotKey('late') && e.newValue) {
    setTimeout(() => takeLate().then(look, look), 500); // a tab that is only hidden does it itself
  }
});
window.addEventListener('pageshow', (e) => e.persisted && look());

/** All that lies there, as it is. */
function saveKept() {
  download('torchside-kept-work.txt', 'text/plain', latest.join('\n'));
}
