import { api } from './api.js';
import { Garden } from './state/garden.js';
import { News } from './state/news.js';
import { SheetsAhead } from './state/sheets-ahead.js';
import { LastGardens } from './state/last-garden.js';
import { OpenPlaces } from './state/open-places.js';
import { custom, h } from './elements/make.js';
import { allPlaces } from './elements/places.js';
import './elements/each-place.js';
import './elements/bed-tag.js';
import './elements/add-bed.js';
import './elements/clash-ask.js';
import './elements/draw-bar.js';
import './elements/garden-title.js';
import './elements/key-list.js';
import './elements/lap-gaps.js';
import './elements/lap-yard.js';
import './elements/page-head.js';
import './elements/red-thread.js';
import './elements/table-panel.js';
import './elements/table-rail.js';
import './elements/try-bar.js';
import './elements/yard-tools.js';
import { actsOf } from './elements/page-acts.js';
import { base64 } from './state/base64.js';
import { Gardens } from './state/gardens.js';

/** Puts the tables beside the yard and opens a garden: the one in the address, else the first of the store. */

const page = document.getElementById('page');
const heard = document.getElementById('heard');

/** A garden to begin with where the store is empty. */
const FIRST = { format: 1, name: 'First garden', ground: { outline: [[0, 0], [12000, 0], [12000, 9000], [0, 9000]] }, beds: [] };

/** The garden that was open last, and the small example with which a new store is opened. */
const OPENED = 'lapyard.opened';
const SMALL = 'chapel-corner';

/** Lines that stay to be heard. */
const MOST_HEARD = 6;

/** The gardens that come with the program. */
const EXAMPLES = new Set(['allotment-field', 'chapel-corner', 'ferry-lane', 'lock-keepers-yard', 'school-courtyard', 'terrace-feet', 'three-entries', 'village-hall']);

/** A screen that is as narrow or low as a phone's shows the yard or a table, not both. */
const PHONE = matchMedia('(max-width: 820px), (max-height: 480px)');

const places = new OpenPlaces(allPlaces(), localStorage, PHONE.matches ? null : 'slip', PHONE.matches ? { build: 'tally' } : {});

/** Only an address of this machine or one by https may keep things for when there is no signal. */
const last = new LastGardens(globalThis.caches);

const gardens = new Gardens(api, last);

const ahead = new SheetsAhead(api, () => Boolean(navigator.serviceWorker?.controller));

let garden = null;
let news = null;

const wanted = () => decodeURIComponent(location.hash.slice(1));

/** Where gardens are kept on this side. */
const kept = { local: localStorage, session: sessionStorage, last };

async function open(id) {
  try {
    const next = await known(new Set([id, localStorage.getItem(OPENED), SMALL].filter(Boolean))) ?? await Garden.open(api, await anyId(), kept);
    garden?.close();
    garden = next;
    history.replaceState(null, '', `#${encodeURIComponent(garden.id)}`);
    localStorage.setItem(OPENED, garden.id);
    lay();
    requestAnimationFrame(() => performance.mark('lapyard ready'));
    garden.begin();
    ahead.follow(garden);
    attend();
  } catch (problem) {
    if (garden) say(`That garden does not open: ${problem.message}`);
    else cannotOpen(problem);
  }
}

/** The first of these that opens; null where none is there, may be seen, or was kept for when there is no signal. */
async function known(ids) {
  for (const id of ids) {
    try {
      return await Garden.open(api, id, kept);
    } catch (problem) {
      if (problem.status && ![403, 404, 410].includes(problem.status)) throw problem;
    }
  }
  return null;
}

/** The garden that was changed last, made where there is none. */
async function anyId() {
  await gardens.ask({ find: '', which: '', order: 'changed' });
  if (gardens.wrong && !gardens.rows.length) throw gardens.wrong;
  return gardens.rows[0]?.id ?? api.create(FIRST);
}

function cannotOpen(problem) {
  if (problem.status === 401) return askToken();
  return page.replaceChildren(h('main.closed', {},
    h('h1', {}, 'Lapyard'),
    h('p', {}, `The gardens do not open: ${problem.message} Start the server, then try again. Nothing you typed is lost.`),
    h('button.main', { type: 'button', onclick: () => open(wanted()) }, 'Try again')));
}

