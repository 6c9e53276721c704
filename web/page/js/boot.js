// Start: fetch and compile the wasm while the glue is still on its way, and say in plain words when something stops it.
//
// The files of this folder are joined by tools/pack_site into one script, in the order written there; they share one scope.
// The page knows nothing of plates and torches, save that the first answer is the node cut/feed. It lends the app a canvas, a
// mirror, storage and the browser's services.
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

/** A text in the app's own memory: its stack is for small things. */
function lend(text) {
  const bytes = new TextEncoder().encode(text + '\0');
  const at = app._malloc(bytes.length);
  app.HEAPU8.set(bytes, at);
  return at;
}

/** Call an export of the app. Until main() has built the app and the rest of the program is there, and while it draws, calls wait in order. */
function call(name, ...args) {
  if (!ready || !whole || drawing) {
    waiting.push([name, args]);
    return;
  }
  if (name.call) { // the page's own, which waits for the same
    name();
    return;
  }
  const texts = args.map((a) => (typeof a === 'number' ? 0 : lend(a)));
  app['_' + name]?.(...args.map((a, i) => texts[i] || a));
  texts.forEach((at) => at && app._free(at));
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

/** The app cannot go on: said where the first text stood, over everything else, by the first script, which says it too when a file is missing. */
function stopped(what) {
  torchsideStopped(what + (latest.join('') && keeps ? ' ' + words.page.kept_before : ''));
}

async function compile(element, cache) {
  if (!element.href) { // the one-file page carries the module inside itself
    return WebAssembly.compile(Uint8Array.from(atob(element.textContent), (c) => c.charCodeAt(0)));
  }
  const get = async () => {
    const answer = await fetch(element.href, { cache });
    if (!answer.ok) {
      throw new Error(words.page.answered({ status: answer.status }));
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
compiled.catch(() => stopped(words.page.not_loaded));

/**
 * The first module draws the first answer and holds a stand-in for every function of the second, which is fetched only now, so that
 * the two do not share the line. Until it is in place nothing but the first frame is drawn and no call reaches the app: no stand-in
 * should ever be called, save by a shop that needs more than the usual (web/later.txt). Then this start cannot go on; it begins again,
 * without a word, and this shop's starts wait for both from then on. When the second cannot be had, the first
 * answer stays, the page says so, and asks again by itself: soon, then less often, and when the network is back.
 */
async function addRest(instance) {
  const line = document.createElement('p');
  line.className = 'late';
  line.setAttribute('role', 'alert');
  for (let wait = 1e3, cache; !whole; wait = Math.min(2 * wait, 3e4), cache = 'reload') {
    try {
      const script = laterScript(cache);
      script.catch(() => {}); // heard below
      const module = await compile(later, cache);
      await script;
      await WebAssembly.instantiate(module, { primary: instance.exports });
      whole = true;
    } catch {
      line.textContent = words.page.late;
      document.body.append(line);
      await new Promise((go) => {
        setTimeout(go, wait);
        window.addEventListener('online', go, { once: true });
      });
    }
  }
  line.remove();
  markStart();
  performance.mark('torchside-whole');
  if (ready) {
    callWaiting();
    catchUp();
  }
}

/** The page's own later part: what is to be had of the browser once somebody touches something. */
function laterScript(again) {
  const href = document.getElementById('later-js').href + (again ? '?' + Date.now() : ''); // past a cache that holds a bad one
  return new Promise((done, fail) => {
    const script = document.createElement('script');
    script.id = 'late';
    script.src = policy ? policy.createScriptURL(href) : href;
    script.onload = () => (app.shell.copy ? done() : fail()); // one that is cut, or another page of the host, adds nothing
    script.onerror = fail;
    document.head.append(script);
  });
}

/** For the next start of this tab. In the history's entry, for that is lent where storage is refused. */
const markStart = (whole) => (whole || history.state?.whole) && history.replaceState({ below: below(), whole }, '');

let anew = false;
const standIns = new Proxy({}, { get: () => () => {
  anew = true;
  markStart(1);
  remember('whole', '1');
  location.reload(); // nothing was changed yet
  throw new Error();
} });

/** Whether the first frame shows something else than the first place, or a shop that needs more, so that all of the program is needed for it. */
const opensElsewhere = () => speaks || history.state?.whole || recall(slotKey('whole')) || !['', '#', '#/cut'].includes(location.hash);

app.instantiateWasm = (imports, done) => {
  window.torchsideRuns = 2;
  compiled.then(async (module) => {
    try {
      const instance = await WebAssembly.instantiate(module, { ...imports, placeholder: standIns });
      const rest = later && addRest(instance);
      if (rest && opensElsewhere()) {
        await rest;
      }
      await read; // what is kept
      await wordsCame;
      done(instance, module);
      await rest;
    } catch (e) {
      if (!anew) {
        stopped(words.page.not_started({ why: e.message }));
        throw e;
      }
    }
  }, () => {});
  return {};
};
app.onAbort = () => stopped(words.page.own_error);
