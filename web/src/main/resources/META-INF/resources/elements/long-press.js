/**
 * A press that is held: an element with `data-hold` fires `held` once it was pressed so long, and no click after it.
 * Listened for in one place, so that it outlives every drawing anew.
 */

/** How long until a press counts as held, milliseconds, and how far a finger may slide meanwhile, pixels. */
const HELD = 550;
const SLIDE = 12;

let timer = 0;
let from = null;
let taken = null;

const end = () => clearTimeout(timer);

addEventListener('pointerdown', event => {
  taken = null;
  end();
  const element = event.target.closest?.('[data-hold]');
  if (!element || event.button) return;
  from = [event.clientX, event.clientY];
  timer = setTimeout(() => {
    taken = element;
    navigator.vibrate?.(40);
    element.dispatchEvent(new CustomEvent('held'));
  }, HELD);
}, true);

addEventListener('pointermove', event => { if (from && Math.hypot(event.clientX - from[0], event.clientY - from[1]) > SLIDE) end(); }, true);
for (const type of ['pointerup', 'pointercancel', 'scroll']) addEventListener(type, end, true);

addEventListener('contextmenu', event => { if (event.target.closest?.('[data-hold]')) event.preventDefault(); }, true);

addEventListener('click', event => {
  if (!taken?.contains(event.target)) return;
  taken = null;
  event.stopImmediatePropagation();
  event.preventDefault();
}, true);
