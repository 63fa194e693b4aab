import { freeCode, given, saying, withOne } from './fields.js';
import { bounds } from '../geometry/outline.js';
import { bedsOf, freeId } from './plan.js';
import { standBed } from './commands.js';

/** Types: beds that are placed many times. Changes are functions plan => newPlan. */

/** What a placement says of itself without differing from its type. */
const PLACING = new Set(['id', 'name', 'type', 'at', 'turn', 'mirror', 'stage', 'weekend']);

const typesOf = plan => plan.types ?? [];

export const typeOf = (plan, id) => typesOf(plan).find(type => type.id === id) ?? null;

/** @returns {{id: string, name: string, type: object, beds: import('./plan.js').LaidBed[], exceptions: {bed: string, keys: string[]}[]}[]} */
export function readTypes(plan) {
  const beds = bedsOf(plan);
  return typesOf(plan).map(type => {
    const ours = beds.filter(bed => bed.type === type.id);
    return { id: type.id, name: type.name ?? '', type, beds: ours, exceptions: ours.map(bed => ({ bed: bed.id, keys: differsAsBuilt(plan, bed.id) })).filter(({ keys }) => keys.length) };
  });
}

/** The words by which a placement differs from its type. @returns {string[]} */
export function exceptionsOf(plan, id) {
  const bed = (plan.beds ?? []).find(one => String(one.id) === id);
  return bed?.type ? Object.keys(bed).filter(key => !PLACING.has(key)) : [];
}

/**
 * What "make it like its type" takes away from the bed: how it is built. Whether food grows in it is the gardener's word
 * about this bed, which no type takes over or away.
 * @returns {string[]}
 */
export const differsAsBuilt = (plan, id) => exceptionsOf(plan, id).filter(key => key !== 'food');

/** The bed becomes the first of a new type: what it says of how it is built moves into the type, but not that it is for food. */
export const makeType = id => plan => {
  const index = (plan.beds ?? []).findIndex(bed => String(bed.id) === id);
  const bed = plan.beds?.[index];
  if (!bed || bed.type) return plan;
  const typeId = freeCode('T', typesOf(plan));
  const kept = Object.entries(bed);
  const type = { id: typeId, ...Object.fromEntries(kept.filter(([key]) => !PLACING.has(key) && key !== 'food')) };
  const placed = { ...Object.fromEntries(kept.filter(([key]) => PLACING.has(key) || key === 'food')), type: typeId };
  return { ...plan, types: [...typesOf(plan), type], beds: plan.beds.toSpliced(index, 1, placed) };
};

/** Sets or, with undefined, takes away fields of a type: all its placements follow, but for what they say themselves. */
export const setType = (id, fields) => plan => withOne(plan, 'types', typesOf(plan).findIndex(type => type.id === id), fields);

/** The placement is built as its type says. */
export const followType = id => plan => {
  const gone = differsAsBuilt(plan, id);
  if (!gone.length) return plan;
  return { ...plan, beds: plan.beds.map(bed => (String(bed.id) === id ? Object.fromEntries(Object.entries(bed).filter(([key]) => !gone.includes(key))) : bed)) };
};

/** Stands one more of a type. */
export const standType = (id, at) => plan => (typeOf(plan, id) ? standBed({ type: id, at })(plan) : plan);

/** A type that nobody follows is taken away; one that is followed stays. */
export const removeType = id => plan =>
  ((plan.beds ?? []).some(bed => bed.type === id) ? plan : { ...plan, types: typesOf(plan).filter(type => type.id !== id) });

/** The garden's own usual. */
export const setDefaults = fields => plan => saying(plan, 'defaults', given({ ...plan.defaults, ...fields }));

/** A type as a bed that lies at the origin, for its outline and size. */
export const typeLaid = (plan, id) => bedsOf({ ...plan, beds: [{ id: freeId([]), type: id, at: [0, 0] }] })[0];

/** @returns {[number, number]} width and depth of an outline */
export function sizeOf(outline) {
  const box = bounds(outline);
  return [box.right - box.left, box.back - box.front];
}
