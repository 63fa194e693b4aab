/** Where a dragged box comes to rest: on faces, a path's width from them, yard edges, or the grid. */

/**
 * @param {import('./outline.js').Bounds} box as dragged
 * @param {import('./outline.js').Bounds[]} others boxes of the other beds
 * @param {import('./outline.js').Bounds | null} yard
 * @param {{within: number, grid: number, gaps: number[]}} how `within` is how near counts, millimetres;
 *     `gaps` are path widths worth keeping
 * @returns {{dx: number, dy: number, onX: number | null, onY: number | null}} the move that brings it to rest and
 *     the lines (x, y) it then lies on
 */
export function rest(box, others, yard, how) {
  const x = along(box.left, box.right, lines(others, yard, 'left', 'right', how.gaps), how);
  const y = along(box.front, box.back, lines(others, yard, 'front', 'back', how.gaps), how);
  return { dx: x.move, dy: y.move, onX: x.line, onY: y.line };
}

/** Low faces want the box's low side (in line) or its high side (beside it); high faces the other way round. */
function lines(others, yard, low, high, gaps) {
  const wanted = [];
  for (const other of others) {
    wanted.push({ at: other[low], side: 'low' }, { at: other[high], side: 'high' });
    for (const gap of [0, ...gaps]) {
      wanted.push({ at: other[low] - gap, side: 'high' }, { at: other[high] + gap, side: 'low' });
    }
  }
  if (yard) {
    for (const gap of [0, ...gaps]) {
      wanted.push({ at: yard[low] + gap, side: 'low' }, { at: yard[high] - gap, side: 'high' });
    }
  }
  return wanted;
}

function along(low, high, wanted, { within, grid }) {
  let best = null;
  for (const { at, side } of wanted) {
    const move = at - (side === 'low' ? low : high);
    if (Math.abs(move) <= within && (!best || Math.abs(move) < Math.abs(best.move))) best = { move, line: at };
  }
  return best ?? { move: Math.round(low / grid) * grid - low, line: null };
}
