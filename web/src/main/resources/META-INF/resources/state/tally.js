import { doneOn, isDoneBefore, startOn } from './crew-forms.js';
import { given, isNothing, saying } from './fields.js';
import { USUAL } from './plan.js';
import { kerfOf, marksIn } from './saw-day.js';

/** What was done, cut and bought: commands plan => newPlan over the document's `tally`. */

const withTally = (plan, change) => saying(plan, 'tally', given(change(plan.tally ?? {}), value => isNothing(value) || value === 0));

export const isDone = (plan, task) => (plan.tally?.done ?? []).some(one => one.task === task);

/**
 * Ticks a task, or takes the tick off; a day at the saw that has pieces to saw anew is ticked again. Timber that is handled is sawn: what a task handles is cut with it, and stays so.
 *
 * @param {number} day of the plan on which it was done
 * @param {object[]} [parts] sections of the job sheet's cutting
 * @param {object[]} [pieces] those of them that the task handles and that are still to cut
 */
export function tickTask(task, day, parts = [], pieces = [], isOfNow = true) {
  const others = ({ done = [] }) => done.filter(one => one.task !== task);
  return plan => (isDone(plan, task) && !pieces.length ? withTally(plan, tally => ({ ...tally, done: others(tally) }))
    : setPieces(parts, pieces, 'cut', isOfNow)(withTally(plan, tally => ({ ...tally, done: [...others(tally), { task, day }] }))));
}

/** What a task handles and is still to cut. @param {object} task of the weekends @param {boolean} isOfNow whether the cutting is that of the tally as it stands */
export function uncutOf(plan, parts, task, isOfNow) {
  const stage = stageOf(task);
  const handled = new Set(task.marks);
  return (stage ? piecesOf(parts, stage) : handled.size ? allPieces(parts).filter(({ cut }) => marksIn(cut.mark).some(mark => handled.has(mark))) : [])
    .filter(({ section, board, cut }) => pieceState(plan, { section, number: board.number, length: cut.length, isOfNow }, cut.mark) === 'wanted');
}

/** The stage that a task at the saw cuts for; 0 for any other. */
export const stageOf = task => Number(/^saw\.(\d+)$/.exec(task.id)?.[1] ?? 0);

/** The rest is planned from this day on; a tick without a day of its own keeps the one from which the rest was planned. */
export const planFrom = day => plan => withTally(plan, ({ asOf, ...tally }) => ({ ...tally, day, done: tally.done && doneOn({ ...tally, asOf }) }));

const told = part => Object.keys(part ?? {}).length > 0;

/** Whether something of it is done, cut, bought or was found when it was handed over. */
export const hasHappened = ({ tally, handOver }) => told(tally) || told(handOver);

/** The same garden for another job: nothing has happened yet. */
export const asNewJob = ({ tally, handOver, state, ...plan }) => plan;

/**
 * A plan of before, with what has happened since: what is done, cut and bought, and what was found when it was handed over.
 *
 * @returns {(plan: object) => object} the same plan where nothing has happened that it does not tell of
 */
export const withHappened = ({ tally, handOver, crew }) => then => {
  const plan = isDoneBefore({ tally, crew }, then.crew?.start) ? { ...then, crew: { ...then.crew, start: crew.start } } : then;
  const since = { ...(told(tally) ? { tally: startOn(plan.crew?.start)({ crew, tally }).tally } : {}), ...(told(handOver) ? { handOver } : {}) };
  return Object.entries(since).every(([field, value]) => JSON.stringify(plan[field]) === JSON.stringify(value)) ? plan : { ...plan, ...since };
};

const boardName = number => `#${number}`;

const isOf = (section, board) => (board.section ?? USUAL.section) === section;

/** Each section counts its boards from 1. */
const keyOf = board => `${board.section ?? USUAL.section} ${board.board}`;

const isBoard = (section, number) => one => one.board === boardName(number) && isOf(section, one);

/** So far off may a sawn piece be and still be the one that is wanted, mm, as the server reads the tally. */
const ALIKE = 1;

const sawnLength = (board, mark) => board.sawn?.find(one => one.piece === mark)?.length;

/** Whether a piece was sawn to another length than the garden wants now. @param {number} [length] that is wanted, mm */
const isOther = (board, mark, length) => Math.abs((sawnLength(board, mark) ?? length) - length) > ALIKE;

/** Whether a piece that was spoiled on a board is planned on it again. @param {boolean} [isOfNow] whether the cutting is that of the tally as it stands */
const isAnew = (board, mark, isOfNow) => Boolean(isOfNow && board.spoiled?.includes(mark) && !board.cut?.includes(mark));

