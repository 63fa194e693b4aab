import { SheetsAhead } from '../../main/resources/META-INF/resources/state/sheets-ahead.js';
import { equal, test } from '../trial.js';

function garden(beds = 1) {
  return { id: 'g', plan: { beds: Array.from({ length: beds }, () => ({})) }, trying: false, keeper: { standing: 'kept', revision: '"1"' }, reckoning: Object.assign(new EventTarget(), { standing: 'fresh' }) };
}

function set({ worker = true, fails = {} } = {}) {
  const asked = [];
  const waits = [];
  const api = { keepJobSheet: async () => { asked.push('whole'); }, sheets: async () => { asked.push('list'); }, keepSheet: async (id, name) => { asked.push(name); if (fails[name]) throw fails[name]; }, part: async (id, name) => { asked.push(name); } };
  return { asked, ahead: new SheetsAhead(api, () => worker, run => waits.push(run)), rest: async () => { for (const run of waits.splice(0)) run(); for (let i = 0; i < 40; i++) await null; } };
}

test('the whole job sheet, days, course cards, boards, pegs and deliveries are fetched once a revision, at rest', async () => {
  const { asked, ahead, rest } = set();
  const open = garden();
  ahead.follow(open);
  equal(asked, []);
  await rest();
  equal(asked, ['whole', 'list', 'pegs', 'loads', 'weekends.pdf', 'course-cards.pdf', 'saw-day.pdf', 'setting-out.pdf', 'load-in.pdf']);
  open.reckoning.dispatchEvent(new Event('change'));
  await rest();
  equal(asked.length, 9);
  open.keeper.revision = '"2"';
  open.reckoning.dispatchEvent(new Event('change'));
  await rest();
  equal(asked.length, 18);
});

test('of many beds the job sheet alone is fetched', async () => {
  const { asked, ahead, rest } = set();
  ahead.follow(garden(61));
  await rest();
  equal(asked, ['whole']);
});

test('nothing is fetched without a worker, while something is tried or after another garden is opened', async () => {
  const { asked: none, ahead: without, rest: later } = set({ worker: false });
  without.follow(garden());
  await later();
  const { asked, ahead, rest } = set();
  ahead.follow({ ...garden(), trying: true });
  const first = garden();
  ahead.follow(first);
  ahead.follow({ ...garden(), id: 'h', keeper: { standing: 'away', revision: '"1"' } });
  await rest();
  equal([none, asked], [[], []]);
});

test('a sheet that the garden has too little for leaves the next, a server that is away ends it', async () => {
  const { asked, ahead, rest } = set({ fails: { 'weekends.pdf': { status: 422 } } });
  ahead.follow(garden());
  await rest();
  equal(asked.length, 9);
  const away = set({ fails: { 'weekends.pdf': new Error('away') } });
  away.ahead.follow(garden());
  await away.rest();
  equal(away.asked, ['whole', 'list', 'pegs', 'loads', 'weekends.pdf']);
});
