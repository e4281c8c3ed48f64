// Keeps the page for use without a network: every file of one build, all of them or none. The build puts the list and its digest in. A newer build is
// fetched beside this one and waits until no page of the old one is open, so that an attempt under way never gets half of another version.
const FILES = /* files */ [];
const CACHE = 'toehold-/* digest */';
const START = 'index.html';
const root = new URL('./', self.location.href);
const kept = new Set(FILES.map((name) => new URL(name, root).href));

/** The kept file that a request is for; null: none, and it goes to the network as if there were no keeping. */
function keptFor(request) {
  if (request.method !== 'GET') return null;
  const url = new URL(request.url);
  url.search = '';
  url.hash = '';
  const href = url.href === root.href ? new URL(START, root).href : url.href;
  return kept.has(href) ? href : null;
}

self.addEventListener('install', (event) => {
  const fresh = [...kept].map((href) => new Request(href, { cache: 'reload' }));
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(fresh)));
});

self.addEventListener('activate', (event) => {
  const old = (names) => names.filter((name) => name.startsWith('toehold-') && name !== CACHE);
  event.waitUntil(caches.keys().then((names) => Promise.all(old(names).map((name) => caches.delete(name)))));
});

self.addEventListener('fetch', (event) => {
  const href = keptFor(event.request);
  if (href === null) return;
  event.respondWith(caches.match(href, { cacheName: CACHE }).then((found) => found ?? fetch(event.request)));
});
