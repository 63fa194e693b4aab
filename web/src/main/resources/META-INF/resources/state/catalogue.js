import { shown } from '../geometry/length.js';
import { sectionName } from './build.js';
import { CURRENCIES } from './currencies.js';
import { given, word } from './fields.js';
import { unitsOf } from './plan.js';

/** What is sold, for what: the garden's own list over our examples, as rows, and the commands that change it. */

const LISTS = { sections: 'id', rolls: 'id', packs: 'item' };

/** The list of a kind: an own line stands in for the example of the same name, as the server reads it. */
function lines(plan, examples, list) {
  const key = LISTS[list];
  const own = plan.catalogue?.[list] ?? [];
  const under = plan.catalogue?.examples === false ? [] : examples?.[list] ?? [];
  const names = new Set(own.map(line => line[key]));
  return [...under.filter(line => !names.has(line[key])).map(line => ({ line, example: true })), ...own.map(line => ({ line, example: false }))];
}

/** @returns {string} the pack's name as the slip has it */
const packName = (pack, unit) => pack.name ?? (pack.tonnes ? `${pack.tonnes} t` : `${pack.content ?? 1} ${unit ?? ''}`.trim());

/**
 * Every price there is: `{list, name, index, what, sold, supplier, price, example, length}`. `index` is the place among the
 * stock lengths or packs of the line, null for a roll; `length` is a board's, in mm.
 */
export function priceRows(plan, examples) {
  const rows = [];
  for (const { line, example } of lines(plan, examples, 'sections')) {
    (line.stock ?? []).forEach((stock, index) => rows.push(row('sections', line.id, index, `Timber ${sectionName(line.id, unitsOf(plan))}`, `board of ${shown(stock.length, unitsOf(plan))}`, stock, example, stock.length)));
  }
  for (const { line, example } of lines(plan, examples, 'rolls')) {
    rows.push(row('rolls', line.id, null, line.material ?? 'liner', `a metre of ${shown(line.width, unitsOf(plan))} wide roll`, line, example));
  }
  for (const { line, example } of lines(plan, examples, 'packs')) {
    (line.packs ?? []).forEach((pack, index) => rows.push(row('packs', line.item, index, line.label ?? line.item, packName(pack, line.unit), pack, example)));
  }
  return rows;
}

const row = (list, name, index, what, sold, of, example, length) => ({
  list, name, index, what, sold, supplier: of.supplier ?? '', price: of.price ?? null, example, length,
});

/** The timber there is: `{id, goodFaces, treated, strengthClass, example}`. */
export function timberRows(plan, examples) {
  return lines(plan, examples, 'sections').map(({ line, example }) => ({
    id: line.id, goodFaces: line.goodFaces ?? 1, treated: line.treated ?? false, strengthClass: line.strengthClass ?? 'ungraded', example,
  }));
}

/** Sets what a timber is like; an example's line becomes the garden's own. Fields of undefined are taken out. */
export function setTimber(id, fields, examples) {
  return plan => changedLine(plan, 'sections', id, examples, line => given({ ...line, ...fields }));
}

/** @param {(line: object) => object} change of the line of this name, the garden's own or else the example */
function changedLine(plan, list, name, examples, change) {
  const key = LISTS[list];
  const catalogue = plan.catalogue ?? {};
  const own = catalogue[list] ?? [];
  const there = own.findIndex(line => line[key] === name);
  const line = there >= 0 ? own[there] : (examples?.[list] ?? []).find(one => one[key] === name);
  if (!line) return plan;
  const all = there >= 0 ? own.toSpliced(there, 1, change(line)) : [...own, change(line)];
  return { ...plan, catalogue: { ...catalogue, [list]: all } };
}

/** Sets one price; an example's line becomes the garden's own. @param {number | null} price null where it is not priced */
export function setPrice({ list, name, index }, price, examples) {
  const priced = of => given({ ...of, price: price ?? undefined });
  const within = list === 'sections' ? 'stock' : 'packs';
  return plan => changedLine(plan, list, name, examples, line => (index === null
    ? priced(line)
    : { ...line, [within]: line[within].map((of, i) => (i === index ? priced(of) : of)) }));
}

/** @returns {object[]} suppliers as the document holds them */
export const suppliersOf = plan => plan.catalogue?.suppliers ?? [];

export function addSupplier(supplier) {
  return plan => ({ ...plan, catalogue: { ...plan.catalogue, suppliers: [...suppliersOf(plan), supplier] } });
}

/** Fields of undefined are taken out. */
export function setSupplier(id, fields) {
  return plan => ({ ...plan, catalogue: { ...plan.catalogue, suppliers: suppliersOf(plan).map(one => (one.id === id ? given({ ...one, ...fields }) : one)) } });
}

/** Takes a catalogue that came from a list; all else of the garden stays as it is. */
export const takeCatalogue = catalogue => plan => ({ ...plan, catalogue });

const USUAL_CURRENCY = 'GBP';

export const currencyOf = plan => plan.currency ?? USUAL_CURRENCY;

/** What prices are in; the numbers stay. @param {string} code of ISO 4217 */
export const payIn = word('currency', USUAL_CURRENCY);

/** @returns {{value: string} | {error: string}} */
export function readCurrency(text) {
  const code = text.trim().toUpperCase();
  return CURRENCIES.includes(code) ? { value: code } : { error: 'Write its three letters: GBP, EUR, USD.' };
}

/** `12.50` or an empty text as money. @returns {{value: number | null} | {error: string}} */
export function readPrice(text) {
  const clean = text.trim().replace(/^[£€$]\s*/, '');
  if (clean === '') return { value: null };
  if (/^[1-9]\d{0,2}[.,]\d{3}$/.test(clean)) return { error: `“${clean}” can mean ${inFull(clean.replace(',', '.'))} or ${clean.replace(/[.,]/, '')}. Write one of them.` };
  const plain = /^\d+,\d{1,2}$/.test(clean) ? clean.replace(',', '.') : clean;
  if (!/^\d+(\.\d{1,4})?$/.test(plain)) {
    return { error: /^-/.test(plain) ? 'A price is 0 or more. Leave it empty where there is none yet.' : `“${clean}” is no price. Write it as 12.50.` };
  }
  const value = Number(plain);
  return value > 10000000 ? { error: 'At most 10000000. Check the point.' } : { value };
}

/** Pence in two decimals, finer prices in four: three could be thousands. @param {number | string} price */
const inFull = price => Number(price).toFixed(Math.abs(price * 100 - Math.round(price * 100)) < 1e-6 ? 2 : 4);

/** Money as it is written in a field: `8.90`, `0.1250`. @param {number | null | undefined} price */
export const writtenPrice = price => ((price ?? null) === null ? '' : inFull(price));

/** A short code for a supplier from its name, one that no other has. */
export function supplierCode(name, taken) {
  const base = name.toLowerCase().normalize('NFKD').replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '').slice(0, 16) || 'supplier';
  let code = base;
  for (let i = 2; taken.includes(code); i++) code = `${base}-${i}`;
  return code;
}
