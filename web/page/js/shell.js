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

/** With a canvas or without: what was changed is kept first, the address knows the place. */
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

async function openBackup(file) {
  if (file.size > 1 << 20) {
    call('torchside_notice', 'file', words.page.backup_large({ name: file.name.slice(0, 80) }));
  } else {
    call('torchside_file', file.name, await file.text()); // read_workbook() reads no more
  }
}

// What later.js takes up: the browser may offer to install the page before that is there.
window.addEventListener('beforeinstallprompt', (e) => {
  e.preventDefault();
  app.toInstall = e;
  app.mayInstall?.();
});

const dark = matchMedia('(prefers-color-scheme: dark)');
const contrast = matchMedia('(prefers-contrast: more)');
[dark, contrast].forEach((wish) => wish.addEventListener('change', () => call('torchside_notice', 'theme', '')));

const matches = (query) => (matchMedia(query).matches ? 1 : 0);

Object.assign(app.shell, {
  requestFrame, wake, mirror, save, load, keepIn, leave, place, theme, font, today, useUpdate,
  readDrawing, cancelDrawing, takeDrawing, findWords, takeWords,
  remember,
  remembered: (name) => recall(slotKey(name)),
  language: () => ownTongue,
  locale: () => navigator.language,
  canShare: () => (navigator.share ? 1 : 0),
  address: () => location.href.split('#')[0],
  wishes: () => dark.matches + 2 * contrast.matches,
  reducedMotion: () => matches('(prefers-reduced-motion: reduce)'),
  whole: () => (whole ? 1 : 0),
  finePointer: () => (matches('(pointer: fine)') && !matches('(any-pointer: coarse)') ? 1 : 0),
  density: () => devicePixelRatio,
  fragment: () => location.hash,
  version: () => html.dataset.version,
  dataVersion: () => html.dataset.data,
});

app.lent = { call, nodeOf, has, keyOf, nodes: () => nodes, recall, remember, slotKey, smallModule, tongues, receive, kept: () => latest }; // to later.js
html.dataset.theme = recall(slotKey('theme')) || (dark.matches ? 'night' : 'paper');
guardCanvas();
window.torchsideRuns = 1; // see load.js
