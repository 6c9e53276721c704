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
 * A page that goes does not live to see its last write done, nor the one that waits for it. What it held is left in localStorage, which
 * needs no answer, by a name of its own, with the heads (counter and checksum) of what it was built on. The next start writes it, or
 * another tab that is open; where other work lies there by then, the app puts both together inside the one act. Each write notes, in
 * the same act, its head: nothing is written twice, and what was left is forgotten only when it is written.
 */
const heads = (all) => all.map((record) => record.slice(0, 80));
const note = (found, put, record) => put(heads([record])[0] + found.late.slice(0, 1520), 'late');
const lateKey = slotKey('late');
const ownLate = 'late' + Math.random();
let flying = null; // the write on its way
let next = ''; // the record that waits for it
let left = false;

/** What the app would leave behind: that record, and what was typed and not taken. */
function leave(record, typed) {
  next = record;
  try {
    sessionStorage.setItem(slotKey('typed'), typed);
  } catch {
    // refused, or full: it goes with the page
  }
}

/** True when it is written, or never will be: it was cut short, or is no record. */
async function written(late) {
  if (![0, 1].includes(late?.slot) || !late.on?.join || !late.record?.trim) {
    return true;
  }
  const [mark] = heads([late.record]);
  let done = true;
  await records((found, lay) => {
    const now = heads(found);
    const put = app.shell.put = (record, slot) => { // the app's answer too
      note(found, lay, late.record);
      lay(record, slot);
      done = true;
    };
    if (found.late.includes(mark) || now.includes(mark)) {
      return;
    }
    if (now[late.slot] === late.sent && now[1 - late.slot] === late.on[1 - late.slot]) {
      put(late.record, 1 - late.slot); // the write was done after all
    } else if (is(now, late.on)) {
      put(late.record, late.slot);
    } else {
      done = false;
      if (ready && whole) {
        call('torchside_notice', 'late', [late.first && found.late.includes(late.sent) ? late.first : late.base, late.record, ...found].join('\f'));
      } else {
        call(takeLate);
      }
    }
  });
  return done;
}

async function takeLate() {
  try {
    for (const key of Object.keys(localStorage).filter((name) => name.startsWith(lateKey))) {
      let late;
      try {
        late = JSON.parse(recall(key));
      } catch {
        // a closing page was cut short as it wrote it
      }
      if (await written(late)) {
        localStorage.removeItem(key);
        tabs?.postMessage('');
      }
    }
  } catch {
    // it waits for the next start
  }
  ready && look();
}

const read = (async () => {
  await takeLate();
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
        note(found, put, record);
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
  flying = { record, slot, on: heads(on), sent: heads([record])[0], base: on[1 - slot] };
  saving = write(record, slot, on).catch(() => 'not-kept').then((word) => {
    flying = null;
    call('torchside_notice', word, ''); // the next write may begin
    if (left && !flying && word === 'kept') {
      left = false;
      localStorage.removeItem(slotKey(ownLate));
    }
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
  left = Boolean(flying) && !local && remember(ownLate, JSON.stringify({ ...flying, record: next || flying.record, first: next && flying.record }));
});

try {
  const typed = sessionStorage.getItem(slotKey('typed'));
  typed && call('torchside_notice', 'typed', typed);
} catch {
  // lends nothing
}

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
  } else if (!local && e.key?.startsWith(lateKey) && e.newValue) {
    setTimeout(takeLate, 500); // a tab that is only hidden does it itself
  }
});
window.addEventListener('pageshow', (e) => e.persisted && look());
