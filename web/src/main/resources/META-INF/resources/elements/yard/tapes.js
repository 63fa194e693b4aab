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
  const front = Math.max(box.front, 0);
  return [
    tape(marks(box.left, box.right, step, mm => toScreen(view, [mm, 0])[0]), unit, units, {
      line: at => `M${at} ${y}v${BROAD}`, fits: (at, end) => at + ROOM < end, figure: at => ({ x: at + 3, y: y + 12.5 }), box: (from, to) => ({ x: from, y, width: Math.max(to - from, 0), height: BROAD }),
    }),
    tape(marks(front, box.back, step, mm => toScreen(view, [0, mm])[1], mm => mm !== 0), unit, units, {
      line: at => `M${x} ${at}h${BROAD}`, fits: (at, end) => at - ROOM > end, figure: at => ({ transform: `translate(${x + 12.5} ${at - 3}) rotate(-90)` }),
      box: (from, to) => ({ x, y: to, width: BROAD, height: Math.max(from - to, 0) }),
    }),
  ];
}

function stepOf(pixels) {
  for (const step of [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100]) if (step * pixels >= LEAST) return step;
  return 200;
}

/** Where a tape begins, ends and is marked, on the screen. */
const marks = (from, to, step, on, wanted = () => true) => {
  const places = [];
  for (let mm = Math.ceil(from / step) * step; mm <= to + 0.1; mm += step) if (wanted(mm)) places.push({ mm, at: on(mm) });
  return { from: on(from), to: on(to), places };
};

const tape = ({ from, to, places }, unit, units, how) => s('g.tape', {}, s('rect', how.box(from, to)), ...places.flatMap(({ mm, at }) =>
  [s('path', { d: how.line(at) }), how.fits(at, to) ? s('text', { ...how.figure(at), text: figure(mm, unit, units) }) : null].filter(Boolean)));

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
