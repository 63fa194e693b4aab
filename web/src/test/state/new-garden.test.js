import { shown } from '../../main/resources/META-INF/resources/geometry/length.js';
import { beginWith, currencyFor, newGarden } from '../../main/resources/META-INF/resources/state/new-garden.js';
import { equal, holds, test } from '../trial.js';

const lengthsOf = part => Object.values(part).flatMap(value => (typeof value === 'object' ? lengthsOf(value) : [value]));

test('a garden in feet begins with whole half inches, but for the saw cut of an eighth', () => {
  const { saw: { kerf, ...saw }, defaults: { section, courses, ...defaults }, catalogue: { sections: [timber] } } = newGarden('imperial', { name: 'N', yard: [12192, 9144] });
  equal([section, courses, shown(kerf, 'imperial')], ['6x6', 4, '1/8"']);
  const { stock, thickness, height } = timber;
  for (const mm of [...lengthsOf(saw), ...lengthsOf(defaults), thickness, height, ...stock.map(one => one.length), ...lengthsOf(beginWith('imperial'))]) {
    holds(Math.abs(mm / 12.7 - Math.round(mm / 12.7)) < 0.01, `${mm} mm is ${shown(mm, 'imperial')}`);
  }
});

test('the timber of a garden in feet is the dressed 6x6 of PS 20: 5 1/2 in square, in even feet', () => {
  const [timber] = newGarden('imperial', { name: 'N', yard: [1, 1] }).catalogue.sections;
  equal([timber.thickness, timber.height].map(mm => shown(mm, 'imperial')), ['5 1/2"', '5 1/2"']);
  equal(timber.stock.map(one => shown(one.length, 'imperial')), [`8'`, `10'`, `12'`, `16'`]);
});

test('a garden in millimetres begins with what was said alone', () => {
  equal(newGarden('metric', { name: 'N', currency: 'EUR', yard: [5000, 4000], surface: 'grass' }), { format: 1, name: 'N', currency: 'EUR', beds: [],
    ground: { outline: [[0, 0], [5000, 0], [5000, 4000], [0, 4000]], surfaces: [{ kind: 'grass', outline: [[0, 0], [5000, 0], [5000, 4000], [0, 4000]] }] } });
  equal(beginWith('metric'), { yard: { width: 12000, depth: 9000 }, path: 1200, bed: { width: 2400, depth: 1200 } });
});

test('a new garden pays in what the open one does, and in other measures in what timber of those is sold for', () => {
  const open = { currency: 'EUR' };
  equal([currencyFor('metric', open), currencyFor('imperial', open), currencyFor('imperial', { units: 'imperial', currency: 'CAD' }), currencyFor('metric', { units: 'imperial' })],
    ['EUR', 'USD', 'CAD', 'GBP']);
});
