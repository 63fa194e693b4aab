import { given, isNothing, saying } from './fields.js';
import { readDay } from './ground-forms.js';

/** What a builder offers a client besides the goods. Changes are functions plan => newPlan; undefined takes a field out. */

export const quoteOf = plan => plan.quote ?? {};

export const setQuote = fields => plan => saying(plan, 'quote', given({ ...quoteOf(plan), ...fields }, isNothing));

export const addWork = work => plan => setQuote({ labour: [...(quoteOf(plan).labour ?? []), work] })(plan);

export const setWork = (index, fields) => plan => {
  const labour = quoteOf(plan).labour ?? [];
  return labour[index] ? setQuote({ labour: labour.toSpliced(index, 1, given({ ...labour[index], ...fields }, isNothing)) })(plan) : plan;
};

export const removeWork = index => plan => {
  const labour = quoteOf(plan).labour ?? [];
  return labour[index] ? setQuote({ labour: labour.toSpliced(index, 1) })(plan) : plan;
};

/** @returns {{value: string[] | undefined} | {error: string}} one exclusion a line */
export function readExclusions(text) {
  const lines = text.split('\n').map(line => line.trim()).filter(Boolean);
  if (lines.length > 100) return { error: `${lines.length - 100} lines too many: 100 at most.` };
  const long = lines.find(line => line.length > 500);
  if (long) return { error: `A line is ${long.length - 500} letters too long: 500 at most.` };
  return { value: lines.length ? lines : undefined };
}

/** @param {string} [over] what is said of a number above the most, after it @returns {(text: string) => {value: number | undefined} | {error: string}} */
export const percent = (most, of, over) => text => {
  const clean = text.trim().replace(/\s*%$/, '').replace(',', '.');
  if (!clean) return { value: undefined };
  const value = Number(clean);
  if (over && value > most) return { error: `${value} % ${over}` };
  return value >= 0 && value <= most ? { value } : { error: `A number from 0 to ${most}, percent ${of}.` };
};

/** Of the selling price; nothing is 0. */
export const readMargin = percent(99.9, 'of the selling price', 'leaves nothing for the cost. 99.9 or less, of the selling price.');

/** Tax that is added to the price. */
export const readTax = percent(100, 'added to the price');

/** A day, or none. @returns {{value: string | undefined} | {error: string}} */
export const readUntil = text => (text.trim() ? readDay(text) : { value: undefined });
