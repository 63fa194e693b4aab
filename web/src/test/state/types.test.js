import { differsAsBuilt, exceptionsOf, followType, makeType, readTypes, removeType, setDefaults, setType, standType } from '../../main/resources/META-INF/resources/state/types.js';
import { bedsOf } from '../../main/resources/META-INF/resources/state/plan.js';
import { equal, holds, test } from '../trial.js';

const plan = {
  types: [{ id: 'T1', width: 2400, depth: 1200, courses: 3 }],
  beds: [{ id: 'A', type: 'T1', at: [0, 0] }, { id: 'B', type: 'T1', at: [5000, 0], courses: 4, turn: 90, base: 'open' }, { id: 'C', width: 1000, depth: 900, liner: false, name: 'Herbs', at: [9, 9] }],
};

test('a type counts its placements and names where they differ', () => {
  const [type] = readTypes(plan);
  equal([type.beds.map(bed => bed.id), type.exceptions], [['A', 'B'], [{ bed: 'B', keys: ['courses', 'base'] }]]);
  equal(exceptionsOf(plan, 'C'), []);
});

test('a bed becomes the first of a type and looks as before', () => {
  const made = makeType('C')(plan);
  equal(made.types[1], { id: 'T2', width: 1000, depth: 900, liner: false });
  equal(made.beds[2], { id: 'C', name: 'Herbs', at: [9, 9], type: 'T2' });
  equal(bedsOf(made)[2].outline, bedsOf(plan)[2].outline);
  holds(makeType('A')(plan) === plan, 'a placement became another type');
});

test('what a type is given all its placements have, but for what they say themselves', () => {
  const changed = setType('T1', { courses: 2, depth: 1000 })(plan);
  equal(bedsOf(changed).slice(0, 2).map(bed => [bed.courses, bed.size.depth]), [[2, 1000], [4, 1000]]);
  const followed = followType('B')(changed);
  equal([bedsOf(followed)[1].courses, followed.beds[1]], [2, { id: 'B', type: 'T1', at: [5000, 0], turn: 90 }]);
});

test('food is the bed\'s own word: a type neither takes it over nor away', () => {
  const grown = { ...plan, beds: plan.beds.map(bed => ({ ...bed, food: true })) };
  const made = makeType('C')(grown);
  equal([made.types[1].food, made.beds[2].food], [undefined, true]);
  const followed = followType('B')(grown);
  equal([followed.beds[1].food, differsAsBuilt(followed, 'B')], [true, []]);
  holds(followType('B')(followed) === followed, 'it changed again');
});

test('one more is stood, and a type that is followed is not taken away', () => {
  equal(standType('T1', [1, 2])(plan).beds[3], { id: 'D', type: 'T1', at: [1, 2] });
  holds(removeType('T1')(plan) === plan && standType('T9', [0, 0])(plan) === plan, 'it was');
  equal(removeType('T1')({ ...plan, beds: [] }).types, []);
});

test('the garden\'s usual is written and taken back', () => {
  const set = setDefaults({ courses: 2 })({ beds: [] });
  equal(set.defaults, { courses: 2 });
  equal(Object.keys(setDefaults({ courses: undefined })(set)), ['beds']);
});