/**
 * All boards of the cutting as bought and waiting, so that none is missing once the first is opened. A board that a later
 * plan asks for is there once something is cut from it.
 */
function boardsOf(tally, parts, isAsked) {
  const known = tally.boards ?? [];
  const planned = parts.flatMap(part => part.boards.map(board => ({ board: boardName(board.number), section: part.section, stock: board.stock })));
  const sections = new Set(known.map(board => board.section ?? USUAL.section));
  const named = new Set(known.map(keyOf));
  const missing = planned.filter(board => !named.has(keyOf(board)) && (!sections.has(board.section) || isAsked(board)));
  return [...known, ...missing];
}

/**
 * How a piece stands on a board: `wanted`, `cut` or `spoiled`.
 *
 * @param {{section: string, number: number, length: number, isOfNow?: boolean}} where section and number of a board that the piece is planned on, how long it is
 *     wanted, mm, and whether the cutting is that of the tally as it stands
 */
export function pieceState(plan, { section, number, length, isOfNow }, mark) {
  const board = (plan.tally?.boards ?? []).find(isBoard(section, number));
  if (!board || isOther(board, mark, length) || isAnew(board, mark, isOfNow)) return 'wanted';
  return board.cut?.includes(mark) ? 'cut' : board.spoiled?.includes(mark) ? 'spoiled' : 'wanted';
}

/** The boards on which a piece was cut wrong, or for an older size of its bed, `#7`. @returns {{board: string, older: boolean}[]} */
export const sawnBefore = (plan, mark, length) => (plan.tally?.boards ?? [])
  .map(board => ({ board, older: isOther(board, mark, length) }))
  .filter(({ board, older }) => board.spoiled?.includes(mark) || board.cut?.includes(mark) && older)
  .map(({ board, older }) => ({ board: board.board, older }));

/**
 * What was sawn from a board and is no piece of it now: spoiled there, sawn to another length than is wanted now, or not wanted at all.
 *
 * @returns {{mark: string, sawn?: number, spoiled: boolean}[]} with the length it was sawn to, mm, where that is told
 */
export function sawnOff(plan, section, board, isOfNow = false) {
  const told = (plan.tally?.boards ?? []).find(isBoard(section, board.number));
  if (!told) return [];
  const isHere = mark => !isAnew(told, mark, isOfNow) && board.cuts.some(cut => cut.mark === mark && !isOther(told, mark, cut.length));
  return [...(told.cut ?? []), ...(told.spoiled ?? [])].filter(mark => !isHere(mark))
    .map(mark => ({ mark, sawn: sawnLength(told, mark), spoiled: told.spoiled?.includes(mark) ?? false }));
}

const allPieces = parts => parts.flatMap(part => part.boards.flatMap(board => (board.cuts ?? []).map(cut => ({ board, cut, section: part.section }))));

/** All that the saw does in one stage, the longest first as the stop is moved. @returns {{board: object, cut: object, section: string}[]} */
export const piecesOf = (parts, stage) => allPieces(parts).filter(({ cut }) => cut.stage === stage)
  .sort((a, b) => b.cut.length - a.cut.length || a.board.number - b.board.number);

/** The first day on which something is still to do; the last one where all is done. */
export function dayToDo(weekends, isTaskDone) {
  const open = weekends.days.find(day => day.parts.some(part => !isTaskDone(part.task)));
  return (open ?? weekends.days.at(-1))?.number ?? 0;
}

/**
 * Puts a piece of a board into a state.
 *
 * @param {object[]} parts sections of the job sheet's cutting
 * @param {boolean} isOfNow whether they are those of the tally as it stands
 */
export const setPiece = (parts, section, number, mark, state, isOfNow = false) =>
  setPieces(parts, [{ section, board: { number }, cut: { mark } }], state, isOfNow);

/** The same of many pieces. @param {{section: string, board: {number: number}, cut: {mark: string}}[]} pieces */
function setPieces(parts, pieces, state, isOfNow) {
  if (!pieces.length) return plan => plan;
  const lengths = new Map(allPieces(parts).map(({ cut }) => [cut.mark, cut.length]));
  const marks = new Map();
  const at = new Map();
  for (const { section, board, cut: { mark } } of pieces) {
    const key = keyOf({ section, board: boardName(board.number) });
    marks.set(mark, section);
    at.set(key, [...(at.get(key) ?? []), mark]);
  }
  return plan => withTally(plan, tally => ({
    ...tally,
    boards: boardsOf(tally, parts, board => at.has(keyOf(board))).map(board => {
      const own = at.get(keyOf(board)) ?? [];
      const others = (board.cut ?? []).filter(mark => marks.has(mark) && !own.includes(mark));
      const left = others.reduce((one, mark) => withoutCut(one, mark, state, isOther(one, mark, lengths.get(mark)) || !isOf(marks.get(mark), one)), board);
      return own.reduce((one, mark) => withPiece(one, mark, state, { length: lengths.get(mark), kerf: kerfOf(plan), isOfNow }), left);
    }),
  }));
}

