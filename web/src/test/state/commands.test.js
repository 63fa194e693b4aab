import { copyBed, mirrorBed, moveBed, nameGarden, nudgeBed, ownBed, placeBed, removeBed, setBed, shapeBed, showIn, stageBed, standBed, turnBed } from '../../main/resources/META-INF/resources/state/commands.js';
import { placePoint } from '../../main/resources/META-INF/resources/geometry/outline.js';
import { bedOf, bedsOf } from '../../main/resources/META-INF/resources/state/plan.js';
import { equal, holds, test } from '../trial.js';

const frozen = value => {
  if (value && typeof value === 'object') Object.values(value).forEach(frozen);
  return Object.freeze(value);
};
const plan = frozen({ format: 1, name: 'Yard', types: [{ id: 'T', width: 2400, depth: 1200, courses: 2 }],
  beds: [{ id: 'A', width: 2400, depth: 1200, courses: 3, at: [1000, 2000] }, { id: 'B', type: 'T', at: [5000, 0] }] });

test('commands never change the plan they are given: it is frozen here', () => {
  for (const command of [standBed({ width: 900, depth: 900 }), moveBed('A', [1, 2]), nudgeBed('A', 5, 5), turnBed('A', 90), mirrorBed('B'),
    setBed('A', { courses: 4 }), removeBed('A'), copyBed('B', [0, 0]), ownBed('B'), nameGarden('Other')]) {
    holds(command(plan) !== plan, 'a new plan');
  }
});

test('a bed nobody knows leaves the plan as it is', () => {
  for (const command of [moveBed('X', [1, 2]), nudgeBed('X', 1, 1), turnBed('X', 90), mirrorBed('X'), setBed('X', {}), removeBed('X'), copyBed('X', [0, 0])]) {
    equal(command(plan) === plan, true);
  }
});

test('a bed stands with the first free code', () => {
  equal(standBed({ width: 900, depth: 900, courses: 1 })(plan).beds[2], { id: 'C', width: 900, depth: 900, courses: 1 });
  const all = { beds: Array.from({ length: 26 }, (_, i) => ({ id: String.fromCharCode(65 + i) })) };
  equal(standBed({ width: 900 })(all).beds[26].id, 'AA');
});

test('a new bed has no code of one that is gone and of which the tally or the snag list tells', () => {
  const told = { ...plan, tally: { done: [{ task: 'C.course-1' }, { task: 'setting-out' }], boards: [{ cut: ['D-1A', 'D-1A+E-1C'], spoiled: ['F-2B'] }] }, handOver: { snags: [{ bed: 'H', text: 'Chipped.' }] } };
  equal(standBed({ width: 900 })(told).beds[2].id, 'G');
  equal(copyBed('B', [0, 4000])({ ...told, beds: [...told.beds, { id: 'G' }] }).beds[3].id, 'I');
});

test('a move is kept to a tenth of a millimetre, and no move is no step', () => {
  equal(moveBed('A', [1234.56, -7])(plan).beds[0].at, [1234.6, -7]);
  equal(moveBed('A', [1000, 2000])(plan) === plan, true);
  equal(nudgeBed('A', -100, 1)(plan).beds[0].at, [900, 2001]);
});

test('a quarter turn keeps the middle: 2400 x 1200 at (1000, 2000) has its middle at (2200, 2600)', () => {
  const turned = turnBed('A', 90)(plan);
  equal(turned.beds[0], { id: 'A', width: 2400, depth: 1200, courses: 3, at: [2800, 1400], turn: 90 });
  equal(turnBed('A', -90)(turned).beds[0], plan.beds[0]);
  equal(mirrorBed('A')(mirrorBed('A')(plan)).beds[0], plan.beds[0]);
});

test('a placement is set whole', () => {
  equal(bedOf(placeBed('A', { at: [0, 0], turn: 180, mirror: true })(plan), 'A').placement, { at: [0, 0], turn: 180, mirror: true });
});

test('fields are set and taken away', () => {
  const named = setBed('A', { name: 'Herbs' })(plan);
  equal(named.beds[0].name, 'Herbs');
  equal('name' in setBed('A', { name: undefined })(named).beds[0], false);
});

test('a stage is written under its name of today', () => {
  equal(stageBed('A', 2)({ beds: [{ id: 'A', weekend: 3 }] }).beds, [{ id: 'A', stage: 2 }]);
});

test('a bed of a type becomes its own with the figures it had', () => {
  const own = ownBed('B')(plan);
  equal(own.beds[1], { id: 'B', at: [5000, 0], width: 2400, depth: 1200, courses: 2 });
  equal(bedsOf(own)[1].outline, bedsOf(plan)[1].outline);
});

test('a copy follows its type and gets a code of its own', () => {
  equal(copyBed('B', [0, 4000])(plan).beds[2], { type: 'T', at: [0, 4000], id: 'C' });
});

test('a rectangle with a wall moved stays a rectangle, and what was not moved stays where it lies', () => {
  for (const placement of [{}, { turn: 90 }, { turn: 180, mirror: true }]) {
    const plan = { beds: [{ id: 'A', width: 2000, depth: 1000, at: [4000, 3000], ...placement }] };
    const own = [[-300, 0], [2000, 0], [2000, 1000], [-300, 1000]];
    const next = shapeBed('A', own)(plan);
    const before = bedsOf(plan)[0];
    equal([next.beds[0].width, next.beds[0].depth, next.beds[0].outline], [2300, 1000, undefined]);
    equal([...bedsOf(next)[0].outline].sort(), [...own.map(corner => placePoint(corner, before.placement))].sort());
  }
});

test('an outline of its own takes the place of walls that were walked', () => {
  const plan = { beds: [{ id: 'A', walls: [2000, 1000, 2000, 1000].map(length => ({ length })), at: [0, 0] }] };
  const next = shapeBed('A', [[0, 0], [2000, 0], [2000, 1200], [0, 1200]])(plan);
  equal([next.beds[0].walls, next.beds[0].outline[2]], [undefined, [2000, 1200]]);
});

test('lengths are shown in feet and inches and back, and nothing else changes', () => {
  const plan = { name: 'A', beds: [{ id: 'A', width: 2400, depth: 1200 }] };
  const feet = showIn('imperial')(plan);
  equal(feet, { ...plan, units: 'imperial' });
  equal(showIn('metric')(feet), plan);
  holds(showIn('metric')(plan) === plan, 'another plan');
});

test('a shape that was dragged in feet is kept to a tenth of a millimetre', () => {
  const plan = { beds: [{ id: 'A', width: 2743.2, depth: 914.4, at: [0, 0] }, { id: 'L', outline: [[0, 0], [2743.2, 0], [2743.2, 914.4], [0, 914.4]], at: [0, 3000] }] };
  const drawn = [[0, 0], [177.79999999999998 + 2743.2, 0], [177.79999999999998 + 2743.2, 914.4000000000001], [0, 914.4000000000001]];
  equal(shapeBed('A', drawn)(plan).beds[0], { id: 'A', width: 2921, depth: 914.4, at: [0, 0] });
  equal(shapeBed('L', drawn)(plan).beds[1].outline, [[0, 0], [2921, 0], [2921, 914.4], [0, 914.4]]);
});
