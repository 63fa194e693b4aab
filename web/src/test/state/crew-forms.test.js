import { CREW_LISTS, readDates, readDays, readStart, readTime, startOn, writtenDates } from '../../main/resources/META-INF/resources/state/crew-forms.js';
import { readZone } from '../../main/resources/META-INF/resources/state/ground-forms.js';
import { equal, holds, test } from '../trial.js';

const PLAN = { crew: { start: '2027-03-06', holidays: ['2027-04-02'], people: [{ name: 'Ada', away: ['2027-03-13'] }] } };

test('days of the week are read in any order and by whole names', () => {
  equal(readDays('Sunday, fri').value, ['fri', 'sun']);
  equal(readDays(' ').value, undefined);
  for (const wrong of ['someday', 's', 'sat, x', 'sat, sunsat']) holds(readDays(wrong).error.includes('is no day'), wrong);
});

test('dates are read one by one and in runs, and written as runs', () => {
  equal(readDates('2027-04-02 to 2027-04-05, 2027-03-20', PLAN).value, ['2027-03-20', '2027-04-02', '2027-04-03', '2027-04-04', '2027-04-05']);
  equal(writtenDates(['2027-04-03', '2027-03-20', '2027-04-02']), '2027-03-20, 2027-04-02 to 2027-04-03');
  equal(readDates('', {}).value, undefined);
  holds(readDates('2027-03-05', PLAN).error.includes('is past'), 'before the first day');
  holds(readDates('2027-03-20', {}).error.includes('first day of work'), 'no first day');
  holds(readDates('2027-04-05 to 2027-04-02', PLAN).error.includes('comes before'), 'wrong way round');
  holds(readDates('2027-02-30', PLAN).error, 'no such date');
  holds(readDates('2027-03-06 to 2029-03-06', PLAN).error.includes('400'), 'too many');
});

test('the first day does not pass dates of the crew', () => {
  equal(readStart('2027-03-13', PLAN).value, '2027-03-13');
  equal(readStart('2027-03-20', PLAN).error, '1 date of the crew lies before that. Take it out first.');
  holds(readStart('', PLAN).error.startsWith('2 dates'), 'taken away');
  equal(readStart('', { crew: { start: '2027-03-06' } }), { value: undefined });
});

test('what was done stays on its date when the first day moves, and is not left before it', () => {
  const plan = { crew: { start: '2027-03-06' }, tally: { day: 8, done: [{ task: 'a', day: 0 }, { task: 'b' }, { task: 'c', on: '2027-03-07' }] } };
  equal(startOn('2027-02-27')(plan), { crew: { start: '2027-02-27' }, tally: { day: 15, done: [{ task: 'a', day: 7 }, { task: 'b' }, { task: 'c', on: '2027-03-07' }] } });
  equal(startOn('2027-03-06')(startOn('2027-02-27')(plan)), plan);
  equal(startOn('2027-03-13')({ crew: { start: '2027-03-06' }, tally: { bought: [{ item: 'finish', count: 1 }] } }).tally, { bought: [{ item: 'finish', count: 1 }] });
  equal(startOn('2027-03-05')({ crew: { start: '2027-03-06' }, tally: { day: 8 } }).tally, { day: 9 });
  equal(startOn('2027-03-05')({ crew: { start: '2027-03-06' } }), { crew: { start: '2027-03-05' } });
  equal(startOn('2027-03-13')({ tally: plan.tally }).tally, plan.tally);
  holds(readStart('2027-03-07', plan).error.startsWith('Work was done on 2027-03-06.'), 'a tick before the first day');
  holds(readStart('', plan).error.startsWith('Work was done on 2027-03-06, which needs'), 'no first day');
  equal(readStart('', { tally: { done: [{ task: 'a', day: 3 }] } }), { value: undefined });
  const later = { ...plan, tally: { done: [{ task: 'b', day: 1 }] } };
  equal(readStart('2027-03-07', later).value, '2027-03-07');
  equal(startOn('2027-03-07')(later).tally, { done: [{ task: 'b', day: 0 }], day: 0 });
  holds(readStart('2027-03-08', later).error, 'a day after it');
});

test('a day begins by 22:00', () => {
  equal(readTime('8:30').value, '08:30');
  for (const wrong of ['8', '22:30', '23:00', '9:75']) holds(readTime(wrong).error, wrong);
});

test('the first press names the two who were reckoned with', () => {
  const { fresh, fields } = CREW_LISTS.people;
  equal(fresh({}, 0).map(({ name }) => name), ['You', 'Helper']);
  equal(fresh({}, 2), [{ name: 'Helper 2' }]);
  const lifts = fields.find(({ key }) => key[0] === 'lifts');
  equal(lifts.becomes({ name: 'Ada' }, 'false'), { name: 'Ada', lifts: false });
  equal(lifts.becomes({ name: 'Ada', lifts: false }, 'true'), { name: 'Ada' });
});

test('a time zone is one of the list, in any case, or told to be none', () => {
  equal([readZone('Europe/London').value, readZone(' europe/berlin').value, readZone('UTC').value, readZone(' ').value], ['Europe/London', 'Europe/Berlin', 'UTC', undefined]);
  for (const wrong of ['12x,,4 q', 'London', 'Europe/Nowhere']) holds(readZone(wrong).error.startsWith(`“${wrong}” is no time zone`), wrong);
});
