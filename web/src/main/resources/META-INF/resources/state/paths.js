import { freeCode, withOne } from './fields.js';
import { USUAL } from './plan.js';

/** Changes to the paths of a garden, each a function plan => newPlan. A path is named by its place in the document. */

const pathsOf = plan => plan.paths ?? [];

const lengthOf = line => line.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - line[i][0], y - line[i][1]), 0);

/** @returns {{index: number, id: string, called: string, width: number, length: number, path: object}[]} */
export function readPaths(plan) {
  return pathsOf(plan).map((path, index) => ({
    index, id: String(path.id ?? ''), called: path.name || (path.id ? `Path ${path.id}` : `Path ${index + 1}`),
    width: path.width ?? USUAL.pathWidth, length: lengthOf(path.line ?? []), path,
  }));
}

/** @param {[number, number][]} line two points or more */
export const addPath = (line, width) => plan => ({
  ...plan, paths: [...pathsOf(plan), { id: freeCode('P', pathsOf(plan)), line, ...(width === USUAL.pathWidth ? {} : { width }) }],
});

/** Sets or, with undefined, takes away fields. */
export const setPath = (index, fields) => plan => withOne(plan, 'paths', index, fields);

export const removePath = index => plan => (pathsOf(plan)[index] ? { ...plan, paths: pathsOf(plan).toSpliced(index, 1) } : plan);

/** The paths that are made of nothing: drawn, and free of cost only so far. @returns {string[]} what they are called */
export const bare = plan => readPaths(plan).filter(({ path }) => !path.layers?.length).map(({ called }) => (called.startsWith('Path') ? called : `Path ${called}`));
