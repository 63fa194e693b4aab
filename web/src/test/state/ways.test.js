import { bedOf } from '../../main/resources/META-INF/resources/state/plan.js';
import { wayField, wayOut } from '../../main/resources/META-INF/resources/state/ways.js';
import { equal, holds, test } from '../trial.js';

const plan = { types: [{ id: 'T', width: 2400, depth: 1800, courses: 2, base: 'slatted', ties: { crossEvery: 1500 } }],
  beds: [{ id: 'A', type: 'T', at: [1000, 2000] }, { id: 'B', width: 3000, depth: 900, courses: 3, at: [5000, 2000] }],
  ground: { rims: [{ beds: ['A', 'B'] }] }, paths: [{ id: 'P', line: [[0, 0], [4000, 0]], width: 700 }] };

const done = (at, way, ...values) => wayOut(plan, at, { way, values }, null)(plan);

test('what is moved out of the way is moved by no less than was said', () => {
  equal(done({ bed: 'A' }, 'move-left', 400.03).beds[0].at, [599.9, 2000]);
  equal(done({ bed: 'B' }, 'move-apart', 'B', 500, [300.01, -400.01]).beds[1].at, [5300.1, 1599.9]);
});

test('a bed of a type is mended by itself and keeps what its type says beside', () => {
  equal(done({ bed: 'A' }, 'make-narrower', 1200).beds[0], { id: 'A', type: 'T', at: [1000, 2000], width: 2400, depth: 1200 });
  equal(done({ bed: 'A' }, 'bearers-apart', 350).beds[0].base, { kind: 'slatted', bearerEvery: 350 });
  equal(done({ bed: 'A' }, 'brackets').beds[0].ties, { crossEvery: 1500, brackets: true });
  equal(done({ bed: 'A' }, 'add-courses', 2).beds[0].courses, 4);
});

test('a group of rims that one bed is left in is no group', () => equal(done({ bed: 'A' }, 'take-out-of-group').ground, undefined));

test('a path that leaves the yard begins later or ends sooner', () => {
  equal(done({ path: 'P' }, 'begin-later', 500).paths[0].line, [[500, 0], [4000, 0]]);
  equal(done({ path: 'P' }, 'end-sooner', 500).paths[0].line, [[0, 0], [3500, 0]]);
});

test('a wall is shortened by its end, and the bed stays where it lies', () => {
  const next = done({ bed: 'B', wall: 'A' }, 'shorten-wall', 'A', 600);
  equal([next.beds[1].width, next.beds[1].at], [2400, [5000, 2000]]);
});

test('posts stand no further apart than they may', () => {
  const { supports } = bedOf(done({ bed: 'B' }, 'posts-at-most', 'A', 1100), 'B').whole.ties;
  equal(supports, [{ wall: 'A', at: 1000, by: 'post' }, { wall: 'A', at: 2000, by: 'post' }]);
});

test('a way that changes nothing or is for hands has a place, and none where nobody can help', () => {
  equal(wayOut(plan, { bed: 'B' }, { way: 'take-off-courses', values: [3] }, null), null);
  equal(wayOut(plan, { bed: 'X' }, { way: 'move-left', values: [3] }, null), null);
  equal(wayField({ bed: 'B' }, { way: 'name-base', values: [] }), { place: 'beds', field: 'build base.kind', bed: 'B', path: null });
  equal(wayField({ path: 'P' }, { way: 'give-layers', values: [] }), { place: 'paths', field: 'layers', bed: null, path: 'P' });
  holds(wayField({}, { way: 'ask-engineer', values: [] }) === null, 'nobody on the page is an engineer');
});
