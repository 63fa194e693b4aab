import { contains } from './distance.js';

/** Degrees between two points of a drawn arc. */
const STEP = 5;

/**
 * The ground a gate's leaf sweeps: a quarter disc from the closed leaf, into the yard or out of it. With the hinge
 * alone the leaf may lie either way along the edge, so all of the disc on that side of the edge is swept.
 *
 * @param {{hinge: [number, number], leaf?: number, swing?: 'in'|'out', closed?: number}} gate `closed` is the direction
 *     of the closed leaf, degrees counter-clockwise from straight along the house
 * @param {import('./outline.js').Point[] | null} yard
 * @returns {import('./outline.js').Point[]}
 */
export function swept({ hinge, leaf = 900, swing = 'in', closed }, yard) {
  const side = point => !yard || contains(yard, point) === (swing === 'in');
  if (closed === undefined) {
    const disc = arc(hinge, leaf, 0, 360 - STEP);
    const first = disc.findIndex((point, i) => side(point) && !side(disc[(i + disc.length - 1) % disc.length]));
    if (first < 0) return disc;
    return [hinge, ...[...disc.slice(first), ...disc.slice(0, first)].filter(side)];
  }
  const half = leaf * Math.SQRT1_2 / 2;
  const middleOf = sign => {
    const angle = (closed + sign * 45) * Math.PI / 180;
    return [hinge[0] + half * Math.cos(angle), hinge[1] + half * Math.sin(angle)];
  };
  return [hinge, ...(side(middleOf(1)) ? arc(hinge, leaf, closed, closed + 90) : arc(hinge, leaf, closed - 90, closed))];
}

function arc([x, y], radius, from, to) {
  const points = [];
  for (let degrees = from; degrees <= to; degrees += STEP) {
    const angle = degrees * Math.PI / 180;
    points.push([x + radius * Math.cos(angle), y + radius * Math.sin(angle)]);
  }
  return points;
}
