import { changesOf, dearer, shortly } from '../../main/resources/META-INF/resources/state/trial.js';
import { PlanStore } from '../../main/resources/META-INF/resources/state/plan-store.js';
import { equal, test } from '../trial.js';

const stands = { name: 'Yard', beds: [{ id: 'A', width: 2400, depth: 1200, courses: 3, at: [0, 0] }, { id: 'B', width: 1800, depth: 900, at: [4000, 0] }, { id: 'C', name: 'Herbs', width: 900, depth: 900, at: [0, 4000] }] };

test('what is tried is told by bed, then by the rest of the garden', () => {
  const tried = { ...stands, paths: [], beds: [{ ...stands.beds[0], courses: 1 }, { ...stands.beds[1], at: [4100, 0] }, { id: 'D', width: 1, depth: 1, at: [0, 0] }] };
  equal(changesOf(stands, tried), ['Bed A: 2 courses less', 'Bed B: moved', 'Bed D added', 'Herbs left out', 'paths changed']);
  equal(shortly(changesOf(stands, tried)), 'Bed A: 2 courses less; Bed B: moved and 3 more');
  equal(shortly(changesOf(stands, stands)), 'nothing yet');
});

test('money is told by pence, and not where it is unknown', () => {
  const say = (amount, currency) => `${currency} ${amount}`;
  const slip = total => ({ total, currency: 'GBP' });
  equal(dearer(slip('897.70'), slip('687.75'), say), 'GBP 209.95 less');
  equal(dearer(slip('0.10'), slip('0.30'), say), 'GBP 0.20 more');
  equal(dearer(slip('5.00'), slip('5.00'), say), 'costs the same');
  equal(dearer(undefined, slip('5.00'), say), '');
});

test('what is tried has steps of its own, is kept as one, and is let go without a trace', () => {
  const store = new PlanStore({ n: 0 });
  store.run(plan => ({ n: plan.n + 1 }));
  store.tryOut();
  store.undo();
  equal([store.plan, store.trying, store.stands], [{ n: 1 }, true, { n: 1 }]);
  for (let i = 0; i < 3; i++) store.run(plan => ({ n: plan.n + 1 }));
  store.keepTried();
  equal([store.plan, store.past, store.trying], [{ n: 4 }, [{ n: 0 }, { n: 1 }], false]);
  store.undo();
  equal(store.plan, { n: 1 });
  store.tryOut();
  store.run(() => ({ n: 9 }));
  store.letGo();
  equal([store.plan, store.past, store.future], [{ n: 1 }, [{ n: 0 }], [{ n: 4 }]]);
});

test('what somebody else changed goes into what is tried and into what it stands beside', () => {
  const store = new PlanStore({ a: 0, b: 0 });
  store.tryOut();
  store.run(plan => ({ ...plan, a: 1 }));
  store.standBeside({ a: 0, b: 5 }, tried => ({ ...tried, b: 5 }));
  equal([store.plan, store.stands], [{ a: 1, b: 5 }, { a: 0, b: 5 }]);
});
