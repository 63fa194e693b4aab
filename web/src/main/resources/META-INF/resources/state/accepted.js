import { given } from './fields.js';

/** Snags that may stay, each by the place it is shown with and with a reason. Changes are functions plan => newPlan. */

const acceptedOf = plan => plan.accepted ?? [];

export const isAccepted = (plan, where) => acceptedOf(plan).some(one => one.where === where);

export const acceptSnag = (where, reason) => plan => ({ ...plan, accepted: [...acceptedOf(plan).filter(one => one.where !== where), { where, reason }] });

export const noLongerAccept = where => plan => {
  const left = acceptedOf(plan).filter(one => one.where !== where);
  return left.length === acceptedOf(plan).length ? plan : given({ ...plan, accepted: left.length ? left : undefined });
};

/** @returns {{value: string} | {error: string}} */
export function readReason(text) {
  const clean = text.trim();
  if (!clean) return { error: 'Nothing here yet. Write who takes it on, and why.' };
  if (clean.length > 1000) return { error: `${clean.length - 1000} letters too many: 1000 at most.` };
  return { value: clean };
}

/** All that is in the way and the first so many notes, in their order. @param {{weight: string}[]} snags */
export function listed(snags, notes) {
  let left = notes;
  return snags.filter(snag => snag.weight !== 'NOTE' || left-- > 0);
}
