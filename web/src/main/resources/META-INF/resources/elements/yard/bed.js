import { bounds, distance, inset, placePoint, placed, wallLetter } from '../../geometry/outline.js';
import { insidePoint } from '../../geometry/inside.js';
import { shown } from '../../geometry/length.js';
import { s } from '../make.js';
import { d, label, upright } from './ground.js';

/**
 * @param {import('../../state/plan.js').LaidBed} bed
 * @param {number[][][]} top timbers of its top course
 * @returns {SVGElement[]} the bed as one looks down on it
 */
export function drawnBed(bed, top, units) {
  const inner = placed(inset(bed.own, bed.section.thickness), bed.placement);
  return [
    s('path.timber', { d: d(bed.outline) }),
    s('path.soil', { d: d(inner) }),
    s('path', { d: d(inner), fill: 'url(#hatch-soil)' }),
    ...top.map(timber => s('path.joint', { d: d(placed(timber, bed.placement)) })),
    s('path.face', { d: d(bed.outline) }),
    ...bedLabels(bed, units),
  ];
}

/** A plain bed that reaches further from the house than along it carries its words along its length. */
export function standsUpright(bed) {
  const box = bounds(bed.outline);
  return bed.outline.length === 4 && box.back - box.front > 1.2 * (box.right - box.left);
}

function bedLabels(bed, units) {
  const own = bounds(bed.own);
  const at = insidePoint(bed.outline);
  const angle = standsUpright(bed) ? -90 : 0;
  return [
    label(at, bed.id, 'code'),
    label(at, `${shown(own.right - own.left, units)} × ${shown(own.back - own.front, units)} · ${bed.courses}`, 'size', angle),
  ];
}

const lying = ({ lies }, bed) => placed(lies, bed.placement);

/** One course alone: its timbers with lengths, a bar across each run-past end, a triangle to the seen face. */
export function drawnRing(bed, part, course, units) {
  const inner = placed(inset(bed.own, bed.section.thickness), bed.placement);
  const pieces = (part?.pieces ?? []).filter(piece => piece.course === course && piece.lies);
  return [
    s('path.lifted-soil', { d: d(inner) }),
    ...pieces.map(piece => s('path.timber.lifted', { d: d(lying(piece, bed)) })),
    ...(course === 1 ? (part?.notches ?? []).map(notch => drawnNotch(notch, bed)) : []),
    ...(part?.seams ?? []).filter(seam => seam.course === course).map(seam => drawnSeam(seam, bed)),
    ...pieces.flatMap(piece => marksOf(piece, bed, units)),
    label(insidePoint(bed.outline), `${bed.id}, course ${course}`, 'code lifted'),
  ];
}

/** From a place along a wall, counted from its outer start corner, and in thicknesses into the bed, to the yard; null for a wall that is not there. */
function onWall(bed, wall) {
  const side = bed.own.findIndex((_, i) => wallLetter(i) === wall);
  if (side < 0) return null;
  const [a, b] = [bed.own[side], bed.own[(side + 1) % bed.own.length]];
  const length = distance(a, b);
  const [dx, dy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const t = bed.section.thickness;
  return (along, deep) => placePoint([a[0] + dx * along - dy * deep * t, a[1] + dy * along + dx * deep * t], bed.placement);
}

/** A wave across the timber where a drain notch is cut under it. */
function drawnNotch({ wall, at }, bed) {
  const point = onWall(bed, wall);
  if (!point) return s('g');
  const aside = bed.section.thickness * 0.18;
  return s('path.notch', { d: d([0, 0.25, 0.5, 0.75, 1].map((deep, i) => point(at + (i % 2 ? aside : -aside), deep)), false) });
}

/** A bar right across the wall where two parts meet, with a foot at each end. */
function drawnSeam({ wall, at }, bed) {
  const point = onWall(bed, wall);
  if (!point) return s('g');
  const half = bed.section.thickness / 2;
  return s('path.seam', { d: d([point(at - half, 1.45), point(at + half, 1.45)], false) + d([point(at, -0.45), point(at, 1.45)], false)
    + d([point(at - half, -0.45), point(at + half, -0.45)], false) });
}

function marksOf(piece, bed, units) {
  const side = bed.own.findIndex((_, i) => wallLetter(i) === piece.wall);
  if (side < 0) return [];
  const [a, b] = [bed.own[side], bed.own[(side + 1) % bed.own.length]];
  const wall = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const along = [(b[0] - a[0]) / wall, (b[1] - a[1]) / wall];
  const outward = [along[1], -along[0]];
  const centre = [0, 1].map(axis => piece.lies.reduce((sum, corner) => sum + corner[axis], 0) / piece.lies.length);
  const half = piece.short / 2;
  const thick = bed.section.thickness;
  const at = (far, out) => placePoint([centre[0] + along[0] * far + outward[0] * out, centre[1] + along[1] * far + outward[1] * out], bed.placement);
  const bar = sign => {
    const inside = sign * (half - thick * 0.3);
    return s('path.run-past', { d: d([at(inside, -thick / 2), at(inside, thick / 2)], false) });
  };
  const [from, to] = [at(-half, 0), at(half, 0)];
  return [
    ['start', 'both'].includes(piece.runsPast) ? bar(-1) : null,
    ['end', 'both'].includes(piece.runsPast) ? bar(1) : null,
    piece.seen ? s('path.seen-face', { d: d([at(-half * 0.55 - thick * 0.2, 0), at(-half * 0.55 + thick * 0.2, 0), at(-half * 0.55, thick * 0.38)]) }) : null,
    label(at(0, 0), `${piece.wall}${piece.part ?? ''} ${shown(piece.length, units)}`, 'length', upright(from, to)),
  ].filter(Boolean);
}

/** Everything on which the drawing of a bed depends: drawn again only when it changes. @param {object | null} part of the job sheet, for a course that is lifted */
export function looksOf(bed, top, part, course, units) {
  const lifted = course === null ? null : part?.pieces?.filter(piece => piece.course === course).map(({ mark, length, runsPast }) => [mark, length, runsPast]);
  return JSON.stringify([bed.id, bed.outline, bed.section, bed.courses, course, units, top, lifted]);
}

/** How a bed is told to those who hear the page. */
export function toldBed(bed, units) {
  const own = bounds(bed.own);
  const box = bounds(bed.outline);
  const say = mm => shown(Math.round(mm * 10) / 10, units);
  return `Bed ${bed.id}${bed.name ? `, ${bed.name}` : ''}, ${say(own.right - own.left)} by ${say(own.back - own.front)}, `
    + `${bed.courses} courses, ${say(box.left)} along the house, ${say(box.front)} away from it`
    + `${bed.placement.turn ? `, turned ${bed.placement.turn} degrees` : ''}${bed.placement.mirror ? ', mirrored' : ''}, stage ${bed.stage}`;
}
