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
const later = document.getElementById('later-wasm'); // the rest of the program; null in the one-file page, which carries all in one

/** The app's own functions; filled by the glue, which finds this object by its global name. */
const app = (window.Module = { canvas, shell: {} });
let ready = false;
let whole = !later;
let drawing = false;
const waiting = [];

/** Call an export of the app. Until main() has built the app and the rest of the program is there, and while it draws, calls wait in order. */
function call(name, ...args) {
  if (!ready || !whole || drawing) {
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

async function compile(element) {
  if (!element.href) { // the one-file page carries the module inside itself
    return WebAssembly.compile(Uint8Array.from(atob(element.textContent), (c) => c.charCodeAt(0)));
  }
  const get = async () => {
    const answer = await fetch(element.href);
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

const compiled = compile(wasm);
compiled.catch((e) => stopped('Torchside could not be loaded: ' + e.message + '.'));

/**
 * The first module draws the first answer and holds a stand-in for every function of the second, which is fetched only now, so that
 * the two do not share the line. Until it is in place nothing but the first frame is drawn and no call reaches the app: no stand-in
 * should ever be called. If one is, this start cannot go on; the next one waits for both.
 */
async function addRest(instance) {
  const rest = await compile(later);
  await WebAssembly.instantiate(rest, { primary: instance.exports });
  sessionStorage.removeItem('torchside-whole');
  whole = true;
  performance.mark('torchside-whole');
  if (ready) {
    callWaiting();
    catchUp();
  }
}

const standIns = new Proxy({}, { get: () => () => {
  sessionStorage.setItem('torchside-whole', '1');
  location.reload(); // everything is stored
  throw new Error('the rest of the program is not there yet');
} });

/** Whether the first frame shows something else than the first place, so that all of the program is needed for it. */
const opensElsewhere = () => sessionStorage.getItem('torchside-whole') || !['', '#', '#/cut'].includes(location.hash);

app.instantiateWasm = (imports, done) => {
  compiled.then(async (module) => {
    try {
      const instance = await WebAssembly.instantiate(module, { ...imports, placeholder: standIns });
      const rest = later && addRest(instance);
      if (rest && opensElsewhere()) {
        await rest;
      }
      done(instance, module);
      await rest;
    } catch (e) {
      stopped('Torchside could not start: ' + e.message + '.');
      throw e;
    }
  }, () => {});
  return {};
};
app.onAbort = () => stopped('Torchside stopped on an error of its own.');
