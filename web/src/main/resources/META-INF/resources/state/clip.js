import { boxOf } from './group.js';
import { bedsOf, freeCode } from './plan.js';
import { ownBed } from './commands.js';

/** Beds that are copied from one place and put down in another, in this garden or the next. */

const FORMAT = 'lapyard beds 1';

/** @param {string} [cutFrom] the garden that they were cut from @returns {string} beds as text, for the clipboard */
export function clipOf(plan, ids, cutFrom) {
  const own = ids.reduce((now, id) => ownBed(id)(now), plan);
  const beds = ids.map(id => ({ asIs: plan.beds.find(bed => String(bed.id) === id), own: own.beds.find(bed => String(bed.id) === id) }));
  return JSON.stringify({ format: FORMAT, beds, cutFrom });
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

/**
 * Puts copied beds down, moved by so much; a bed follows its type where the garden has it. What was cut from this garden is carried: it
 * keeps its code, by which it is ticked and its pieces are marked, and its name.
 */
export const pasteBeds = (clip, dx, dy, garden) => plan => clip.beds.reduce((now, { asIs, own }) => {
  const has = asIs.type && (plan.types ?? []).some(type => type.id === asIs.type);
  const { id, name, ...bed } = has || !asIs.type ? asIs : own;
  const [x, y] = bed.at ?? [0, 0];
  const beds = now.beds ?? [];
  const carried = clip.cutFrom && clip.cutFrom === garden && beds.every(one => String(one.id) !== String(id));
  const called = carried ? { id, ...(name ? { name } : {}) } : { id: freeCode(now) };
  return { ...now, beds: [...beds, { ...bed, ...called, at: [Math.round((x + dx) * 10) / 10, Math.round((y + dy) * 10) / 10] }] };
}, plan);

/** The box round copied beds where they were, by laying them out in a garden of their own. */
export function boxOfClip(clip, plan) {
  const laid = pasteBeds(clip, 0, 0)({ ...plan, beds: [] });
  return boxOf(laid, bedsOf(laid).map(bed => bed.id));
}
