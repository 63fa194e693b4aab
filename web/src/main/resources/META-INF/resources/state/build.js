import { unitsOf } from './plan.js';

/**
 * How a bed is built beyond its outline, as fields that each say where their value comes from: the bed itself, its type,
 * the garden's own usual, or the usual of the trade.
 *
 * @typedef {object} Field
 * @property {string} key `base.bearerEvery`: the document's own words
 * @property {string} label
 * @property {'choice'|'count'|'mm'|'section'} kind
 * @property {[string, string][]} [choices] value and words
 * @property {string|number} usual
 * @property {[number, number]} [from] least and most
 * @property {string} [where] only where this other field says so, `base=slatted`
 */

/** @type {Field[]} */
export const FIELDS = [
  { key: 'section', label: 'Timber', kind: 'section', usual: '100x200' },
  { key: 'courses', label: 'Courses', kind: 'count', usual: 3, from: [1, 20] },
  { key: 'lap', label: 'Lap', kind: 'choice', choices: [['turning', 'alternating'], ['long-wall', 'long-wall']], usual: 'turning' },
  { key: 'seams', label: 'Long walls', kind: 'choice', choices: [['yes', 'may be joined'], ['no', 'one piece']], usual: 'yes', bedOnly: true },
  { key: 'base', sub: 'kind', label: 'Base', kind: 'choice', choices: [['by-surface', 'by the ground'], ['slatted', 'slatted'], ['open', 'open']], usual: 'by-surface' },
  { key: 'base', sub: 'bearerEvery', label: 'Bearers every', kind: 'mm', usual: 400, from: [100, 2000], where: ['base', 'kind', 'slatted'] },
  { key: 'base', sub: 'drainGap', label: 'Gap at the low side', kind: 'mm', usual: 30, from: [0, 500], where: ['base', 'kind', 'slatted'] },
  { key: 'liner', sub: 'wanted', label: 'Liner', kind: 'choice', choices: [['yes', 'lined'], ['no', 'none']], usual: 'yes' },
  { key: 'liner', sub: 'lap', label: 'Liner laps by', kind: 'mm', usual: 300, from: [0, 2000], where: ['liner', 'wanted', 'yes'] },
  { key: 'liner', sub: 'slitsPerM2', label: 'Drain slits a m²', kind: 'count', usual: 4, from: [0, 100], where: ['liner', 'wanted', 'yes'] },
  { key: 'fill', sub: 'freeboard', label: 'Gap below the rim', kind: 'mm', usual: 50, from: [0, 2000] },
  { key: 'fill', sub: 'mulch', label: 'Mulch', kind: 'mm', usual: 50, from: [0, 1000] },
  { key: 'fill', sub: 'settlement', label: 'Soil settles, %', kind: 'count', usual: 15, from: [0, 90] },
  { key: 'finish', sub: 'wanted', label: 'Finish', kind: 'choice', choices: [['yes', 'oiled'], ['no', 'none']], usual: 'yes' },
  { key: 'finish', sub: 'coats', label: 'Coats', kind: 'count', usual: 2, from: [1, 10], where: ['finish', 'wanted', 'yes'] },
  { key: 'screws', sub: 'length', label: 'Screws', kind: 'mm', usual: 120, from: [20, 600] },
  { key: 'screws', sub: 'perJoint', label: 'Screws a joint', kind: 'count', usual: 2, from: [1, 20] },
  { key: 'food', label: 'Grown in it', kind: 'choice', choices: [['no', 'anything'], ['yes', 'food: no unknown boards']], usual: 'no', bedOnly: true },
];

/** Fields that a plain value stands for: `"base": "open"` is `"base": {"kind": "open"}`. */
const PLAIN = { base: 'kind', liner: 'wanted', finish: 'wanted' };

export const nameOf = ({ key, sub }) => (sub ? `${key}.${sub}` : key);

const words = value => (value === true ? 'yes' : value === false ? 'no' : value);

function said(holder, { key, sub }) {
  const value = holder?.[key];
  if (!sub) return words(value);
  if (value !== null && typeof value === 'object') return words(value[sub]);
  return PLAIN[key] === sub ? words(value) : undefined;
}

/**
 * @param {Field} field
 * @param {{own?: object, type?: object, garden?: object}} layers of the document, the nearest first
 * @returns {{value: string | number, from: 'own' | 'type' | 'garden' | 'usual', else: string | number}} `else` is what it
 *     would be without its own word
 */
export function valueOf(field, { own, type, garden }) {
  const typed = said(type, field);
  const below = type && field.key in type && typed !== undefined ? { value: typed, from: 'type' }
    : said(garden, field) !== undefined ? { value: said(garden, field), from: 'garden' }
      : { value: field.usual, from: 'usual' };
  const mine = said(own, field);
  if (mine !== undefined) return { value: mine, from: 'own', else: below.value };
  // an object of its own covers the type's whole object, not only the fields it names
  if (own && field.key in own && below.from === 'type') return { ...valueOf(field, { garden }), from: 'own', else: below.value };
  return { ...below, else: below.value };
}

