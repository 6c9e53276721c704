// Start: fetch and compile the wasm while the glue is still on its way, and say in plain words when something stops it.
//
// The files of this folder are joined by tools/pack_site into one script, in the order written there; they share one scope.
// The page knows nothing of plates and torches: it lends the app a canvas, a mirror, storage and the browser's services.
if (location.hash.startsWith('#q=')) {
  return; // a quote for a customer: quote.js shows it, and nothing of the app starts
}
const html = document.documentElement;
const canvas = document.getElementById('canvas');
const root = document.getElementById('mirror');
const first = document.getElementById('first');
const wasm = document.getElementById('wasm');

/** The app's own functions; filled by the glue, which finds this object by its global name. */
const app = (window.Module = { canvas, shell: {} });
let ready = false;
let drawing = false;
const waiting = [];

/** Call an export of the app. Before main() has built the app, and while it draws, calls wait in order. */
function call(name, ...args) {
  if (!ready || drawing) {
    waiting.push([name, args]);
    return;
  }
  if (app['_' + name]) {
    app.ccall(name, null, args.map((a) => (typeof a === 'number' ? 'number' : 'string')), args);
  }
}

function callWaiting() {
  waiting.splice(0).forEach(([name, args]) => call(name, ...args));
}

/** main() asks for the first frame as its last act: from then on the app can be called. */
function started() {
  if (!ready) {
    ready = true;
    queueMicrotask(callWaiting);
  }
}

/** The app cannot go on: say so where the first text stood, over everything else. */
function stopped(what) {
  first.textContent = '';
  const line = document.createElement('p');
  line.setAttribute('role', 'alert');
  line.textContent = what + ' What you entered before is kept. ';
  const again = document.createElement('a');
  again.href = location.pathname + location.search;
  again.textContent = 'Load the page again';
  line.append(again);
  first.append(line);
  first.hidden = false;
}

async function compile() {
  if (!wasm.href) { // the one-file page carries the module inside itself
    return WebAssembly.compile(Uint8Array.from(atob(wasm.textContent), (c) => c.charCodeAt(0)));
  }
  const get = async () => {
    const answer = await fetch(wasm.href);
    if (!answer.ok) {
      throw new Error('the server answered ' + answer.status);
    }
    return answer;
  };
  if (WebAssembly.compileStreaming) {
    try {
      return await WebAssembly.compileStreaming(get());
    } catch (e) {
      if (!(e instanceof TypeError)) { // a server that names the wrong type costs streaming, not the app
        throw e;
      }
    }
  }
  return WebAssembly.compile(await (await get()).arrayBuffer());
}

const compiled = compile();
compiled.catch((e) => stopped('Torchside could not be loaded: ' + e.message + '.'));

app.instantiateWasm = (imports, done) => {
  compiled.then(async (module) => {
    try {
      done(await WebAssembly.instantiate(module, imports), module);
    } catch (e) {
      stopped('Torchside could not start: ' + e.message + '.');
      throw e;
    }
  }, () => {});
  return {};
};
app.onAbort = () => stopped('Torchside stopped on an error of its own.');
