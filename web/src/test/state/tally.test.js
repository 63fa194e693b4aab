import { bought, isDone, loseOf, pieceState, planFrom, setBought, setPiece, tickTask } from '../../main/resources/META-INF/resources/state/tally.js';
import { equal, holds, test } from '../trial.js';

const parts = [{ section: '100x200', boards: [{ number: 1, stock: '4800' }, { number: 2, stock: '4800' }] }];

test('a task is ticked with its day, and the tick comes off without a trace', () => {
  const plan = { beds: [] };
  const ticked = tickTask('M.fill', 15)(plan);
  equal(ticked.tally, { done: [{ task: 'M.fill', day: 15 }] });
  holds(isDone(ticked, 'M.fill') && !isDone(plan, 'M.fill'), 'not ticked');
  equal(tickTask('M.fill', 15)(ticked), plan);
});

test('the first cut names every board, so that none is taken for missing', () => {
  const cut = setPiece(parts, 1, 'M-1A', 'cut')({});
  equal(cut.tally.boards, [{ board: '#1', section: '100x200', stock: '4800', cut: ['M-1A'] }, { board: '#2', section: '100x200', stock: '4800' }]);
  equal(pieceState(cut, 'M-1A'), 'cut');
  const spoiled = setPiece(parts, 1, 'M-1A', 'spoiled')(cut);
  equal([pieceState(spoiled, 'M-1A'), spoiled.tally.boards[0].cut], ['spoiled', undefined]);
  equal(pieceState(setPiece(parts, 1, 'M-1A', 'wanted')(spoiled), 'M-1A'), 'wanted');
});

test('what a board loses opens it', () => {
  const lost = loseOf(parts, 2, 700)({});
  equal([lost.tally.boards[1].lost, lost.tally.boards[1].opened], [700, true]);
});

test('packs are bought, then here, then neither', () => {
  const paid = setBought('screws', 'box of 50', 2, 'bought')({});
  equal(bought(paid, 'screws', 'box of 50'), { item: 'screws', pack: 'box of 50', count: 2 });
  equal(bought(setBought('screws', 'box of 50', 2, 'arrived')(paid), 'screws', 'box of 50').arrived, 2);
  equal(setBought('screws', 'box of 50', 2, 'no')(paid), {});
});

test('the rest is planned from a day on', () => {
  equal(planFrom(14)({ tally: { asOf: '2027-03-20' } }).tally, { day: 14 });
  equal(planFrom(0)({ tally: { day: 14 } }), {});
});
