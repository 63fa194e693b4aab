import { boxOf } from './group.js';
import { bedsOf, freeBedCode, USUAL } from './plan.js';
import { ownBed } from './commands.js';
import { typeOf } from './types.js';

/** Beds that are copied from one place and put down in another, in this garden or the next. */

const FORMAT = 'lapyard beds 1';

/** How beds of a garden are built that say nothing of it. */
const usualOf = ({ defaults }) => ({ section: USUAL.section, courses: USUAL.courses, lap: USUAL.lap, ...defaults });

/** @param {string} [cutFrom] the garden that they were cut from @returns {string} beds as text, for the clipboard */
export function clipOf(plan, ids, cutFrom) {
  const own = ids.reduce((now, id) => ownBed(id)(now), plan);
  const beds = ids.map(id => ({ asIs: plan.beds.find(bed => String(bed.id) === id), own: own.beds.find(bed => String(bed.id) === id) }));
  return JSON.stringify({ format: FORMAT, beds, cutFrom, usual: usualOf(plan) });
}

/** @returns {{beds: object[]} | null} null where the text holds no beds */
export function readClip(text) {
  try {
    const clip = JSON.parse(text);
    return clip?.format === FORMAT && Array.isArray(clip.beds) && clip.beds.length ? clip : null;
  } catch {
    return null;
  }
}

/** A copied bed and its type, where the garden has it; else the type's figures stand in the bed. */
function hereOf({ asIs, own }, plan) {
  const type = asIs.type ? typeOf(plan, asIs.type) : null;
  return [type || !asIs.type ? asIs : own, type];
}

/** How a bed was built by what was usual where it was copied, as far as that is not usual here. @returns {object} its fields */
function asThere(bed, type, { usual = {} }, plan) {
  const here = usualOf(plan);
  const said = { ...type, ...bed };
  return Object.fromEntries(Object.entries(usual).filter(([field, value]) => said[field] === undefined && JSON.stringify(here[field]) !== JSON.stringify(value)));
}

/** Whether a copied bed says more of itself in this garden than where it was copied. */
export const isBuiltOtherwise = (clip, plan) => clip.beds.some(copied => Object.keys(asThere(...hereOf(copied, plan), clip, plan)).length > 0);

/**
 * Puts copied beds down, moved by so much; a bed follows its type where the garden has it. What was cut from this garden is carried: it
 * keeps its code, by which it is ticked and its pieces are marked, and its name.
 */
export const pasteBeds = (clip, dx, dy, garden) => plan => clip.beds.reduce((now, copied) => {
  const [{ id, name, ...bed }, type] = hereOf(copied, plan);
  const [x, y] = bed.at ?? [0, 0];
  const beds = now.beds ?? [];
  const carried = clip.cutFrom && clip.cutFrom === garden && beds.every(one => String(one.id) !== String(id));
  const called = carried ? { id, ...(name ? { name } : {}) } : { id: freeBedCode(now) };
  return { ...now, beds: [...beds, { ...bed, ...asThere(bed, type, clip, plan), ...called, at: [Math.round((x + dx) * 10) / 10, Math.round((y + dy) * 10) / 10] }] };
}, plan);

/** The box round copied beds where they were, by laying them out in a garden of their own. */
export function boxOfClip(clip, plan) {
  const laid = pasteBeds(clip, 0, 0)({ ...plan, beds: [] });
  return boxOf(laid, bedsOf(laid).map(bed => bed.id));
}
