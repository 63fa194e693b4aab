import { addWork, readUntil, readExclusions, readMargin, readTax, removeWork, setQuote, setWork } from '../../main/resources/META-INF/resources/state/quote.js';
import { equal, holds, test } from '../trial.js';

test('a quote keeps what is told, and an emptied field says nothing', () => {
  const plan = setQuote({ client: 'School', margin: 18 })({ beds: [] });
  equal(plan.quote, { client: 'School', margin: 18 });
  equal(setQuote({ client: undefined, margin: undefined })(plan), { beds: [] });
});

test('work is added, changed and taken off by its place', () => {
  const plan = addWork({ what: 'Filling', hours: 22 })(addWork({ what: 'Building', hours: 46 })({}));
  equal(setWork(1, { rate: 19.5 })(plan).quote.labour[1], { what: 'Filling', hours: 22, rate: 19.5 });
  equal(removeWork(0)(plan).quote.labour, [{ what: 'Filling', hours: 22 }]);
  equal(removeWork(0)(removeWork(0)(plan)), {});
  equal(setWork(5, { rate: 1 })(plan), plan);
});

test('entries name what is wrong and a way out', () => {
  equal(readMargin(' 18 % '), { value: 18 });
  equal(readMargin(''), { value: undefined });
  holds(readMargin('100').error.includes('99.9 or less'), 'a margin of 100');
  equal(readTax('20 %'), { value: 20 });
  holds(readTax('101').error.includes('0 to 100'), 'a tax of 101');
  equal(readUntil('2027-03-31'), { value: '2027-03-31' });
  holds(readUntil('2027-02-30').error && readUntil('31.3.2027').error, 'no such days');
  equal(readExclusions(' Plants \n\nWater supply'), { value: ['Plants', 'Water supply'] });
  holds(readExclusions('x'.repeat(503)).error.startsWith('A line is 3 letters too long'), 'a long line');
});
