import { sectionName } from './build.js';
import { sumOf } from './changes.js';
import { bedsOf, calledOf, unitsOf } from './plan.js';
import { equal } from './merge.js';
import { counted } from './words.js';

/** What is tried beside a garden, in few words. */

/** So many changes are told one by one. */
const FEW = 2;

/** Keys of the document that are told by a word of their own, the others by theirs. */
const WORDS = { rack: 'boards on hand', catalogue: 'merchants', crew: 'who works when', types: 'types', paths: 'paths', ground: 'ground', saw: 'saw', defaults: 'how beds are usually built', quote: 'quote', name: 'name', tally: 'tally' };

function bedChange(was, is, units) {
  const told = [];
  const courses = is.courses - was.courses;
  if (courses) told.push(`${counted(Math.abs(courses), 'course')} ${courses > 0 ? 'more' : 'less'}`);
  if (is.section.id !== was.section.id) told.push(`timber ${sectionName(is.section.id, units)}`);
  if (!equal(is.own, was.own)) told.push('another size');
  if (is.stage !== was.stage) told.push(`stage ${is.stage}`);
  if (!told.length && !equal(is.placement, was.placement)) told.push('moved');
  return told.length ? told.join(', ') : 'built otherwise';
}

/**
 * @param {object} stands the garden as it stands
 * @param {object} tried
 * @returns {string[]} a phrase for each change, `bed A: 1 course less`, those of beds first
 */
export function changesOf(stands, tried) {
  const before = new Map(bedsOf(stands).map(bed => [bed.id, bed]));
  const told = [];
  for (const bed of bedsOf(tried)) {
    const was = before.get(bed.id);
    before.delete(bed.id);
    if (!was) told.push(`${calledOf(bed)} added`);
    else if (!equal(was, bed)) told.push(`${calledOf(bed)}: ${bedChange(was, bed, unitsOf(tried))}`);
  }
  for (const bed of before.values()) told.push(`${calledOf(bed)} left out`);
  for (const key of new Set([...Object.keys(stands), ...Object.keys(tried)])) {
    if (key !== 'beds' && !equal(stands[key], tried[key]) && !(key === 'types' && told.length)) told.push(`${WORDS[key] ?? key} changed`);
  }
  return told;
}

/** The first few of them as one line. */
export const shortly = told => (told.length > FEW ? `${told.slice(0, FEW).join('; ')} and ${told.length - FEW} more` : told.join('; ')) || 'nothing yet';

/**
 * What the order comes to beside what it was.
 *
 * @param {{total: string, currency: string} | undefined} was
 * @param {{total: string, currency: string} | undefined} is
 * @param {(amount: string, currency: string) => string} money
 * @returns {string} empty where either is unknown
 */
export function dearer(was, is, money) {
  if (!was?.total || !is?.total || was.currency !== is.currency) return '';
  const by = sumOf([is.total, was.total.startsWith('-') ? was.total.slice(1) : `-${was.total}`]);
  if (by === null || Number(by) === 0) return by === null ? '' : 'costs the same';
  return Number(by) > 0 ? `${money(by, is.currency)} more` : `${money(by.slice(1), is.currency)} less`;
}
