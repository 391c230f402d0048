// Keeps the hosted copy whole without a network. One build, one cache: what was installed together is served together.
// A new build waits beside the old one until the page says "take" (lib_update.js).
const kBuild = 'tarebench-@BUILD@';
const kFiles = ['./', 'tarebench.html', 'manifest.webmanifest', 'icons/icon.svg', 'icons/icon-180.png', 'icons/icon-192.png', 'icons/icon-512.png'];

self.addEventListener('install', (event) => {
    const fresh = kFiles.map((file) => new Request(file, { cache: 'reload' }));
    event.waitUntil(caches.open(kBuild).then((cache) => cache.addAll(fresh)));
});

self.addEventListener('activate', (event) => {
    event.waitUntil((async () => {
        for (const name of await caches.keys()) {
            if (name.startsWith('tarebench-') && name !== kBuild) await caches.delete(name);
        }
        await self.clients.claim();
    })());
});

self.addEventListener('message', (event) => {
    if (event.data === 'take') self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
    const request = event.request;
    if (request.method !== 'GET' || new URL(request.url).origin !== self.location.origin) return;
    event.respondWith((async () => {
        const cache = await caches.open(kBuild);
        const kept = await cache.match(request, { ignoreSearch: true });
        if (kept) return kept;
        // Any address below this one is the same page.
        if (request.mode === 'navigate') return (await cache.match('./')) ?? fetch(request);
        return fetch(request);
    })());
});
