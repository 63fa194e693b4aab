import { toScreen } from '../../geometry/view.js';
import { s } from '../make.js';

/** Breadth of a tape on the screen, and the least room between two of its figures. */
const BROAD = 17;
const LEAST = 58;

/** Room a figure takes along its tape. */
const ROOM = 34;

/** Two tapes laid out: one along the house wall, one away from it. Figures are metres or feet. */
export function drawnTapes(view, frame, box, units) {
  const unit = units === 'imperial' ? 304.8 : 1000;
  const step = stepOf(view.k * unit) * unit;
  const [left, house] = toScreen(view, [box.left, 0]);
  const y = Math.min(Math.max(house, frame.top) + 2, frame.top + frame.height + 4);
  const x = Math.max(left - BROAD - 6, frame.left - BROAD - 6);
  return [along(view, box, step, unit, y, units), away(view, box, step, unit, x, units)];
}

function stepOf(pixels) {
  for (const step of [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100]) if (step * pixels >= LEAST) return step;
  return 200;
}

function along(view, box, step, unit, y, units) {
  const marks = [];
  const [from] = toScreen(view, [box.left, 0]);
  const [to] = toScreen(view, [box.right, 0]);
  for (let mm = Math.ceil(box.left / step) * step; mm <= box.right + 0.1; mm += step) {
    const [x] = toScreen(view, [mm, 0]);
    marks.push(s('path', { d: `M${x} ${y}v${BROAD}` }));
    if (x + ROOM < to) marks.push(s('text', { x: x + 3, y: y + 12.5, text: figure(mm, unit, units) }));
  }
  return s('g.tape', {}, s('rect', { x: from, y, width: Math.max(to - from, 0), height: BROAD }), ...marks);
}

function away(view, box, step, unit, x, units) {
  const marks = [];
  const [, bottom] = toScreen(view, [0, Math.max(box.front, 0)]);
  const [, top] = toScreen(view, [0, box.back]);
  for (let mm = Math.ceil(Math.max(box.front, 0) / step) * step; mm <= box.back + 0.1; mm += step) {
    if (mm === 0) continue;
    const [, y] = toScreen(view, [0, mm]);
    marks.push(s('path', { d: `M${x} ${y}h${BROAD}` }));
    if (y - ROOM > top) marks.push(s('text', { transform: `translate(${x + 12.5} ${y - 3}) rotate(-90)`, text: figure(mm, unit, units) }));
  }
  return s('g.tape', {}, s('rect', { x, y: top, width: BROAD, height: Math.max(bottom - top, 0) }), ...marks);
}

const figure = (mm, unit, units) => `${Math.round(mm / unit * 10) / 10}${units === 'imperial' ? "'" : ' m'}`;

/** How long a scale bar is at most, pixels. */
const LONGEST_BAR = 110;

/** A bar of a round length in the corner, with that length. */
export function drawnScale({ k }, frame, units) {
  const unit = units === 'imperial' ? 304.8 : 1000;
  const length = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200].filter(one => one * unit * k <= LONGEST_BAR).at(-1) ?? 0.1;
  const wide = length * unit * k;
  const x = frame.left + frame.width - wide;
  const y = frame.top + frame.height + 30;
  return s('g.scale', {}, s('path', { d: `M${x} ${y - 5}V${y}H${x + wide}V${y - 5}` }),
    s('text', { x: x + wide / 2, y: y - 5, text: units === 'imperial' ? `${length}'` : length < 1 ? `${length * 1000} mm` : `${length} m` }));
}
