import { bounds } from './outline.js';
import { faces } from './face.js';

/** Where what is dragged comes to rest: on faces, a path's width from them, yard edges, or the grid. */

/**
 * @typedef {{left: number[], right: number[], front: number[], back: number[]}} Faces lines of straight faces, by the side
 *     they look to
 * @typedef {{within: number, grid: number, gaps: number[]}} How `within` is how near counts, millimetres; `gaps` are path
 *     widths worth keeping
 */

/** The faces of outlines together; where one has none to a side, the edge of its box stands for it. @returns {Faces} */
export function facesOf(outlines) {
  const all = { left: [], right: [], front: [], back: [] };
  for (const outline of outlines) {
    const own = faces(outline);
    const box = bounds(outline);
    for (const side of Object.keys(all)) all[side].push(...(own[side].length ? own[side] : [box[side]]));
  }
  return all;
}

/**
 * The lines on which something can come to rest: they stay the same while it is carried.
 *
 * @param {{faces: Faces}[]} others beds and paths
 * @param {Faces | null} yard its own faces, seen from outside as any outline's
 * @param {number[]} gaps as in {@link How}
 */
export const restLines = (others, yard, gaps) => ({ x: wanted(others, yard, 'left', 'right', gaps), y: wanted(others, yard, 'front', 'back', gaps) });

/**
 * @param {Faces} own
 * @param {[number, number]} moved how far the pointer has carried it
 * @param {{x: object[], y: object[]}} lines see {@link restLines}
 * @param {{within: number, grid: number}} how
 * @returns {{dx: number, dy: number, onX: number | null, onY: number | null}} the further move that brings it to rest, and
 *     the lines (x, y) it then lies on
 */
export function rest(own, [dx, dy], lines, how) {
  const x = along(own, dx, lines.x, 'left', how);
  const y = along(own, dy, lines.y, 'front', how);
  return { dx: x.move, dy: y.move, onX: x.line, onY: y.line };
}

/** Low faces want one's low side (in line) or high side (beside it); high faces the other way round; the yard is seen from inside. */
function wanted(others, yard, low, high, gaps) {
  const found = [];
  const room = [0, ...gaps];
  for (const { faces: theirs } of others) {
    for (const at of theirs[low]) found.push({ at, side: low }, ...room.map(gap => ({ at: at - gap, side: high })));
    for (const at of theirs[high]) found.push({ at, side: high }, ...room.map(gap => ({ at: at + gap, side: low })));
  }
  for (const at of yard?.[low] ?? []) found.push(...room.map(gap => ({ at: at + gap, side: low })));
  for (const at of yard?.[high] ?? []) found.push(...room.map(gap => ({ at: at - gap, side: high })));
  return found;
}

function along(own, moved, lines, low, { within, grid }) {
  let best = null;
  for (const { at, side } of lines) {
    for (const face of own[side]) {
      const move = at - face - moved;
      if (Math.abs(move) <= within && (!best || Math.abs(move) < Math.abs(best.move))) best = { move, line: at };
    }
  }
  if (best) return best;
  const lowest = Math.min(...own[low]) + moved;
  return { move: onGrid(lowest, grid) - lowest, line: null };
}

/** The nearest multiple of the grid, to 0.1 mm as documents hold it. */
export const onGrid = (value, grid) => Math.round(Math.round(value / grid) * grid * 10) / 10;

/**
 * How far out a dragged wall comes to rest; a wall that lies aslant keeps to the grid along its own way.
 *
 * @param {import('./outline.js').Point[]} wall its two ends
 * @param {[number, number]} out which way is out, length 1
 * @param {number} by how far the pointer has carried it out
 */
export function restWall(wall, out, by, others, yard, how) {
  const axis = Math.abs(out[0]) > 0.999 ? 0 : Math.abs(out[1]) > 0.999 ? 1 : null;
  if (axis === null) return onGrid(by, how.grid);
  const [low, high] = axis === 0 ? ['left', 'right'] : ['front', 'back'];
  const side = out[axis] > 0 ? high : low;
  const own = { [low]: [], [high]: [], [side]: [wall[0][axis]] };
  const moved = by * Math.sign(out[axis]);
  const rested = along({ ...own, [low]: own[low].length ? own[low] : [wall[0][axis]] }, moved,
    wanted(others, yard, low, high, how.gaps).filter(line => line.side === side), low, how);
  return (moved + rested.move) * Math.sign(out[axis]);
}