/** A server that others can reach is started with a token. */
function askToken() {
  const input = h('input', { id: 'token', type: 'password', autocomplete: 'off', required: true });
  page.replaceChildren(h('main', {}, h('form.closed', { onsubmit: event => {
    event.preventDefault();
    api.useToken(input.value.trim());
    open(wanted());
  } },
  h('h1', {}, 'Lapyard'), h('p', {}, 'This server asks for its token. Whoever started it has it.'),
  h('label', { for: 'token' }, 'Token'), input, h('button.main', { type: 'submit' }, 'Open the gardens'))));
  input.focus();
}

function lay() {
  const { signal } = laid();
  const make = (tag, props = {}) => custom(tag, { garden, ...props });
  const keys = document.createElement('key-list');
  const yard = make('lap-yard');
  const panel = make('table-panel', { places, yard });
  const ground = h('main.ground', {}, yard, make('lap-gaps', { yard }), make('bed-tag', { yard }), make('yard-tools', { yard }), h('p.first', {}, ...firstWords()), example(), make('draw-bar', { yard }));
  page.replaceChildren(make('page-head', { gardens }), make('try-bar'), ground, panel, make('table-rail', { places }),
    make('red-thread', { yard }), make('clash-ask'), keys);
  page.dataset.garden = garden.id;
  document.title = `${garden.plan.name || 'Garden'} · Lapyard`;
  const acts = actsOf({ garden, yard, say, form: () => addBed(ground, yard), keys: () => keys.show() });
  const on = (target, type, handler) => target.addEventListener(type, handler, { signal });
  on(page, 'act', event => acts[event.detail.act]?.(event.detail));
  for (const type of ['copy', 'cut']) on(document, type, event => {
    if (isTyping(event.target)) return;
    const text = acts[type]();
    if (!text) return;
    event.clipboardData.setData('text/plain', text);
    event.preventDefault();
  });
  on(document, 'paste', event => { if (!isTyping(event.target)) acts.paste({ text: event.clipboardData.getData('text/plain') }); });
  on(window, 'beforeprint', () => page.append(h('section.on-paper', {}, h('h2', {}, 'The order'), make('lap-slip'), h('h2', {}, 'Snags'), make('lap-snags'))));
  on(window, 'afterprint', () => page.querySelector('.on-paper')?.remove());
  const show = () => { page.dataset.shown = places.shown ?? ''; };
  on(places, 'change', show);
  on(garden.choice, 'change', () => { page.classList.toggle('in-hand', garden.choice.beds.length > 0); });
  show();
}

const isTyping = target => Boolean(target.closest?.('input, textarea, select, [contenteditable]')) || !getSelection().isCollapsed;

/** What an empty yard says: what to do first. */
function firstWords() {
  const press = (text, act) => h('button', { type: 'button', onclick: act }, text);
  return [h('strong', {}, 'An empty yard.'), ' ', press('Add the first bed', event => event.target.dispatchEvent(new CustomEvent('act', { detail: { act: 'add bed form' }, bubbles: true }))),
    ' or ', press('say how the ground lies', () => openPlace('ground')), '. The order is there as soon as one bed is.'];
}

/** A garden that came with the program and was not changed yet says what it is. */
function example() {
  if (!EXAMPLES.has(garden.id) || garden.keeper.revision !== '"1"') return '';
  return h('p.example', {}, 'This is an example. Try what you like, or ', h('button', { type: 'button', 'data-key': 'start your own', onclick: () => page.querySelector('garden-title').begin() }, 'start your own'), '.');
}

let ended = new AbortController();

/** Listeners of the garden before end with it. */
function laid() {
  ended.abort();
  ended = new AbortController();
  return ended;
}

function addBed(ground, yard) {
  ground.querySelector('add-bed')?.remove();
  if (PHONE.matches) places.close();
  const form = custom('add-bed', { garden });
  form.addEventListener('added', event => {
    yard.render();
    yard.focusBed(event.detail);
  });
  form.addEventListener('closed', () => {
    const within = form.contains(document.activeElement);
    form.remove();
    if (within) page.querySelector('[data-key="add"]').focus();
  });
  ground.append(form);
  form.begin();
}

/** Does something with the server, and says what came of it. @param {string} not what is said where it fails, before the reason */
async function attempt(not, act) {
  try {
    say(await act());
  } catch (problem) {
    say(`${not}: ${problem.message}`);
  }
}

