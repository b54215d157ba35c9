/**
 * Keeps the cab page on the phone: its own files when it is installed, each one anew whenever the server answers.
 * Sheets and ticks are kept by the page itself. Nothing but GET, nothing of another server.
 */
const CACHE = 'cresthaul-cab-2';
const SHELL = [
  'cab.html', 'app.js', 'cab.css', 'cab.webmanifest', 'icon-192.png', 'icon-512.png', '../icon.svg',
];
/** A poor signal is no signal: after this long the kept file is shown, milliseconds. */
const PATIENCE_MS = 2500;

self.addEventListener('install', event => {
  event.waitUntil(caches.open(CACHE).then(cache => cache.addAll(SHELL)).then(() => self.skipWaiting()));
});

self.addEventListener('activate', event => {
  event.waitUntil(caches.keys()
    .then(names => Promise.all(names.filter(name => name !== CACHE).map(name => caches.delete(name))))
    .then(() => self.clients.claim()));
});

self.addEventListener('fetch', event => {
  const { request } = event;
  if (request.method === 'GET' && new URL(request.url).origin === self.location.origin) {
    event.respondWith(answer(request));
  }
});

async function answer(request) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request, { ignoreSearch: true });
  const fresh = fetch(request).then(async response => {
    if (response.ok) {
      await cache.put(request, response.clone());
    }
    return response;
  });
  if (!kept) {
    return fresh;
  }
  const late = new Promise(resolve => { setTimeout(resolve, PATIENCE_MS, null); });
  const first = await Promise.race([fresh.catch(() => null), late]);
  return first?.ok ? first : kept;
}
