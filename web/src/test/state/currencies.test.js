import { CURRENCIES } from '../../main/resources/META-INF/resources/state/currencies.js';
import { equal, holds, test } from '../trial.js';

test('codes of money are of three letters, each once, in order', () => {
  equal(CURRENCIES, [...new Set(CURRENCIES)].sort());
  equal(CURRENCIES.filter(code => !/^[A-Z]{3}$/.test(code)), []);
});

/** ISO 4217: a code that begins with X is of no country; unions' money is among them, rights to draw, metals and tests are not paid in. */
test('what is of no country is money of a union', () => {
  equal(CURRENCIES.filter(code => code.startsWith('X')), ['XAF', 'XCD', 'XCG', 'XOF', 'XPF']);
  holds(['GBP', 'EUR', 'USD', 'JPY', 'INR', 'BRL'].every(code => CURRENCIES.includes(code)), 'one of the most paid in is missing');
});
