import { insidePoint } from '../geometry/inside.js';
import { placePoint, wallLetter } from '../geometry/outline.js';
import { bedsOf, yardOf } from './plan.js';

/** Where a snag is: from the words of its `where` to a point in the yard. */

/**
 * @param {object} plan
 * @param {string} where `bed M, wall D`, `bed N`, `path P`, `yard, corner 3` ...
 * @param {string} [words] the snag's own, which may name a corner of the bed
 * @returns {{point: [number, number], bed: string | null} | null} null where it is nowhere in the yard
 */
export function placeOf(plan, where, words = '') {
  const text = String(where ?? '');
  const bed = bedNamed(plan, text);
  if (bed) {
    const wall = /\bwall ([A-Z]{1,2})\b/.exec(text)?.[1];
    const corner = Number(/\bat corner (\d+)\b/.exec(words)?.[1]);
    return { point: wallMiddle(bed, wall) ?? bed.outline[corner - 1] ?? insidePoint(bed.outline), bed: bed.id };
  }
  const path = (plan.paths ?? []).find(one => hasCode(text, 'path', one.id) || (one.name && text.includes(one.name)));
  if (path?.line?.length) return { point: alongLine(path.line), bed: null };
  const yard = yardOf(plan);
  const corner = Number(/\bcorner (\d+)\b/.exec(text)?.[1]);
  if (yard && corner >= 1 && corner <= yard.length) return { point: yard[corner - 1], bed: null };
  if (yard && /\b(yard|ground)\b/.test(text)) return { point: yard[0], bed: null };
  return null;
}

/** The bed the words name, the first of several, the longest code first, so that bed A1 is not read as bed A. */
function bedNamed(plan, text) {
  const beds = [...bedsOf(plan)].sort((a, b) => b.id.length - a.id.length);
  return beds.find(bed => hasCode(text, 'bed', bed.id) || hasCode(text, 'beds', bed.id)) ?? null;
}

function hasCode(text, word, code) {
  if (!code) return false;
  const at = text.toLowerCase().indexOf(`${word} ${String(code).toLowerCase()}`);
  if (at < 0) return false;
  const after = text.charAt(at + word.length + 1 + String(code).length);
  return !/[\p{L}\d]/u.test(after);
}

function wallMiddle(bed, wall) {
  if (!wall) return null;
  const side = bed.own.findIndex((_, i) => wallLetter(i) === wall);
  if (side < 0) return null;
  const [a, b] = [bed.own[side], bed.own[(side + 1) % bed.own.length]];
  return placePoint([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], bed.placement);
}

function alongLine(line) {
  const half = Math.floor((line.length - 1) / 2);
  const [a, b] = [line[half], line[half + 1] ?? line[half]];
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}
