import { bounds, placed } from './outline.js';
import { gap, overlap, within } from './distance.js';
import { onGrid } from './snap.js';

/** At most so many places are tried along a side, so that a field costs no more than a yard. */
const MOST_STEPS = 80;

/** What is kept of the room, where there is no place with all of it. */
const SHARES = [1, 0.5, 0];

/** Documents hold tenths of a millimetre: less than this is missing nowhere. */
const NEAR = 0.05;

/**
 * The first place, nearest the house and then nearest the left, where an outline has room.
 *
 * @param {import('./outline.js').Point[]} outline own frame
 * @param {{outline: import('./outline.js').Point[], clear: number}[]} taken what already lies in the yard, and how far from it
 *     one keeps, millimetres
 * @param {import('./outline.js').Point[] | null} yard
 * @param {{edge: number, step: number, grid: number}} how millimetres: what to keep to the yard's edges, how far apart places are tried,
 *     and on multiples of what the outline's front left comes to lie
 * @returns {{at: [number, number], free: boolean}} where the outline's origin goes; `free` where all the room is kept. Beside
 *     everything where the yard is full
 */
export function freePlace(outline, taken, yard, { edge, step: least, grid }) {
  const own = bounds(outline);
  const ground = yard ? bounds(yard) : null;
  const at = (x, y) => [tenth(onGrid(x, grid) - own.left), tenth(onGrid(y, grid) - own.front)];
  const boxed = taken.map(other => ({ ...other, box: bounds(other.outline) }));
  if (ground) {
    const step = least * Math.ceil(Math.max(1, (ground.right - ground.left) / MOST_STEPS / least, (ground.back - ground.front) / MOST_STEPS / least));
    for (const share of SHARES) {
      const keep = edge * share;
      for (let y = ground.front + keep; y + own.back - own.front <= ground.back - keep + NEAR; y += step) {
        for (let x = ground.left + keep; x + own.right - own.left <= ground.right - keep + NEAR; x += step) {
          const there = at(x, y);
          if (fits(placed(outline, { at: there, turn: 0, mirror: false }), boxed, yard, share)) return { at: there, free: share === 1 };
        }
      }
    }
  }
  const all = bounds(...taken.map(other => other.outline));
  return { at: all ? at(all.right + edge, all.front) : [-own.left, -own.front], free: !ground };
}

const tenth = mm => Math.round(mm * 10) / 10;

function fits(candidate, boxed, yard, share) {
  const own = bounds(candidate);
  return within(candidate, yard) && boxed.every(({ outline, clear, box }) => farApart(own, box, clear * share - NEAR)
    || (!overlap(candidate, outline) && (clear * share === 0 || gap(candidate, outline).mm >= clear * share - NEAR)));
}

function farApart(a, b, keep) {
  return a.left - b.right >= keep || b.left - a.right >= keep || a.front - b.back >= keep || b.front - a.back >= keep;
}
