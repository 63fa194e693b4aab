import { dayAfter, endOf } from '../../main/resources/META-INF/resources/state/shares.js';
import { equal, test } from '../trial.js';

test('a day so many days later goes over the ends of months and years', () => {
  equal(dayAfter(new Date(2026, 11, 4, 23, 59), 90), '2027-03-04');
  equal(dayAfter(new Date(2028, 1, 28), 1), '2028-02-29');
});

test('a share lasts to the end of its day, or has no end', () => {
  equal(new Date(endOf('2027-12-31')).getTime(), new Date(2028, 0, 1).getTime() - 1);
  equal(endOf(''), null);
});
