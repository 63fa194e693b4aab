import { bounds, distance, middle, wallLetter, widened } from '../../geometry/outline.js';
import { wallLengths } from '../../geometry/shapes.js';
import { toScreen } from '../../geometry/view.js';
import { s } from '../make.js';

/** What lies over the yard while something is dragged or drawn, in pixels of the screen. */

const d = (view, points, close) => `M${points.map(point => toScreen(view, point).map(value => Math.round(value * 10) / 10).join(' ')).join('L')}${close ? 'Z' : ''}`;

/** Words on a ground of their own, in the middle of a stretch. */
export function told([x, y], text) {
  const wide = text.length * 7.6 + 12;
  return [
    s('rect.gap-back', { x: x - wide / 2, y: y - 10, width: wide, height: 20, rx: 3 }),
    s('text.gap-text', { x, y: y + 4.5, text }),
  ];
}

const half = (view, a, b) => toScreen(view, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);

/** Distances to the neighbours while beds are carried. */
export function drawnGaps(view, gaps, say) {
  return gaps.filter(gap => gap.mm > 0.05).flatMap(({ from, to, mm }) =>
    [s('path.gap', { d: d(view, [from, to], false) }), ...told(half(view, from, to), say(mm))]);
}

/** A bed's new shape while a wall is dragged, with the lengths of the walls that change, or with what is said of it. */
export function drawnShape(view, { own, outline, side, said }, say) {
  if (said) return [s('path.new-shape', { d: d(view, outline, true) }), ...told(toScreen(view, middle(bounds(outline))), said)];
  const lengths = wallLengths(own);
  const beside = [(side + own.length - 1) % own.length, side, (side + 1) % own.length];
  return [
    s('path.new-shape', { d: d(view, outline, true) }),
    ...beside.flatMap(i => told(half(view, outline[i], outline[(i + 1) % outline.length]), `${wallLetter(i)} ${say(lengths[i])}`)),
  ];
}

export function drawnBand({ from, to }) {
  return [s('rect.band', { x: Math.min(from[0], to[0]), y: Math.min(from[1], to[1]), width: Math.abs(to[0] - from[0]), height: Math.abs(to[1] - from[1]) })];
}

/** Points put so far and the one that would come next. @param {import('../../state/drawing.js').Drawing} drawing */
export function drawnSketch(view, drawing, say) {
  const points = drawing.shown;
  const wide = drawing.width && points.length > 1 ? [s('path.sketch-width', { d: d(view, widened(points, drawing.width), true) })] : [];
  return [...wide, ...drawnLine(view, points, drawing.as === 'outline' && points.length > 2, say, { next: drawing.points.length, sides: points.length - 1 })];
}

/** A line or outline of the ground where it would lie, with the lengths of its sides. */
export function drawnLine(view, list, closed, say, { next = -1, sides = closed ? list.length : list.length - 1 } = {}) {
  return [
    ...(list.length > 1 ? [s(`path.sketch${closed ? '.closed' : ''}`, { d: d(view, list, closed) })] : []),
    ...list.map((point, i) => {
      const [x, y] = toScreen(view, point);
      return s(`circle.sketch-point${i === next ? '.next' : ''}`, { cx: x, cy: y, r: 5 });
    }),
    ...list.slice(0, Math.max(0, sides)).flatMap((a, i) => {
      const b = list[(i + 1) % list.length];
      return told(half(view, a, b), say(distance(a, b)));
    }),
  ];
}

/** Pixels from a bed to its turn handle, and how large a handle is; a finger's press is helped by a wider ring that is not seen. */
const TURN_AWAY = 26;
const HANDLE = 7;
const RING = 20;

const disc = (x, y, k, data) => s('g.round-grip', data, s('circle.ring', { cx: x, cy: -y, r: RING / k }), s('circle.knob', { cx: x, cy: -y, r: HANDLE / k }));

/** The handle behind the bed by which it is turned. */
export function turnGrip(bed, { k }) {
  const box = bounds(bed.outline);
  const x = (box.left + box.right) / 2;
  const y = box.back + TURN_AWAY / k;
  return [s('path.turn-arm', { d: `M${x} ${-box.back}V${-y}` }), disc(x, y, k, { 'data-turn': bed.id, class: 'round-grip turn' })];
}

/** Handles on the points of an outline or a line. @param {(string|number)[]} at where the list stands in the document */
export const pointGrips = (list, at, { k }) => list.map(([x, y], i) => disc(x, y, k, { 'data-point': [...at, i].join(' '), class: 'round-grip' }));

/** Broad strokes along the chosen bed's walls, by which they are dragged. */
export function wallGrips(bed) {
  return bed.outline.map((a, i) => {
    const b = bed.outline[(i + 1) % bed.outline.length];
    const upright = Math.abs(b[0] - a[0]) < Math.abs(b[1] - a[1]);
    return s(`path.grip.${upright ? 'sideways' : 'updown'}`, { 'data-wall': i, d: `M${a[0]} ${-a[1]}L${b[0]} ${-b[1]}` });
  });
}

/** Handles half way along the walls, so that one sees they can be dragged. */
export function gripHandles(view, bed) {
  return bed.outline.map((a, i) => {
    const b = bed.outline[(i + 1) % bed.outline.length];
    const [x, y] = half(view, a, b);
    const [p, q] = [toScreen(view, a), toScreen(view, b)];
    if (Math.hypot(q[0] - p[0], q[1] - p[1]) < 34) return null;
    const angle = Math.atan2(q[1] - p[1], q[0] - p[0]) * 180 / Math.PI;
    return s('rect.handle', { x: -9, y: -3.5, width: 18, height: 7, rx: 3.5, transform: `translate(${x} ${y}) rotate(${angle})` });
  }).filter(Boolean);
}


/** Beds and paths where a proposal would put them; a bed that stays is there under its own label. @param {{beds: {id, outline}[], paths: Point[][]}} proposal */
export function drawnGhosts(view, { beds, paths }) {
  return [
    ...paths.map(outline => s('path.ghost-path', { d: d(view, outline, true) })),
    ...beds.flatMap(({ id, outline, pinned }) => [
      s(`path.ghost${pinned ? '.pinned' : ''}`, { d: d(view, outline, true) }),
      ...(pinned ? [] : told(toScreen(view, middle(bounds(outline))), id)),
    ]),
  ];
}
