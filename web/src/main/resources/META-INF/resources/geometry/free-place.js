import { bounds, placed } from './outline.js';
import { gap, overlap, within } from './distance.js';

/** Looks for room every so many millimetres. */
const STEP = 250;

/** At most so many places are tried along a side, so that a field costs no more than a yard. */
const MOST_STEPS = 80;

/**
 * The first place, nearest the house and then nearest the left, where an outline has room.
 *
 * @param {import('./outline.js').Point[]} outline own frame
 * @param {import('./outline.js').Point[][]} taken what already lies in the yard
 * @param {import('./outline.js').Point[] | null} yard
 * @param {number} clear millimetres to keep to everything taken and to the yard's edges, given up where there is no such room
 * @returns {[number, number]} where the outline's origin goes; beside everything where the yard is full
 */
export function freePlace(outline, taken, yard, clear) {
  const own = bounds(outline);
  const ground = yard ? bounds(yard) : null;
  const boxed = taken.map(other => ({ other, box: bounds(other) }));
  if (ground) {
    const step = Math.max(STEP, (ground.right - ground.left) / MOST_STEPS, (ground.back - ground.front) / MOST_STEPS);
    for (const keep of [clear, 0]) {
      for (let y = ground.front + keep; y + own.back - own.front <= ground.back - keep; y += step) {
        for (let x = ground.left + keep; x + own.right - own.left <= ground.right - keep; x += step) {
          const at = [Math.round(x - own.left), Math.round(y - own.front)];
          if (fits(placed(outline, { at, turn: 0, mirror: false }), boxed, yard, keep)) return at;
        }
      }
    }
  }
  const all = bounds(...taken);
  return all ? [Math.round(all.right + clear - own.left), Math.round(all.front - own.front)] : [-own.left, -own.front];
}

function fits(candidate, boxed, yard, keep) {
  const own = bounds(candidate);
  return within(candidate, yard) && boxed.every(({ other, box }) => farApart(own, box, keep)
    || (!overlap(candidate, other) && (keep === 0 || gap(candidate, other).mm >= keep)));
}

function farApart(a, b, keep) {
  return a.left - b.right >= keep || b.left - a.right >= keep || a.front - b.back >= keep || b.front - a.back >= keep;
}
