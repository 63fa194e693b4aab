import { bounds, middle } from './outline.js';
import { contains } from './distance.js';
import { crossings } from './face.js';

/**
 * A point well inside an outline, where its name can stand: the middle where that is inside, else the middle of the
 * roomiest strip between two corners' heights.
 *
 * @param {import('./outline.js').Point[]} outline
 * @returns {import('./outline.js').Point}
 */
export const insidePoint = outline => insideRoom(outline).at;

/** The same with the room round it, millimetres. @returns {{at: import('./outline.js').Point, wide: number, high: number}} */
export function insideRoom(outline) {
  const box = bounds(outline);
  const at = middle(box);
  const [wide, high] = [box.right - box.left, box.back - box.front];
  if (outline.length < 5 && contains(outline, at)) {
    const square = outline.every(([x, y]) => (x - box.left < 0.5 || box.right - x < 0.5) && (y - box.front < 0.5 || box.back - y < 0.5));
    return { at, wide: square ? wide : wide / 2, high: square ? high : high / 2 };
  }
  const heights = [...new Set(outline.map(([, y]) => y))].sort((a, b) => a - b);
  let best = { room: 0, at, wide: wide / 2, high: high / 2 };
  for (let i = 1; i < heights.length; i++) {
    const y = (heights[i - 1] + heights[i]) / 2;
    const tall = heights[i] - heights[i - 1];
    for (const [from, to] of spans(outline, y)) {
      const room = Math.min(to - from, 3 * tall) * Math.min(tall, to - from);
      if (room > best.room) best = { room, at: [(from + to) / 2, y], wide: to - from, high: tall };
    }
  }
  return best;
}

/** The spans of an outline at one height, left to right. */
function spans(outline, y) {
  const xs = crossings(outline, y);
  return Array.from({ length: Math.floor(xs.length / 2) }, (_, i) => [xs[2 * i], xs[2 * i + 1]]);
}
