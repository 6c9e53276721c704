// What the first answer does not need of the page: a script of its own, which arrives with the rest of the program (addRest in boot.js)
// and adds to the shell what the app asks for once somebody has touched something.
const app = window.Module;
const { call, nodeOf, has, keyOf, nodes, recall, remember, slotKey, smallModule, tongues, receive, kept } = app.lent;
const notice = (kind, text = '') => call('torchside_notice', kind, text);

// ---- to the clipboard, to a file, to somebody ----------------------------------------------------------------------------

/** The app says "copied" only when the browser did. */
function copy(text) {
  const tell = (done) => call('torchside_notice', done ? 'copied' : 'not-copied', '');
  const byHand = () => {
    const area = document.createElement('textarea');
    area.value = text;
    document.body.append(area);
    area.select();
    tell(document.execCommand('copy'));
    area.remove();
  };
  if (navigator.clipboard) {
    navigator.clipboard.writeText(text).then(() => tell(true), byHand);
  } else {
    byHand();
  }
}

function download(name, type, text) {
  const a = document.createElement('a');
  a.href = URL.createObjectURL(new Blob([text], { type }));
  a.download = name;
  a.click();
  setTimeout(() => URL.revokeObjectURL(a.href), 60e3);
}

function pickFile(accept) {
  const picker = document.createElement('input');
  picker.type = 'file';
  picker.accept = accept;
  picker.addEventListener('change', () => receive(picker.files[0]));
  picker.click();
}

const openDrawing = () => pickFile('.dxf,.svg,image/svg+xml,image/vnd.dxf');

/** All that lies in the browser, as it is. */
const saveKept = () => download('torchside-kept-work.txt', 'text/plain', kept().join('\n'));

/** The customer's page as one file, in the customer's language where its words are here. */
async function quoteText(link) {
  const module = await smallModule(document.getElementById('quote-wasm'));
  module.text('torchside_quote', link);
  module.text('torchside_quote_words', tongues.get(module.text('torchside_quote_language')));
  return module.text('torchside_quote_file');
}

async function saveQuote(name, link) {
  try {
    download(name, 'text/html', await quoteText(link));
    call('torchside_notice', 'saved', name);
  } catch (e) {
    call('torchside_notice', 'not-saved', e.message);
  }
}

/** To whoever the user picks. He may think better of it; where the browser itself refuses, `instead` is done. */
function share(what, instead) {
  const asked = navigator.share ? navigator.share(what) : Promise.reject(new Error());
  asked.then(() => notice('shared'), (e) => e.name === 'AbortError' || instead());
}

async function shareQuote(name, link) {
  const save = () => saveQuote(name, link);
  try {
    const files = [new File([await quoteText(link)], name, { type: 'text/html' })];
    if (navigator.canShare?.({ files })) {
      share({ files, title: name }, save);
      return;
    }
  } catch {
    // saveQuote says what is wrong
  }
  save();
}

/** The customer's page, in a tab of its own. */
function openPage(address) {
  window.open(address, '_blank', 'noopener');
}

function newKey() {
  return Array.from(crypto.getRandomValues(new Uint8Array(32)), (b) => b.toString(16).padStart(2, '0')).join('');
}

function seal(link, key) {
  sealOf(link, key).then((tag) => call('torchside_notice', 'sealed', link + '.' + tag), () => {});
}

function qr(text) {
  smallModule(document.getElementById('quote-wasm')).then((module) => call('torchside_notice', 'qr', module.text('torchside_qr', text)), () => call('torchside_notice', 'no-qr', ''));
}

// ---- what a phone lends --------------------------------------------------------------------------------------------------

/** An offer from the second visit on; a tab that is loaded again is no visit. */
function visits() {
  let count = Number(recall(slotKey('visits'))) || 0;
  try {
    if (!sessionStorage.getItem(slotKey('visit'))) {
      sessionStorage.setItem(slotKey('visit'), '1');
      remember('visits', String(++count));
    }
  } catch {
    // a browser that keeps nothing is not offered anything
  }
  return count;
}

const visit = visits();
app.mayInstall = () => app.toInstall && visit > 1 && notice('may-install');
app.mayInstall();
window.addEventListener('appinstalled', () => {
  app.toInstall = null;
  notice('installed');
});

function install() {
  const offer = app.toInstall;
  app.toInstall = null; // a browser takes each offer once
  notice('installed');
  offer?.prompt();
}

// ---- what a desk lends ---------------------------------------------------------------------------------------------------

const mostPasted = 200000; // letters: more rows than the log takes

/** Rows that were copied in a spreadsheet, by the button; Ctrl+V needs no leave. */
function paste() {
  const asked = navigator.clipboard?.readText ? navigator.clipboard.readText() : Promise.reject(new Error());
  asked.then((text) => notice('pasted', text.slice(0, mostPasted)), () => notice('no-clipboard'));
}

window.addEventListener('paste', (e) => {
  const text = e.clipboardData?.getData('text/plain') || '';
  if (!nodeOf(e.target)?.field && text.includes('\t')) {
    e.preventDefault();
    notice('pasted', text.slice(0, mostPasted));
  }
});

/** Single keys wait while somebody types, and are off where the shop turned them off: then no control has one. */
function single(key, node) {
  const all = [...nodes().values()];
  return !node?.field && !all.some((n) => has(n, 'focused')) && all.some(keyOf) && { '/': 'find', '?': 'keys' }[key];
}

function opens(e, node) {
  if (!(e.ctrlKey || e.metaKey)) {
    return single(e.key, node);
  }
  const key = e.key.toLowerCase();
  if (key === 'z' && !node?.field) { // in a field it is the typing that goes back
    return e.shiftKey ? 'redo' : 'undo';
  }
  return key === 'k' && !e.shiftKey && 'find';
}

/** In Find arrows lead from the field through what was found. */
function inFind(e) {
  const step = { ArrowDown: 1, ArrowUp: -1 }[e.key];
  const sheet = step && document.activeElement.closest('[data-id="find"]');
  const stops = sheet ? [...sheet.querySelectorAll('input, [data-id="find/found"] button')] : [];
  const to = stops[stops.indexOf(document.activeElement) + step];
  to?.focus({ preventScroll: true });
  return sheet;
}

/** The edge of a column: arrows move it, Home puts it back. */
function onEdge(e, node) {
  const step = { ArrowLeft: -16, ArrowRight: 16 }[e.key];
  if (node?.role !== 'separator' || !(step || e.key === 'Home')) {
    return false;
  }
  notice('edge', step ? `${node.id} ${step}` : node.id);
  return true;
}

window.addEventListener('keydown', (e) => {
  if (e.isComposing || e.altKey) {
    return;
  }
  const node = nodeOf(e.target);
  const what = opens(e, node);
  if (what) {
    if (!what.endsWith('do')) {
      document.activeElement.blur(); // what was typed there is handed over first
    }
    notice(what);
  } else if (e.ctrlKey || e.metaKey || !(inFind(e) || onEdge(e, node))) {
    return;
  }
  e.preventDefault();
});

Object.assign(app.shell, {
  canSeal: () => (canSeal() ? 1 : 0),
  copy, download, saveQuote, shareQuote, openPage, newKey, seal, qr, paste, install, pickFile, openDrawing, saveKept,
  share: (title, url) => share({ title, url }, () => copy(url)),
  shareText: (title, text) => share({ title, text }, () => copy(text)),
  print: () => window.print(),
  vibrate: (ms) => navigator.vibrate?.(ms),
});
