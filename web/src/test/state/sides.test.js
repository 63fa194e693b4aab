import { area, walked } from '../../main/resources/META-INF/resources/geometry/outline.js';
import { readSides } from '../../main/resources/META-INF/resources/state/sides.js';
import { equal, near, test } from '../trial.js';

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
  equal(readSides(`10', 5'`, 300, 'imperial').error, `2 sides missing. Write them all, such as 8', 4', 8', 4'.`);
  equal(readSides('3000, about 1500', 300).error.startsWith('Side 2: '), true);
});

test('a six-sided bed turns by 60 degrees at each end; 3 x sqrt(3) / 2 m2, worked by hand', () => {
  const { value } = readSides(Array(6).fill('1000 left 60').join(', '), 300);
  equal(value[5], { length: 1000, turn: 60 });
  near(area(walked(value).outline), 2598076.2, 0.1);
});

test('a rectangle of 2400 x 1200 with a corner of 300 cut off has 2.88 - 0.045 = 2.835 m2, worked by hand', () => {
  const { value } = readSides("2400, 900 left 45, 424.3 l 45°, 2100, 1200", 300);
  near(area(walked(value).outline), 2835000, 100);
  equal(readSides('1000 left 120, 1000 l 120, 1000 left 120', 300).value.length, 3);
  equal(readSides('1000 left 60, 1000 left 60, 1000, 1000', 300).error, 'The turns come to 300 degrees to the left; once round is 360. Check the angle at the end of each side.');
  equal(readSides('1000 right 90, 1000', 300).error.startsWith('2 sides missing'), true);
});
