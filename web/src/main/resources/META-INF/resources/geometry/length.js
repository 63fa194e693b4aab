/**
 * Lengths as they stand in a notebook: `2400`, `2.4 m`, `7' 10 1/2"`, `2x3 in`, `1200+95`.
 * A bare number is millimetres; where lengths are shown in feet it is asked again. Results are millimetres, rounded to 0.1.
 */

/** One inch is 25.4 mm exactly (international yard and pound agreement, 1959). */
const MM_PER = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 };

const UNIT_WORDS = {
  mm: 'mm', millimetre: 'mm', millimetres: 'mm', cm: 'cm', centimetre: 'cm', centimetres: 'cm',
  m: 'm', metre: 'm', metres: 'm', in: 'in', inch: 'in', inches: 'in', '"': 'in',
  ft: 'ft', foot: 'ft', feet: 'ft', "'": 'ft',
};

const VULGAR = { '½': '1/2', '¼': '1/4', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' };

const EXAMPLES = `2400 mm, 2.4 m or 7' 10 1/2"`;

/** What a person may write, and no more: longer than this is no length. */
const LONGEST_ENTRY = 60;

class Unreadable extends Error {}

/** Signs that mean the same made one: primes, quotes, times, minus, fractions. */
function plain(text) {
  return text
    .replace(/[½¼¾⅛⅜⅝⅞]/g, sign => ` ${VULGAR[sign]}`)
    .replace(/[′’‘`]/g, "'")
    .replace(/[″”“]|''/g, '"')
    .replace(/[×✕]/g, 'x')
    .replace(/[−–]/g, '-')
    .replace(/\u00a0|\u202f|\u2009/g, ' ')
    .toLowerCase()
    .trim()
    .replace(/'\s*-\s*(?=\d)/g, "' ");
}

function tokens(text) {
  const found = [];
  const pattern = /\s*(?:(\d+\s+\d+\/\d+|\d+\/\d+|\d*[.,]?\d+(?:[.,]\d+)*)|([a-zµ]+|["'])|([+-])|(.))/gy;
  while (pattern.lastIndex < text.length) {
    const match = pattern.exec(text);
    if (!match) break;
    const [, number, word, sign, other] = match;
    if (other !== undefined) throw new Unreadable(`“${other}” is no part of a length. Write ${EXAMPLES}.`);
    if (number !== undefined) found.push({ kind: 'number', value: numberOf(number), text: number.trim() });
    else if (sign !== undefined) found.push({ kind: 'sign', value: sign });
    else if (UNIT_WORDS[word]) found.push({ kind: 'unit', value: UNIT_WORDS[word] });
    else throw new Unreadable(`“${word.slice(0, 12)}” is no unit of length. Use mm, cm, m, ft or in.`);
  }
  return found;
}

function numberOf(text) {
  const [first, second] = text.trim().split(/\s+/);
  if (second) return Number(first) + fractionOf(second);
  if (first.includes('/')) return fractionOf(first);
  if (/^\d{1,3},\d{3}$/.test(first)) {
    const whole = first.replace(',', '');
    throw new Unreadable(`“${first}” can be read two ways. Write ${whole} mm, or ${first.replace(',', '.')} m.`);
  }
  const value = Number(first.replace(',', '.'));
  if (Number.isNaN(value)) throw new Unreadable(`“${first}” is no number. Write ${EXAMPLES}.`);
  return value;
}

function fractionOf(text) {
  const [above, below] = text.split('/').map(Number);
  if (below === 0) throw new Unreadable(`“${text}” divides by nothing. Write 1/2, 3/8 or 5/16.`);
  return above / below;
}

/** Adds up the terms; feet may be followed by inches without a sign. `unitless` is the unit of a bare number; without one it is asked again. */
function sum(text, unitless) {
  const list = tokens(text);
  let total = 0;
  let sign = 1;
  let wantTerm = true;
  let afterFeet = false;
  for (let i = 0; i < list.length; i++) {
    const token = list[i];
    if (token.kind === 'sign') {
      if (wantTerm && i > 0) throw new Unreadable(`A number is missing after “${list[i - 1].value}”.`);
      sign = token.value === '-' ? -1 : 1;
      wantTerm = true;
      afterFeet = false;
    } else if (token.kind === 'number') {
      if (!wantTerm && !afterFeet) {
        throw new Unreadable(`Two numbers stand side by side. Put + between them, or write ${EXAMPLES}.`);
      }
      const next = list[i + 1];
      const unit = next?.kind === 'unit' ? next.value : afterFeet ? 'in' : unitless;
      if (!unit && token.value) throw new Unreadable(`“${token.text}” has no unit. Write ${token.text}', ${token.text}" or ${token.text} mm.`);
      if (next?.kind === 'unit') i++;
      total += sign * token.value * (MM_PER[unit] ?? 0);
      afterFeet = unit === 'ft' && !afterFeet;
      wantTerm = false;
    } else {
      throw new Unreadable(`A number is missing before the unit. Write ${EXAMPLES}.`);
    }
  }
  if (wantTerm) throw new Unreadable(`A number is missing at the end. Write ${EXAMPLES}.`);
  return Math.round(total * 10) / 10;
}

/**
 * Reads one length or several joined by `x`.
 *
 * @param {string} text as typed
 * @param {'metric'|'imperial'} [units] that lengths are shown in
 * @returns {{mm: number[]} | {error: string}} millimetres to 0.1, or one spoken sentence with a way out
 */
export function readLengths(text, units = 'metric') {
  if (text.length > LONGEST_ENTRY) {
    return { error: `${text.length} letters are too many for a length. Write ${EXAMPLES}.` };
  }
  const clean = plain(text);
  if (clean === '') return { error: `Nothing here yet. Write ${EXAMPLES}.` };
  try {
    const parts = clean.split(/\s*(?:x|\bby\b)\s*/);
    const bare = units === 'imperial' ? undefined : 'mm';
    const lastUnit = tokens(parts[parts.length - 1]).filter(token => token.kind === 'unit').pop()?.value ?? bare;
    return { mm: parts.map(part => sum(part, parts.length > 1 ? lastUnit : bare)) };
  } catch (problem) {
    if (problem instanceof Unreadable) return { error: problem.message };
    throw problem;
  }
}

/**
 * Reads exactly one length.
 *
 * @param {string} text as typed
 * @param {'metric'|'imperial'} [units] that lengths are shown in
 * @returns {{mm: number} | {error: string}}
 */
export function readLength(text, units) {
  const read = readLengths(text, units);
  if (read.error) return read;
  if (read.mm.length > 1) return { error: `${read.mm.length} lengths are written here, and one is wanted: write ${shown(read.mm[0], units)}.` };
  return { mm: read.mm[0] };
}

/** Millimetres as text: whole where whole, else to 0.1. */
export function millimetres(mm) {
  const tenths = Math.round(mm * 10) / 10;
  return String(Object.is(tenths, -0) ? 0 : tenths);
}

/**
 * Feet, inches and sixteenths, to the nearest sixteenth: `7' 10 1/2"`.
 *
 * @param {number} mm
 */
export function feetAndInches(mm) {
  const sixteenths = Math.round(Math.abs(mm) / 25.4 * 16);
  const minus = mm < 0 && sixteenths ? '-' : '';
  const feet = Math.floor(sixteenths / 192);
  const inches = Math.floor((sixteenths % 192) / 16);
  let above = sixteenths % 16;
  let below = 16;
  while (above > 0 && above % 2 === 0) {
    above /= 2;
    below /= 2;
  }
  const fraction = above ? `${above}/${below}` : '';
  const inchText = [inches || !fraction ? String(inches) : '', fraction].filter(Boolean).join(' ');
  if (feet && inchText === '0') return `${minus}${feet}'`;
  return `${minus}${feet ? `${feet}' ` : ''}${inchText}"`;
}

/** As the garden shows lengths. @param {'metric'|'imperial'} units */
export function shown(mm, units) {
  return units === 'imperial' ? feetAndInches(mm) : millimetres(mm);
}
