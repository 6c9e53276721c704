// The service worker: it makes the page work with the network cut, and offers a new version without forcing it on anybody.
const policy = window.trustedTypes?.createPolicy('torchside', { createScriptURL: (url) => url, createHTML: (text) => text }); // asked with our own names and core's own pages alone
const HOUR = 3600e3;
let registration = null;
let lastLook = 0;

/** A version waits: it says itself what it brings. One from before that was asked says nothing, and is offered all the same. */
function offer() {
  if (registration.waiting && navigator.serviceWorker.controller) {
    const ready = (news) => call('torchside_notice', 'update-ready', news);
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => ready(data[html.lang] || data.en);
    ready('');
    registration.waiting.postMessage('news', [port2]);
  }
}

function watch(worker) {
  worker?.addEventListener('statechange', () => {
    if (worker.state === 'installed') {
      offer();
    } else if (worker.state === 'activated') {
      standsAlone();
    }
  });
}

function standsAlone() {
  call('torchside_notice', 'offline-ready', '');
}

/** Called once, when the first answer is on screen, so that the worker's own fetching never delays it. */
async function startWorker() {
  const workers = navigator.serviceWorker;
  if (!workers || html.dataset.single || !window.isSecureContext) {
    return;
  }
  let controlled = workers.controller?.scriptURL === new URL('sw.js', location.href).href; // not a copy's in a folder above, nor the quote's
  workers.addEventListener('controllerchange', () => {
    if (controlled) {
      again();
    }
    controlled = true;
  });
  try {
    registration = await workers.register(policy ? policy.createScriptURL('sw.js') : 'sw.js', { updateViaCache: 'none' });
  } catch {
    return; // no worker: the page works, with the network
  }
  lastLook = Date.now();
  offer();
  watch(registration.installing);
  if (registration.active && !registration.installing) {
    standsAlone();
  }
  registration.addEventListener('updatefound', () => watch(registration.installing));
  document.addEventListener('visibilitychange', () => {
    if (!document.hidden && Date.now() - lastLook > HOUR) {
      lastLook = Date.now();
      registration.update().catch(() => {});
    }
  });
}

/** The user took the offer. A field still open is handed over first; what was changed is kept before the page goes. */
function useUpdate() {
  const node = nodeOf(document.activeElement);
  if (node?.field && changed(node)) {
    call('torchside_enter', node.id, typed(node), 1);
  }
  setTimeout(async () => {
    await settledSaves();
    registration?.waiting?.postMessage('use-update');
  }, 100);
}
