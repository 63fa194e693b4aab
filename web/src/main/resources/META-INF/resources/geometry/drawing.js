import { distance } from './outline.js';
import { onGrid } from './snap.js';

/** Points put one after the other: where the next one comes to rest. */

/**
 * @param {import('./outline.js').Point[]} points put so far
 * @param {import('./outline.js').Point} wanted where the pointer is
 * @param {{within: number, grid: number, corners: import('./outline.js').Point[], square: boolean, free: boolean}} how
 *     `corners` draw the point from `within` millimetres; `square` keeps the leg along or away from the house;
 *     `free` keeps it to the millimetre
 * @returns {import('./outline.js').Point}
 */
export function nextPoint(points, wanted, { within, grid, corners, square, free }) {
  const last = points.at(-1);
  if (square && last) {
    const along = Math.abs(wanted[0] - last[0]) >= Math.abs(wanted[1] - last[1]);
    const level = nextPoint(points, wanted, { within, grid, corners, square: false, free });
    return along ? [level[0], last[1]] : [last[0], level[1]];
  }
  if (free) return wanted.map(Math.round);
  const near = corners.filter(corner => distance(corner, wanted) <= within)
    .sort((a, b) => distance(a, wanted) - distance(b, wanted))[0];
  if (near) return [...near];
  const lined = axis => {
    const line = points.map(point => point[axis]).filter(value => Math.abs(value - wanted[axis]) <= within)
      .sort((a, b) => Math.abs(a - wanted[axis]) - Math.abs(b - wanted[axis]))[0];
    return line ?? onGrid(wanted[axis], grid);
  };
  return [lined(0), lined(1)];
}

const WAYS = { right: [1, 0], back: [0, 1], left: [-1, 0], front: [0, -1] };

/** The point a length further on. @param {'right'|'back'|'left'|'front'} way */
export function further(point, way, mm) {
  const [dx, dy] = WAYS[way];
  return [Math.round((point[0] + dx * mm) * 10) / 10, Math.round((point[1] + dy * mm) * 10) / 10];
}

/** Without points that stand on the one before; an outline without one on its first either. */
export function cleaned(points, closed) {
  const kept = points.filter((point, i) => i === 0 || distance(point, points[i - 1]) >= 1);
  if (closed && kept.length > 1 && distance(kept[0], kept.at(-1)) < 1) kept.pop();
  return kept;
}