function withPiece(board, mark, state, { length, kerf, isOfNow }) {
  const without = list => (list ?? []).filter(one => one !== mark);
  const isLost = state !== 'wanted' && (isOther(board, mark, length) || isAnew(board, mark, isOfNow));
  return given({
    ...board,
    cut: [...without(board.cut), ...(state === 'cut' ? [mark] : [])],
    spoiled: [...without(board.spoiled), ...(state === 'spoiled' ? [mark] : [])],
    sawn: [...(board.sawn ?? []).filter(one => one.piece !== mark), ...(state === 'wanted' || !length ? [] : [{ piece: mark, length }])],
    ...(isLost ? { lost: (board.lost ?? 0) + (sawnLength(board, mark) ?? length) + kerf, opened: true } : {}),
  }, isNothing);
}

/** A piece comes out of one board alone; where it was spoiled before, or sawn to another length or of other timber, stays told. */
function withoutCut(board, mark, state, other) {
  if (state !== 'cut') return board;
  const cut = board.cut.filter(one => one !== mark);
  return given(other ? { ...board, cut, spoiled: [...(board.spoiled ?? []), mark] }
    : { ...board, cut, sawn: board.sawn?.filter(one => one.piece !== mark) }, isNothing);
}

/** So much of a board cannot be used, mm. */
export function loseOf(parts, section, number, mm) {
  return plan => withTally(plan, tally => ({
    ...tally,
    boards: boardsOf(tally, parts, isBoard(section, number)).map(board => (isBoard(section, number)(board)
      ? { ...board, ...(mm ? { lost: mm, opened: true } : { lost: undefined, opened: undefined }) } : board)),
  }));
}

export const lostOf = (plan, section, number) => (plan.tally?.boards ?? []).find(isBoard(section, number))?.lost;

/** What was bought of a pack: of this seller or of one not told, else of others. @param {string} [supplier] */
export function boughtRows(plan, item, pack, supplier) {
  const rows = (plan.tally?.bought ?? []).filter(one => one.item === item && one.pack === pack);
  const own = rows.filter(one => !supplier || !one.supplier || one.supplier === supplier);
  return own.length ? own : rows;
}

/** The same as one. */
export function bought(plan, item, pack, supplier) {
  const [first, ...more] = boughtRows(plan, item, pack, supplier);
  return more.reduce((sum, one) => given({ ...sum, count: sum.count + one.count, arrived: (sum.arrived ?? 0) + (one.arrived ?? 0), supplier: sum.supplier ?? one.supplier,
    paid: sum.paid === undefined || one.paid === undefined ? undefined : exact(sum.paid + one.paid) }), first ?? { count: 0, arrived: 0 });
}

/**
 * What was bought stays with who sold it, at what they asked then: a newer list changes only what is still to buy.
 *
 * @param {'no' | 'bought' | 'arrived'} state of all packs of a line
 * @param {{price?: string | null, supplier?: string}} offer of the order as it stands
 */
export function setBought(item, pack, count, state, { price, supplier } = {}) {
  return plan => withTally(plan, tally => {
    const rows = boughtRows(plan, item, pack, supplier);
    const has = bought(plan, item, pack, supplier);
    const more = count - has.count;
    const known = has.count === 0 ? 0 : has.paid;
    const paid = more > 0 && known !== undefined && price ? exact(known + more * Number(price)) : has.paid;
    const from = has.count ? has.supplier : supplier;
    return {
      ...tally,
      bought: [...(tally.bought ?? []).filter(one => !rows.includes(one)),
        ...(state === 'no' ? [] : [{ item, pack, count, ...(state === 'arrived' ? { arrived: count } : {}), ...(from ? { supplier: from } : {}), ...(paid === undefined ? {} : { paid }) }])],
    };
  });
}

/** Without what sums of binary numbers are off; the document takes money to four decimals, as currencies of three have need of. */
const exact = amount => Math.round(amount * 10000) / 10000;

/** What was paid for all packs of a line, kept with the first; undefined takes it out. */
export function setPaid(item, paid) {
  return plan => withTally(plan, tally => {
    const first = (tally.bought ?? []).findIndex(one => one.item === item);
    return { ...tally, bought: (tally.bought ?? []).map((one, i) => {
      if (one.item !== item) return one;
      const { paid: _before, ...rest } = one;
      return paid === undefined ? rest : { ...rest, paid: i === first ? paid : 0 };
    }) };
  });
}
