import { Reckoning } from '../../main/resources/META-INF/resources/state/reckoning.js';
import { equal, test } from '../trial.js';

const sheet = total => ({ beds: [{ id: 'A' }], slip: { total, lines: [] }, ground: {}, searches: [], snags: [], yard: [{ bed: 'A', timbers: [[[0, 0]]] }] });

test('the slip before is kept beside the slip that stands', async () => {
  const sheets = [sheet('10.00'), sheet('12.00')];
  const reckoning = new Reckoning({ jobSheet: async () => sheets.shift() }, 'g');
  await reckoning.fetch();
  equal([reckoning.standing, reckoning.before, reckoning.bed('A'), reckoning.top('A'), reckoning.top('B')], ['fresh', null, { id: 'A' }, [[[0, 0]]], []]);
  await reckoning.fetch();
  equal([reckoning.before.total, reckoning.sheet.slip.total], ['10.00', '12.00']);
});

/** A server whose whole sheets come when they are let go. */
function heldWhole(first, whole, asked = []) {
  let go;
  const held = new Promise(resolve => { go = resolve; });
  const answer = ({ look = '' }) => { asked.push(look); return look ? { ...first, look: 'first' } : held.then(() => whole); };
  return { api: { jobSheet: async (_, asks) => answer(asks), jobSheetOf: async (_, asks) => answer(asks) }, go, asked };
}

const turns = async () => { for (let i = 0; i < 10; i++) await null; };

test('a first look stands until the whole is there, beside the last whole slip', async () => {
  const { api, go, asked } = heldWhole(sheet('12.40'), sheet('12.00'));
  const reckoning = new Reckoning(api, 'g');
  reckoning.fresh(sheet('10.00'));
  const all = reckoning.fetch();
  await turns();
  equal([reckoning.standing, reckoning.mayImprove, reckoning.isOrdered, reckoning.sheet.slip.total, reckoning.before.total], ['first', true, true, '12.40', '10.00']);
  go();
  await all;
  equal([reckoning.standing, reckoning.mayImprove, reckoning.sheet.slip.total, reckoning.before.total, asked], ['fresh', false, '12.00', '10.00', ['first', '']]);
});

test('the next change is told against the last whole slip, and an old whole counts no more', async () => {
  const { api, go } = heldWhole(sheet('12.40'), sheet('12.00'));
  const reckoning = new Reckoning(api, 'g');
  reckoning.fresh(sheet('10.00'));
  reckoning.fresh({ ...sheet('11.00'), look: 'first' });
  equal([reckoning.standing, reckoning.before.total], ['first', '10.00']);
  reckoning.fresh({ ...sheet('13.00'), look: 'first' });
  equal([reckoning.standing, reckoning.before.total, reckoning.sheet.slip.total], ['first', '10.00', '13.00']);
  reckoning.fresh(sheet('14.00'));
  go();
  await turns();
  equal([reckoning.standing, reckoning.sheet.slip.total, reckoning.before.total], ['fresh', '14.00', '10.00']);
});

test('a first look at the order is one until the whole sheet is there, which is sent once', async () => {
  const { api, go, asked } = heldWhole(sheet('12.40'), sheet('12.00'));
  const reckoning = new Reckoning(api, 'g', () => true);
  const rest = reckoning.ordered({ look: 'first', slip: { total: '12.40' }, snags: [] });
  equal([reckoning.standing, reckoning.mayImprove], ['ordered', true]);
  go();
  await rest;
  equal([reckoning.standing, reckoning.mayImprove, asked], ['fresh', false, ['']]);
});

/** A server that fails as told, and the waits that it is asked again after. */
function failing(answers) {
  const waits = [];
  const next = async () => { const answer = answers.length > 1 ? answers.shift() : answers[0]; if (answer instanceof Error) throw answer; return answer; };
  const later = (run, ms) => waits.push([run, ms]);
  return { api: { jobSheet: next, jobSheetOf: next }, later, waits, again: async () => { waits.shift()[0](); await turns(); } };
}

const busy = () => Object.assign(new Error('The server answered 503.'), { told: 'too many requests wait' });

test('a first look stands while the whole does not come, with the reason, and the whole is asked for again', async () => {
  const { api, later, waits, again } = failing([busy(), new Error('away'), new Error('away'), sheet('12.00')]);
  const reckoning = new Reckoning(api, 'g', undefined, later);
  let changes = 0;
  reckoning.addEventListener('change', () => changes++);
  reckoning.fresh({ ...sheet('12.40'), look: 'first' });
  await turns();
  equal([reckoning.standing, reckoning.isOrdered, reckoning.why, waits.map(([, ms]) => ms)], ['first', true, 'too many requests wait; it is asked again', [1000]]);
  await again();
  equal([reckoning.standing, reckoning.why, waits.map(([, ms]) => ms), changes], ['first', '', [2000], 3]);
  await again();
  equal(changes, 3, 'the same is not told twice');
  await again();
  equal([reckoning.standing, reckoning.why, reckoning.sheet.slip.total, waits.length], ['fresh', null, '12.00', 0]);
});

