import { bounds } from './outline.js';

/** Straight faces of outlines and the free way between them, millimetres. */

/** Slices lie this far from the corners that bound them, so that a grazed corner does not count. */
const ASIDE = 0.01;

/**
 * The lines of an outline's straight faces, by the side they look to.
 *
 * @param {import('./outline.js').Point[]} outline counter-clockwise as it lies
 * @returns {{left: number[], right: number[], front: number[], back: number[]}}
 */
export function faces(outline) {
  const found = { left: [], right: [], front: [], back: [] };
  outline.forEach(([x, y], i) => {
    const [nextX, nextY] = outline[(i + 1) % outline.length];
    if (Math.abs(x - nextX) < 0.05 && Math.abs(y - nextY) > 0.05) found[nextY > y ? 'right' : 'left'].push(x);
    if (Math.abs(y - nextY) < 0.05 && Math.abs(x - nextX) > 0.05) found[nextX > x ? 'front' : 'back'].push(y);
  });
  return found;
}

/** Where a line across an outline at one height meets it, in order. */
export function crossings(outline, y) {
  return outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length];
    return (a[1] > y) === (b[1] > y) ? [] : [a[0] + (b[0] - a[0]) * (y - a[1]) / (b[1] - a[1])];
  }).sort((p, q) => p - q);
}

/** How an outline is laid so that a way in any of the four directions runs to the right. */
const LAID = {
  right: ([x, y]) => [x, y], left: ([x, y]) => [-x, y], back: ([x, y]) => [y, x], front: ([x, y]) => [-y, x],
};
const BACK = { ...LAID, front: ([x, y]) => [y, -x] };

/**
 * How far outlines can be pushed one way until one of them meets something.
 *
 * @param {import('./outline.js').Point[][]} pushed
 * @param {{id: string | null, outline: import('./outline.js').Point[], box: import('./outline.js').Bounds, round?: boolean}[]} others
 *     `round` where the outline lies round the pushed ones, as the yard does
 * @param {'left'|'right'|'front'|'back'} way
 * @returns {{mm: number, id: string | null, from: number[], to: number[]} | null} null where the way is open for ever;
 *     what is overlapped already is not met
 */
export function freeWay(pushed, others, way) {
  const lay = outline => outline.map(LAID[way]);
  let best = null;
  for (const outline of pushed) {
    const own = lay(outline);
    const ownBox = bounds(own);
    const [low, high] = way === 'left' || way === 'right' ? ['front', 'back'] : ['left', 'right'];
    const asItLies = bounds(outline);
    for (const { id, outline: other, box: otherBox, round } of others) {
      if (otherBox[high] <= asItLies[low] || otherBox[low] >= asItLies[high]) continue;
      const met = lay(other);
      const box = bounds(met);
      if (box.right < ownBox.right - 0.05) continue;
      for (const [y, mid] of heights(own, met)) {
        const from = crossings(own, y).at(-1);
        const ends = crossings(met, y);
        const to = ends.find((x, i) => x >= from - 0.05 && (round ? i % 2 === 1 : i % 2 === 0));
        if (from === undefined || to === undefined) continue;
        const mm = Math.max(0, to - from);
        if (!best || mm < best.mm - 0.05) best = { mm, id, y: mid, from, to };
      }
    }
  }
  return best && { mm: best.mm, id: best.id, from: BACK[way]([best.from, best.y]), to: BACK[way]([best.to, best.y]) };
}

/** Just inside each strip between corners of either outline: there the free way is least, with the strip's middle. */
function heights(a, b) {
  const stops = [...new Set([...a, ...b].map(([, y]) => y))].sort((p, q) => p - q);
  return stops.slice(1).flatMap((stop, i) => {
    const mid = (stop + stops[i]) / 2;
    const aside = Math.min(ASIDE, (stop - stops[i]) / 4);
    return [[stops[i] + aside, mid], [stop - aside, mid]];
  });
}
