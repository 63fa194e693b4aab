import { freeCode, withOne } from './fields.js';
import { readLengths, shown } from '../geometry/length.js';
import { isFeet } from '../geometry/measure.js';
import { USUAL } from './plan.js';
import { keepOf } from './saw-day.js';

/** The boards on hand. Changes are functions plan => newPlan; a board is named by its place in the document. */

const rackOf = plan => plan.rack ?? [];

const told = (mm, units) => shown(mm, units) + (isFeet(units) ? '' : ' mm');

/** @returns {{index: number, id: string, section: string, length: number, count: number, bad: [number, number][], goodFaces: number, origin: string, coated: boolean, salvage?: number}[]} */
export function readRack(plan) {
  const usual = plan.defaults?.section ?? USUAL.section;
  return rackOf(plan).map((board, index) => ({
    index, id: board.id ?? '', section: board.section ?? usual, length: board.length, count: board.count ?? 1, bad: board.bad ?? [],
    goodFaces: board.goodFaces ?? 2, origin: board.origin ?? '', coated: board.coated ?? false, ...(board.salvage === undefined ? {} : { salvage: board.salvage }),
  }));
}

/** Racks boards of one length. */
export const rackBoard = ({ length, section, count }) => plan => ({
  ...plan, rack: [...rackOf(plan), { id: freeCode('K', rackOf(plan)), section, length, ...(count > 1 ? { count } : {}) }],
});

/** Sets or, with undefined, takes away what is said of a board. */
export const setBoard = (index, fields) => plan => withOne(plan, 'rack', index, fields);

export const takeOffRack = index => plan => (rackOf(plan)[index] ? { ...plan, rack: rackOf(plan).toSpliced(index, 1) } : plan);

/**
 * Reads bad spans as one calls them out from the marked end: `0-150, 1.18 m to 1.26 m`, `0" to 6"`.
 *
 * @param {string} text
 * @param {number} length of the board, millimetres
 * @param {'metric'|'imperial'} units in which faults are told
 * @returns {{value: [number, number][]} | {error: string}} in order, overlapping ones joined
 */
export function readBad(text, length, units) {
  const spans = [];
  for (const part of text.split(/[,;]/).map(one => one.trim()).filter(Boolean)) {
    const ends = part.split(/\s*(?:-|–|\bto\b)\s*/);
    if (ends.length !== 2) return { error: `“${part.slice(0, 16)}” is no span. Write from and to, such as ${badText([[0, 150]], units)}.` };
    const [from, to] = ends.map(end => readLengths(end, units));
    const wrong = from.error ?? to.error;
    if (wrong) return { error: wrong };
    const [a, b] = [from.mm[0], to.mm[0]];
    if (b <= a) return { error: `${told(b, units)} does not lie beyond ${told(a, units)}. Write the nearer end first.` };
    if (b > length) return { error: `${told(b - length, units)} beyond the end of the board. Write ${told(length, units)} or less.` };
    spans.push([a, b]);
  }
  spans.sort(([a], [b]) => a - b);
  const joined = [];
  for (const span of spans) {
    const last = joined.at(-1);
    if (last && span[0] <= last[1]) last[1] = Math.max(last[1], span[1]);
    else joined.push([...span]);
  }
  return { value: joined };
}

/** As {@link readBad} reads them. */
export const badText = (bad, units) => bad.map(([from, to]) => (isFeet(units) ? `${shown(from, units)} to ${shown(to, units)}` : `${from}-${to}`)).join(', ');

/** What the server saws of a board, between its bad spans. @returns {[number, number][]} */
export function goodRuns(plan, { length, bad }) {
  const runs = [];
  let from = 0;
  for (const [a, b] of [...bad.toSorted(([p], [q]) => p - q), [length, length]]) {
    if (a - from >= keepOf(plan)) runs.push([from, a]);
    from = Math.max(from, b);
  }
  return runs;
}

/** The id of a stock length, which is its length, mm. */
const STOCK = /^[1-9]\d{2,4}(\.\d)?$/;

/**
 * The pieces that the saw takes out of the boards on hand: `K1 1260-2750` in the cutting is a run of board K1.
 *
 * @param {object | null} sheet the job sheet
 * @returns {Map<string, {mark: string, from: number, to: number}[][]>} by board, one list for each of its count
 */
export function chalked(sheet) {
  const found = new Map();
  for (const part of [...(sheet?.cutting ?? []), ...(sheet?.strips ?? [])]) {
    for (const { stock, cuts } of part.boards ?? []) {
      const named = /^(\S+?)(?: (\d+(?:\.\d+)?)-\d+(?:\.\d+)?)?$/.exec(String(stock));
      if (!named || STOCK.test(stock)) continue;
      const start = Number(named[2] ?? 0);
      const lists = found.get(named[1]) ?? [];
      lists.push({ start: named[2] === undefined ? null : start, cuts: cuts.map(({ mark, from, to }) => ({ mark, from: from + start, to: to + start })) });
      found.set(named[1], lists);
    }
  }
  return new Map([...found].map(([id, lists]) => [id, stacked(lists)]));
}

/** Runs of one board belong together; whole boards are each their own. */
function stacked(lists) {
  const whole = lists.filter(({ start }) => start === null).map(({ cuts }) => cuts);
  const runs = lists.filter(({ start }) => start !== null).sort((a, b) => a.start - b.start);
  const boards = [];
  for (const run of runs) {
    const room = boards.find(board => board.every(cut => cut.to <= run.start));
    if (room) room.push(...run.cuts);
    else boards.push([...run.cuts]);
  }
  return [...boards, ...whole];
}