test('a sheet that does not come is asked for again until another is asked for or the garden is closed; a refusal is not', async () => {
  const refusal = Object.assign(new Error('The bed is too small.'), { status: 422, snags: [] });
  const { api, later, waits, again } = failing([busy(), busy(), busy(), refusal]);
  const reckoning = new Reckoning(api, 'g', undefined, later);
  await reckoning.fetch();
  equal([reckoning.standing, waits.length], ['away', 1]);
  await reckoning.fetch();
  await again();
  equal(waits.length, 1, 'the earlier turn asks no more');
  await again();
  equal(waits.length, 1);
  await again();
  equal([reckoning.standing, reckoning.why, waits.length], ['away', 'The bed is too small', 0]);
  const closed = failing([busy()]);
  const other = new Reckoning(closed.api, 'g', undefined, closed.later);
  await other.fetch();
  other.close();
  await closed.again();
  equal(closed.waits.length, 0);
});

test('a part of a whole sheet that a busy server did not send is asked for again, and not in place of it the whole', async () => {
  const { api, later, waits, again } = failing([sheet('9.00'), busy(), { weekends: { tasks: [1] } }]);
  const reckoning = new Reckoning(api, 'g', undefined, later);
  await reckoning.fetch();
  reckoning.shown.want(['weekends']);
  await turns();
  equal([reckoning.problem, waits.length, reckoning.lacks(['weekends'])], ['Not worked out yet, the server says: too many requests wait.', 1, true]);
  await again();
  equal([reckoning.problem, reckoning.sheet.weekends], [null, { tasks: [1] }]);
});

test('parts that are opened while what is tried cannot be had are of the sheet that stands', async () => {
  const asked = [];
  let tries = 0;
  const reckoning = new Reckoning({ jobSheet: async (_, { parts }) => { asked.push(String(parts)); return { ...sheet('10.00'), weekends: 'stored' }; },
    jobSheetOf: async () => { if (tries++) return { weekends: 'tried' }; throw busy(); } }, 'g', undefined, () => {});
  reckoning.fresh(sheet('10.00'));
  await reckoning.tryOut({});
  reckoning.shown.want(['weekends']);
  await turns();
  equal([reckoning.sheet.weekends, asked], ['stored', ['weekends']]);
});

test('a garden that had no sheet before something was tried is asked for one once that is let go', async () => {
  const { api, later } = failing([busy(), sheet('7.00'), sheet('10.00')]);
  const reckoning = new Reckoning(api, 'g', undefined, later);
  await reckoning.fetch();
  await reckoning.tryOut({});
  reckoning.letGo();
  await turns();
  equal([reckoning.standing, reckoning.sheet.slip.total], ['fresh', '10.00']);
});

test('what is tried over a first look is held against the whole sheet of the garden', async () => {
  const { api, go } = heldWhole(sheet('9.00'), sheet('8.00'));
  const reckoning = new Reckoning(api, 'g');
  reckoning.fresh({ ...sheet('11.00'), look: 'first' });
  const tried = reckoning.tryOut({});
  await turns();
  equal([reckoning.standing, reckoning.stands.look], ['first', 'first']);
  go();
  await tried;
  await turns();
  equal([reckoning.standing, reckoning.stands.look, reckoning.before.total], ['fresh', undefined, '8.00']);
});

test('of two on their way only the later counts, whichever comes first', async () => {
  const answers = [];
  const reckoning = new Reckoning({ jobSheet: () => new Promise(resolve => answers.push(resolve)) }, 'g');
  const both = [reckoning.fetch(), reckoning.fetch()];
  answers[1](sheet('new'));
  answers[0](sheet('old'));
  await Promise.all(both);
  equal(reckoning.sheet.slip.total, 'new');
});

test('slip and snags may come before the rest, beside the slip that stood', async () => {
  const reckoning = new Reckoning({ jobSheet: async () => ({ ...sheet('12.00'), beds: [{ id: 'B' }] }) }, 'g');
  reckoning.standsAt(sheet('10.00'));
  const rest = reckoning.ordered({ slip: { total: '12.00' }, snags: [] });
  equal([reckoning.standing, reckoning.isOrdered, reckoning.before.total, reckoning.sheet.slip.total, reckoning.sheet.beds], ['ordered', true, '10.00', '12.00', [{ id: 'A' }]]);
  await rest;
  equal([reckoning.standing, reckoning.before.total, reckoning.sheet.beds], ['fresh', '10.00', [{ id: 'B' }]]);
});

