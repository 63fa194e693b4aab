import { bounds, widened } from '../../geometry/outline.js';
import { beginWith } from '../../state/new-garden.js';
import { USUAL, bedsOf, unitsOf, yardOf } from '../../state/plan.js';

/** Pixels within which a face draws a bed to it. */
export const NEAR = 9;

/** What lies round the beds in hand, for resting against and for distances. */
export function around(plan, ids) {
  const thing = (id, outline, more = {}) => ({ id, outline, box: bounds(outline), ...more });
  const beds = bedsOf(plan).filter(bed => !ids.includes(bed.id)).map(bed => thing(bed.id, bed.outline));
  const yard = yardOf(plan);
  const paths = (plan.paths ?? []).filter(path => path.line?.length > 1)
    .map(path => thing(null, widened(path.line, path.width ?? USUAL.pathWidth)));
  return {
    beds,
    yard: yard ? thing(null, yard, { round: true }) : null,
    paths,
    gaps: [...new Set([beginWith(unitsOf(plan)).path, ...(plan.paths ?? []).map(path => path.width).filter(Boolean)])],
  };
}
