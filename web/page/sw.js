// Torchside's service worker. tools/pack_site writes the two lines below; the version is the hash of everything listed.
//
// All or nothing: a version is installed only when every file of it has arrived with the right content and type. Answers come
// from this version's cache alone, so that a fresh page never meets old assets. The old version's cache stays until this one
// is active and complete, and this one waits until the user takes the offer or the last tab is closed.
//
// Registered as sw.js?quote, by the customer's page, it keeps that page's few files and lets all others pass. A browser that later
// opens the app registers sw.js in its place.
const VERSION = '@VERSION@';
const FILES = /*@FILES@*/ {}; // path -> [SHA-256 in hex, what its type must contain]
const QUOTE = /*@QUOTE@*/ []; // the paths that the customer's page needs
const NEWS = /*@NEWS@*/ {}; // language -> what this version brings, in two lines

const scope = self.registration.scope;
const PREFIX = 'torchside ' + new URL(scope).pathname + ' '; // another copy on this origin keeps its own
const quoteOnly = self.location.search === '?quote';
const KEPT = quoteOnly ? QUOTE : Object.keys(FILES);
const CACHE = PREFIX + VERSION + (quoteOnly ? '-quote' : '');
const START = 'index.html';
const url = (path) => new URL(path, scope).href;

async function right(answer, [hash, type]) {
  if (!answer.ok || answer.redirected || !(answer.headers.get('content-type') || '').includes(type)) {
    return false;
  }
  const sum = new Uint8Array(await crypto.subtle.digest('SHA-256', await answer.clone().arrayBuffer()));
  return Array.from(sum, (b) => b.toString(16).padStart(2, '0')).join('') === hash;
}

/** What the browser has just loaded will do, if it is the right content; otherwise ask the server itself. */
async function obtain(path) {
  for (const cache of ['default', 'reload']) {
    const answer = await fetch(url(path), { cache });
    if (await right(answer, FILES[path])) {
      return answer;
    }
  }
  throw new Error(path + ' is not what version ' + VERSION + ' lists');
}

/** Every file of this version is there. */
async function isComplete() {
  const cache = await caches.open(CACHE);
  const found = await Promise.all(KEPT.map((path) => cache.match(url(path))));
  return found.every(Boolean);
}

async function install() {
  const before = await caches.has(CACHE); // the host went back to this version, and it may be the one in use: then its files stay
  try {
    if (!before || !await isComplete()) {
      const answers = await Promise.all(KEPT.map(async (path) => [path, await obtain(path)]));
      const cache = await caches.open(CACHE);
      await Promise.all(answers.map(([path, answer]) => cache.put(url(path), answer)));
    }
    if (!quoteOnly && self.registration.active?.scriptURL.endsWith('?quote')) {
      self.skipWaiting(); // the app takes over from the customer's page: no version is lost by it
    }
  } catch (e) {
    if (!before) {
      await caches.delete(CACHE);
    }
    throw e;
  }
}

/** A cache of this copy: by its name, or, from before names had the scope in them, by the page that it holds. */
async function isOurs(name) {
  return name.startsWith(PREFIX) || (name.startsWith('torchside-') && Boolean(await (await caches.open(name)).match(url(START))));
}

async function activate() {
  if (await isComplete()) { // the browser may have thrown some of it away since: then an older version is better than none
    for (const name of await caches.keys()) {
      if (name !== CACHE && await isOurs(name)) {
        await caches.delete(name);
      }
    }
  }
  await self.clients.claim();
}

async function kept(path) {
  const cache = await caches.open(CACHE);
  return cache.match(url(path));
}

async function answer(request, path) {
  const name = path === '' ? START : path;
  if (name in FILES) {
    const found = await kept(name);
    return found || fetch(request); // not for this page, or the browser threw the cache away: the network is all there is
  }
  if (request.mode === 'navigate') { // not ours: whatever else lies in this folder, or the start page when there is no network
    return fetch(request).catch(() => Response.redirect(scope));
  }
  return new Response('Not part of Torchside ' + VERSION + '\n', { status: 404, headers: { 'content-type': 'text/plain' } });
}

self.addEventListener('install', (event) => event.waitUntil(install()));
self.addEventListener('activate', (event) => event.waitUntil(activate()));
self.addEventListener('message', (event) => {
  if (event.data === 'use-update') {
    self.skipWaiting();
  } else if (event.data === 'news') {
    event.ports[0].postMessage(NEWS);
  }
});
self.addEventListener('fetch', (event) => {
  const { request } = event;
  const asked = request.url.split(/[?#]/)[0];
  const path = asked.slice(scope.length);
  const elsewhere = path.includes('/') && !(path in FILES); // another copy may lie in a folder below this one
  if (request.method === 'GET' && asked.startsWith(scope) && (!elsewhere || request.mode === 'navigate')) {
    event.respondWith(answer(request, path));
  }
});
