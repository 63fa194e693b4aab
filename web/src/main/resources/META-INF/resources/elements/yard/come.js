import { toYard } from '../../geometry/view.js';

/** How far a pointer has come, yard millimetres. */
export function come(view, from, to) {
  const [x, y] = toYard(view, from);
  const [nowX, nowY] = toYard(view, to);
  return [nowX - x, nowY - y];
}
