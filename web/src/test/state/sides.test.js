import { area, walked } from '../../main/resources/META-INF/resources/geometry/outline.js';
import { readSides } from '../../main/resources/META-INF/resources/state/sides.js';
import { equal, test } from '../trial.js';

test('sides are walked round, an L of 3000 x 2400 without 1200 x 900 has 6.12 m2, worked by hand', () => {
  const { value } = readSides('3 m, 1500, 1200 right, 900, 1800 left, 2400', 300);
  equal(value[2], { length: 1200, turn: 'right' });
  equal(area(walked(value).outline), 6120000);
  equal(readSides('3000; 1500; 1200 r; 900; 1800; 2400', 300).value, value);
});

test('what does not close, turns wrong or is too short is told with its amount', () => {
  equal(readSides('3000, 1500, 1200 r, 900, 1800, 2316', 300).error, 'It does not close: the walk ends 84 from where it began. Check the sides, the last one first.');
  equal(readSides('3000, 1500, 1200, 900, 1800, 2400', 300).error.startsWith('2 left turns too many'), true);
  equal(readSides('3000, 1500, 240, 900', 300).error, 'Side 3 is 60 too short for two joints. Write 300 or more.');
  equal(readSides('3000, 1500', 300).error.startsWith('2 sides missing'), true);
  equal(readSides('3000, about 1500', 300).error.startsWith('Side 2: '), true);
});
