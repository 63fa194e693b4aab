import { asNewJob, bought, dayToDo, hasHappened, isDone, loseOf, lostOf, pieceState, piecesOf, planFrom, sawnBefore, sawnOff, setBought, setPaid, setPiece, tickTask, uncutOf, withHappened } from '../../main/resources/META-INF/resources/state/tally.js';
import { equal, holds, test } from '../trial.js';

const S = '100x200';
const cuts = length => [{ mark: 'M-1A', length, stage: 1 }];
const parts = [{ section: S, boards: [{ number: 1, stock: '4800', cuts: cuts(2900) }, { number: 2, stock: '4800', cuts: [] }] }];
const state = (plan, number, mark, length = 2900, section = S) => pieceState(plan, { section, number, length }, mark);
const sawn = [{ piece: 'M-1A', length: 2900 }];

test('a task is ticked with its day, and the tick comes off without a trace', () => {
  const plan = { beds: [] };
  const ticked = tickTask('M.fill', 15)(plan);
  equal(ticked.tally, { done: [{ task: 'M.fill', day: 15 }] });
  holds(isDone(ticked, 'M.fill') && !isDone(plan, 'M.fill'), 'not ticked');
  equal(tickTask('M.fill', 15)(ticked), plan);
});

test('timber that is handled is sawn: what a task handles is cut as it is ticked, once, and stays so', () => {
  const more = [{ section: S, boards: [
    { number: 1, stock: '4800', cuts: [{ mark: 'M-1A', length: 2900, stage: 1 }, { mark: 'M-2A', length: 1500, stage: 1 }] },
    { number: 2, stock: '4800', cuts: [{ mark: 'N-1A+M-1B', length: 700, stage: 2 }] }] }];
  const task = { id: 'M.course-1', marks: ['M-1A', 'M-1B'], firstDay: 3 };
  const tick = plan => tickTask(task.id, 3, more, uncutOf(plan, more, task, true))(plan);
  const ticked = tick({});
  equal(ticked.tally, { done: [{ task: 'M.course-1', day: 3 }], boards: [
    { board: '#1', section: S, stock: '4800', cut: ['M-1A'], sawn },
    { board: '#2', section: S, stock: '4800', cut: ['N-1A+M-1B'], sawn: [{ piece: 'N-1A+M-1B', length: 700 }] }] });
  equal([uncutOf(ticked, more, task, true), tick(ticked).tally], [[], { boards: ticked.tally.boards }]);
  equal(uncutOf(ticked, more, { id: 'saw.1', marks: [] }, true).map(one => one.cut.mark), ['M-2A']);
  const spoiled = setPiece(more, S, 1, 'M-1A', 'spoiled')({});
  const marks = isOfNow => uncutOf(spoiled, more, task, isOfNow).map(one => one.cut.mark);
  equal([marks(false), marks(true)], [['N-1A+M-1B'], ['M-1A', 'N-1A+M-1B']], 'a spoiled piece is cut only where it is planned anew');
});

test('a day at the saw that is ticked is ticked again, on the later day, with what is sawn anew', () => {
  const saw = { id: 'saw.1', marks: [] };
  const ticked = tickTask('saw.1', 0, parts, uncutOf({}, parts, saw, true))({});
  const wider = [{ section: S, boards: [{ ...parts[0].boards[0], cuts: [] }, { ...parts[0].boards[1], cuts: cuts(3200) }] }];
  const again = tickTask('saw.1', 14, wider, uncutOf(ticked, wider, saw, true), true)(ticked);
  equal([again.tally.done, state(again, 2, 'M-1A', 3200)], [[{ task: 'saw.1', day: 14 }], 'cut']);
});

