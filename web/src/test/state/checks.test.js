import { leastSide, nameCheck, placeCheck, readCourses, readTurn, readWeekend, sideCheck } from '../../main/resources/META-INF/resources/state/checks.js';
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

test('courses and weekends are whole numbers in their bounds', () => {
  equal([readCourses('3'), readWeekend(' 12 ')], [{ value: 3 }, { value: 12 }]);
  for (const text of ['', '0', '-1', '2.5', 'three', '21', '1e3']) holds(/1 to 20/.test(readCourses(text).error), text);
});

test('a turn is kept from 0 to below 360', () => {
  equal(['90', '', '-90', '450', '12,5°'].map(text => readTurn(text).value), [90, 0, 270, 90, 12.5]);
  holds(readTurn('left').error, 'a word is no turn');
});

test('places and names have an end', () => {
  equal([placeCheck(5), nameCheck('x')], [null, null]);
  holds(placeCheck(1e9) && nameCheck('x'.repeat(201)), 'refused');
});
