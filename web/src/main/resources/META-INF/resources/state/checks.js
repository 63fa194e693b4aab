import { millimetres, shown } from '../geometry/length.js';
import { bounds, wallLetter } from '../geometry/outline.js';
import { stretched, wallLengths } from '../geometry/shapes.js';
import { unitsOf, yardOf } from './plan.js';

/** What is refused at the field, each in one spoken sentence with the amount first and a way out. */

/** No side of a bed is longer, yard or no yard. */
const LONGEST_SIDE = 100000;

const MOST_COURSES = 20;

const MOST_STAGES = 100;

const MOST_IN_A_ROW = 100;

/** As many as a garden document holds. */
export const MOST_BEDS = 1000;

const SIXTEENTH = 25.4 / 16;

/** A least length as it is shown, in sixteenths rounded up, so that what is written from it is enough. */
export const orMore = (mm, units) => `Write ${shown(units === 'imperial' ? Math.ceil(mm / SIXTEENTH - 1e-6) * SIXTEENTH : mm, units)} or more.`;

/** The same of a most length, rounded down. */
const orLess = (mm, units) => `Write ${shown(units === 'imperial' ? Math.floor(mm / SIXTEENTH + 1e-6) * SIXTEENTH : mm, units)} or less.`;

/** A length between two. @param {[string, string]} [words] @returns {(mm: number) => string | null} the sentence, or null where all is well */
export function lengthCheck(least, most, units, [under, over] = ['too short', 'too long']) {
  return mm => {
    if (mm < least) return `${shown(least - mm, units)} ${under}. ${orMore(least, units)}`;
    return mm > most ? `${shown(mm - most, units)} ${over}. ${orLess(most, units)}` : null;
  };
}

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
  const units = unitsOf(plan);
  const say = mm => shown(mm, units);
  return mm => {
    if (mm <= 0) return `${say(mm)} is no ${which}. ${orMore(least, units)}`;
    if (mm < least) {
      return `${say(least - mm)} too small: walls of ${say(thickness)} need ${say(least)} to leave ${say(least - 2 * thickness)} inside. ${orMore(least, units)}`;
    }
    if (mm > most) {
      const than = box ? `than the yard, ${say(most)}` : `than ${say(most)}, the most for one side`;
      return `${say(mm - most)} longer ${than}. ${orLess(most, units)}`;
    }
    return null;
  };
}

/**
 * A wall's new length, against the walls that change with it.
 *
 * @param {import('./plan.js').LaidBed} bed right-angled
 * @param {number} side 0 for wall A
 * @param {number} mm
 * @param {'metric'|'imperial'} units
 */
export function stretchCheck(bed, side, mm, units) {
  const least = 3 * bed.section.thickness;
  if (mm < least) return `${shown(least - mm, units)} too short: two joints need ${shown(least, units)}. ${orMore(least, units)}`;
  if (mm > LONGEST_SIDE) return `${shown(mm - LONGEST_SIDE, units)} over the most for one wall. ${orLess(LONGEST_SIDE, units)}`;
  const before = wallLengths(bed.own);
  const after = wallLengths(stretched(bed.own, side, mm));
  const short = after.findIndex((length, i) => length < least && length < before[i]);
  if (short < 0) return null;
  const most = mm < before[side] ? mm + least - after[short] : mm;
  return `Wall ${wallLetter(short)} would be ${shown(after[short], units)}, ${shown(least - after[short], units)} too short for two joints. ${orMore(most, units)}`;
}

/**
 * What is taken out of an outline, or sticks out of it, in one direction.
 *
 * @param {number} whole side of the bed, millimetres
 * @param {number} least of the part
 * @param {number} left what must stay of the side beside it
 * @param {'metric'|'imperial'} units
 */
export function partCheck(whole, least, left, units) {
  const most = whole - left;
  return mm => {
    if (most < least) return `${shown(least - most, units)} too little room: ${shown(whole, units)} is the whole side. Make the bed larger, or write another shape.`;
    if (mm < least) return `${shown(least - mm, units)} too small. ${orMore(least, units)}`;
    if (mm > most) return `${shown(mm - most, units)} too large: ${shown(left, units)} must stay of ${shown(whole, units)}. ${orLess(most, units)}`;
    return null;
  };
}

/** @returns {{value: number} | {error: string}} */
export function readCourses(text) {
  return readCount(text, 'course', MOST_COURSES);
}

/** @returns {{value: number} | {error: string}} */
export function readStage(text) {
  return readCount(text, 'stage', MOST_STAGES);
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

/**
 * Reads a number between two, whole or to 0.1.
 *
 * @returns {(text: string) => {value: number} | {error: string}}
 */
export function readNumber(least, most, tenths = false) {
  return text => {
    const clean = text.trim().replace(',', '.');
    const range = `Write ${least} to ${most}.`;
    if (clean === '') return { error: `Nothing here yet. ${range}` };
    const value = Number(clean);
    if (!Number.isFinite(value) || (!tenths && !Number.isInteger(value))) return { error: `“${text.trim().slice(0, 12)}” is no ${tenths ? '' : 'whole '}number. ${range}` };
    if (value < least) return { error: `${millimetres(least - value)} under the least, ${least}. ${range}` };
    if (value > most) return { error: `${millimetres(value - most)} over the most, ${most}. ${range}` };
    return { value: Math.round(value * 10) / 10 };
  };
}

/** Columns or rows of a block. @returns {{value: number} | {error: string}} */
export function readBlock(text) {
  return readCount(text, 'row', MOST_IN_A_ROW);
}

/**
 * A block of copies against the yard and the most a garden holds.
 *
 * @param {object} plan
 * @param {number} each beds that are copied
 * @param {{columns: number, rows: number}} block
 * @param {import('../geometry/outline.js').Bounds} box round the whole block
 */
export function blockCheck(plan, each, { columns, rows }, box) {
  const after = (plan.beds ?? []).length + each * (columns * rows - 1);
  if (after > MOST_BEDS) return `${after - MOST_BEDS} over the most beds, ${MOST_BEDS}. Write fewer columns or rows.`;
  if (columns * rows === 1) return 'One of each is there already. Write 2 or more columns or rows.';
  const yard = yardOf(plan) && bounds(yardOf(plan));
  const over = yard ? [['on the right', box.right - yard.right, 'columns'], ['at the back', box.back - yard.back, 'rows']].filter(([, mm]) => mm > 0.05) : [];
  return over.length ? over.map(([where, mm, what]) => `${shown(mm, unitsOf(plan))} over the yard's edge ${where}. Write fewer ${what}, a narrower path, or start further away.`).join(' ') : null;
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
export function placeCheck(mm, units) {
  return Math.abs(mm) > 1000000 ? `${shown(Math.abs(mm) - 1000000, units)} beyond a kilometre. ${orLess(1000000, units)}` : null;
}

/** @returns {(text: string) => {value: string} | {error: string}} */
export const readText = most => text => {
  const clean = text.trim();
  return clean.length > most ? { error: `${clean.length - most} letters too many: ${most} at most.` } : { value: clean };
};

/** Of a garden, a bed, a type or a path. */
export const readName = readText(200);
