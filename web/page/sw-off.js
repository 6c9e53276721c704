// The kill switch: put in place of sw.js, it takes Torchside's worker and caches off every browser that comes by, and loads the
// page from the server. What the user entered is not touched.
self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil((async () => {
  const ours = (await caches.keys()).filter((name) => name.startsWith('torchside-'));
  await Promise.all(ours.map((name) => caches.delete(name)));
  await self.registration.unregister();
  if (ours.length === 0) {
    return; // the page has been loaded from the server already; a page that registers this again must not go round and round
  }
  for (const client of await self.clients.matchAll({ type: 'window' })) {
    client.navigate(client.url).catch(() => {});
  }
})()));
