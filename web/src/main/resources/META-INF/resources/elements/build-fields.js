import { lengthCheck, readNumber } from '../state/checks.js';
import { FIELDS, isWanted, layersOf, layersText, nameOf, readLayers, sectionChoices, sectionName, valueOf, written } from '../state/build.js';
import { unitsOf } from '../state/plan.js';
import { countField } from './count-field.js';
import { lengthField } from './length-field.js';
import { choiceField, h } from './make.js';

const FROM = { type: 'from its type', garden: 'usual in this garden', usual: 'usual' };

/**
 * The entries of how a bed, a type or all beds of the garden are built, each with where its value comes from and, where
 * it has its own, the way back.
 *
 * @param {object} parts
 * @param {object} parts.plan
 * @param {{own: object, type?: object, garden?: object}} parts.layers see state/build.js
 * @param {string} parts.key prefix of the entries' keys
 * @param {boolean} [parts.isUsual] the garden's own usual: what only a bed can say is left out
 * @param {string[]} [parts.without] keys that are asked for elsewhere
 * @param {(fields: object) => void} parts.set
 * @returns {HTMLElement[]}
 */
export function buildFields({ plan, layers, key, isUsual = false, without = [], set }) {
  const fields = FIELDS.filter(field => !(isUsual && field.bedOnly) && !without.includes(field.key) && isWanted(field, layers));
  const at = fields.findIndex(field => field.key === 'finish');
  return [
    ...fields.slice(0, at).map(field => entry(field, { plan, layers, key, set })),
    soil({ layers, key, set }),
    ...fields.slice(at).map(field => entry(field, { plan, layers, key, set })),
  ];
}

function entry(field, { plan, layers, key, set }) {
  const found = valueOf(field, layers);
  const change = value => set({ [field.key]: written(field, layers, value) });
  const parts = { key: `${key} ${nameOf(field)}`, label: field.label };
  return h('div.entry', { 'data-key': `${parts.key} entry` }, control(field, found, parts, plan, change), origin(field, found, parts.key, change, unitsOf(plan)));
}

function control(field, { value }, parts, plan, change) {
  const [least, most] = field.from ?? [];
  if (field.kind === 'mm') {
    return lengthField({ ...parts, units: unitsOf(plan), mm: value, onlength: ({ detail }) => change(detail.mm),
      check: lengthCheck(least, most, unitsOf(plan), ['too small', 'too large']) });
  }
  if (field.kind === 'count') return countField({ ...parts, value, read: readNumber(least, most, field.key !== 'courses' && field.sub !== 'coats' && field.sub !== 'perJoint'), oncount: ({ detail }) => change(detail) });
  const choices = field.kind === 'section' ? sectionChoices(plan, value) : field.choices;
  return choiceField(field.label, parts.key, value, choices, change);
}

function origin(field, found, key, change, units) {
  if (found.from !== 'own') return h('p.from', {}, FROM[found.from]);
  const words = field.choices?.find(([value]) => value === found.else)?.[1] ?? (field.kind === 'section' ? sectionName(found.else, units) : found.else);
  return h('p.from', {}, h('button.quiet', { type: 'button', 'data-key': `${key} back`, onclick: () => change(undefined) }, `its own; back to ${words}`));
}

function soil({ layers, key, set }) {
  const own = layers.own?.fill?.layers;
  const fill = layers => ({ fill: written({ key: 'fill', sub: 'layers' }, layers.given, layers.value) });
  return h('div.entry.wide', { 'data-key': `${key} fill.layers entry` },
    countField({ label: 'Soil, from the bottom, % and material', mode: 'text', key: `${key} fill.layers`, value: layersText(layersOf(layers)), read: text => {
      const read = readLayers(text);
      return read.error ? read : { value: layersText(read.value) };
    }, oncount: ({ detail }) => set(fill({ given: layers, value: readLayers(detail).value })) }),
    own ? h('p.from', {}, h('button.quiet', { type: 'button', 'data-key': `${key} fill.layers back`, onclick: () => set(fill({ given: layers, value: undefined })) }, 'its own; back to the usual'))
      : h('p.from', {}, 'usual'));
}
