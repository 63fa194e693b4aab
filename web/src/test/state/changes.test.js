import { aboutOrder, compareSlips, money, moneyIn, moneySign, packsText, savedBeside, savedOf, sumOf } from '../../main/resources/META-INF/resources/state/changes.js';
import { equal, test } from '../trial.js';

const line = (item, cost, more = {}) => ({ item, cost, need: 1, saved: '0.00', packs: [{ pack: '4800', count: 10 }], ...more });

test('each line stands before and after, and what is gone is told, also where no saving is proved', () => {
  const before = { lines: [line('timber', '360.00'), line('soil', '55.00'), line('pegs', '5.00')] };
  const after = { lines: [line('soil', '55.00'), line('timber', '396.00'), line('oil', '30.00')], savings: [], saved: null };
  equal(compareSlips(before, after).map(part => [part.line.item, part.state, part.was?.cost ?? null]),
    [['soil', 'same', null], ['timber', 'changed', '360.00'], ['oil', 'new', null], ['pegs', 'gone', null]]);
});

test('a first look knows no savings: its lines stay where they were, and none is changed for that alone', () => {
  const before = { lines: [line('timber', '360.00', { saved: '36.00' }), line('soil', '55.00')], saved: '36.00' };
  const after = { lines: [line('oil', '30.00'), line('soil', '57.00'), line('timber', '360.00')].map(one => ({ ...one, saved: null })), saved: null };
  equal(compareSlips(before, after).map(part => [part.line.item, part.state]), [['timber', 'same'], ['soil', 'changed'], ['oil', 'new']]);
});

test('the first slip is no change', () => {
  equal(compareSlips(null, { lines: [line('soil', '55.00')] }).map(part => part.state), ['same']);
});

test('sums are exact to the penny, where floating point is not: 0.1 + 0.2 = 0.30', () => {
  equal(sumOf(['0.1', '0.2']), '0.30');
  equal(sumOf(Array.from({ length: 1000 }, () => '0.07')), '70.00');
  equal(sumOf(['-1.50', '0.25']), '-1.25');
  equal([sumOf(['1', null]), sumOf([])], [null, '0.00']);
  equal(savedOf({ saved: '213.00' }), '213.00');
  equal(savedOf(null), '0.00');
  const pounds = sum => money(sum, 'GBP');
  equal(savedBeside({ savings: [{ item: 'delivery', saved: '70.00' }, { item: 'unproved', saved: '-9.50' }] }, pounds),
    '£70.00 of it on deliveries. £9.50 is taken off, as cheaper ways to buy bed by bed are not ruled out.');
  equal(savedBeside({ savings: [{ item: 'delivery', saved: '-5.00' }] }, pounds), 'Deliveries cost £5.00 more, taken off.');
  equal(savedBeside({ savings: [] }, pounds), '');
});

test('money carries its sign, a missing price is said', () => {
  equal([money('897.70', 'GBP'), money(null, 'GBP')], ['£897.70', 'no price']);
  equal(money('5.00', 'not a code'), '5.00 not a code');
  equal(packsText(line('timber', '1')), '10 × 4800');
});

test('sums in a sentence of the server are written as all money of the page', () => {
  equal(moneyIn('Bed A 100 mm narrower: 1 board fewer, GBP 36.00 less. At most GBP 1250.50 could be saved.', 'GBP'),
    'Bed A 100 mm narrower: 1 board fewer, £36.00 less. At most £1,250.50 could be saved.');
  equal(moneyIn('Most beds: 4 beds, at least USD 36', 'USD'), 'Most beds: 4 beds, at least $36.00');
  equal(moneyIn('GBP 3 stays where the garden pays in another currency', 'USD'), 'GBP 3 stays where the garden pays in another currency');
  equal(moneyIn('GBP 3 stays while no currency is known', undefined), 'GBP 3 stays while no currency is known');
  equal([moneySign('GBP'), moneySign('USD'), moneySign(undefined)], ['£', '$', '']);
});

test('free delivery is told by the goods, as on the slip of paper', () => {
  const told = more => aboutOrder({ goods: '60.00', freeOver: null, shortOfFree: null, overLimit: false, tax: '0.00', ...more }, 'GBP');
  equal(told({}), '');
  equal(told({ freeOver: '50.00', overLimit: true }), 'Brought free: goods are over £50.00.');
  equal(told({ freeOver: '75.00', shortOfFree: '15.01' }), '£15.01 more in goods would come free.');
  equal(told({ goods: '0.00', freeOver: '50.00' }), ''); // without prices nothing is known, though nothing is charged
  equal(told({ goods: '50.00', freeOver: '50.00' }), '');
  equal(told({ leadDays: 1 }), 'Order 1 day ahead.');
});
