/** What the saw does in which stage, out of the job sheet's cutting. */

/** What a saw cut takes, mm. */
export const kerfOf = plan => plan.saw?.kerf ?? 4;

/** What is shorter is no offcut to keep and no run of a board on hand, mm. */
export const keepOf = plan => plan.saw?.keepOffcut ?? 300;

/**
 * Boards of one stage, those cut alike together, nests parted alike too.
 *
 * @param {object} part one section of the sheet's cutting
 * @param {number | null} stage null for all
 * @returns {{stock: string, length: number, numbers: number[], cuts: {mark: string, from: number, to: number, length: number, stage: number}[], marks: string[][], rest: number}[]}
 */
export function alike(part, stage = null) {
  const found = new Map();
  for (const board of part.boards ?? []) {
    if (stage !== null && !board.cuts.some(cut => cut.stage === stage)) continue;
    const key = JSON.stringify([board.stock, board.length, board.cuts.map(cut => [cut.from, cut.to, cut.stage, nestOf(part, cut.mark)?.cuts.map(slant => [Math.round(slant.face), Math.round(slant.back)])])]);
    const known = found.get(key);
    if (known) {
      known.numbers.push(board.number);
      known.marks.forEach((marks, i) => marks.push(board.cuts[i].mark));
    } else {
      found.set(key, { ...board, numbers: [board.number], marks: board.cuts.map(cut => [cut.mark]) });
    }
  }
  return [...found.values()];
}

/**
 * A board from its first end to its last, nothing left out and nothing twice.
 *
 * @param {object} board as the job sheet has it
 * @param {{kerf: number, retrim: number, keep: number}} saw millimetres; what is wider than a cut between two pieces is lost
 * @returns {{kind: 'trim'|'cut'|'kerf'|'lost'|'kept'|'over', from: number, to: number, cut?: number}[]}
 */
export function segments(board, { kerf, retrim, keep }) {
  const found = [];
  let at = 0;
  const until = (to, kind, more = {}) => {
    if (to - at > 0.0005) found.push({ kind, from: at, to, ...more });
    at = Math.max(at, to);
  };
  board.cuts.forEach((cut, i) => {
    until(cut.from, cut.from - at <= (i ? kerf + retrim : board.trim ?? kerf) + 0.05 ? i ? 'kerf' : 'trim' : 'lost');
    until(cut.to, 'cut', { cut: i });
  });
  const rest = board.length - board.rest;
  until(rest, rest - at <= kerf + 0.05 ? 'kerf' : 'lost');
  until(board.length, board.rest >= keep ? 'kept' : 'over');
  return found;
}

/** What of a board waits for a later stage: which length lies there after which stage, and when it is cut again. */
export const waiting = (part, number) => (part.ledger?.offcuts ?? []).filter(one => one.board === number && one.fate === 'carried');

/** The stages in which there is something to saw, in order. @returns {number[]} */
export const stagesOf = parts => [...new Set(parts.flatMap(part => (part.boards ?? []).flatMap(board => board.cuts.map(cut => cut.stage))))].sort((a, b) => a - b);

/** Board numbers as one says them: `1-4, 7`. */
export function runs(numbers) {
  const sorted = [...numbers].sort((a, b) => a - b);
  const parts = [];
  for (const number of sorted) {
    const last = parts.at(-1);
    if (last && number === last[1] + 1) last[1] = number;
    else parts.push([number, number]);
  }
  return parts.map(([from, to]) => (from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from}-${to}`)).join(', ');
}

/** What is bought of a section, with the slip's own figures, and how good it is. @param {object} part @param {(amount: string | number) => string} money @param {string} [named] the section in words */
export function standing({ section, result, ripping, boardsBedByBed, onHand = [], ways = [] }, money, named = section) {
  const [pooled, alone] = ['pooled', 'bed by bed'].map(name => ways.find(({ way }) => way === name));
  const boards = pooled?.boards ?? result.boards;
  const own = ripping ? 0 : onHand.reduce((sum, { opened }) => sum + opened, 0);
  const bought = `${boards - own} boards of ${named}${own ? ` bought and ${own} ${own === 1 ? 'length' : 'lengths'} on hand` : ''}${ripping ? `, ripped into ${result.boards} strips` : ''}`;
  const cost = pooled ? pooled.cost && money(pooled.cost) : money(result.cost);
  // of strips only the lengths are proved, not the boards that they are ripped from; what a board on hand is worth is nobody's bill
  const unused = Number(pooled?.cost ?? 0) > result.cost + 0.004; // boards of whole bundles, of which nothing is proved
  const best = ripping || result.salvage ? null : result.proven && !unused ? 'proven least' : `none can cost less than ${money(result.lowerBound)}`;
  const other = alone ? `; bed by bed ${boardsBedByBed ?? alone.boards} boards${own ? ' and lengths on hand together' : ''}, ${money(alone.cost)}` : '';
  return `${[bought, cost, best].filter(Boolean).join(', ')}${other}.`;
}

/** The marks of the pieces in what is cut off under one mark: `X-1A+X-1B` is a nest of two. */
export const marksIn = mark => mark.split('+');

/** The nest that is cut off under this mark. @returns {object | undefined} */
export const nestOf = (part, mark) => part.nests?.find(nest => nest.mark === mark);

/** The bed of a mark: `M-2C`, `M-R1 bearer 2` and `M beam 1` are of bed M, of a nest that of its first piece. */
export const bedOfMark = mark => marksIn(mark)[0].replace(/(?:-\d+[A-Z]+[a-z]*|-R\d+ [^-]*| beam \d+[a-z]*)$/, '');