test('what is tried has its own sheet, and the garden its own again once it is let go', async () => {
  const reckoning = new Reckoning({ jobSheet: async () => sheet('10.00'), jobSheetOf: async plan => { if (plan.bad) throw Object.assign(new Error('no'), { status: 422, snags: [{ text: 'too small' }] }); return sheet('7.00'); } }, 'g');
  await reckoning.fetch();
  await reckoning.tryOut({});
  equal([reckoning.sheet.slip.total, reckoning.before.total, reckoning.stands.slip.total], ['7.00', '10.00', '10.00']);
  await reckoning.tryOut({ bad: true });
  equal([reckoning.standing, reckoning.refused.length], ['away', 1]);
  reckoning.fresh(sheet('11.00'));
  reckoning.letGo();
  equal([reckoning.standing, reckoning.sheet.slip.total, reckoning.stands, reckoning.refused], ['fresh', '11.00', null, []]);
});

test('a server that is away leaves the sheet that stands', async () => {
  let fail = false;
  const reckoning = new Reckoning({ jobSheet: async () => { if (fail) throw new Error('away'); return sheet('10.00'); } }, 'g');
  await reckoning.fetch();
  fail = true;
  await reckoning.fetch();
  equal([reckoning.standing, reckoning.sheet.slip.total], ['away', '10.00']);
});

test('a sheet that came with what was saved stands at once, and an answer on its way counts no more', async () => {
  let answer;
  const reckoning = new Reckoning({ jobSheet: () => new Promise(resolve => { answer = resolve; }) }, 'g');
  const asked = reckoning.fetch();
  reckoning.fresh(sheet('2.00'));
  answer(sheet('1.00'));
  await asked;
  equal([reckoning.standing, reckoning.sheet.slip.total], ['fresh', '2.00']);
});

test('only what is shown is asked for, and of the beds the one in hand', async () => {
  const asked = [];
  const all = { ...sheet('10.00'), beds: [{ id: 'A' }, { id: 'B' }], weekends: { tasks: [] } };
  const api = { jobSheet: async (_, { parts, bed }) => {
    asked.push(`${parts} ${bed ?? ''}`);
    return Object.fromEntries(parts.map(part => [part, part === 'beds' ? all.beds.filter(({ id }) => id === bed) : all[part]]));
  } };
  const reckoning = new Reckoning(api, 'g');
  const settled = async () => { for (let i = 0; i < 20; i++) await null; };
  await reckoning.fetch();
  const stood = reckoning.sheet;
  equal([asked, reckoning.lacks(['weekends'])], [['ground,searches,slip,snags,yard '], true]);
  const closed = reckoning.shown.want(['weekends']);
  reckoning.shown.want(['beds']);
  await settled();
  equal([asked.at(-1), reckoning.lacks(['weekends', 'beds']), reckoning.sheet === stood], ['weekends ', false, true]);
  reckoning.shown.take('B');
  await settled();
  equal([asked.at(-1), reckoning.bed('B'), reckoning.bed('A')], ['beds B', { id: 'B' }, null]);
  reckoning.shown.take('A');
  await settled();
  equal([asked.length, reckoning.sheet.beds.length], [4, 2]);
  closed();
  await reckoning.fetch();
  equal([asked.at(-1), reckoning.sheet.beds.length, reckoning.sheet.weekends], ['beds,ground,searches,slip,snags,yard A', 1, undefined]);
});

test('without signal a place takes its part from the whole that was kept, and one that was not kept says so once', async () => {
  let whole = { ...sheet('10.00'), weekends: { tasks: [1] } };
  let calls = 0;
  const reckoning = new Reckoning({ jobSheet: async (_, asked) => { calls++; if (asked || !whole) throw new Error('The server does not answer.'); return whole; } }, 'g');
  reckoning.standsAt(sheet('9.00'));
  const settled = async () => { for (let i = 0; i < 20; i++) await null; };
  reckoning.shown.want(['weekends']);
  await settled();
  equal([reckoning.sheet.weekends, reckoning.sheet.slip.total, reckoning.problem], [{ tasks: [1] }, '9.00', null]);
  whole = null;
  reckoning.shown.want(['cutting']);
  await settled();
  equal([reckoning.lacks(['cutting']), reckoning.problem, calls], [true, 'The server does not answer.', 4]);
});
