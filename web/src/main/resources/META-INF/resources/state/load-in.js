import { given } from './fields.js';

/** The way goods come in, as the document holds it. */

export const USUAL_WAY = { barrow: 60 };

export const wayInOf = plan => plan.loadIn ?? {};

/**
 * Sets fields of the way in, or of a part of it; undefined takes one out, and a passage without a width goes whole.
 *
 * @param {'vehicle' | 'passage' | null} part
 */
export function setWayIn(part, fields) {
  return plan => {
    const way = wayInOf(plan);
    if (!part) return { ...plan, loadIn: given({ ...way, ...fields }) };
    const changed = given({ ...way[part], ...fields });
    const gone = part === 'passage' ? changed.width === undefined : !Object.keys(changed).length;
    return { ...plan, loadIn: given({ ...way, [part]: gone ? undefined : changed }) };
  };
}
