import { equal } from './merge.js';

/** Fields of a document, set and taken out. */

const isGone = value => value === undefined;
/** What a list or a text that says nothing is as well. */
export const isNothing = value => value === undefined || value === '' || (Array.isArray(value) && !value.length);

/** An object without the fields that say nothing. @param {(value: any) => boolean} [gone] */
export const given = (object, gone = isGone) => Object.fromEntries(Object.entries(object).filter(([, value]) => !gone(value)));

/** Sets or, with undefined, takes away fields; the same object where that is no change. */
export const withFields = (object, fields) =>
  (Object.keys(fields).every(key => equal(object[key], fields[key])) ? object : given({ ...object, ...fields }));

/** The same of one of a list of the plan; the same plan where that is no change or no such member is there. */
export function withOne(plan, key, index, fields) {
  const one = plan[key]?.[index];
  const changed = one && withFields(one, fields);
  return changed === one ? plan : { ...plan, [key]: plan[key].toSpliced(index, 1, changed) };
}

/** The plan with an object of its own at a key; one that is empty goes. */
export const saying = (plan, key, object) => given({ ...plan, [key]: Object.keys(object).length ? object : undefined });

/** Says something of the whole garden in a word, which is left out where it is the usual one. */
export const word = (key, usual) => said => plan =>
  ((plan[key] ?? usual) === said ? plan : given({ ...plan, [key]: said === usual ? undefined : said }));

/** The first of P1, P2 ... that none of these has. */
export function freeCode(prefix, holders) {
  const taken = new Set(holders.map(one => one.id));
  let next = 1;
  while (taken.has(`${prefix}${next}`)) next++;
  return `${prefix}${next}`;
}
