import { moveBed } from '../../main/resources/META-INF/resources/state/commands.js';
import { Garden } from '../../main/resources/META-INF/resources/state/garden.js';
import { equal, storage, test } from '../trial.js';

const settled = async () => { for (let i = 0; i < 30; i++) await null; };

function server() {
  const held = { plan: { beds: [{ id: 'A', width: 2400, depth: 1200, at: [0, 0] }] }, revision: 1, away: false, sheets: 0 };
  const there = () => { if (held.away) throw new Error('away'); };
  const api = {
    async open() { there(); return { plan: held.plan, revision: `"${held.revision}"` }; },
    async newer() { return null; },
    async save(_, plan) { there(); held.plan = plan; return { revision: `"${++held.revision}"`, sheet: null }; },
    async jobSheet() { there(); held.sheets++; return { ground: {}, searches: [], snags: [], yard: [], slip: { total: '0.00', lines: [] } }; },
  };
  return { held, api };
}

test('every command is saved, and then the job sheet is fetched', async () => {
  const { held, api } = server();
  const garden = await Garden.open(api, 'g', { local: storage(), session: storage() });
  garden.begin();
  await settled();
  garden.plans.run(moveBed('A', [500, 0]));
  await settled();
  equal([held.plan.beds[0].at, held.sheets], [[500, 0], 2]);
  garden.plans.undo();
  await settled();
  equal([held.plan.beds[0].at, held.sheets], [[0, 0], 3]);
});

test('a reload keeps what waited and the steps that can be taken back', async () => {
  const { held, api } = server();
  const keep = { local: storage(), session: storage(), later: () => {} };
  const garden = await Garden.open(api, 'g', keep);
  held.away = true;
  garden.plans.run(moveBed('A', [500, 0]));
  garden.plans.run(moveBed('A', [900, 0]));
  await settled();
  garden.close();
  held.away = false;
  const again = await Garden.open(api, 'g', keep);
  await settled();
  equal([again.plan.beds[0].at, held.plan.beds[0].at], [[900, 0], [900, 0]]);
  again.plans.undo();
  equal(again.plan.beds[0].at, [500, 0]);
  again.plans.undo();
  equal(again.plan.beds[0].at, [0, 0]);
});

test('the bed in hand is let go when it is gone', async () => {
  const { api } = server();
  const garden = await Garden.open(api, 'g', { local: storage(), session: storage() });
  garden.choice.takeBed('A');
  equal(garden.bed.id, 'A');
  garden.plans.run(plan => ({ ...plan, beds: [] }));
  equal([garden.choice.bed, garden.bed], [null, null]);
});