test('a plan of before has what happened since, on the same dates', () => {
  const now = { name: 'now', crew: { start: '2027-03-06' }, tally: { done: [{ task: 'a', day: 8 }], bought: [{ item: 'finish', count: 1 }] }, handOver: { snags: [{ bed: 'A' }] } };
  const then = { name: 'then', crew: { start: '2027-02-27' }, beds: [] };
  equal(withHappened(now)(then), { ...then, tally: { ...now.tally, done: [{ task: 'a', day: 15 }], day: 7 }, handOver: now.handOver });
  const begun = { ...then, crew: { start: '2027-03-20', hours: 5 } };
  equal(withHappened(now)(begun), { ...begun, crew: { start: '2027-03-06', hours: 5 }, tally: now.tally, handOver: now.handOver });
  equal(withHappened({ crew: now.crew, tally: { bought: now.tally.bought } })(begun), { ...begun, tally: { bought: now.tally.bought } });
  equal(withHappened({ ...now, crew: undefined })({ beds: [] }), { beds: [], tally: now.tally, handOver: now.handOver });
  equal(withHappened({})(now) === now, true);
  equal(withHappened({ tally: {} })(now) === now, true);
  equal(withHappened(now)({ ...now, name: 'same' }), { ...now, name: 'same' });
});

test('a tick keeps its day, whatever day the rest is planned from', () => {
  equal(tickTask('M.set-out', 0)({}).tally, { done: [{ task: 'M.set-out', day: 0 }] });
  const done = [{ task: 'a' }, { task: 'b', day: 0 }, { task: 'c', on: '2027-03-06' }];
  equal(planFrom(8)({ tally: { done } }).tally, { done: [{ task: 'a', day: 0 }, done[1], done[2]], day: 8 });
  equal(planFrom(9)({ tally: { day: 8, done } }).tally.done[0], { task: 'a', day: 8 });
  equal(planFrom(9)({ tally: { asOf: '2027-03-13', done } }).tally, { done: [{ task: 'a', on: '2027-03-13' }, done[1], done[2]], day: 9 });
});

test('the first cut names every board, so that none is taken for missing', () => {
  const cut = setPiece(parts, S, 1, 'M-1A', 'cut')({});
  equal(cut.tally.boards, [{ board: '#1', section: S, stock: '4800', cut: ['M-1A'], sawn }, { board: '#2', section: S, stock: '4800' }]);
  equal([state(cut, 1, 'M-1A'), state(cut, 2, 'M-1A')], ['cut', 'wanted']);
  const spoiled = setPiece(parts, S, 1, 'M-1A', 'spoiled')(cut);
  equal([state(spoiled, 1, 'M-1A'), spoiled.tally.boards[0].cut, spoiled.tally.boards[0].sawn, sawnBefore(spoiled, 'M-1A', 2900)], ['spoiled', undefined, sawn, [{ board: '#1', older: false }]]);
  const wanted = setPiece(parts, S, 1, 'M-1A', 'wanted')(spoiled);
  equal([state(wanted, 1, 'M-1A'), wanted.tally.boards[0]], ['wanted', { board: '#1', section: S, stock: '4800' }]);
});

test('a spoiled piece is cut from another board, and a board that has to be bought is there once it is cut', () => {
  const spoiled = setPiece(parts, S, 1, 'M-1A', 'spoiled')({});
  const more = [{ ...parts[0], boards: [...parts[0].boards, { number: 3, stock: '2400' }] }];
  const other = setPiece(more, S, 2, 'M-1B', 'cut')(spoiled);
  equal(other.tally.boards.map(one => one.board), ['#1', '#2']);
  const anew = setPiece(more, S, 3, 'M-1A', 'cut')(other);
  equal(anew.tally.boards.map(one => [one.board, one.cut ?? one.spoiled]), [['#1', ['M-1A']], ['#2', ['M-1B']], ['#3', ['M-1A']]]);
  equal([state(anew, 1, 'M-1A'), state(anew, 3, 'M-1A')], ['spoiled', 'cut']);
});

test('each section has a board 1 of its own', () => {
  const two = [...parts, { section: '75x225', boards: [{ number: 1, stock: '3600', cuts: [{ mark: 'N-1A', length: 1700 }] }] }];
  const plan = setPiece(two, '75x225', 1, 'N-1A', 'cut')(setPiece(two, S, 1, 'M-1A', 'cut')({}));
  equal(plan.tally.boards.map(one => [one.section, one.board, one.cut]), [[S, '#1', ['M-1A']], [S, '#2', undefined], ['75x225', '#1', ['N-1A']]]);
  equal([state(plan, 1, 'N-1A', 1700, '75x225'), state(plan, 1, 'N-1A', 1700)], ['cut', 'wanted']);
  const lost = loseOf(two, '75x225', 1, 40)(plan);
  equal([lostOf(lost, S, 1), lostOf(lost, '75x225', 1)], [undefined, 40]);
});

