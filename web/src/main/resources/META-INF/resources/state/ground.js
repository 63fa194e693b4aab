import { cornersOf } from '../geometry/survey.js';

/** Changes to the ground of a garden: values deep in the document, and lists in it. */

/** What stands at a path of keys, undefined where nothing does. @param {(string|number)[]} path */
export const valueAt = (plan, path) => path.reduce((value, key) => value?.[key], plan);

/** Sets a value deep in the document; undefined takes it away, and objects that are empty then go with it. */
export function put(path, value) {
  return plan => (valueAt(plan, path) === value ? plan : setIn(plan, path, value));
}

function setIn(whole, [key, ...rest], value) {
  const inner = rest.length ? setIn(whole?.[key] ?? {}, rest, value) : value;
  if (Array.isArray(whole)) return inner === undefined ? whole.toSpliced(key, 1) : whole.with(key, inner);
  const { [key]: _gone, ...others } = whole ?? {};
  const empty = inner === undefined || (rest.length && !Array.isArray(inner) && Object.keys(inner).length === 0);
  return empty ? others : { ...whole, [key]: inner };
}

/** Puts something at the end of a list, which is begun where there is none. */
export const addTo = (path, ...items) => plan => setIn(plan, path, [...(valueAt(plan, path) ?? []), ...items]);

/** Takes one out of a list; a list that is empty then goes too. */
export function dropFrom(path, index) {
  return plan => {
    const left = (valueAt(plan, path) ?? []).toSpliced(index, 1);
    return setIn(plan, path, left.length ? left : undefined);
  };
}

/** The three ways of taping a yard, and the drawn one. */
export const WAYS = [['drawn', 'drawn by its corners'], ['tapes', 'two tapes or offsets from a baseline'], ['walk', 'walked round, side by side']];

export function wayOf(plan) {
  const survey = plan.ground?.survey;
  return !survey ? 'drawn' : survey.walk?.length ? 'walk' : 'tapes';
}

const round = value => Math.round(value * 10) / 10;
const apart = (a, b) => round(Math.hypot(b[0] - a[0], b[1] - a[1]));

/** Says the same yard in another way, so that the tapes of the notebook can be written over it one by one. */
export function saidBy(way) {
  return plan => {
    if (wayOf(plan) === way) return plan;
    const corners = plan.ground?.outline ?? cornersOf(plan.ground?.survey) ?? [[0, 0], [12000, 0], [12000, 9000], [0, 9000]];
    const { outline: _outline, survey: _survey, ...rest } = plan.ground ?? {};
    if (way === 'drawn') return { ...plan, ground: { ...rest, outline: corners.map(corner => corner.map(round)) } };
    const [from, to] = corners;
    if (way === 'tapes') {
      const fixed = corners.map((corner, i) => (i < 2 ? { along: i === 0 ? 0 : apart(from, to), off: 0 } : taped(corner, from, to)));
      return { ...plan, ground: { ...rest, survey: { base: { from, to }, corners: fixed } } };
    }
    const walk = corners.map((corner, i) => {
      const next = corners[(i + 1) % corners.length];
      const after = corners[(i + 2) % corners.length];
      const turn = Math.atan2(after[1] - next[1], after[0] - next[0]) - Math.atan2(next[1] - corner[1], next[0] - corner[0]);
      const degrees = ((turn * 180 / Math.PI + 540) % 360) - 180;
      return { length: apart(corner, next), turn: Math.round(degrees * 1000) / 1000 };
    });
    return { ...plan, ground: { ...rest, survey: { base: { from, to }, walk } } };
  };
}

function taped(corner, from, to) {
  const left = (to[0] - from[0]) * (corner[1] - from[1]) - (to[1] - from[1]) * (corner[0] - from[0]) >= 0;
  return { first: apart(from, corner), second: apart(to, corner), ...(left ? {} : { side: 'right' }) };
}

/** The front side of a yard, from its left end to its right end: the house wall. Null without a yard. */
export function houseWall(yard) {
  if (!yard) return null;
  const front = Math.min(...yard.map(([, y]) => y));
  const ends = yard.filter(([, y]) => y - front < 1).map(([x]) => x);
  const [left, right] = [Math.min(...ends), Math.max(...ends)];
  return right > left ? [[round(left), round(front)], [round(right), round(front)]] : null;
}