/** Whether a field makes sense beside what else is chosen. */
export function isWanted(field, layers) {
  if (!field.where) return true;
  const [key, sub, value] = field.where;
  return valueOf(FIELDS.find(one => one.key === key && one.sub === sub), layers).value === value;
}

/**
 * What to write at the field's key of a bed, type or garden; undefined takes its own word away.
 *
 * @param {Field} field
 * @param {{own?: object, type?: object}} layers
 * @param {string | number | undefined} value
 */
export function written({ key, sub }, { own, type }, value) {
  const plain = { yes: true, no: false }[value] ?? value;
  if (!sub) return plain;
  const before = own?.[key] ?? type?.[key];
  const whole = before !== null && typeof before === 'object' ? { ...before } : before === undefined ? {} : { [PLAIN[key]]: before };
  if (plain === undefined) delete whole[sub];
  else whole[sub] = plain;
  const keys = Object.keys(whole);
  if (!keys.length) return undefined;
  return keys.length === 1 && keys[0] === PLAIN[key] ? whole[keys[0]] : whole;
}

/** The soil's layers as they stand. @returns {{material: string, share: number}[]} */
export function layersOf({ own, type, garden }) {
  for (const holder of [own?.fill ? own : type, garden]) if (holder?.fill?.layers) return holder.fill.layers;
  return [{ material: 'soil.topsoil', share: 60 }, { material: 'soil.compost', share: 30 }, { material: 'soil.grit', share: 10 }];
}

/**
 * Reads layers as one writes them: `60 topsoil, 30 compost, 10 grit`.
 *
 * @returns {{value: {material: string, share: number}[]} | {error: string}}
 */
export function readLayers(text) {
  const layers = [];
  for (const part of text.split(/[,;]/).map(one => one.trim()).filter(Boolean)) {
    const found = /^(\d+(?:\.\d+)?)\s*%?\s+([\p{L}\d._-]{1,40})$/u.exec(part);
    if (!found) return { error: `“${part.slice(0, 20)}” is no layer. Write a share and a material, such as 60 topsoil.` };
    layers.push({ material: found[2].includes('.') ? found[2] : `soil.${found[2]}`, share: Number(found[1]) });
  }
  const sum = Math.round(layers.reduce((all, { share }) => all + share, 0) * 10) / 10;
  if (!layers.length) return { error: 'Nothing here yet. Write 60 topsoil, 30 compost, 10 grit.' };
  if (layers.length > 10) return { error: `${layers.length - 10} layers over the most, 10. Write fewer.` };
  if (sum !== 100) return { error: sum > 100 ? `${sum - 100} % over the whole. Take it off one layer.` : `${100 - sum} % missing. Add it to one layer.` };
  return { value: layers };
}

export const layersText = layers => layers.map(({ material, share }) => `${share} ${material.replace(/^soil\./, '')}`).join(', ');

/**
 * Walls that are seen after one is turned over.
 *
 * @param {string[]} walls all letters
 * @param {string[] | undefined} seen as the document says, undefined for all
 * @param {string} wall the one that is pressed
 * @returns {string[] | undefined} undefined where all are seen again
 */
export function turnedOver(walls, seen, wall) {
  const now = new Set(seen ?? walls);
  if (now.has(wall)) now.delete(wall);
  else now.add(wall);
  return now.size === walls.length ? undefined : walls.filter(letter => now.has(letter));
}

/**
 * What a section is called: its code in millimetres, nominal inches in a garden in feet, as `catalogue.TradeName` has it on paper.
 *
 * @param {string} id `100x200` @param {'metric'|'imperial'} units @returns {string} `4x8`; a code that gives no millimetres stays
 */
export function sectionName(id, units) {
  const sides = /^(\d{2,3})x(\d{2,3})$/.exec(id)?.slice(1).map(Number);
  return units === 'imperial' && sides?.every(side => side >= 16) ? sides.map(side => Math.round(side / 25)).join('x') : id;
}

/** Sections to choose from by their names; where two have one name, by their codes. @param {string[]} also @returns {[string, string][]} */
export function sectionChoices(plan, ...also) {
  const ids = [...new Set([...sectionsOf(plan), ...also])];
  const names = ids.map(id => sectionName(id, unitsOf(plan)));
  return ids.map((id, i) => [id, names.indexOf(names[i]) === names.lastIndexOf(names[i]) ? names[i] : id]);
}

/** The timbers walls can be built of: the usual one and the garden's own. @returns {string[]} */
export const sectionsOf = plan => [...new Set(['100x200', ...(plan.catalogue?.sections ?? []).map(section => section.id)])];
