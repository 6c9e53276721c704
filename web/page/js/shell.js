// The shell object: all that the app may ask of the page (web/platform/browser.cpp), and the page's own modes.
/** The first screen stands. With a feed on it, it is the answer by which the start is measured. */
function shown(feed) {
  if (feed) {
    performance.mark('torchside-answer');
  }
  setTimeout(startWorker, 0);
}

// ---- plain mode: the mirror, shown as an ordinary page, is the app ------------------------------------------------------

function plain(on) {
  html.classList.toggle('plain', on);
  const style = document.getElementById('plain-css'); // none in the one-file page, which carries it inside itself
  if (on && style) {
    style.rel = 'stylesheet';
  }
}

/**
 * Without WebGL (or with ?plain=1) the app gets no canvas and builds the mirror all the same. So it does for who chose the colours
 * of everything: a canvas cannot follow them, and the browser would lay a ground under each hidden text.
 */
function guardCanvas() {
  const forced = matchMedia('(forced-colors: active)');
  forced.addEventListener('change', startAgain);
  const refuse = forced.matches || new URLSearchParams(location.search).get('plain') === '1';
  const open = canvas.getContext.bind(canvas);
  canvas.getContext = (...args) => {
    const context = refuse ? null : open(...args);
    plain(!context);
    return context;
  };
  canvas.addEventListener('webglcontextlost', (e) => {
    e.preventDefault(); // asks the browser to give it back
    plain(true);
    requestFrame();
  });
  canvas.addEventListener('webglcontextrestored', startAgain);
}

/** With a canvas or without: everything is stored, the address knows the place. */
function startAgain() {
  const node = nodeOf(document.activeElement);
  if (node?.field && changed(node)) {
    finish(node);
  }
  again();
}

// ---- services -----------------------------------------------------------------------------------------------------------

function theme(name, ground) {
  html.dataset.theme = name;
  document.body.style.background = ground;
  document.querySelector('meta[name=theme-color]').content = ground;
  remember('theme', name);
}

/** The app lends the face that it carries: the field under the finger and the plain page are set in it too. */
function font(weight, bytes) {
  new FontFace('B612', bytes.slice().buffer, { weight }).load().then((face) => document.fonts.add(face), () => {});
}

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

async function saveQuote(name, link) {
  try {
    const module = await smallModule(document.getElementById('quote-wasm'));
    download(name, 'text/html', module.text('torchside_quote_file', link));
    call('torchside_notice', 'saved', name);
  } catch (e) {
    call('torchside_notice', 'not-saved', e.message);
  }
}

async function openBackup(file) {
  if (file.size > 1 << 20) {
    call('torchside_notice', 'file', words.page.backup_large({ name: file.name.slice(0, 80) }));
  } else {
    call('torchside_file', file.name, await file.text()); // read_workbook() reads no more
  }
}

function pickFile(accept) {
  const picker = document.createElement('input');
  picker.type = 'file';
  picker.accept = accept;
  picker.addEventListener('change', () => receive(picker.files[0]));
  picker.click();
}

function share(title, url) {
  navigator.share({ title, url }).then(() => call('torchside_notice', 'shared', ''), () => {});
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

const dark = matchMedia('(prefers-color-scheme: dark)');
dark.addEventListener('change', () => call('torchside_notice', 'theme', dark.matches ? 'night' : 'paper'));

const matches = (query) => (matchMedia(query).matches ? 1 : 0);

Object.assign(app.shell, {
  requestFrame, wake, mirror, save, load, saveKept, place, theme, font, copy, download, saveQuote, share, openPage, newKey, seal, qr, today, pickFile, useUpdate,
  openDrawing, readDrawing, cancelDrawing, takeDrawing,
  print: () => window.print(),
  canShare: () => (navigator.share ? 1 : 0),
  canSeal: () => (canSeal() ? 1 : 0),
  address: () => location.href.split('#')[0],
  prefersDark: () => (dark.matches ? 1 : 0),
  reducedMotion: () => matches('(prefers-reduced-motion: reduce)'),
  whole: () => (whole ? 1 : 0),
  finePointer: () => (matches('(pointer: fine)') && !matches('(any-pointer: coarse)') ? 1 : 0),
  density: () => devicePixelRatio,
  fragment: () => location.hash,
  version: () => html.dataset.version,
  dataVersion: () => html.dataset.data,
});

html.dataset.theme = recall(slotKey('theme')) || (dark.matches ? 'night' : 'paper');
guardCanvas();
window.torchsideRuns = 1; // see load.js
