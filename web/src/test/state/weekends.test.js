import { clock, dayName, fullness, waitsOver, weekendsOf } from '../../main/resources/META-INF/resources/state/weekends.js';
import { equal, test } from '../trial.js';

test('a day is named with its date where it has one', () => {
  equal(dayName({ day: 'sat', date: '2027-03-06' }), 'Sat 6 Mar');
  equal(dayName({ day: 'sun', date: null }), 'Sun');
});

test('minutes of a day are told by the clock', () => {
  equal(clock('09:00', 105), '10:45');
  equal(clock('08:30', 30), '9:00');
});

test('a day fills like a bucket and never over its rim', () => {
  equal([{ there: 12, used: 3 }, { there: 12, used: 14 }, { there: 0, used: 0 }].map(fullness), [0.25, 1, 0]);
});

test('days stand under their weekend', () => {
  const days = [{ number: 0, weekend: 1 }, { number: 1, weekend: 1 }, { number: 7, weekend: 2 }];
  equal(weekendsOf({ days }).map(({ weekend, days: own }) => [weekend, own.length]), [[1, 2], [2, 1]]);
  equal(weekendsOf(null), []);
});

test('a wait lies over the days between its two tasks', () => {
  const weekends = { waits: [{ fromDay: 0, toDay: 7 }] };
  equal([0, 1, 6, 7].map(day => waitsOver(weekends, day).length), [0, 1, 1, 0]);
});
