/**
 * How the yard lies on the screen. A view is `{k, x, y}`: k pixels a millimetre, and the pixel where the yard's
 * origin lies. The yard's y runs up the screen, away from the house.
 * @typedef {{k: number, x: number, y: number}} View
 */

/** Nearest and furthest that one may stand: pixels a millimetre. */
const NEAREST = 2;
const FURTHEST = 0.002;

export const toScreen = ({ k, x, y }, [yardX, yardY]) => [x + yardX * k, y - yardY * k];

export const toYard = ({ k, x, y }, [screenX, screenY]) => [(screenX - x) / k, (y - screenY) / k];

/**
 * The view that shows all of `box` in the middle of a frame on the screen.
 *
 * @param {import('./outline.js').Bounds} box yard millimetres
 * @param {{left: number, top: number, width: number, height: number}} frame pixels
 * @returns {View}
 */
export function fitted(box, frame) {
  const width = Math.max(box.right - box.left, 1);
  const depth = Math.max(box.back - box.front, 1);
  const k = clamp(Math.min(frame.width / width, frame.height / depth));
  return { k, x: frame.left + frame.width / 2 - (box.left + width / 2) * k, y: frame.top + (frame.height + depth * k) / 2 + box.front * k };
}

/** Nearer or further by `factor`, the yard under `point` staying put. */
export function zoomed(view, factor, point) {
  const k = clamp(view.k * factor);
  const [yardX, yardY] = toYard(view, point);
  return { k, x: point[0] - yardX * k, y: point[1] + yardY * k };
}

export const panned = (view, dx, dy) => ({ ...view, x: view.x + dx, y: view.y + dy });

const clamp = k => Math.max(FURTHEST, Math.min(NEAREST, k));
