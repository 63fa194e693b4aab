import { feetAndInches, millimetres, readLength, readLengths, shown } from '../../main/resources/META-INF/resources/geometry/length.js';
import { equal, holds, near, seeded, test } from '../trial.js';

test('what a notebook holds is read as millimetres; inch 25.4 and foot 304.8, international yard and pound agreement 1959', () => {
  const table = {
    '2400': 2400, ' 2400 ': 2400, '2400 mm': 2400, '2.4 m': 2400, '2,4 m': 2400, '2.4m': 2400, '240 cm': 2400, '.5 m': 500,
    "7' 10 1/2\"": 2400.3, "7'10 1/2\"": 2400.3, "7' 10 1/2": 2400.3, "7'-10 1/2\"": 2400.3, '7 ft 10 1/2 in': 2400.3,
    '7′ 10½″': 2400.3, '7’ 10 ½”': 2400.3, "8'": 2438.4, '8 ft': 2438.4, '94.5 in': 2400.3, '1/2 in': 12.7, '3/8"': 9.5,
    '1200+95': 1295, '1200 + 95': 1295, '2.4 m - 95': 2305, '1 m + 2 ft': 1609.6, '3 feet': 914.4, '1 inch': 25.4,
  };
  for (const [text, mm] of Object.entries(table)) equal(readLength(text), { mm }, text);
});

test('sizes joined by x are read as many, the last unit serving all', () => {
  equal(readLengths('2x3 in'), { mm: [50.8, 76.2] });
  equal(readLengths('2400 x 1200'), { mm: [2400, 1200] });
  equal(readLengths("8' x 4'"), { mm: [2438.4, 1219.2] });
  equal(readLengths('2.4 × 1.2 m'), { mm: [2400, 1200] });
  equal(readLengths('8 ft by 4 ft'), { mm: [2438.4, 1219.2] });
  holds(readLength('2400x1200').error.startsWith('2 lengths'), 'one length is wanted');
});

test('in feet a bare number is asked again: it may be feet, inches or millimetres', () => {
  equal(readLength('10', 'imperial').error, `“10” has no unit. Write 10', 10" or 10 mm.`);
  equal(readLength('10 1/2', 'imperial').error, `“10 1/2” has no unit. Write 10 1/2', 10 1/2" or 10 1/2 mm.`);
  equal([readLengths('8 x 4', 'imperial').error, readLength(`24+1"`, 'imperial').error].map(error => error.includes('has no unit')), [true, true]);
  equal([readLengths(`8 x 4'`, 'imperial'), readLengths(`7' 10`, 'imperial'), readLength('0', 'imperial')], [{ mm: [2438.4, 1219.2] }, { mm: [2387.6] }, { mm: 0 }]);
  equal(readLength(`8' x 4'`, 'imperial').error, `2 lengths are written here, and one is wanted: write 8'.`, 'what is offered is a length');
  equal([readLength('10'), readLength('10', 'metric')], [{ mm: 10 }, { mm: 10 }]);
});

test('what is no length is refused with a way out', () => {
  const refused = ['', '   ', 'abc', '12 kg', '1,200', '2400 1200', '+', '2400+', 'mm', '1/0', '7" 3\'', '2e9', '1..2', '-', 'NaN', '∞', '9'.repeat(80)];
  for (const text of refused) {
    const read = readLength(text);
    holds(read.error, `${text} was read as ${read.mm}`);
    holds(/[Ww]rite|Use|missing|wanted/.test(read.error), `no way out in: ${read.error}`);
  }
});

test('a number that can be read two ways is not guessed', () => {
  equal(readLength('1,200').error, '“1,200” can be read two ways. Write 1200 mm, or 1.200 m.');
});

test('lengths are shown in feet, inches and sixteenths', () => {
  const table = [[2400.3, `7' 10 1/2"`], [2438.4, `8'`], [304.8, `1'`], [25.4, '1"'], [12.7, '1/2"'], [1.6, '1/16"'], [0, '0"'], [311.15, `1' 1/4"`], [-25.4, '-1"'], [-0.3, '0"']];
  for (const [mm, text] of table) equal(feetAndInches(mm), text);
  equal(shown(2400.3, 'metric'), '2400.3');
  equal(millimetres(-0.01), '0');
});

test('what is shown in sixteenths is read back to within half a sixteenth, a thousand seeded lengths', () => {
  const random = seeded(7);
  for (let i = 0; i < 1000; i++) {
    const mm = Math.round(random() * 300000) / 10;
    near(readLength(feetAndInches(mm)).mm, mm, 25.4 / 32 + 0.05, `seed 7, ${mm}`);
  }
});
