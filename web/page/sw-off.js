// The kill switch: put in place of sw.js, it takes this copy's worker and caches off every browser that comes by, and loads the
// page from the server. What the user entered is not touched, nor is another copy on this origin.
const scope = self.registration.scope;
const start = new URL('index.html', scope).href;

async function isOurs(name) { // as in sw.js
  return name.startsWith('torchside ' + new URL(scope).pathname + ' ')
    || (name.startsWith('torchside-') && Boolean(await (await caches.open(name)).match(start)));
}

self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil((async () => {
  const ours = [];
  for (const name of await caches.keys()) {
    if (await isOurs(name)) {
      ours.push(name);
    }
  }
  await Promise.all(ours.map((name) => caches.delete(name)));
  await self.registration.unregister();
  if (ours.length === 0) {
    return; // the page has been loaded from the server already; a page that registers this again must not go round and round
  }
  for (const client of await self.clients.matchAll({ type: 'window' })) {
    client.navigate(client.url).catch(() => {});
  }
})()));
