import { valueAt } from './ground.js';

/** What lies in the ground and can be taken hold of: paths, and what is to be kept clear. A thing is its path in the document. */

/** Where the points of a thing stand in the document, relative to it. */
const POINTS = ['line', 'outline', 'shape', 'at', 'hinge'];

const moved = (value, dx, dy) => (typeof value[0] === 'number'
  ? [Math.round((value[0] + dx) * 10) / 10, Math.round((value[1] + dy) * 10) / 10] : value.map(point => moved(point, dx, dy)));

/** Sets a value deep in the document; lists keep their length. */
function withValue(whole, [key, ...rest], value) {
  const inner = rest.length ? withValue(whole[key], rest, value) : value;
  return Array.isArray(whole) ? whole.with(key, inner) : { ...whole, [key]: inner };
}

/** Moves all of a thing. @param {(string|number)[]} path */
export const moveThing = (path, dx, dy) => plan => {
  const thing = valueAt(plan, path);
  if (!thing || (!dx && !dy)) return plan;
  const next = { ...thing };
  for (const key of POINTS) if (Array.isArray(next[key])) next[key] = moved(next[key], dx, dy);
  return withValue(plan, path, next);
};

/** Puts one point of an outline or a line somewhere else. @param {(string|number)[]} path to the point */
export const movePoint = (path, point) => plan => (valueAt(plan, path)
  ? withValue(plan, path, point.map(value => Math.round(value * 10) / 10)) : plan);

export const removeThing = path => plan => {
  const list = valueAt(plan, path.slice(0, -1));
  return list?.[path.at(-1)] ? withValue(plan, path.slice(0, -1), list.toSpliced(path.at(-1), 1)) : plan;
};

/** How a thing is called where it is spoken of. */
export function calledThing(plan, path) {
  const thing = valueAt(plan, path);
  if (!thing) return 'It';
  if (path[0] === 'paths') return thing.name ? `Path ${thing.name}` : `Path ${thing.id ?? path.at(-1) + 1}`;
  const kind = (thing.name ?? thing.kind ?? 'keep clear').replace('-', ' ');
  return `${kind.charAt(0).toUpperCase()}${kind.slice(1)}`;
}

/** Its points, and where in the document they stand. @returns {{list: [number, number][], at: (string|number)[], closed: boolean} | null} */
export function pointsOf(plan, path) {
  const thing = valueAt(plan, path);
  const key = thing && POINTS.find(one => Array.isArray(thing[one]));
  if (!key) return null;
  const single = typeof thing[key][0] === 'number';
  return { list: single ? [thing[key]] : thing[key], at: single ? [...path] : [...path, key], closed: key === 'outline', single };
}

/** The place of the page in which a thing is described. */
export const placeOfThing = path => (path[0] === 'paths' ? 'paths' : 'ground');
