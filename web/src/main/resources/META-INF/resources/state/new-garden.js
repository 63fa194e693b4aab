import { currencyOf } from './catalogue.js';
import { unitsOf } from './plan.js';

/** What a garden begins with that nobody measured or chose yet, in its own measures; lengths in millimetres. */

const INCH = 25.4;
const feet = count => Math.round(3048 * count) / 10;

/**
 * Dressed 6x6 is 5 1/2 in square and is sold in whole even feet (US standard PS 20, nominal timbers of 5 in and larger). The prices are
 * examples at what the example timber of 100 x 200 mm costs by volume. All other figures: common practice, no source.
 */
const IN_FEET = {
  defaults: { section: '6x6', courses: 4, notches: { width: INCH, depth: INCH }, fill: { freeboard: 2 * INCH, mulch: 2 * INCH } },
  saw: { kerf: 3.2, endTrim: INCH / 2, keepOffcut: feet(1), leastPiece: feet(1), leastPart: feet(2), seamStagger: feet(2), seamFromCorner: 16 * INCH },
  catalogue: { sections: [{ id: '6x6', thickness: 5.5 * INCH, height: 5.5 * INCH, density: 600,
    stock: [[8, 17.2], [10, 21.6], [12, 25.9], [16, 34.5]].map(([length, price]) => ({ length: feet(length), price })) }] },
};

const METRIC = { yard: { width: 12000, depth: 9000 }, path: 1200, bed: { width: 2400, depth: 1200 } };
const FEET = { yard: { width: feet(40), depth: feet(30) }, path: feet(4), bed: { width: feet(8), depth: feet(4) } };

/** A yard until it is measured, the width of a path and the size of a first bed, as one would choose them. @param {'metric'|'imperial'} units */
export const beginWith = units => (units === 'imperial' ? FEET : METRIC);

/** What a new garden pays in until it is said: what the one that is open does, in other measures what timber is sold for in those. */
export const currencyFor = (units, open) => (units === unitsOf(open) ? currencyOf(open) : units === 'imperial' ? 'USD' : currencyOf({}));

/**
 * The first document of a garden.
 *
 * @param {'metric'|'imperial'} units
 * @param {{name: string, currency?: string, yard: [number, number], surface?: string}} said
 */
export function newGarden(units, { name, currency, yard: [width, depth], surface }) {
  const outline = [[0, 0], [width, 0], [width, depth], [0, depth]];
  return { format: 1, name, ...(currency ? { currency } : {}), ...(units === 'imperial' ? { units, ...structuredClone(IN_FEET) } : {}),
    ground: { outline, ...(surface ? { surfaces: [{ kind: surface, outline }] } : {}) }, beds: [] };
}
