import { distance } from './outline.js';

/** The outlines that beds are stood in, corners counter-clockwise from the front left, millimetres. */

/** Documents hold tenths of a millimetre. */
const tenth = mm => Math.round(mm * 10) / 10;

/** An L: a piece is missing at the rear right. */
export function ell(width, depth, missing) {
  const [x, y] = [tenth(width - missing.width), tenth(depth - missing.depth)];
  return [[0, 0], [width, 0], [width, y], [x, y], [x, depth], [0, depth]];
}

/** A U: a piece is missing in the middle of the back. */
export function you(width, depth, missing) {
  const left = tenth((width - missing.width) / 2);
  const [right, y] = [tenth(left + missing.width), tenth(depth - missing.depth)];
  return [[0, 0], [width, 0], [width, depth], [right, depth], [right, y], [left, y], [left, depth], [0, depth]];
}

/** A T: a stem towards the house in the middle of the front. */
export function tee(width, depth, stem) {
  const left = tenth((width - stem.width) / 2);
  const right = tenth(left + stem.width);
  return [[left, 0], [right, 0], [right, stem.depth], [width, stem.depth], [width, depth], [0, depth], [0, stem.depth], [left, stem.depth]];
}

/**
 * The outline with one wall longer or shorter: the end of the wall moves, and with it all that lies beyond.
 * Right angles stay right.
 *
 * @param {import('./outline.js').Point[]} outline right-angled
 * @param {number} side 0 for wall A
 * @param {number} length of that wall, millimetres
 */
export function stretched(outline, side, length) {
  const [from, to] = [outline[side], outline[(side + 1) % outline.length]];
  const by = length - distance(from, to);
  const axis = Math.abs(to[0] - from[0]) > Math.abs(to[1] - from[1]) ? 0 : 1;
  const sign = Math.sign(to[axis] - from[axis]);
  return outline.map(corner => {
    if (sign * (corner[axis] - to[axis]) < -0.05) return corner;
    const moved = [...corner];
    moved[axis] = Math.round((moved[axis] + sign * by) * 10) / 10;
    return moved;
  });
}

/** Lengths of the walls from A. */
export const wallLengths = outline => outline.map((corner, i) => distance(corner, outline[(i + 1) % outline.length]));

export const isRightAngled = outline => outline.every(([x, y], i) => {
  const [nextX, nextY] = outline[(i + 1) % outline.length];
  return Math.abs(x - nextX) < 0.05 || Math.abs(y - nextY) < 0.05;
});

/**
 * The outline with one wall moved straight out (above 0) or in: the walls beside it change their lengths.
 *
 * @param {import('./outline.js').Point[]} outline right-angled, counter-clockwise
 */
export function wallMoved(outline, side, by) {
  const next = (side + 1) % outline.length;
  const [a, b] = [outline[side], outline[next]];
  const length = distance(a, b);
  const [outX, outY] = [(b[1] - a[1]) / length, -(b[0] - a[0]) / length];
  return outline.map((corner, i) => (i === side || i === next
    ? [Math.round((corner[0] + outX * by) * 10) / 10, Math.round((corner[1] + outY * by) * 10) / 10] : corner));
}

/** How far a wall may go in (`least`, below 0) and out (`most`) so that the walls beside it keep room for two joints. */
export function wallRoom(outline, side, thickness) {
  const lengths = wallLengths(outline);
  let [least, most] = [-Infinity, Infinity];
  for (const beside of [(side + outline.length - 1) % outline.length, (side + 1) % outline.length]) {
    const room = Math.max(0, lengths[beside] - 3 * thickness);
    const grows = distance(...ends(wallMoved(outline, side, 1), beside)) > lengths[beside];
    if (grows) least = Math.max(least, -room);
    else most = Math.min(most, room);
  }
  return { least, most };
}

const ends = (outline, side) => [outline[side], outline[(side + 1) % outline.length]];
