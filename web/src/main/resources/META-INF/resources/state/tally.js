/** What was done, cut and bought: commands plan => newPlan over the document's `tally`. */

const withTally = (plan, change) => {
  const tally = change(plan.tally ?? {});
  const kept = Object.fromEntries(Object.entries(tally).filter(([, value]) => !(Array.isArray(value) && !value.length) && value !== undefined && value !== 0));
  const { tally: _before, ...rest } = plan;
  return Object.keys(kept).length ? { ...rest, tally: kept } : rest;
};

export const isDone = (plan, task) => (plan.tally?.done ?? []).some(one => one.task === task);

/** Ticks a task, or takes the tick off. @param {number} day of the plan on which it was done */
export function tickTask(task, day) {
  return plan => withTally(plan, tally => ({
    ...tally,
    done: isDone(plan, task) ? tally.done.filter(one => one.task !== task) : [...(tally.done ?? []), day ? { task, day } : { task }],
  }));
}

/** The rest is planned from this day on. */
export const planFrom = day => plan => withTally(plan, tally => ({ ...tally, day, asOf: undefined }));

const boardName = number => `#${number}`;

/** All boards of the cutting as bought and waiting, so that none is missing once the first is opened. */
function boardsOf(tally, parts) {
  const named = new Set((tally.boards ?? []).map(board => board.board));
  const waiting = parts.flatMap(part => part.boards.map(board => ({ board: boardName(board.number), section: part.section, stock: board.stock })));
  return [...(tally.boards ?? []), ...waiting.filter(board => !named.has(board.board))];
}

/** How a piece stands: `wanted`, `cut` or `spoiled`. */
export function pieceState(plan, mark) {
  for (const board of plan.tally?.boards ?? []) {
    if (board.cut?.includes(mark)) return 'cut';
    if (board.spoiled?.includes(mark)) return 'spoiled';
  }
  return 'wanted';
}

/** Puts a piece of a board into a state. @param {object[]} parts sections of the job sheet's cutting */
export function setPiece(parts, number, mark, state) {
  return plan => withTally(plan, tally => ({
    ...tally,
    boards: boardsOf(tally, parts).map(board => {
      const cut = (board.cut ?? []).filter(one => one !== mark);
      const spoiled = (board.spoiled ?? []).filter(one => one !== mark);
      if (board.board === boardName(number)) {
        if (state === 'cut') cut.push(mark);
        if (state === 'spoiled') spoiled.push(mark);
      }
      const { cut: _cut, spoiled: _spoiled, ...rest } = board;
      return { ...rest, ...(cut.length ? { cut } : {}), ...(spoiled.length ? { spoiled } : {}) };
    }),
  }));
}

/** So much of a board cannot be used, mm. */
export function loseOf(parts, number, mm) {
  return plan => withTally(plan, tally => ({
    ...tally,
    boards: boardsOf(tally, parts).map(board => (board.board === boardName(number)
      ? { ...board, ...(mm ? { lost: mm, opened: true } : { lost: undefined, opened: undefined }) } : board)),
  }));
}

export const bought = (plan, item, pack) => (plan.tally?.bought ?? []).find(one => one.item === item && one.pack === pack) ?? { count: 0, arrived: 0 };

/** @param {'no' | 'bought' | 'arrived'} state of all packs of a line */
export function setBought(item, pack, count, state) {
  return plan => withTally(plan, tally => ({
    ...tally,
    bought: [...(tally.bought ?? []).filter(one => !(one.item === item && one.pack === pack)),
      ...(state === 'no' ? [] : [{ item, pack, count, ...(state === 'arrived' ? { arrived: count } : {}) }])],
  }));
}
