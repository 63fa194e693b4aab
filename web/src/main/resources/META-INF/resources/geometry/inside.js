import { bounds, middle } from './outline.js';
import { contains } from './distance.js';

/**
 * A point well inside an outline, where its name can stand: the middle where that is inside, else the middle of the
 * roomiest strip between two corners' heights.
 *
 * @param {import('./outline.js').Point[]} outline
 * @returns {import('./outline.js').Point}
 */
export function insidePoint(outline) {
  const at = middle(bounds(outline));
  if (outline.length < 5 && contains(outline, at)) return at;
  const heights = [...new Set(outline.map(([, y]) => y))].sort((a, b) => a - b);
  let best = { room: 0, at };
  for (let i = 1; i < heights.length; i++) {
    const y = (heights[i - 1] + heights[i]) / 2;
    const high = heights[i] - heights[i - 1];
    for (const [from, to] of crossings(outline, y)) {
      const room = Math.min(to - from, 3 * high) * Math.min(high, to - from);
      if (room > best.room) best = { room, at: [(from + to) / 2, y] };
    }
  }
  return best.at;
}

/** The spans of an outline at one height, left to right. */
function crossings(outline, y) {
  const xs = outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length];
    return (a[1] > y) === (b[1] > y) ? [] : [a[0] + (b[0] - a[0]) * (y - a[1]) / (b[1] - a[1])];
  }).sort((a, b) => a - b);
  return Array.from({ length: Math.floor(xs.length / 2) }, (_, i) => [xs[2 * i], xs[2 * i + 1]]);
}
