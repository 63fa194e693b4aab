import { millimetres } from '../geometry/length.js';
import { bounds } from '../geometry/outline.js';
import { yardOf } from './plan.js';

/** What is refused at the field, each in one spoken sentence with the amount first and a way out. */

/** No side of a bed is longer, yard or no yard. */
const LONGEST_SIDE = 100000;

const MOST_COURSES = 20;

const MOST_WEEKENDS = 100;

/** Inside width is at least 300 or twice the timber; a side is at least three times the timber. */
export function leastSide(thickness) {
  return Math.max(3 * thickness, 2 * thickness + Math.max(2 * thickness, 300));
}

/**
 * @param {object} plan
 * @param {number} thickness of the walls
 * @param {'width'|'depth'} which
 * @returns {(mm: number) => string | null} the sentence, or null where all is well
 */
export function sideCheck(plan, thickness, which) {
  const least = leastSide(thickness);
  const yard = yardOf(plan);
  const box = yard ? bounds(yard) : null;
  const most = box ? Math.max(box.right - box.left, box.back - box.front) : LONGEST_SIDE;
  return mm => {
    if (mm <= 0) return `${millimetres(mm)} is no ${which}. Write ${least} or more.`;
    if (mm < least) {
      return `${millimetres(least - mm)} too small: walls of ${thickness} need ${least} to leave 300 inside. Write ${least} or more.`;
    }
    if (mm > most) {
      const than = box ? `than the yard, ${millimetres(most)}` : `than ${most}, the most for one side`;
      return `${millimetres(mm - most)} longer ${than}. Write ${millimetres(most)} or less.`;
    }
    return null;
  };
}

/** @returns {{value: number} | {error: string}} */
export function readCourses(text) {
  return readCount(text, 'course', MOST_COURSES);
}

/** @returns {{value: number} | {error: string}} */
export function readWeekend(text) {
  return readCount(text, 'weekend', MOST_WEEKENDS);
}

function readCount(text, what, most) {
  const clean = text.trim();
  if (clean === '') return { error: `Nothing here yet. Write a whole number, 1 to ${most}.` };
  if (!/^\d+$/.test(clean)) return { error: `“${clean.slice(0, 12)}” is no whole number. Write 1 to ${most}.` };
  const value = Number(clean);
  if (value < 1) return { error: `0 is no ${what}. Write 1 to ${most}.` };
  if (value > most) return { error: `${value - most} over the most, ${most}. Write 1 to ${most}.` };
  return { value };
}

/** @returns {{value: number} | {error: string}} degrees counter-clockwise, 0 to below 360 */
export function readTurn(text) {
  const clean = text.trim().replace('°', '').replace(',', '.');
  if (clean === '') return { value: 0 };
  const value = Number(clean);
  if (!Number.isFinite(value)) return { error: `“${clean.slice(0, 12)}” is no turn. Write degrees, such as 90.` };
  return { value: ((Math.round(value * 10) / 10) % 360 + 360) % 360 };
}

/** Where a bed may stand: a kilometre round the house. */
export function placeCheck(mm) {
  return Math.abs(mm) > 1000000 ? `${millimetres(Math.abs(mm) - 1000000)} beyond a kilometre. Write 1000000 or less.` : null;
}

export function nameCheck(text) {
  return text.length > 200 ? `${text.length - 200} letters too many: 200 at most.` : null;
}
