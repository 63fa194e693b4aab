import { bare, addPath, readPaths, removePath, setPath } from '../../main/resources/META-INF/resources/state/paths.js';
import { equal, holds, test } from '../trial.js';

const plan = { paths: [{ id: 'P2', name: 'Spine', line: [[0, 0], [3000, 0], [3000, 4000]] }, { line: [[0, 0], [0, 500]], width: 900 }] };

test('paths are read with their length along the bends and the usual width', () => {
  equal(readPaths(plan).map(({ called, width, length }) => [called, width, length]), [['Spine', 1200, 7000], ['Path 2', 900, 500]]);
});

test('a new path has a code of its own and says only what is unusual', () => {
  const [, , added] = addPath([[0, 0], [1, 1]], 1200)(plan).paths;
  equal(added, { id: 'P1', line: [[0, 0], [1, 1]] });
  equal(addPath([[0, 0], [1, 1]], 600)({}).paths, [{ id: 'P1', line: [[0, 0], [1, 1]], width: 600 }]);
});

test('a path is changed and taken away by its place, and what changes nothing is no change', () => {
  equal(setPath(1, { width: 800, name: 'Side' })(plan).paths[1], { line: [[0, 0], [0, 500]], width: 800, name: 'Side' });
  holds(setPath(1, { width: 900 })(plan) === plan && setPath(7, { width: 1 })(plan) === plan && removePath(7)(plan) === plan, 'another plan');
  equal(setPath(0, { name: undefined })(plan).paths[0].name, undefined);
  equal(removePath(0)(plan).paths.length, 1);
});

test('paths without layers are named', () => {
  equal(bare({ paths: [{ id: 'P1', line: [] }, { name: 'Spine', line: [], layers: [{ material: 'bark', depth: 60 }] }, { name: 'Cross', line: [] }] }), ['Path P1', 'Path Cross']);
});
