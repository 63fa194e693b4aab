import { leastSide, lengthCheck, partCheck, placeCheck, readCourses, readName, readTurn, readStage, sideCheck, stretchCheck } from '../../main/resources/META-INF/resources/state/checks.js';
import { readLength } from '../../main/resources/META-INF/resources/geometry/length.js';
import { equal, holds, test } from '../trial.js';

const plan = { ground: { outline: [[0, 0], [12000, 0], [12000, 9000], [0, 9000]] } };

test('a side leaves 300 or twice the timber inside and is three timbers long', () => {
  equal([leastSide(100), leastSide(75), leastSide(200)], [500, 450, 800]);
});

test('a side that is nothing, too small or longer than the yard is refused with the amount and a way out', () => {
  const check = sideCheck(plan, 100, 'width');
  equal(check(2400), null);
  equal(check(500), null);
  equal(check(499), '1 too small: walls of 100 need 500 to leave 300 inside. Write 500 or more.');
  equal(check(0), '0 is no width. Write 500 or more.');
  equal(check(-5), '-5 is no width. Write 500 or more.');
  equal(check(12140), '140 longer than the yard, 12000. Write 12000 or less.');
  holds(sideCheck({}, 100, 'depth')(1e9).startsWith('999900000 longer'), 'a limit without a yard');
});

test('courses and stages are whole numbers in their bounds', () => {
  equal([readCourses('3'), readStage(' 12 ')], [{ value: 3 }, { value: 12 }]);
  for (const text of ['', '0', '-1', '2.5', 'three', '21', '1e3']) holds(/1 to 20/.test(readCourses(text).error), text);
});

test('a turn is kept from 0 to below 360', () => {
  equal(['90', '', '-90', '450', '12,5°'].map(text => readTurn(text).value), [90, 0, 270, 90, 12.5]);
  holds(readTurn('left').error, 'a word is no turn');
});

test('places and names have an end', () => {
  equal([placeCheck(5), readName(' x ')], [null, { value: 'x' }]);
  holds(placeCheck(1e9) && readName('x'.repeat(201)).error.startsWith('1 letters too many'), 'refused');
});

test('a part of a shape leaves what the rest needs', () => {
  const check = partCheck(3000, 300, 500);
  equal(check(1200), null);
  equal(check(2600), '100 too large: 500 must stay of 3000. Write 2500 or less.');
  equal(check(200), '100 too small. Write 300 or more.');
  holds(partCheck(700, 300, 500)(300).startsWith('100 too little room'), 'no room at all');
});

test('a wall cannot be drawn in until another has no room for its joints', () => {
  const bed = { section: { thickness: 100 }, own: [[0, 0], [3000, 0], [3000, 1500], [1800, 1500], [1800, 2400], [0, 2400]] };
  equal(stretchCheck(bed, 0, 3300), null);
  equal(stretchCheck(bed, 0, 200), '100 too short: two joints need 300. Write 300 or more.');
  equal(stretchCheck(bed, 0, 2000), 'Wall C would be 200, 100 too short for two joints. Write 2100 or more.');
});

test('a garden in feet is told its limits in feet, and what is written from them is enough', () => {
  const plan = { units: 'imperial', ground: { outline: [[0, 0], [6096, 0], [6096, 3048], [0, 3048]] } };
  const width = sideCheck(plan, 152.4, 'width');
  equal(width(304.8), '1\' too small: walls of 6" need 2\' to leave 1\' inside. Write 2\' or more.');
  equal(width(7620), '5\' longer than the yard, 20\'. Write 20\' or less.');
  equal(lengthCheck(100, 30000, 'imperial')(50.8), '1 15/16" too short. Write 3 15/16" or more.');
  equal(lengthCheck(100, 30000, 'metric')(30001), '1 too long. Write 30000 or less.');
  for (let least = 100; least < 400; least += 0.7) {
    const limit = Math.round(least * 10) / 10;
    const way = /Write (.*) or more/.exec(lengthCheck(limit, 1e5, 'imperial')(1))[1];
    equal(lengthCheck(limit, 1e5, 'imperial')(readLength(way).mm), null, way);
    const less = /Write (.*) or less/.exec(lengthCheck(1, limit, 'imperial')(1e4))[1];
    equal(lengthCheck(1, limit, 'imperial')(readLength(less).mm), null, less);
  }
});
