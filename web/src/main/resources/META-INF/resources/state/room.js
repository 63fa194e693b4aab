import { freePlace } from '../geometry/free-place.js';
import { swept } from '../geometry/gate.js';
import { widened } from '../geometry/outline.js';
import { beginWith } from './new-garden.js';
import { USUAL, bedsOf, unitsOf, yardOf } from './plan.js';

/** Where there is room for one more bed, by the garden's own standard. */

/** Room to a path, a barrow's wheel, and how new beds are placed, with a spade's room to the yard's edge; millimetres, common practice, no source. */
const TO_PATH = 100;
const HOW = { metric: { edge: 600, step: 250, grid: 1 }, imperial: { edge: 609.6, step: 152.4, grid: 25.4 } };

/** What a new bed keeps clear of. @param {object | null} sheet the job sheet, with the usual clearances and the standard */
export function takenOf(plan, sheet) {
  const { access, usual } = sheet?.ground ?? {};
  const asked = access?.values?.path ?? USUAL.pathWidth;
  const between = asked === USUAL.pathWidth ? beginWith(unitsOf(plan)).path : asked;
  return [
    ...bedsOf(plan).map(bed => ({ outline: bed.outline, clear: between })),
    ...(plan.paths ?? []).filter(path => path.line?.length > 1).map(path => ({ outline: widened(path.line, path.width ?? USUAL.pathWidth), clear: TO_PATH })),
    ...(plan.ground?.keepClear ?? []).flatMap(keep => keptClear(keep, plan, usual?.clearances ?? CLEARANCES)),
  ];
}

/** Until the job sheet is there; common practice, no source. */
const CLEARANCES = { door: 900, tap: 600, tree: 1500, cover: 300, drain: 300, cable: 300, 'air-brick': 300 };

/** Metres a walking person would notice are no matter here: a point is a thing of this size. */
const POINT = 10;

export function keptClear(keep, plan, clearances) {
  if (keep.hinge) return [{ outline: swept(keep, yardOf(plan)), clear: 0 }];
  const clear = keep.clearance ?? clearances[keep.kind ?? 'other'] ?? 0;
  const points = keep.outline ?? keep.line ?? keep.shape ?? (keep.at ? [keep.at] : []);
  if (points.length > 2 && !keep.line) return [{ outline: points, clear }];
  if (points.length > 1) return [{ outline: widened(points, POINT), clear }];
  return points.map(([x, y]) => ({ outline: [[x - POINT, y - POINT], [x + POINT, y - POINT], [x + POINT, y + POINT], [x - POINT, y + POINT]], clear }));
}

/** @returns {{at: [number, number], free: boolean}} for an outline in its own frame */
export const roomFor = (own, plan, sheet) => freePlace(own, takenOf(plan, sheet), yardOf(plan), HOW[unitsOf(plan)]);

/** What is said of it. */
export const saidOfRoom = ({ free }) => (free ? '' : ' There is no free place with the room that the standard asks for: look where it lies.');
