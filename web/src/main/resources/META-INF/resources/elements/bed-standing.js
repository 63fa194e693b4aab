import { h } from './make.js';
import { shownQuantity } from './shown-number.js';

/** A verdict's outcome in a word, so that colour is not needed to read it. */
const OUTCOMES = { holds: 'Holds', bows: 'Look at it', weak: 'Too weak' };

/**
 * Whether the bed would stand: the verdicts one a line, each with its way out, then what they were reckoned from.
 * @param {object} choice see state/choice.js
 * @param {object} part the bed as the job sheet has it
 * @param {'metric'|'imperial'} units in which the garden reads numbers
 */
export function bedStanding(choice, part, units) {
  const { standing } = part;
  if (!standing) return [];
  const refused = standing.notDesigned.map(why => h('li.weak', {}, h('b', {}, 'Not designed here'), ` ${why}`));
  const verdicts = standing.verdicts.map(({ outcome, text, ways }) => h(`li.${outcome}`, {}, h('b', {}, OUTCOMES[outcome]), ` ${text}`,
    ways.length ? h('span.ways', {}, ` ${ways.join('. Or: ')}.`) : null));
  const numbers = standing.quantities.map((quantity, i) => shownQuantity(choice, `${part.id} standing ${i}`, quantity, units));
  return [h('h3', {}, 'Does it stand?'), h('p.hint', {}, standing.caution), h('ul.verdicts', {}, refused, verdicts),
    h('details', {},
      h('summary', { 'data-key': 'reckoned' }, 'What it was reckoned from'), h('dl', {}, numbers))];
}
