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
    // judged at the middle of each step, as the ends lie on the edge itself
    const sweeps = step => side(on(hinge, leaf, (step + 0.5) * STEP));
    const first = Array.from({ length: 360 / STEP }, (_, step) => step).find(step => sweeps(step) && !sweeps(step - 1));
    if (first === undefined) return arc(hinge, leaf, 0, 360 - STEP);
    let end = first;
    while (sweeps(end)) end++;
    return [hinge, ...arc(hinge, leaf, first * STEP, end * STEP)];
  }
  const half = leaf * Math.SQRT1_2 / 2;
  const middleOf = sign => {
    const angle = (closed + sign * 45) * Math.PI / 180;
    return [hinge[0] + half * Math.cos(angle), hinge[1] + half * Math.sin(angle)];
  };
  return [hinge, ...(side(middleOf(1)) ? arc(hinge, leaf, closed, closed + 90) : arc(hinge, leaf, closed - 90, closed))];
}

function arc(centre, radius, from, to) {
  const points = [];
  for (let degrees = from; degrees <= to; degrees += STEP) points.push(on(centre, radius, degrees));
  return points;
}

const on = ([x, y], radius, degrees) => [x + radius * Math.cos(degrees * Math.PI / 180), y + radius * Math.sin(degrees * Math.PI / 180)];