const remove = () => attempt('Not deleted', async () => {
  const { id, plan, keeper } = garden;
  await api.remove(id, keeper.revision);
  await open(null);
  return `${plan.name || 'The garden'} is deleted. Its name's menu brings it back.`;
});

/** It is not the one to open next time. */
const archive = () => attempt('Not archived', async () => {
  const { id, plan } = garden;
  await api.archive(id, true);
  if (localStorage.getItem(OPENED) === id) localStorage.removeItem(OPENED);
  await open(null);
  return `${plan.name || 'The garden'} is archived. Its name's menu brings it back.`;
});

/** @param {{id: string, from: 'archived'|'deleted'}} put away how */
const bringBack = ({ id, from }) => attempt('Not brought back', async () => {
  await (from === 'archived' ? api.archive(id, false) : api.bringBack(id));
  await open(id);
  return 'It is back.';
});

/** A copy of the garden that is open takes its photos along. */
const start = plan => attempt('Not started', async () => {
  const wantedPhotos = new Set((plan.handOver?.snags ?? []).flatMap(({ photos = [] }) => photos));
  const photos = await Promise.all([...wantedPhotos].map(photo => api.photo(garden.id, photo).catch(() => null)));
  const id = await api.create(plan);
  for (const photo of photos) if (photo) await api.addPhoto(id, await base64(photo));
  await open(id);
  return `${plan.name} is open.`;
});

/** Said one after the other, so that the slip's news does not cut short what was done. */
function say(text) {
  heard.append(h('p', {}, text));
  while (heard.children.length > MOST_HEARD) heard.firstChild.remove();
}

let waited = 0;

/** Looked for at each frame until it is drawn, a second at most; only the last one is waited for. */
function whenDrawn(find, act) {
  const own = ++waited;
  const look = left => requestAnimationFrame(() => {
    if (own !== waited) return;
    const found = find();
    if (found) act(found);
    else if (left) look(left - 1);
  });
  look(60);
}

/** The focus goes to a place once it is drawn, unless it is in there already; a narrow screen moves there. */
function openPlace(key) {
  places.open(key);
  whenDrawn(() => page.querySelector(`[data-place="${CSS.escape(key)}"]`), frame => {
    if (!frame.contains(document.activeElement)) frame.focus({ preventScroll: true });
    frame.scrollIntoView({ block: 'start' });
  });
}

/** The focus goes to a field of the place that is open, once it is drawn; what is folded over it is unfolded. */
function showField(key) {
  whenDrawn(() => page.querySelector(`[data-place] [data-key="${CSS.escape(key)}"]`), found => {
    for (let folded = found.closest('details:not([open])'); folded; folded = folded.parentElement.closest('details:not([open])')) folded.open = true;
    const field = found.matches('input, select, button, summary') ? found : found.querySelector('input, select, button') ?? found;
    field.focus();
    field.scrollIntoView({ block: 'center' });
  });
}

page.addEventListener('open-place', event => openPlace(event.detail));
page.addEventListener('show-field', event => showField(event.detail));
page.addEventListener('say', event => say(event.detail));
page.addEventListener('open-garden', event => open(event.detail));
page.addEventListener('start-garden', event => start(event.detail));
page.addEventListener('archive-garden', archive);
page.addEventListener('delete-garden', remove);
page.addEventListener('bring-back-garden', event => bringBack(event.detail));
window.addEventListener('hashchange', () => { if (wanted() !== garden?.id) open(wanted()); });
window.addEventListener('online', () => garden?.again());
window.addEventListener('pagehide', () => garden?.rememberSteps());
document.addEventListener('visibilitychange', attend);
window.addEventListener('pageshow', attend);
window.addEventListener('pagehide', () => news?.end());

/**
 * Only a page that is seen listens: a browser has six lines to a server, and a page laid aside would keep one of them.
 * Whoever comes back looks first.
 */
function attend() {
  news?.end();
  if (!garden || document.visibilityState !== 'visible') return;
  const { id } = garden;
  news = new News({ listen: (heard, signal) => api.listen(id, heard, signal), look: lookForNews });
  lookForNews();
  news.begin();
}

/** What someone else saved is taken in; a server that is away is told of at the next change. */
function lookForNews(heard) {
  if (document.visibilityState === 'visible') garden?.keeper.lookForNews(heard).catch(() => {});
}

open(wanted());

// what is kept by the worker opens the page where there is no signal
navigator.serviceWorker?.register('sw.js').catch(() => {});
