import { readLength, shown } from '../geometry/length.js';
import { walked } from '../geometry/outline.js';
import { orMore } from './checks.js';
import { beginWith } from './new-garden.js';

/** The fewest sides of a bed with square corners and of one with others, and the most. */
const LEAST = { square: 4, angled: 3 };
const MOST = 100;

/** As the server closes a walk: by up to a tenth where all corners are square, else by up to a millimetre. */
const OPEN = { square: 0.05, angled: 1 };

/** What rounded angles may come to more or less than once round, degrees. */
const ROUNDED = 1;

const TURN = /^(.*?)\s*\b(l|left|r|right)(?:\s*(\d+(?:[.,]\d+)?)\s*(?:°|deg|degrees)?)?$/i;

/**
 * Reads the sides of a bed as one walks round it, the first to the right along the front, each with the turn at its end:
 * `3000, 1500, 1200 right, 900, 1800, 2400`. A turn that is not said is to the left, an angle that is not said is 90 degrees:
 * `1000 left 60` turns by 60.
 *
 * @param {string} text
 * @param {number} least shortest side, millimetres
 * @param {'metric'|'imperial'} [units] as the garden shows lengths
 * @returns {{value: {length: number, turn?: 'right' | number}[]} | {error: string}}
 */
export function readSides(text, least, units) {
  const walls = [];
  for (const part of text.split(/[,;]/).map(one => one.trim()).filter(Boolean)) {
    const said = TURN.exec(part);
    const read = readLength(said ? said[1] : part, units);
    if (read.error) return { error: `Side ${walls.length + 1}: ${read.error}` };
    if (read.mm < least) return { error: `Side ${walls.length + 1} is ${shown(least - read.mm, units)} too short for two joints. ${orMore(least, units)}` };
    const right = /^r/i.test(said?.[2] ?? '');
    const degrees = Number((said?.[3] ?? '90').replace(',', '.'));
    const turn = degrees === 90 ? (right ? 'right' : null) : right ? -degrees : degrees;
    walls.push({ length: read.mm, ...(turn === null ? {} : { turn }) });
  }
  const corners = walls.some(({ turn }) => typeof turn === 'number') ? 'angled' : 'square';
  const missing = LEAST[corners] - walls.length;
  const { width, depth } = beginWith(units).bed;
  if (missing > 0) return { error: `${missing} ${missing === 1 ? 'side' : 'sides'} missing. Write them all, such as ${[width, depth, width, depth].map(side => shown(side, units)).join(', ')}.` };
  if (walls.length > MOST) return { error: `${walls.length - MOST} sides over the most, ${MOST}. Write fewer.` };
  const round = walls.reduce((sum, { turn }) => sum + (turn === 'right' ? -90 : turn ?? 90), 0);
  if (corners === 'square' && round !== 360) return { error: `${Math.abs(4 - round / 90)} ${round < 360 ? 'left turns missing' : 'left turns too many'}: walking once round takes four more to the left than to the right.` };
  if (Math.abs(round - 360) > ROUNDED) return { error: `The turns come to ${Math.round(round * 100) / 100} degrees to the left; once round is 360. Check the angle at the end of each side.` };
  const { gap } = walked(walls);
  if (gap > OPEN[corners]) return { error: `It does not close: the walk ends ${shown(gap, units)} from where it began. Check the sides, the last one first.` };
  return { value: walls };
}
