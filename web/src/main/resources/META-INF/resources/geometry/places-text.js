import { millimetres, readLengths, shown } from './length.js';

/** Places in the yard as text: `0, 0; 12000, 0; 12 m, 9 m; 12 m x 9 m`. Along the house first, then away from it. */

const PLAIN = /^(-?\d+(?:\.\d+)?)(?:\s*,\s*|\s+)(-?\d+(?:\.\d+)?)$/;

/** A place to show how one is written. */
const SUCH = { metric: [2400, 1200], imperial: [2438.4, 1219.2] };

/** Millimetres that a place may lie away. */
const FAR = 1_000_000;

/**
 * @param {string} text
 * @param {number} least how many places are wanted at least
 * @param {number} [most]
 * @param {'metric' | 'imperial'} [units] that lengths are shown in
 * @returns {{value: [number, number][]} | {error: string}}
 */
export function readPlaces(text, least, most = 200, units = 'metric') {
  const parts = String(text).split(/[;\n]/).map(part => part.trim()).filter(Boolean);
  const places = [];
  for (const [i, part] of parts.entries()) {
    const place = readPlace(part, units);
    if (place.error) return { error: `Place ${i + 1}: ${place.error}` };
    places.push(place.value);
  }
  if (places.length < least) return { error: `${places.length} of ${least} places. Write them as ${writtenPlaces([[0, 0], SUCH[units]], units)} with a semicolon between.` };
  if (places.length > most) return { error: `${places.length} places, ${most} at most.` };
  return { value: places };
}

function readPlace(part, units) {
  const plain = PLAIN.exec(part);
  const isPlain = plain && (units === 'metric' || part.includes('-'));
  const read = isPlain ? { mm: [Number(plain[1]), Number(plain[2])] } : readLengths(plain ? `${plain[1]} x ${plain[2]}` : part.replace(/,\s+/, ' x '), units);
  if (read.error) return read;
  if (read.mm.length !== 2) return { error: `a place is two lengths, as in ${writtenPlaces([SUCH[units]], units)}.` };
  if (read.mm.some(mm => Math.abs(mm) > FAR)) return { error: 'further off than 1000 m.' };
  return { value: read.mm.map(mm => Math.round(mm * 10) / 10) };
}

/** @param {[number, number][]} places @param {'metric' | 'imperial'} units */
export const writtenPlaces = (places, units) => (places ?? [])
  .map(([x, y]) => (units === 'imperial' && x >= 0 && y >= 0 ? `${shown(x, units)} x ${shown(y, units)}` : `${millimetres(x)}, ${millimetres(y)}`))
  .join('; ');
