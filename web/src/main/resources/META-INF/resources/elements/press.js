/**
 * While a finger, a mouse button or the space bar is down inside an element, what it shows stays as it is: the press
 * would otherwise end on something else than it began on.
 */

let pressed = null;
const waiting = new Map();

const free = () => setTimeout(() => {
  pressed = null;
  const runs = [...waiting.values()];
  waiting.clear();
  for (const run of runs) run();
});

const FIELDS = 'input:not([type="checkbox"]), select, textarea';

addEventListener('pointerdown', event => { pressed = event.target.matches?.(FIELDS) ? null : event.target; }, true);
addEventListener('pointermove', event => { if (pressed && event.pointerType === 'mouse' && !event.buttons) free(); }, true);
addEventListener('pointerup', free, true);
addEventListener('pointercancel', free, true);
addEventListener('blur', free);
addEventListener('keydown', event => { if (event.key === ' ' && event.target.matches?.('button, summary')) pressed = event.target; }, true);
addEventListener('keyup', event => { if (event.key === ' ') free(); }, true);

/** Runs at once, or after the press that is under way inside `element`; of several runs only the last. */
export function afterPress(element, run) {
  if (pressed && element.contains(pressed)) waiting.set(element, run);
  else run();
}
