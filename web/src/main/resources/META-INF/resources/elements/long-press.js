/**
 * A press that is held: an element with `data-hold` fires `held` once it was pressed so long, and no click after it, wherever
 * the finger is then let go: what was held may have moved from under it.
 * Listened for in one place, so that it outlives every drawing anew.
 */

/** How long until a press counts as held, milliseconds, and how far a finger may slide meanwhile, pixels. */
export const HELD = 550;
const SLIDE = 12;

let timer = 0;
let from = null;
let taken = false;

const end = () => clearTimeout(timer);

addEventListener('pointerdown', event => {
  taken = false;
  end();
  const element = event.target.closest?.('[data-hold]');
  if (!element || event.button) return;
  from = [event.clientX, event.clientY];
  timer = setTimeout(() => {
    taken = true;
    navigator.vibrate?.(40);
    element.dispatchEvent(new CustomEvent('held'));
  }, HELD);
}, true);

addEventListener('pointermove', event => { if (from && Math.hypot(event.clientX - from[0], event.clientY - from[1]) > SLIDE) end(); }, true);
for (const type of ['pointerup', 'pointercancel', 'scroll']) addEventListener(type, end, true);

addEventListener('contextmenu', event => { if (event.target.closest?.('[data-hold]')) event.preventDefault(); }, true);

addEventListener('click', event => {
  if (!taken || !event.detail) return;
  taken = false;
  event.stopImmediatePropagation();
  event.preventDefault();
}, true);
