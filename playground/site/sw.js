// Keeps every file of the page, so that it opens without a network. files.js is
// written with the site: its version changes with any byte of it.

importScripts("files.js");

const NAME = `weft ${self.registration.scope} ${SITE.version}`;

self.addEventListener("install", (event) => {
  const requests = SITE.files.map((file) => new Request(file, { cache: "no-cache" }));
  event.waitUntil(caches.open(NAME).then((cache) => cache.addAll(requests)));
});

// Caches of other sites on this server are left alone.
self.addEventListener("activate", (event) => {
  const mine = (name) => name.startsWith(`weft ${self.registration.scope} `) && name !== NAME;
  const sweep = async () => {
    for (const name of await caches.keys()) if (mine(name)) await caches.delete(name);
    await self.clients.claim();
  };
  event.waitUntil(sweep());
});

self.addEventListener("message", ({ data }) => {
  if (data === "use") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  if (event.request.method !== "GET") return;
  event.respondWith(answer(event.request));
});

async function answer(request) {
  const cache = await caches.open(NAME);
  const kept = await cache.match(request, { ignoreSearch: true });
  return kept ?? fetch(request);
}