test('a piece sawn before its bed was changed is wanted anew, and its board keeps what was sawn', () => {
  const cut = setPiece(parts, S, 1, 'M-1A', 'cut')({});
  const [was, other] = parts[0].boards;
  const changed = [{ section: S, boards: [{ ...was, cuts: [] }, { ...other, cuts: cuts(3200) }] }];
  equal([state(cut, 1, 'M-1A', 3200), state(cut, 1, 'M-1A', 2900.5), sawnBefore(cut, 'M-1A', 3200)], ['wanted', 'cut', [{ board: '#1', older: true }]]);
  equal(sawnOff(cut, S, changed[0].boards[0]), [{ mark: 'M-1A', sawn: 2900, spoiled: false }]);
  equal(sawnOff(cut, S, was), []);
  const anew = setPiece(changed, S, 2, 'M-1A', 'cut')(cut).tally.boards;
  equal([anew[0].spoiled, anew[0].sawn, anew[1].cut, anew[1].sawn], [['M-1A'], sawn, ['M-1A'], [{ piece: 'M-1A', length: 3200 }]]);
  const [same] = setPiece([{ section: S, boards: [{ ...was, cuts: cuts(1500) }, other] }], S, 1, 'M-1A', 'cut')(cut).tally.boards;
  equal([same.sawn, same.lost], [[{ piece: 'M-1A', length: 1500 }], 2904], 'one board cannot have a mark twice: the length sawn before is lost');
  const [never] = setPiece(changed, S, 1, 'M-1A', 'wanted')(cut).tally.boards;
  equal(never, { board: '#1', section: S, stock: '4800' }, 'what was not sawn after all is not lost');
});

test('a piece of a bed that is of other timber now is none of the board it was sawn from', () => {
  const cut = setPiece(parts, S, 1, 'M-1A', 'cut')({});
  const changed = [{ section: '75x225', boards: [{ number: 1, stock: '3600', cuts: cuts(2900) }] }];
  const [was, , now] = setPiece(changed, '75x225', 1, 'M-1A', 'cut')(cut).tally.boards;
  equal([was.cut, was.spoiled, was.sawn, now.cut, now.sawn], [undefined, ['M-1A'], sawn, ['M-1A'], sawn]);
});

test('a piece spoiled on a board that it is planned on again is sawn anew there, and both lengths are gone', () => {
  const spoiled = setPiece(parts, S, 1, 'M-1A', 'spoiled')({});
  const at = isOfNow => pieceState(spoiled, { section: S, number: 1, length: 2900, isOfNow }, 'M-1A');
  equal([at(false), at(true)], ['spoiled', 'wanted']);
  equal([sawnOff(spoiled, S, parts[0].boards[0]), sawnOff(spoiled, S, parts[0].boards[0], true)], [[], [{ mark: 'M-1A', sawn: 2900, spoiled: true }]]);
  const anew = setPiece(parts, S, 1, 'M-1A', 'cut', true)(spoiled).tally.boards[0];
  equal([anew.cut, anew.spoiled, anew.sawn, anew.lost], [['M-1A'], undefined, sawn, 2904]);
  equal(setPiece(parts, S, 1, 'M-1A', 'spoiled', true)(spoiled).tally.boards[0].lost, 2904, 'spoiled once more');
  equal(setPiece(parts, S, 1, 'M-1A', 'wanted', true)(spoiled).tally.boards[0], { board: '#1', section: S, stock: '4800' }, 'not spoiled after all');
});

test('the pieces of a stage stand longest first, and the first day with work is open', () => {
  const sawn = [{ section: '100x200', boards: [{ number: 1, cuts: [{ mark: 'a', length: 900, stage: 1 }, { mark: 'b', length: 800, stage: 2 }] }, { number: 2, cuts: [{ mark: 'c', length: 2300, stage: 1 }] }] }];
  equal(piecesOf(sawn, 1).map(({ cut }) => cut.mark), ['c', 'a']);
  const weekends = { days: [{ number: 0, parts: [{ task: 'x' }] }, { number: 1, parts: [] }, { number: 7, parts: [{ task: 'y' }] }] };
  equal([[], ['x'], ['x', 'y']].map(done => dayToDo(weekends, task => done.includes(task))), [0, 7, 7]);
});

