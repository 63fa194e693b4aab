import { alike, bedOfMark, marksIn, nestOf, runs, segments, stagesOf, standing, waiting } from '../../main/resources/META-INF/resources/state/saw-day.js';
import { equal, test } from '../trial.js';

const board = (number, stock, ...cuts) => ({ number, stock, length: 4800, rest: 86, cuts: cuts.map(([mark, from, to, stage = 1]) => ({ mark, from, to, stage, length: to - from })) });
const part = { section: '100x200', boards: [board(1, '4800', ['A-1A', 10, 2310]), board(2, '4800', ['A-2A', 10, 2310]), board(3, '4800', ['B-1A', 10, 2310, 2])] };

test('boards that are cut alike are shown once with all their marks', () => {
  equal(alike(part).map(({ numbers, marks }) => [numbers, marks]), [[[1, 2], [['A-1A', 'A-2A']]], [[3], [['B-1A']]]]);
  equal(alike(part, 2).map(({ numbers }) => numbers), [[3]]);
  equal(stagesOf([part]), [1, 2]);
});

test('numbers are said in runs', () => {
  equal([runs([1, 2, 3, 4, 7]), runs([9, 8]), runs([5])], ['1-4, 7', '8, 9', '5']);
});

test('how good it is stands beside what it would be bed by bed', () => {
  const money = amount => `£${Number(amount).toFixed(2)}`;
  const result = { boards: 64, cost: 1466.1, lowerBound: 1465.8, proven: false };
  equal(standing({ section: '100x200', result: { boards: 15, salvage: 24 }, boardsBedByBed: 15, onHand: [{ opened: 4 }], ways: [{ way: 'pooled', boards: 15, cost: '191.40' }, { way: 'bed by bed', boards: 15, cost: '191.40' }] }, money),
    '11 boards of 100x200 bought and 4 lengths on hand, £191.40; bed by bed 15 boards and lengths on hand together, £191.40.');
  equal(standing({ section: '100x200', result, boardsBedByBed: 68, ways: [{ way: 'bed by bed', boards: 68, cost: '1510.50' }] }, money),
    '64 boards of 100x200, £1466.10, none can cost less than £1465.80; bed by bed 68 boards, £1510.50.');
  equal(standing({ section: '50x75', result: { ...result, proven: true } }, money), '64 boards of 50x75, £1466.10, proven least.');
  equal(standing({ section: '100x200', result: { boards: 5, cost: 132, lowerBound: 132, proven: true }, ways: [{ way: 'pooled', boards: 5, cost: '158.40' }] }, money),
    '5 boards of 100x200, £158.40, none can cost less than £132.00.', 'a sixth board of a bundle of three is paid');
  equal(standing({ section: '50x75', result: { ...result, cost: 1466.125, proven: true } }, amount => `KWD ${amount}`), '64 boards of 50x75, KWD 1466.125, proven least.', 'three decimals');
  const own = { section: '100x200', result: { ...result, salvage: 8.3 }, onHand: [{ stock: 'K1', opened: 1 }, { stock: 'K2', opened: 2 }] };
  equal(standing({ ...own, ways: [{ way: 'pooled', boards: 64, cost: '1457.80' }] }, money), '61 boards of 100x200 bought and 3 lengths on hand, £1457.80.');
  const strips = { section: '50x75', result: { boards: 43, cost: 129, lowerBound: 129, proven: true }, ripping: { boards: 22 }, ways: [{ way: 'pooled', boards: 22, cost: '132.00' }] };
  equal(standing(strips, money), '22 boards of 50x75, ripped into 43 strips, £132.00.');
});

test('a mark names its bed', () => {
  equal(bedOfMark('X-1A+Y-2B'), 'X');
  equal(['M-2C', 'B-1Aa', 'U-R1 bearer 1', 'Long-bed-3D'].map(bedOfMark), ['M', 'B', 'U', 'Long-bed']);
  equal(['B-2-1A', 'B-2-1A+B-1A', '7-1-R2 bearer 12b', 'B-2 beam 1', 'R-R1-12AB'].map(bedOfMark), ['B-2', 'B-2', '7-1', 'B-2', 'R-R1']);
});

test('a nest is found by its mark and knows its pieces', () => {
  const nest = { mark: 'X-1A+Y-1B', length: 2347 };
  equal(nestOf({ nests: [nest] }, 'X-1A+Y-1B'), nest);
  equal([nestOf({ nests: [nest] }, 'X-1A'), nestOf({}, 'X-1A')], [undefined, undefined]);
  equal([marksIn('X-1A+Y-1B'), marksIn('X-1A')], [['X-1A', 'Y-1B'], ['X-1A']]);
});

test('nests of one length that are parted in other places are not alike', () => {
  const nests = [{ mark: 'X-1A+X-1C', cuts: [{ face: 2100, back: 2058.6 }] }, { mark: 'X-2C+X-2A', cuts: [{ face: 900, back: 858.6 }] }, { mark: 'X-3A+X-3C', cuts: [{ face: 2100, back: 2058.6 }] }];
  const boards = nests.map(({ mark }, i) => board(i + 1, '4800', [mark, 10, 2973]));
  equal(alike({ boards, nests }).map(({ numbers }) => numbers), [[1, 3], [2]]);
  equal(alike({ boards }).map(({ numbers }) => numbers), [[1, 2, 3]]);
});

test('the parts of a board follow each other from end to end', () => {
  const saw = { kerf: 4, retrim: 0, keep: 300 };
  const told = one => segments(one, saw).map(({ kind, from, to }) => [kind, from, to]);
  const one = { length: 3600, trim: 10, rest: 82, cuts: [{ from: 10, to: 2310 }, { from: 2314, to: 3514 }] };
  equal(told(one), [['trim', 0, 10], ['cut', 10, 2310], ['kerf', 2310, 2314], ['cut', 2314, 3514], ['kerf', 3514, 3518], ['over', 3518, 3600]]);
  const gone = { length: 3600, trim: 10, rest: 1482, cuts: [{ from: 914, to: 2114 }] };
  equal(told(gone), [['lost', 0, 914], ['cut', 914, 2114], ['kerf', 2114, 2118], ['kept', 2118, 3600]]);
  equal(told({ length: 1000, trim: 10, rest: 0, cuts: [{ from: 10, to: 998 }] }).at(-1), ['kerf', 998, 1000]);
});

test('what waits for a later stage is told', () => {
  const ledger = { offcuts: [{ board: 5, fate: 'carried', length: 1286, madeIn: 1, usedIn: 3 }, { board: 5, fate: 'scrap', length: 82 }, { board: 6, fate: 'carried' }] };
  equal(waiting({ ledger }, 5).map(({ length }) => length), [1286]);
});
