// The first script, inside index.html: it asks for the app's files, or, when the address ends in a quote for a customer, for the few
// of that page alone. It stands before the style sheet so that nothing waits for that; tools/pack_site puts the names in.
const quote = location.hash.startsWith('#q=');
const policy = window.trustedTypes?.createPolicy('torchside-load', { createScriptURL: (url) => url });

/** The language that this copy spoke last (tongue.js), or else the browser's. */
function tongue() {
  try {
    return localStorage.getItem(`torchside.${new URL('.', location.href).pathname}.language`) || navigator.language.slice(0, 2);
  } catch {
    return navigator.language.slice(0, 2);
  }
}
const page = '@page-files@'.split(' ').find((file) => file.startsWith(`page-${tongue()}-`));
const scripts = quote ? ['@quote.js@'] : [page || '@page.js@', '@torchside.js@'];

function add(kind, values) {
  document.head.append(Object.assign(document.createElement(kind), values));
}

// A file that is missing, cut or another: its element fails, or the script in it does.
let lacking = false;
function lacks(file) {
  if (!lacking) {
    lacking = true;
    torchsideStopped(words.page.not_whole({ file: file.split('/').pop() }));
  }
}
window.addEventListener('error', ({ target, filename }) => {
  const file = target.src || (target.rel === 'stylesheet' && target.href) || (!window.torchsideRuns && filename);
  if (file && target.id !== 'late') { // boot.js asks for that one again
    lacks(file);
  }
}, true);

const module = { rel: 'preload', as: 'fetch', type: 'application/wasm', crossOrigin: 'anonymous' };
if (quote) {
  document.documentElement.classList.add('quote');
  add('link', { rel: 'stylesheet', href: '@quote.css@' });
  add('link', { ...module, id: 'quote-wasm', href: '@quote.wasm@' });
} else {
  // A style sheet that is cut, empty or another page of the host is one to the browser: it lacks the last rule.
  document.addEventListener('load', ({ target }) => {
    if (target.rel === 'stylesheet' && !getComputedStyle(target).getPropertyValue('--whole')) {
      lacks(target.href);
    }
  }, true);
  add('link', { ...module, id: 'wasm', href: '@torchside.wasm@' });
  add('link', { rel: 'later', id: 'later-wasm', href: '@later.wasm@' }); // once the first answer stands
  add('link', { rel: 'later', id: 'later-js', href: '@later.js@' });
  add('link', { rel: 'later', id: 'plain-css', href: '@plain.css@' }); // where there is no canvas
  add('link', { rel: 'later', id: 'quote-wasm', href: '@quote.wasm@' }); // for a QR code, should one be wanted
  add('link', { rel: 'later', id: 'reader', href: '@reader.js@' }); // for a drawing, should one be opened
  add('link', { rel: 'later', id: 'reader-wasm', href: '@reader.wasm@' });
  '@words-files@'.split(' ').forEach((file) => add('link', { rel: 'later', id: file.replace(/-[^-]+$/, ''), href: file })); // words-es
}
scripts.forEach((href) => add('link', { rel: 'preload', as: 'script', href }));
const run = () => lacking || scripts.splice(0).forEach((src, i) => add('script', {
  async: false,
  src: policy ? policy.createScriptURL(src) : src,
  onload: () => window.torchsideRuns > i || lacks(src), // each counts itself when it runs
}));

// On a first visit the first text is painted before the program takes the processor; on others the files are here already.
document.addEventListener('DOMContentLoaded', () => {
  if (quote || navigator.serviceWorker?.controller || document.hidden) {
    run();
  } else {
    requestAnimationFrame(() => setTimeout(run));
    setTimeout(run, 500); // a browser that paints nothing yet
  }
});
