import { api } from './api.js';
import { Garden } from './state/garden.js';
import { News } from './state/news.js';
import { OpenPlaces } from './state/open-places.js';
import { custom, h } from './elements/make.js';
import { allPlaces } from './elements/places.js';
import './elements/each-place.js';
import './elements/bed-card.js';
import './elements/beds-card.js';
import './elements/clash-ask.js';
import './elements/draw-bar.js';
import './elements/garden-title.js';
import './elements/house-sill.js';
import './elements/key-list.js';
import './elements/lap-courses.js';
import './elements/lap-gaps.js';
import './elements/lap-side.js';
import './elements/lap-weekends.js';
import './elements/lap-yard.js';
import './elements/place-row.js';
import './elements/red-thread.js';
import './elements/stand-bed.js';

/** Puts the places round the yard and opens a garden: the one in the address, else the first of the store. */

const page = document.getElementById('page');
const heard = document.getElementById('heard');

/** A garden to begin with where the store is empty. */
const FIRST = { format: 1, name: 'First garden', ground: { outline: [[0, 0], [12000, 0], [12000, 9000], [0, 9000]] }, beds: [] };

/** Lines that stay to be heard. */
const MOST_HEARD = 6;

const places = new OpenPlaces(allPlaces(), localStorage);

let garden = null;
let news = null;

const wanted = () => decodeURIComponent(location.hash.slice(1));

async function open(id) {
  try {
    let gardens = await api.gardens();
    if (!gardens.length) {
      await api.create(FIRST);
      gardens = await api.gardens();
    }
    const first = gardens.some(one => one.id === id) ? id : gardens[0].id;
    const next = await Garden.open(api, first, { local: localStorage, session: sessionStorage });
    garden?.close();
    garden = next;
    history.replaceState(null, '', `#${encodeURIComponent(first)}`);
    lay(gardens);
    requestAnimationFrame(() => performance.mark('lapyard ready'));
    garden.begin();
    attend();
  } catch (problem) {
    if (garden) say(`That garden does not open: ${problem.message}`);
    else cannotOpen(problem);
  }
}

function cannotOpen(problem) {
  if (problem.status === 401) return askToken();
  return page.replaceChildren(h('div.closed', { role: 'alert' },
    h('h1', {}, 'Lapyard'),
    h('p', {}, `The gardens do not open: ${problem.message} Start the server, then try again. Nothing you typed is lost.`),
    h('button.main', { type: 'button', onclick: () => open(wanted()) }, 'Try again')));
}

/** A server that others can reach is started with a token. */
function askToken() {
  const input = h('input', { id: 'token', type: 'password', autocomplete: 'off', required: true });
  page.replaceChildren(h('form.closed', { onsubmit: event => {
    event.preventDefault();
    api.useToken(input.value.trim());
    open(wanted());
  } },
  h('h1', {}, 'Lapyard'), h('p', {}, 'This server asks for its token. Whoever started it has it.'),
  h('label', { for: 'token' }, 'Token'), input, h('button.main', { type: 'submit' }, 'Open the gardens')));
  input.focus();
}

function lay(gardens) {
  const make = (tag, props = {}) => custom(tag, { garden, ...props });
  const keys = document.createElement('key-list');
  const yard = make('lap-yard');
  const hand = h('div.hand');
  const card = make('bed-card');
  hand.append(card, make('beds-card', { yard }));
  const side = name => make('lap-side', { side: name, places, yard });
  page.replaceChildren(
    yard,
    h('div.lee', {}, make('garden-title', { gardens }), hand, side('lee')),
    h('div.strip', {}, side('strip')),
    h('div.shelf', {}, side('foot')),
    h('div.sill', {}, make('place-row', { places }), h('div.to-hand', {}, make('house-sill', { yard, keys }), make('lap-weekends'))),
    make('lap-courses', { yard }),
    make('lap-gaps', { yard }),
    make('draw-bar', { yard }),
    make('red-thread', { yard }),
    make('clash-ask'),
    keys);
  page.dataset.garden = garden.id;
  document.title = `${garden.plan.name || 'Garden'} · Lapyard`;
  page.addEventListener('stand', () => standBed(hand, yard), { signal: laid() });
}

let ended = new AbortController();

/** Listeners of the garden before end with it. */
function laid() {
  ended.abort();
  ended = new AbortController();
  return ended.signal;
}

function standBed(hand, yard) {
  hand.querySelector('stand-bed')?.remove();
  const form = custom('stand-bed', { garden });
  form.addEventListener('stood', event => {
    yard.render();
    yard.focusBed(event.detail);
  });
  form.addEventListener('closed', () => {
    const within = form.contains(document.activeElement);
    form.remove();
    hand.classList.remove('standing');
    if (within) page.querySelector('[data-key="stand"]').focus();
  });
  hand.classList.add('standing');
  hand.prepend(form);
}

async function start(plan) {
  try {
    await open(await api.create(plan));
    say(`${plan.name} is open.`);
  } catch (problem) {
    say(`Not started: ${problem.snags?.[0]?.text ?? problem.message}`);
  }
}

/** Said one after the other, so that the slip's news does not cut short what was done. */
function say(text) {
  heard.append(h('p', {}, text));
  while (heard.children.length > MOST_HEARD) heard.firstChild.remove();
}

/** The focus goes to a place once it is drawn; a narrow screen moves there. */
function openPlace(key) {
  places.open(key);
  requestAnimationFrame(() => requestAnimationFrame(() => {
    const frame = page.querySelector(`[data-place="${CSS.escape(key)}"]`);
    frame?.focus({ preventScroll: true });
    frame?.scrollIntoView({ block: 'start' });
  }));
}

page.addEventListener('open-place', event => openPlace(event.detail));
page.addEventListener('say', event => say(event.detail));
page.addEventListener('open-garden', event => open(event.detail));
page.addEventListener('start-garden', event => start(event.detail));
page.addEventListener('bed-gone', () => page.querySelector('lap-yard [data-bed][tabindex="0"], [data-key="stand"]')?.focus());
window.addEventListener('hashchange', () => { if (wanted() !== garden?.id) open(wanted()); });
window.addEventListener('online', () => garden?.keeper.again());
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
