import { boxOf } from './group.js';
import { bedsOf, freeId } from './plan.js';
import { ownBed } from './commands.js';

/** Beds that are copied from one place and put down in another, in this garden or the next. */

const FORMAT = 'lapyard beds 1';

/** @returns {string} beds as text, for the clipboard */
export function clipOf(plan, ids) {
  const own = ids.reduce((now, id) => ownBed(id)(now), plan);
  const beds = ids.map(id => ({ asIs: plan.beds.find(bed => String(bed.id) === id), own: own.beds.find(bed => String(bed.id) === id) }));
  return JSON.stringify({ format: FORMAT, beds });
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

/** Puts copied beds down, moved by so much; a bed follows its type where the garden has it. */
export const pasteBeds = (clip, dx, dy) => plan => clip.beds.reduce((now, { asIs, own }) => {
  const has = asIs.type && (plan.types ?? []).some(type => type.id === asIs.type);
  const { id: _id, name: _name, ...bed } = has || !asIs.type ? asIs : own;
  const [x, y] = bed.at ?? [0, 0];
  const beds = now.beds ?? [];
  return { ...now, beds: [...beds, { ...bed, id: freeId(beds.map(one => one.id)), at: [Math.round((x + dx) * 10) / 10, Math.round((y + dy) * 10) / 10] }] };
}, plan);

/** The box round copied beds where they were, by laying them out in a garden of their own. */
export function boxOfClip(clip, plan) {
  const laid = pasteBeds(clip, 0, 0)({ ...plan, beds: [] });
  return boxOf(laid, bedsOf(laid).map(bed => bed.id));
}
