import { saying } from './fields.js';

/** What a garden lets a search change: sizes that may give, and what its yard is laid out for. Each a function plan => newPlan. */

const without = (object, keys) => Object.fromEntries(Object.entries(object).filter(([key]) => !keys.includes(key)));

/** Sizes in feet change by whole half inches unless the garden says another step. */
const HALF_INCH_MM = 12.7;

/** By how much every bed may become smaller and larger, mm. @param {'width'|'depth'} side @param {[number, number]} range least and most */
export const letGive = (side, [least, most]) => plan => {
  const rest = without(plan.give ?? {}, [side]);
  const step = plan.units === 'imperial' && rest.step === undefined ? { step: HALF_INCH_MM } : {};
  return saying(plan, 'give', least === 0 && most === 0 ? rest : { ...rest, [side]: [Math.min(0, least), Math.max(0, most)], ...step });
};

/** @returns {[number, number]} */
export const givesOf = (plan, side) => plan.give?.[side] ?? [0, 0];

/** Whether what lies in one line, or stands at equal gaps, stays so. @param {'inLine'|'equalGaps'} what */
export const keepAlike = (what, keep) => plan => saying(plan, 'give', keep ? without(plan.give ?? {}, [what]) : { ...plan.give, [what]: false });

/** Whether a bed may give; one that may not says so itself. */
export const letBedGive = (id, may) => plan => ({
  ...plan, beds: plan.beds.map(bed => (bed.id !== id ? bed : may ? without(bed, ['give']) : { ...bed, give: false })),
});

export const pin = (id, pinned) => plan => {
  const others = (plan.layOut?.pinned ?? []).filter(one => one !== id);
  const all = pinned ? [...others, id] : others;
  return saying(plan, 'layOut', { ...without(plan.layOut ?? {}, ['pinned']), ...(all.length ? { pinned: all } : {}) });
};

/** A width for paths or a margin along the edge; 0 goes back to the usual. @param {'path'|'margin'} field */
export const layOutWith = (field, mm) => plan =>
  saying(plan, 'layOut', { ...without(plan.layOut ?? {}, [field]), ...(mm > 0 ? { [field]: mm } : {}) });

const USUAL_RANK = ['beds', 'area', 'sun', 'cost'];

/** What counts most; the others follow as they did. */
export const rankFirst = what => plan => {
  const rank = [what, ...(plan.layOut?.rank ?? USUAL_RANK).filter(one => one !== what)];
  return saying(plan, 'layOut', { ...without(plan.layOut ?? {}, ['rank']), ...(rank.join() === USUAL_RANK.join() ? {} : { rank }) });
};

/** How many of a type are wanted, `null` for no number; without both it is not asked for. */
export const wish = (type, least, most) => plan => {
  const beds = (plan.layOut?.beds ?? []).filter(one => one.type !== type);
  const wanted = least === null && most === null ? beds
    : [...beds, { type, ...(least ? { least } : {}), ...(most === null ? {} : { most: Math.max(most, least ?? 0) }) }];
  return saying(plan, 'layOut', { ...without(plan.layOut ?? {}, ['beds']), ...(wanted.length ? { beds: wanted } : {}) });
};

export const wishOf = (plan, type) => (plan.layOut?.beds ?? []).find(one => one.type === type) ?? null;
