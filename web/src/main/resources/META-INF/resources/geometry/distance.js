import { freeWay } from './face.js';

/** Distances between outlines in the yard, millimetres. */

/** The nearest point of side a-b to `point`. */
function nearestOnSide(point, a, b) {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const squared = dx * dx + dy * dy;
  const share = squared ? Math.max(0, Math.min(1, ((point[0] - a[0]) * dx + (point[1] - a[1]) * dy) / squared)) : 0;
  return [a[0] + share * dx, a[1] + share * dy];
}

function sides(outline) {
  return outline.map((corner, i) => [corner, outline[(i + 1) % outline.length]]);
}

function sidesCross([a, b], [c, d]) {
  const turn = (p, q, r) => Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

/** True inside, false outside; on the edge it may be either. */
export function contains(outline, [x, y]) {
  let inside = false;
  for (const [[ax, ay], [bx, by]] of sides(outline)) {
    if ((ay > y) !== (by > y) && x < (bx - ax) * (y - ay) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}

/**
 * The gap between two outlines: 0 where they touch or overlap.
 *
 * @returns {{mm: number, from: [number, number], to: [number, number]}} `from` on `a`, `to` on `b`
 */
export function gap(a, b) {
  if (overlap(a, b)) return { mm: 0, from: a[0], to: a[0] };
  let best = { mm: Infinity, from: a[0], to: b[0] };
  const tryPair = (from, to) => {
    const mm = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (mm < best.mm) best = { mm, from, to };
  };
  for (const corner of a) for (const [c, d] of sides(b)) tryPair(corner, nearestOnSide(corner, c, d));
  for (const corner of b) for (const [c, d] of sides(a)) tryPair(nearestOnSide(corner, c, d), corner);
  return best;
}

/** True where the insides share ground; touching faces do not overlap. */
export function overlap(a, b) {
  for (const one of sides(a)) for (const other of sides(b)) if (sidesCross(one, other)) return true;
  return reachesInto(a, b) || reachesInto(b, a) || strictlyInside(b, centre(a)) || strictlyInside(a, centre(b));
}

/** Where no sides cross, each stretch of a side between the corners it touches is all inside, on, or outside. */
function reachesInto(a, b) {
  return sides(a).some(([from, to]) => {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const squared = dx * dx + dy * dy;
    const cuts = b.map(([x, y]) => ((x - from[0]) * dx + (y - from[1]) * dy) / squared).filter(share => share > 0 && share < 1);
    const stops = [0, ...cuts.sort((p, q) => p - q), 1];
    return stops.slice(1).some((stop, i) => {
      const half = (stops[i] + stop) / 2;
      return strictlyInside(b, [from[0] + half * dx, from[1] + half * dy]);
    });
  });
}

/** A point inside the outline: the middle of its first ear. */
function centre(outline) {
  for (let i = 0; i < outline.length; i++) {
    const [a, b, c] = [outline[i], outline[(i + 1) % outline.length], outline[(i + 2) % outline.length]];
    const point = [(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3];
    if (strictlyInside(outline, point)) return point;
  }
  return outline[0];
}

function strictlyInside(outline, point) {
  const onEdge = sides(outline).some(([a, b]) => {
    const near = nearestOnSide(point, a, b);
    return Math.hypot(near[0] - point[0], near[1] - point[1]) < 0.05;
  });
  return !onEdge && contains(outline, point);
}

/** True where every corner of `inner` lies in or on `outer` and no sides cross. */
export function within(inner, outer) {
  const crossing = sides(inner).some(one => sides(outer).some(other => sidesCross(one, other)));
  return !crossing && inner.every(corner => contains(outer, corner) || sides(outer).some(([a, b]) => {
    const near = nearestOnSide(corner, a, b);
    return Math.hypot(near[0] - corner[0], near[1] - corner[1]) < 0.05;
  }));
}

/**
 * From what is carried straight to the left, right, front and back: the nearest thing it would meet.
 *
 * @param {import('./outline.js').Point[][]} outlines
 * @param {{id: string, outline: import('./outline.js').Point[], box: import('./outline.js').Bounds}[]} others
 * @param {object | null} yard the same, with `round`
 * @returns {{side: string, mm: number, id: string | null, from: number[], to: number[]}[]} at most four, none where nothing
 *     stands; `id` is null for the yard's edge
 */
export function neighbours(outlines, others, yard) {
  const all = yard ? [...others, yard] : others;
  return ['left', 'right', 'front', 'back']
    .map(side => ({ side, ...freeWay(outlines, all, side) }))
    .filter(({ mm }) => mm !== undefined);
}
