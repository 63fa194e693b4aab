import { equal as same, merged, told, toldApart } from '../../main/resources/META-INF/resources/state/merge.js';
import { equal, test } from '../trial.js';

const bed = (id, at, more = {}) => ({ id, width: 2400, depth: 1200, at, ...more });
const base = { name: 'Yard', beds: [bed('A', [0, 0]), bed('B', [5000, 0])] };

test('changes to different beds go together, each once', () => {
  const mine = { ...base, beds: [bed('A', [100, 0]), bed('B', [5000, 0]), bed('C', [0, 4000])] };
  const theirs = { name: 'Their yard', beds: [bed('A', [0, 0]), bed('B', [5000, 900])] };
  const { plan, clashes } = merged(base, mine, theirs);
  equal(clashes, []);
  equal(plan, { name: 'Their yard', beds: [bed('A', [100, 0]), bed('B', [5000, 900]), bed('C', [0, 4000])] });
});

test('the same bed moved to two places is a clash, the same change twice is none', () => {
  const mine = { ...base, beds: [bed('A', [100, 0]), bed('B', [5000, 0])] };
  const theirs = { ...base, beds: [bed('A', [0, 700]), bed('B', [5000, 0])] };
  equal(merged(base, mine, theirs).clashes.map(clash => clash.where), ['bed A']);
  equal(merged(base, mine, structuredClone(mine)).clashes, []);
});

test('a bed taken away here and untouched there is gone; changed there it is a clash', () => {
  const mine = { ...base, beds: [bed('B', [5000, 0])] };
  equal(merged(base, mine, base).plan.beds.map(one => one.id), ['B']);
  const theirs = { ...base, beds: [bed('A', [0, 700]), bed('B', [5000, 0])] };
  equal(merged(base, mine, theirs).clashes.map(clash => [clash.where, clash.mine ?? null]), [['bed A', null]]);
});

test('the order that one changed stands', () => {
  const turned = { ...base, beds: [base.beds[1], base.beds[0]] };
  const changed = { ...base, beds: [bed('A', [0, 700]), base.beds[1], bed('C', [0, 4000])] };
  const both = [base.beds[1], bed('A', [0, 700]), bed('C', [0, 4000])];
  equal(merged(base, turned, changed).plan.beds, both);
  equal(merged(base, changed, turned).plan.beds, both);
});

test('two new beds with one code are a clash', () => {
  const mine = { ...base, beds: [...base.beds, bed('C', [0, 1])] };
  const theirs = { ...base, beds: [...base.beds, bed('C', [0, 2])] };
  equal(merged(base, mine, theirs).clashes.length, 1);
});

test('clashes are told a bed a line, also what one took away', () => {
  const apart = (before, mine, theirs) => toldApart(merged(before, mine, theirs).clashes);
  const moved = { ...base, beds: [bed('A', [9, 9])] };
  equal(apart(base, { ...base, beds: [bed('A', [5, 5]), bed('B', [0, 0])] }, moved).map(row => [row.where, row.theirs]), [['bed A', 'at 9, 9'], ['bed B', 'not there']]);
  const named = { ...base, beds: [bed('A', [0, 0], { name: 'Herbs', courses: 3 }), base.beds[1]] };
  const higher = { ...base, beds: [bed('A', [0, 0], { courses: 4 }), base.beds[1]] };
  equal(apart(base, named, higher), [{ where: 'bed A', mine: 'name Herbs, courses 3', theirs: 'name as usual, courses 4' }]);
  const was = { saw: { kerf: 4 }, tally: { done: [{ task: 'a', day: 1 }] } };
  equal(apart(was, {}, { saw: { kerf: 5 }, tally: { done: [{ task: 'a', day: 2 }] } }),
    [{ where: 'saw', mine: 'not there', theirs: 'kerf 5' }, { where: 'tally, a', mine: 'not there', theirs: 'task a, day 2' }]);
  equal([told(undefined), told(5), told([[0, 0], [900, 0]]), told({ id: 'A', fill: { mulch: 50 } })], ['not there', '5', '0, 0; 900, 0', 'fill mulch 50']);
});

