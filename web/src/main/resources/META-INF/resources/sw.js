/**
 * Keeps the page and the sheets that were fetched, so that they open in a yard without signal. The net comes first, so that
 * nobody works with an old page; what does not come in time is taken from what was kept. Gardens are kept by the page itself.
 */

const PAGE = 'lapyard-page';
const SHEETS = 'lapyard-sheets';
const FILES = ['./', 'page.js', 'page.css', 'icon.svg', 'manifest.webmanifest'];

/** How long the net may take where something was kept, milliseconds. */
const PATIENCE = 3000;

/** So many sheets and parts of job sheets are kept, the latest. */
const MOST_SHEETS = 60;

addEventListener('install', event => event.waitUntil(caches.open(PAGE).then(cache => cache.addAll(FILES)).then(() => skipWaiting())));

addEventListener('activate', event => event.waitUntil(clients.claim()));

addEventListener('fetch', event => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== location.origin) return;
  const name = url.pathname.slice(new URL('./', location.href).pathname.length);
  if (request.mode === 'navigate' && name === '') event.respondWith(netFirst(event, PAGE, new Request('./'), PATIENCE));
  else if (FILES.includes(name)) event.respondWith(netFirst(event, PAGE, request, PATIENCE));
  else if (name === 'api/sheets' || !url.search && /^api\/gardens\/[^/]+\/job-sheet$/.test(name) || /^api\/gardens\/[^/]+\/(?:[\w-]+\.(?:pdf|svg|png|dxf|csv|xlsx|ics)|job-sheet\/\w+)$/.test(name)) event.respondWith(netFirst(event, SHEETS, request, Infinity));
});

async function netFirst(event, where, request, patience) {
  const cache = await caches.open(where);
  const known = await cache.match(request);
  const fresh = fetch(request).then(answer => {
    if (answer.ok) event.waitUntil(keep(cache, where, request, answer.clone()));
    return answer;
  });
  if (!known) return fresh;
  const late = patience === Infinity ? new Promise(() => {}) : new Promise(end => setTimeout(() => end(known), patience));
  return Promise.race([fresh.then(answer => (answer.status < 500 ? answer : known), () => known), late]);
}

async function keep(cache, where, request, answer) {
  await cache.put(request, answer);
  if (where !== SHEETS) return;
  const all = await cache.keys();
  for (const one of all.slice(0, Math.max(0, all.length - MOST_SHEETS))) await cache.delete(one);
}
