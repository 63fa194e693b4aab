import { addSupplier, currencyOf, payIn, priceRows, readCurrency, readPrice, setPrice, setSupplier, setTimber, supplierCode, timberRows, writtenPrice } from '../../main/resources/META-INF/resources/state/catalogue.js';
import { equal, test } from '../trial.js';

const EXAMPLES = {
  sections: [{ id: '100x200', thickness: 100, height: 200, stock: [{ length: 2400, price: 17.4 }, { length: 4800, price: 36 }] }],
  packs: [{ item: 'screws', label: 'Screws', unit: 'screws', packs: [{ name: 'box of 50', content: 50, price: 14 }] }],
};

test('an own line stands in for the example of its name, and examples can be left out', () => {
  const plan = { catalogue: { sections: [{ id: '100x200', stock: [{ length: 3600, price: 28, supplier: 'mill' }] }] } };
  equal(priceRows(plan, EXAMPLES).map(row => [row.sold, row.price, row.supplier, row.example]),
    [['board of 3600', 28, 'mill', false], ['box of 50', 14, '', true]]);
  equal(priceRows({ catalogue: { ...plan.catalogue, examples: false } }, EXAMPLES).length, 1);
  equal(priceRows({ units: 'imperial', ...plan }, EXAMPLES).map(row => [row.what, row.sold, row.length]), [['Timber 4x8', 'board of 11\' 9 3/4"', 3600], ['Screws', 'box of 50', undefined]]);
});

test('a price written over an example makes its whole line the garden\'s own and leaves the rest', () => {
  const [, row] = priceRows({}, EXAMPLES);
  const plan = setPrice(row, 34.5, EXAMPLES)({ beds: [] });
  equal(plan, { beds: [], catalogue: { sections: [{ id: '100x200', thickness: 100, height: 200, stock: [{ length: 2400, price: 17.4 }, { length: 4800, price: 34.5 }] }] } });
  equal(setPrice(row, null, EXAMPLES)(plan).catalogue.sections[0].stock[1], { length: 4800 });
  equal(EXAMPLES.sections[0].stock[1].price, 36);
});

test('what a timber is like is set on the whole line, and what is usual is not written', () => {
  equal(timberRows({}, EXAMPLES), [{ id: '100x200', goodFaces: 1, treated: false, strengthClass: 'ungraded', example: true }]);
  const plan = setTimber('100x200', { goodFaces: 2 }, EXAMPLES)({});
  equal(plan.catalogue.sections[0], { ...EXAMPLES.sections[0], goodFaces: 2 });
  equal(timberRows(plan, EXAMPLES)[0], { id: '100x200', goodFaces: 2, treated: false, strengthClass: 'ungraded', example: false });
  equal(setTimber('100x200', { goodFaces: undefined }, EXAMPLES)(plan).catalogue.sections, EXAMPLES.sections);
  equal(setTimber('none', { treated: true }, EXAMPLES)({ beds: [] }), { beds: [] });
});

test('prices are read as they are written, and told apart from what is none', () => {
  equal(readPrice('£12.50'), { value: 12.5 });
  equal(readPrice('12,50'), { value: 12.5 });
  equal(readPrice(' '), { value: null });
  equal(readPrice('-3').error, 'A price is 0 or more. Leave it empty where there is none yet.');
  equal(readPrice('ten').error, '“ten” is no price. Write it as 12.50.');
});

test('suppliers get a code of their own', () => {
  equal(supplierCode('Hill Sawmill', []), 'hill-sawmill');
  equal(supplierCode('Hill Sawmill', ['hill-sawmill']), 'hill-sawmill-2');
  equal(supplierCode('…', []), 'supplier');
  const plan = setSupplier('a', { delivery: 35, freeOver: undefined })(addSupplier({ id: 'a', freeOver: 1 })({}));
  equal(plan.catalogue.suppliers, [{ id: 'a', delivery: 35 }]);
});

test('a price with two readings is refused with both, as a merchant\'s list has it', () => {
  equal(['1.250', '1,250'].map(text => readPrice(text).error), ['“1.250” can mean 1.25 or 1250. Write one of them.', '“1,250” can mean 1.25 or 1250. Write one of them.']);
  equal(['0.125', '1250.125', '12,5'].map(text => readPrice(text).value), [0.125, 1250.125, 12.5]);
});

test('the currency is that of ISO 4217 by its letters, and the usual one is not written', () => {
  equal([readCurrency(' usd ').value, currencyOf(payIn('USD')({})), currencyOf({})], ['USD', 'USD', 'GBP']);
  equal(payIn('GBP')({ currency: 'USD', beds: [] }), { beds: [] });
  equal([readCurrency('XDR').error, readCurrency('XSU').error].every(Boolean), true, 'nothing is paid in drawing rights');
  equal(['pounds', ' '].map(text => readCurrency(text).error), ['Write its three letters: GBP, EUR, USD.', 'Write its three letters: GBP, EUR, USD.']);
});

test('a price is written with its pence', () => {
  equal([8.9, 36, 0, 10.4987, null, undefined].map(writtenPrice), ['8.90', '36.00', '0.00', '10.4987', '', '']);
  for (let price = 0; price < 3; price = Math.round(1e4 * price + 1) / 1e4) equal(readPrice(writtenPrice(price)), { value: price });
});

test('of two readings each can be written', () => {
  for (let thousandths = 1000; thousandths < 3000; thousandths++) {
    const [decimal, whole] = readPrice((thousandths / 1000).toFixed(3)).error.match(/can mean (.*) or (.*)\. Write/).slice(1);
    equal([decimal, whole].map(text => readPrice(text).value), [thousandths / 1000, thousandths]);
  }
});
