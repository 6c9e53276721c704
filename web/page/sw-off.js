// The kill switch: put in place of sw.js, it takes Torchside's worker and caches off every browser that comes by, and loads the
// page from the server. What the user entered is not touched.
self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil((async () => {
  for (const name of await caches.keys()) {
    if (name.startsWith('torchside-')) {
      await caches.delete(name);
    }
  }
  await self.registration.unregister();
  for (const client of await self.clients.matchAll({ type: 'window' })) {
    client.navigate(client.url).catch(() => {});
  }
})()));
