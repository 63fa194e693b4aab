import { bounds, middle, widened } from '../../geometry/outline.js';
import { swept } from '../../geometry/gate.js';
import { shown } from '../../geometry/length.js';
import { USUAL, unitsOf, yardOf } from '../../state/plan.js';
import { s } from '../make.js';
import { SURFACES } from './patterns.js';

/** The world's coordinates on paper: the yard's y runs up, a drawing's runs down. */
export const d = (outline, close = true) =>
  `M${outline.map(([x, y]) => `${round(x)} ${round(-y)}`).join('L')}${close ? 'Z' : ''}`;

const round = value => Math.round(value * 10) / 10;

/** How far along its longest leg a path carries its name: off the middle, where paths like to cross. */
const NAMED_AT = 0.3;

/** Points of a circle's outline. */
const ROUND = 32;

/** The yard, its surfaces and paths. @returns {SVGElement[]} from the ground up */
export function drawnGround(plan) {
  const yard = yardOf(plan);
  return [
    yard ? s(`path.yard${plan.ground?.picture && !plan.ground.picture.hidden ? '.over-picture' : ''}`, { d: d(yard) }) : null,
    ...(plan.ground?.surfaces ?? []).filter(surface => surface.outline?.length > 2).map(drawnSurface),
    ...drawnPaths(plan),
    yard ? s('path.fence', { d: d(yard) }) : null,
    plan.ground?.baseline ? s('path.baseline', { d: d([plan.ground.baseline.from, plan.ground.baseline.to], false) }) : null,
  ].filter(Boolean);
}

function drawnSurface({ kind, outline }) {
  const hatch = SURFACES.has(kind) ? kind : 'concrete';
  return s('g', { class: `surface ${hatch}` },
    s('path.base', { d: d(outline) }),
    s('path', { d: d(outline), fill: `url(#hatch-${hatch})` }),
    label([bounds(outline).left, bounds(outline).back], kind, 'small corner'));
}

/** Edges first, then the ground over them, so that paths that cross join into one. */
function drawnPaths(plan) {
  const paths = (plan.paths ?? []).filter(path => path.line?.length > 1);
  const shapes = paths.map(path => d(widened(path.line, path.width ?? USUAL.pathWidth)));
  return [
    ...shapes.map(shape => s('path.path-edge', { d: shape })),
    ...shapes.map((shape, i) => s('path.path', { d: shape, 'data-thing': `paths ${plan.paths.indexOf(paths[i])}` })),
    ...shapes.map(shape => s('path.path-hatch', { d: shape, fill: 'url(#hatch-path)' })),
    ...paths.map(path => pathLabel(path, unitsOf(plan))),
  ];
}

function pathLabel(path, units) {
  let longest = 0;
  let side = [path.line[0], path.line[1]];
  for (let i = 1; i < path.line.length; i++) {
    const [a, b] = [path.line[i - 1], path.line[i]];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length > longest) [longest, side] = [length, [a, b]];
  }
  const [a, b] = side;
  const at = [a[0] + (b[0] - a[0]) * NAMED_AT, a[1] + (b[1] - a[1]) * NAMED_AT];
  return label(at, `${path.name ?? path.id ?? 'path'} · ${shown(path.width ?? USUAL.pathWidth, units)} wide`, 'small path-name', upright(a, b));
}

/** Degrees on paper along a-b such that text is never upside down. */
export function upright(a, b) {
  const angle = -Math.atan2(b[1] - a[1], b[0] - a[0]) * 180 / Math.PI;
  if (angle > 90.01) return angle - 180;
  return angle < -89.99 ? angle + 180 : angle;
}

/** Text in the yard that keeps its size on the screen. */
export function label([x, y], text, kind, angle = 0) {
  const turn = angle ? ` rotate(${round(angle)})` : '';
  return s('text', { class: `label ${kind}`, transform: `translate(${round(x)} ${round(-y)})${turn}`, text });
}

/**
 * Keep-clear lies over the beds, so that what stands on it is seen to.
 *
 * @param {Object<string, number>} usual clearances by kind, as the job sheet tells them
 * @returns {SVGElement[]}
 */
export function drawnKeepClear(plan, usual = {}) {
  return (plan.ground?.keepClear ?? []).map((keep, i) => drawnOne(keep, i, plan, usual)).filter(Boolean);
}

function drawnOne(keep, i, plan, usual) {
  const clearance = keep.clearance ?? usual[keep.kind ?? 'other'] ?? 0;
  const shapes = [];
  let at;
  if (keep.hinge) {
    at = keep.hinge;
    shapes.push(s('path.clear', { d: d(swept(keep, yardOf(plan))), fill: 'url(#hatch-clear)' }));
  } else {
    const points = keep.outline ?? keep.line ?? keep.shape ?? (keep.at ? [keep.at] : []);
    if (!points.length) return null;
    at = middle(bounds(points));
    const closed = points.length > 2 && !keep.line;
    if (clearance) shapes.push(s('path.clearance', { d: d(points.length > 1 ? points : [at, at], closed), 'stroke-width': 2 * clearance }));
    if (points.length > 1) shapes.push(s('path.clear', { d: d(points, closed), fill: closed ? 'url(#hatch-clear)' : 'none' }));
    else shapes.push(s('path.clear', { d: d(circle(points[0], 120)), fill: 'url(#hatch-clear)' }));
  }
  return s('g.keep-clear', { 'data-thing': `ground keepClear ${i}` }, ...shapes, label(at, keep.kind ?? 'keep clear', 'small'));
}

function circle([x, y], radius) {
  return Array.from({ length: ROUND }, (_, i) => {
    const angle = i * 2 * Math.PI / ROUND;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
}

