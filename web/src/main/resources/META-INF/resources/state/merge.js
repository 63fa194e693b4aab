/** Two people changed one garden: what goes together, and what does not. */

/** Lists whose members carry a code and so can be told apart. */
const LISTS = new Set(['beds', 'types', 'paths', 'rack']);

export function equal(a, b) {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || !a || !b || Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every(key => Object.hasOwn(b, key) && equal(a[key], b[key]));
}

/**
 * Three-way merge: what only one side changed is taken, what both changed in the same way is kept once.
 *
 * @param {object} base the document both began with
 * @returns {{plan: object, clashes: {where: string, mine: any, theirs: any}[]}} where they clash `plan` holds mine
 */
export function merged(base, mine, theirs) {
  const clashes = [];
  const plan = {};
  for (const key of keysOf(theirs, mine, base)) {
    const value = key === 'tally' && [base[key], mine[key], theirs[key]].every(one => one === undefined || typeof one === 'object')
      ? mergedTally(base[key] ?? {}, mine[key] ?? {}, theirs[key] ?? {}, clashes) : LISTS.has(key) && [base[key], mine[key], theirs[key]].every(listWithCodes)
      ? mergedList(`${one(key)} `, member => member.id, [base[key], mine[key], theirs[key]], clashes)
      : chosen(key, base[key], mine[key], theirs[key], clashes);
    if (value !== undefined) plan[key] = value;
  }
  return { plan, clashes };
}

const keysOf = (...objects) => [...new Set(objects.flatMap(object => Object.keys(object ?? {})))];

const listWithCodes = list => list === undefined || (Array.isArray(list) && list.every(one => one?.id));

function chosen(where, base, mine, theirs, clashes) {
  if (equal(mine, theirs) || equal(mine, base)) return theirs;
  if (!equal(theirs, base)) clashes.push({ where, mine, theirs });
  return mine;
}

/** Lists of which each member has a name, those of one name by their turn: what the two did with different members is no clash. */
function mergedList(where, nameOf, lists, clashes, choose = chosen) {
  const [base, mine, theirs] = lists.map(list => {
    const byName = new Map();
    for (const member of list ?? []) {
      let name = nameOf(member);
      while (byName.has(name)) name += ', again';
      byName.set(name, member);
    }
    return byName;
  });
  const [first, second] = turned(base, mine) && !turned(base, theirs) ? [mine, theirs] : [theirs, mine];
  return [...new Set([...first.keys(), ...second.keys()])]
    .map(name => choose(`${where}${name}`, base.get(name), mine.get(name), theirs.get(name), clashes)).filter(value => value !== undefined);
}

/** Whether those that both have stand in another order. */
const turned = (base, side) => !equal([...base.keys()].filter(name => side.has(name)), [...side.keys()].filter(name => base.has(name)));

const PIECES = ['cut', 'spoiled', 'sawn'];

/** The pieces of a board, each with how it is told. */
const piecesOn = board => ['cut', 'spoiled'].flatMap(state => (board?.[state] ?? []).map(mark => ({ mark, state, sawn: board.sawn?.find(one => one.piece === mark) })));

/** A board of which both told: piece by piece, as two tasks that are ticked may handle pieces of one board. Else it is one thing. */
function mergedBoard(where, base, mine, theirs, clashes) {
  if (!mine || !theirs) return chosen(where, base, mine, theirs, clashes);
  const own = [];
  const pieces = mergedList('', one => one.mark, [base, mine, theirs].map(piecesOn), own);
  const board = {};
  for (const key of keysOf(theirs, mine, base)) {
    const marks = pieces.filter(one => one.state === key).map(one => one.mark);
    const value = !PIECES.includes(key) ? chosen(key, base?.[key], mine[key], theirs[key], own)
      : key === 'sawn' ? [...new Set(pieces.map(one => one.sawn).filter(Boolean))] : marks;
    if (value !== undefined && !(PIECES.includes(key) && !value.length)) board[key] = value;
  }
  if (own.length) clashes.push({ where, mine, theirs });
  return own.length ? mine : board;
}

const boardName = one => `${one.section} ${one.board}`;

/**
 * Boards come with the first mark and go with it where it is undone: where another has marked something since they are still there.
 */
function stillThere(base = [], side = [], other = []) {
  if (equal(base, other)) return side;
  const gone = base.filter(board => !side.some(one => boardName(one) === boardName(board)));
  const bare = board => Object.fromEntries(Object.entries(board).filter(([key]) => ![...PIECES, 'lost', 'opened', 'left'].includes(key)));
  return [...side, ...gone.map(bare)];
}

/** What was done, cut and bought, mark by mark: two people at two boards, or at two pieces of one, are no clash. */
function mergedTally(base, mine, theirs, clashes) {
  const tally = {};
  const names = { done: one => one.task, boards: boardName, bought: one => [one.item, one.pack, one.supplier].filter(Boolean).join(', ') };
  for (const key of keysOf(theirs, mine, base)) {
    const nameOf = names[key];
    if (!nameOf) {
      const value = chosen(`tally, ${key}`, base[key], mine[key], theirs[key], clashes);
      if (value !== undefined) tally[key] = value;
      continue;
    }
    const [was, own, other] = [base[key], mine[key], theirs[key]];
    const list = key !== 'boards' ? mergedList('tally, ', nameOf, [was, own, other], clashes)
      : mergedList('tally, ', nameOf, [was, stillThere(was, own, other), stillThere(was, other, own)], clashes, mergedBoard);
    if (list.length) tally[key] = list;
  }
  return Object.keys(tally).length ? tally : undefined;
}

const one = key => (key === 'rack' ? 'board' : key.replace(/s$/, ''));

/**
 * Clashes for reading side by side: of what both have, the members that are not alike.
 *
 * @returns {{where: string, mine: string, theirs: string}[]}
 */
export function toldApart(clashes) {
  return clashes.map(({ where, mine, theirs }) => {
    const apart = isObject(mine) && isObject(theirs) ? keysOf(mine, theirs).filter(key => !equal(mine[key], theirs[key])) : null;
    return { where, mine: told(mine, apart), theirs: told(theirs, apart) };
  });
}

const isObject = value => typeof value === 'object' && value !== null && !Array.isArray(value);

/** A bed or value in few words. @param {string[] | null} [members] those to tell of it, else all @param {string} [nothing] */
export function told(value, members = null, nothing = 'not there') {
  if (value === undefined) return nothing;
  if (Array.isArray(value)) return value.map(part => told(part)).join(value.some(part => typeof part === 'object') ? '; ' : ', ');
  if (!isObject(value)) return String(value);
  return (members ?? Object.keys(value).filter(key => key !== 'id')).map(key => `${key} ${told(value[key], null, 'as usual')}`).join(', ');
}