test('what a board loses opens it', () => {
  const lost = loseOf(parts, S, 2, 700)({});
  equal([lost.tally.boards[1].lost, lost.tally.boards[1].opened], [700, true]);
});

test('packs are bought, then here, then neither', () => {
  const paid = setBought('screws', 'box of 50', 2, 'bought')({});
  equal(bought(paid, 'screws', 'box of 50'), { item: 'screws', pack: 'box of 50', count: 2 });
  equal(bought(setBought('screws', 'box of 50', 2, 'arrived')(paid), 'screws', 'box of 50').arrived, 2);
  equal(setBought('screws', 'box of 50', 2, 'no')(paid), {});
});

test('two sellers of one pack are two entries, and one of them changes alone', () => {
  const rows = [{ item: 'oil', pack: 'tin', count: 2, supplier: 'mill', paid: 30 }, { item: 'oil', pack: 'tin', count: 1, supplier: 'depot' }];
  const plan = { tally: { bought: rows } };
  equal([bought(plan, 'oil', 'tin', 'mill'), bought(plan, 'oil', 'tin', 'depot')], rows);
  equal(setBought('oil', 'tin', 2, 'no', { supplier: 'mill' })(plan).tally.bought, [rows[1]]);
  equal(setBought('oil', 'tin', 1, 'arrived', { supplier: 'depot' })(plan).tally.bought, [rows[0], { ...rows[1], arrived: 1 }]);
  equal(bought({ tally: { bought: [rows[0]] } }, 'oil', 'tin', 'depot'), rows[0], 'the one row there is');
  equal(bought({ tally: { bought: [rows[0], { item: 'oil', pack: 'tin', count: 1, paid: 12.5 }] } }, 'oil', 'tin', 'mill'), { item: 'oil', pack: 'tin', count: 3, arrived: 0, supplier: 'mill', paid: 42.5 });
});

test('what was bought stays with who sold it at what they asked, and more of it costs what is asked then', () => {
  const had = setBought('timber own', 'board of 4200', 37, 'bought', { price: '31.40', supplier: 'mill' })({});
  equal(had.tally.bought, [{ item: 'timber own', pack: 'board of 4200', count: 37, supplier: 'mill', paid: 1161.8 }]);
  equal(setBought('screws', 'box', 3, 'bought', { price: '1.255' })({ currency: 'KWD' }).tally.bought[0].paid, 3.765, 'three decimals');
  const more = setBought('timber own', 'board of 4200', 40, 'bought', { price: '50.00', supplier: 'depot' })(had);
  equal(more.tally.bought, [{ item: 'timber own', pack: 'board of 4200', count: 40, supplier: 'mill', paid: 1311.8 }]);
});

test('what was paid is kept with the first pack of a line, whatever becomes of the packs', () => {
  const two = setBought('oil', 'tin of 1 l', 1, 'bought')(setBought('oil', 'tin of 5 l', 1, 'bought')({}));
  const paid = setPaid('oil', 61.5)(two);
  equal(paid.tally.bought.map(one => one.paid), [61.5, 0]);
  equal(bought(setBought('oil', 'tin of 5 l', 1, 'arrived')(paid), 'oil', 'tin of 5 l').paid, 61.5);
  equal(setPaid('oil', undefined)(paid), two);
});

test('the rest is planned from a day on', () => {
  equal(planFrom(14)({ tally: { asOf: '2027-03-20' } }).tally, { day: 14 });
  equal(planFrom(0)({ tally: { day: 14 } }), {});
});

test('a copy for another job has nothing of what has happened', () => {
  const plan = { name: 'Yard', beds: [{ id: 'A' }], state: 'ordered', tally: { done: [{ task: 'A.fill' }] }, handOver: { snags: [{ text: 'rim split' }] } };
  holds(hasHappened(plan));
  equal(asNewJob(plan), { name: 'Yard', beds: [{ id: 'A' }] });
  equal([hasHappened(asNewJob(plan)), hasHappened({ tally: {}, state: 'ordered' })], [false, false]);
});
