/** What a builder offers a client besides the goods. Changes are functions plan => newPlan; undefined takes a field out. */

export const quoteOf = plan => plan.quote ?? {};

const clean = object => Object.fromEntries(Object.entries(object).filter(([, value]) => value !== undefined && !(Array.isArray(value) && !value.length)));

export const setQuote = fields => plan => {
  const quote = clean({ ...quoteOf(plan), ...fields });
  const { quote: _gone, ...rest } = plan;
  return Object.keys(quote).length ? { ...plan, quote } : rest;
};

export const addWork = work => plan => setQuote({ labour: [...(quoteOf(plan).labour ?? []), work] })(plan);

export const setWork = (index, fields) => plan => {
  const labour = quoteOf(plan).labour ?? [];
  return labour[index] ? setQuote({ labour: labour.toSpliced(index, 1, clean({ ...labour[index], ...fields })) })(plan) : plan;
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

/** @returns {{value: number | undefined} | {error: string}} percent of the selling price; nothing is 0 */
export function readMargin(text) {
  const clean = text.trim().replace(/\s*%$/, '').replace(',', '.');
  if (!clean) return { value: undefined };
  const value = Number(clean);
  if (!Number.isFinite(value) || value < 0) return { error: 'A number from 0 to 99.9, percent of the selling price.' };
  return value > 99.9 ? { error: `${value} % leaves nothing for the cost. 99.9 or less, of the selling price.` } : { value };
}

/** @returns {{value: number | undefined} | {error: string}} percent of tax that is added to the price */
export function readTax(text) {
  const clean = text.trim().replace(/\s*%$/, '').replace(',', '.');
  if (!clean) return { value: undefined };
  const value = Number(clean);
  return Number.isFinite(value) && value >= 0 && value <= 100 ? { value } : { error: 'A number from 0 to 100, percent added to the price.' };
}

/** @returns {{value: string | undefined} | {error: string}} a day as in ISO 8601 */
export function readDay(text) {
  const clean = text.trim();
  if (!clean) return { value: undefined };
  const day = /^\d{4}-\d{2}-\d{2}$/.test(clean) ? new Date(`${clean}T00:00:00Z`) : null;
  return day && !Number.isNaN(day.getTime()) && day.toISOString().startsWith(clean) ? { value: clean } : { error: 'Write the day as 2027-03-31.' };
}
