import { readLength, shown } from '../geometry/length.js';
import { walked } from '../geometry/outline.js';
import { orMore } from './checks.js';

/** The fewest and the most sides a bed has. */
const LEAST = 4;
const MOST = 100;

const TURNS = { l: 'left', left: 'left', r: 'right', right: 'right' };

/**
 * Reads the sides of a bed as one walks round it, the first to the right along the front, each with the turn at its end:
 * `3000, 1500, 1200 right, 900, 1800, 2400`. A turn that is not said is to the left.
 *
 * @param {string} text
 * @param {number} least shortest side, millimetres
 * @param {'metric'|'imperial'} [units] as the garden shows lengths
 * @returns {{value: {length: number, turn?: 'right'}[]} | {error: string}}
 */
export function readSides(text, least, units) {
  const walls = [];
  for (const part of text.split(/[,;]/).map(one => one.trim()).filter(Boolean)) {
    const said = /^(.*?)\s*\b(left|right|l|r)$/i.exec(part);
    const read = readLength(said ? said[1] : part);
    if (read.error) return { error: `Side ${walls.length + 1}: ${read.error}` };
    if (read.mm < least) return { error: `Side ${walls.length + 1} is ${shown(least - read.mm, units)} too short for two joints. ${orMore(least, units)}` };
    const turn = TURNS[said?.[2].toLowerCase()] ?? 'left';
    walls.push({ length: read.mm, ...(turn === 'right' ? { turn } : {}) });
  }
  if (walls.length < LEAST) return { error: `${LEAST - walls.length} sides missing. Write them all, such as 2400, 1200, 2400, 1200.` };
  if (walls.length > MOST) return { error: `${walls.length - MOST} sides over the most, ${MOST}. Write fewer.` };
  const lefts = walls.reduce((sum, { turn }) => sum + (turn ? -1 : 1), 0);
  if (lefts !== 4) return { error: `${Math.abs(4 - lefts)} ${lefts < 4 ? 'left turns missing' : 'left turns too many'}: walking once round takes four more to the left than to the right.` };
  const { gap } = walked(walls);
  if (gap >= 1) return { error: `It does not close: the walk ends ${shown(gap, units)} from where it began. Check the sides, the last one first.` };
  return { value: walls };
}
