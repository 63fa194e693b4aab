import { kindOfKeepClear, LISTS, readBeds, readDay, readerOf, readLayers, writtenBy, writtenLayers } from '../../main/resources/META-INF/resources/state/ground-forms.js';
import { equal, holds, test } from '../trial.js';

const PLAN = { ground: { outline: [[0, 0], [12000, 0], [12000, 7000], [7000, 9500], [0, 9000]] } };

test('layers, beds and days are read with a way out', () => {
  equal(readLayers('sub-base 75; gravel 40', PLAN).value, [{ material: 'sub-base', depth: 75 }, { material: 'gravel', depth: 40 }]);
  equal(writtenLayers([{ material: 'sub-base', depth: 75 }, { material: 'gravel', depth: 40 }], PLAN), 'sub-base 75; gravel 40');
  const feet = { units: 'imperial' };
  equal(readLayers('sub-base 3"; gravel 1 1/2"', feet).value, [{ material: 'sub-base', depth: 76.2 }, { material: 'gravel', depth: 38.1 }]);
  equal(writtenLayers([{ material: 'sub-base', depth: 76.2 }, { material: 'gravel', depth: 38.1 }], feet), 'sub-base 3"; gravel 1 1/2"');
  equal(readLayers('gravel ½"; sub-base .5"', feet).value.map(layer => layer.depth), [12.7, 12.7]);
  equal(readLayers('gravel 2', feet).error, `“2” has no unit. Write 2', 2" or 2 mm.`);
  holds(readLayers('gravel 3 m', PLAN).error.includes('is no depth'), 'too deep');
  holds(readLayers('gravel', PLAN).error.includes('Write a material'), 'no depth');
  equal(readBeds('A, B', { beds: [{ id: 'A' }, { id: 'B' }] }).value, ['A', 'B']);
  holds(readBeds('A, X', { beds: [{ id: 'A' }] }).error.includes('no bed X'), 'stranger');
  equal(readDay('2026-03-20').value, '2026-03-20');
  for (const wrong of ['2026-02-30', '2026-13-01', '21 June']) holds(readDay(wrong).error, wrong);
});

test('in feet how far rims lie below the string has its unit', () => {
  const level = LISTS.rims.fields.find(field => field.key[0] === 'level');
  const feet = { units: 'imperial' };
  equal([readerOf(level, feet)(`1' 2"`), readerOf(level, PLAN)('300'), readerOf(level, PLAN)('-40'), readerOf(level, feet)(' ')], [{ value: 355.6 }, { value: 300 }, { value: -40 }, { value: undefined }]);
  holds(readerOf(level, feet)('4').error.includes('has no unit'), 'four of what');
  holds(readerOf(level, PLAN)('21 m').error.includes('-20000 to 20000 mm'), 'too deep');
  equal([writtenBy(level, 355.6, feet), writtenBy(level, 355.6, PLAN), writtenBy(level, undefined, feet)], [`1' 2"`, '355.6', '']);
});

test('levels begin with the three that a fall needs', () => {
  equal(LISTS.levels.fresh(PLAN, 0).length, 3);
  equal(LISTS.levels.fresh(PLAN, 3).length, 1);
  const feet = { units: 'imperial', ground: { outline: [[0, 0], [9906, 0], [9906, 7924.8], [0, 7924.8]] } };
  equal([LISTS.levels.fresh(feet, 1)[0].at, LISTS.levels.fresh(feet, 3)[0].at, LISTS.surfaces.fresh(feet)[0].outline[2]], [[9906, 0], [4953, 3962.4], [9906, 7924.8]]);
});

test('another kind keeps its place', () => {
  equal(kindOfKeepClear({ kind: 'cover', at: [1, 2] }, 'gate', PLAN), { kind: 'gate', hinge: [1, 2], leaf: 900, swing: 'in' });
  equal(kindOfKeepClear({ kind: 'gate', hinge: [1, 2], leaf: 900 }, 'tap', PLAN), { kind: 'tap', at: [1, 2] });
});

test('numbers outside their bounds are told', () => {
  const read = readerOf({ kind: 'number', least: -90, most: 90 }, PLAN);
  equal(read('51.75'), { value: 51.75 });
  holds(read('91').error.includes('outside'), 'too far north');
  holds(read('x').error.includes('no number'), 'no number');
});
