// Drawings: picked from this device's files or dropped on the page, read by a worker of their own (reader.js) with a module that is
// fetched when the first one is opened. The file stays at hand, so that it can be read again in another unit.
const readerCode = document.getElementById('reader');
const readerWasm = document.getElementById('reader-wasm');
const largestDrawing = 20e6;
let reader = null;
let opened = null; // the file
let numbers = null; // what was read, until the app takes it

function tell(kind, text = '', number = 0) {
  call('torchside_drawing', kind, text, number);
}

const unread = (why) => tell('fault', words.page.unread({ why }));

function startReader() {
  let url = readerCode.href;
  if (!url) { // the one-file page carries it inside itself
    url = URL.createObjectURL(new Blob([readerCode.textContent], { type: 'text/javascript' }));
  }
  return new Worker(policy ? policy.createScriptURL(url) : url);
}

function cancelDrawing() {
  reader?.terminate();
  reader = null;
}

async function readDrawing(unit) {
  cancelDrawing();
  tell('begin', opened.name.slice(0, 80));
  if (opened.size > largestDrawing) {
    tell('fault', words.page.drawing_large);
    return;
  }
  try {
    const own = reader = startReader();
    const fail = () => {
      cancelDrawing();
      tell('fault', words.page.no_reader);
    };
    const silent = setTimeout(() => own === reader && fail(), 10e3); // an empty file is a program that does nothing
    own.onmessage = ({ data }) => {
      clearTimeout(silent);
      if (own !== reader) {
        return;
      }
      if (data.share !== undefined) {
        tell('progress', '', data.share);
        return;
      }
      cancelDrawing();
      numbers = data.numbers;
      if (numbers) {
        tell('ready', '', numbers.length);
      } else if (data.why) {
        unread(data.why);
      } else {
        tell('fault', data.fault);
      }
    };
    own.onerror = fail;
    const bytes = await opened.arrayBuffer();
    const wasm = readerWasm.href || Uint8Array.from(atob(readerWasm.textContent), (c) => c.charCodeAt(0)).buffer;
    own.postMessage({ bytes, unit, wasm, table: tongues.get(html.lang) }, [bytes]);
  } catch (e) {
    cancelDrawing();
    unread(e.message);
  }
}

/** The app takes what was read; it was told how many numbers. */
function takeDrawing() {
  const taken = numbers;
  numbers = null;
  return taken;
}

/** A file, picked or come by itself: what is in it says what it is, and so where it goes. */
async function receive(file) {
  if (!file) {
    return;
  }
  const name = file.name.slice(0, 80);
  const head = await file.slice(0, 65536).arrayBuffer().then((bytes) => new TextDecoder().decode(bytes), () => null);
  if (head === null) { // a folder, or a file that has gone
    call('torchside_notice', 'file', words.page.file_unread({ name }));
    return;
  }
  if (/^\s*\{/.test(head)) {
    openBackup(file);
  } else if (/<svg[\s>]|(^|\n)\s*0\s*\r?\n\s*SECTION\b/i.test(head) || /\.(dxf|svg)$/i.test(file.name)) {
    opened = file;
    readDrawing(-1);
  } else {
    const what = /^image\//.test(file.type) ? words.page.picture({ name }) : words.page.unknown_file({ name });
    call('torchside_notice', 'file', what + ' ' + words.page.drop);
  }
}

window.addEventListener('dragover', (e) => e.preventDefault());
window.addEventListener('drop', (e) => {
  e.preventDefault();
  receive(e.dataTransfer.files[0]);
});
// Opened with Torchside from the device's own files (manifest: file_handlers).
window.launchQueue?.setConsumer(async ({ files }) => receive(await files[0]?.getFile()));
