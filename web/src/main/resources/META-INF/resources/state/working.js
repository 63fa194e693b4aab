import { measured, unitIn, valueIn } from '../geometry/measure.js';
import { oneOf } from './words.js';

/** A number's working as a line of arithmetic, from the working that the job sheet carries. */

/** Numbers as a person would write them: at most four decimals, never an exponent. */
export function figure(value) {
  if (!Number.isFinite(value)) return String(value);
  const digits = Math.abs(value) >= 1000 ? 1 : Math.abs(value) >= 100 ? 2 : 4;
  const rounded = Number(value.toFixed(digits));
  return (Object.is(rounded, -0) ? 0 : rounded).toString();
}

/** A result in as many figures as one would buy by. */
export function rounded(value) {
  const size = Math.abs(value);
  return figure(Number(value.toFixed(size >= 100 ? 1 : size >= 10 ? 2 : 3)));
}

const withUnit = (value, unit) => `${figure(value)} ${unitIn(unit, 'metric')}`.trim();

/** A result in the garden's own measures. @param {'metric'|'imperial'} units */
export function roundedWithUnit(value, unit, units) {
  if (unit === 'mm' && units === 'imperial') return measured(value, unit, units, 0);
  const own = rounded(valueIn(value, unit, units));
  return `${own} ${own === '1' ? oneOf(unitIn(unit, units)) : unitIn(unit, units)}`.trim();
}

/**
 * @param {{inputs?: {name: string, value: number, unit?: string}[], formula?: string, source?: string}} working
 * @param {number} value the result
 * @param {string} unit metric, as all of a working; what a garden in feet reads follows as a line of its own
 * @param {'metric'|'imperial'} units
 * @returns {{lines: string[], words: string, inputs: string[], source: string}} `lines` have the figures in place of
 *     the names and end in the result, a line a step; only the bare result where the formula names none of its inputs. `words`
 *     has what the figures stand for, and no step that the lines say in the same words
 */
export function arithmetic(working, value, unit, units = 'metric') {
  const inputs = working?.inputs ?? [];
  const formula = working?.formula ?? '';
  const told = formula.split(/;\s+/);
  const filled = told.map(step => (HAS_RESULT.test(step) ? step : fill(step, inputs)));
  const named = told.filter((step, i) => step !== filled[i]);
  const lines = named.length ? steps(filled.map(signs), withUnit(value, unit)) : [`= ${withUnit(value, unit)}`];
  const own = roundedWithUnit(value, unit, units);
  return {
    lines: valueIn(1, unit, units) === 1 && unit !== 'mm' || units === 'metric' ? lines : [...lines, `= ${own}`],
    words: named.length ? named.join('; ') : formula,
    inputs: inputs.map(input => `${input.name} ${withUnit(input.value, input.unit)}`),
    source: working?.source ?? '',
  };
}

/** A step told in figures already, as `2 x box of 100 at 29.00 = 58.00 GBP`: the figure in a pack's name is no input. */
const HAS_RESULT = / = [\d.]/;

/** A formula that holds several steps, or says what it equals, is not given the result a second time. */
function steps(lines, result) {
  return lines.length > 1 || lines[0].includes(' = ') ? lines : [`${lines[0]} = ${result}`];
}

/** Each name once replaced by its figure, longer names first so that `soil depth` is not read as `soil`. */
function fill(formula, inputs) {
  if (!inputs.length) return formula;
  const byLength = [...inputs].sort((a, b) => b.name.length - a.name.length);
  const names = byLength.map(input => input.name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('|');
  const pattern = new RegExp(`(?<![\\p{L}\\d])(?:${names})(?![\\p{L}\\d])`, 'gu');
  return formula.replace(pattern, name => figure(byLength.find(input => input.name === name).value));
}

const signs = text => text.replace(/\s\*\s|\sx\s/g, ' × ').replace(/\s\/\s/g, ' ÷ ').replace(/\s-\s/g, ' − ');

/** What a quantity is called on the page. */
const LABELS = {
  'timber.length': 'Timber', 'timber.volume': 'Timber, volume', 'timber.mass': 'Timber, weight',
  screws: 'Screws', pilots: 'Pilot holes', staples: 'Staples', notches: 'Drain notches', liner: 'Liner piece',
  'liner.area': 'Liner, area', 'liner.slits': 'Drain slits', 'finish.area': 'Finish, area', 'finish.litres': 'Finish', 'seal.litres': 'Seal for cut ends',
  'soil.depth': 'Soil depth', 'soil.settled': 'Soil, settled', 'soil.loose': 'Soil, loose', 'soil.mass': 'Soil, weight',
  'base.bearers': 'Bearers and beam', 'base.slats': 'Slats', 'base.slats.bought': 'Slats to find', 'ends.area': 'Cut ends', 'inner.area': 'Inside',
  'seam.plates': 'Joint plates', 'seam.screws': 'Joint screws', mulch: 'Mulch', barrows: 'Barrows',
  'notches.area': 'Notches, to seal', 'lifts.two-people': 'Lifts for more than one', brackets: 'Corner brackets',
  'brackets.fixings': 'Screws for brackets', 'ties.course': 'Straps over the courses', 'ties.course.fixings': 'Screws for straps',
  'ties.cross': 'Cross ties', 'mass.dry': 'Weight, dry', 'mass.wet': 'Weight, soaked', 'ground.load': 'Load on its footprint',
  'wall.push': 'Push on a metre of wall', 'wall.push.blocked': 'Push, drains blocked', 'wall.push.guide': 'Push, guide figure',
  'wall.use': 'Walls, strength used', 'wall.bow': 'Walls bow', 'ties.spacing': 'Clear run that holds',
  'ties.spacing.blocked': 'Clear run, drains blocked', 'ties.advised': 'Cross ties advised', 'ties.force': 'Force in a cross tie',
  'corner.pull': 'Pull at a corner', 'corner.hold': 'Screws at a corner hold', 'slats.span': 'Slats, clear span that holds',
  'slats.use': 'Slats, strength used', 'slats.sag': 'Slats sag', 'bearers.use': 'Bearers, strength used',
  'bearers.sag': 'Bearers sag', 'bearers.load': 'Load under the bearers',
  'path.area': 'Path, area', 'path.volume': 'Path, all layers', 'edging.length': 'Edging', membrane: 'Membrane',
};

export function labelOf(key) {
  if (LABELS[key]) return LABELS[key];
  const words = key.replace(/[._-]/g, ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}