test('equal looks all the way down', () => {
  equal([same({ a: [1, { b: 2 }] }, { a: [1, { b: 2 }] }), same([1], { 0: 1 }), same({ a: undefined }, {}), same(null, {})], [true, false, false, false]);
});

test('what two suppliers sold of one pack, or one sold twice, stays what it is when two changes go together', () => {
  const bought = [{ item: 'finish', pack: 'tin', supplier: 'a', count: 1 }, { item: 'finish', pack: 'tin', supplier: 'b', count: 2 }, { item: 'finish', pack: 'tin', supplier: 'b', count: 3 }];
  const base = { name: 'g', tally: { bought } };
  const mine = { name: 'g', tally: { bought: [{ ...bought[0], paid: 9 }, bought[1], bought[2]] } };
  const theirs = { name: 'h', tally: { bought: [bought[0], bought[1], { ...bought[2], count: 4 }] } };
  equal(merged(base, mine, theirs), { plan: { name: 'h', tally: { bought: [{ ...bought[0], paid: 9 }, bought[1], { ...bought[2], count: 4 }] } }, clashes: [] });
});

test('two people who mark different boards and tasks are no clash, and the same piece is one', () => {
  const base = { tally: { boards: [{ board: '#1', section: 's' }, { board: '#2', section: 's' }] } };
  const mine = { tally: { boards: [{ board: '#1', section: 's', cut: ['a'] }, { board: '#2', section: 's' }], done: [{ task: 'x' }] } };
  const theirs = { tally: { boards: [{ board: '#1', section: 's' }, { board: '#2', section: 's', cut: ['b'] }], done: [{ task: 'y' }] } };
  const both = merged(base, mine, theirs);
  equal(both.clashes, []);
  equal(both.plan.tally, { boards: [{ board: '#1', section: 's', cut: ['a'] }, { board: '#2', section: 's', cut: ['b'] }], done: [{ task: 'y' }, { task: 'x' }] });
  const ticked = { tally: { boards: [{ board: '#1', section: 's', cut: ['c'], sawn: [{ piece: 'c', length: 700 }] }, { board: '#2', section: 's' }] } };
  equal(merged(base, mine, ticked).plan.tally.boards[0], { board: '#1', section: 's', cut: ['c', 'a'], sawn: [{ piece: 'c', length: 700 }] }, 'two beds that are ticked, from one board');
  equal(merged(base, mine, ticked).clashes, []);
  equal(merged(mine, base, { tally: { ...mine.tally, boards: [{ ...mine.tally.boards[0], spoiled: ['d'], lost: 703 }, mine.tally.boards[1]] } }).plan.tally.boards[0], { board: '#1', section: 's', spoiled: ['d'], lost: 703 }, 'one taken back');
  const marked = { tally: { done: [{ task: 'y' }, { task: 'x' }], boards: [{ board: '#1', section: 's', cut: ['b', 'a'] }, { board: '#2', section: 's' }] } };
  const first = { tally: { done: [{ task: 'x' }], boards: [{ board: '#1', section: 's', cut: ['a'] }, { board: '#2', section: 's' }] } };
  equal(merged(first, {}, marked), { plan: { tally: { done: [{ task: 'y' }], boards: [{ board: '#1', section: 's', cut: ['b'] }, { board: '#2', section: 's' }] } }, clashes: [] }, 'the first mark of all undone, after a mark of another');
  const other = { tally: { boards: [{ board: '#1', section: 's', spoiled: ['a'] }, { board: '#2', section: 's' }] } };
  equal(merged(base, mine, other).clashes.map(({ where }) => where), ['tally, s #1']);
  equal(merged(base, {}, base).plan.tally, undefined);
});
