import { Reckoning } from '../../main/resources/META-INF/resources/state/reckoning.js';
import { equal, test } from '../trial.js';

const sheet = total => ({ beds: [{ id: 'A' }], slip: { total, lines: [] } });

test('the slip before is kept beside the slip that stands', async () => {
  const sheets = [sheet('10.00'), sheet('12.00')];
  const reckoning = new Reckoning({ jobSheet: async () => sheets.shift() }, 'g');
  await reckoning.fetch();
  equal([reckoning.standing, reckoning.before, reckoning.bed('A')], ['fresh', null, { id: 'A' }]);
  await reckoning.fetch();
  equal([reckoning.before.total, reckoning.sheet.slip.total], ['10.00', '12.00']);
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
