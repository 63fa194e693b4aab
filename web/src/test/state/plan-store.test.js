import { PlanStore } from '../../main/resources/META-INF/resources/state/plan-store.js';
import { equal, holds, seeded, test } from '../trial.js';

const add = number => plan => ({ sum: plan.sum + number });

test('undo and redo go through every plan that stood', () => {
  const store = new PlanStore({ sum: 0 });
  const random = seeded(2);
  const stood = [0];
  for (let i = 0; i < 50; i++) {
    store.run(add(Math.ceil(random() * 9)));
    stood.push(store.plan.sum);
  }
  for (const sum of stood.slice(0, -1).reverse()) {
    store.undo();
    equal(store.plan.sum, sum);
  }
  store.undo();
  equal(store.plan.sum, 0, 'no further back than the first');
  for (const sum of stood.slice(1)) {
    store.redo();
    equal(store.plan.sum, sum);
  }
});

test('a command that changes nothing is no step and no event', () => {
  const store = new PlanStore({ sum: 0 });
  let told = 0;
  store.addEventListener('change', () => told++);
  store.run(plan => plan);
  equal([store.past.length, told], [0, 0]);
});

test('commands in a row with one word are one step until sealed', () => {
  const store = new PlanStore({ sum: 0 });
  store.run(add(1), 'move A');
  store.run(add(1), 'move A');
  store.seal();
  store.run(add(1), 'move A');
  store.run(add(1), 'move B');
  equal(store.past.map(plan => plan.sum), [0, 2, 3]);
});

test('a new command forgets what could be redone', () => {
  const store = new PlanStore({ sum: 0 });
  store.run(add(1));
  store.undo();
  store.run(add(5));
  holds(store.future.length === 0, 'redo is gone');
});

test('a plan that came otherwise than by a command is one step, the same one none', () => {
  const plans = new PlanStore({ n: 1 });
  const before = plans.plan;
  plans.stepFrom(before);
  equal(plans.past.length, 0);
  plans.replace({ n: 2 });
  plans.stepFrom(before);
  plans.undo();
  equal([plans.plan, plans.future.length], [{ n: 1 }, 1]);
});

test('a step taken back leaves what somebody else changed, there and back', () => {
  const bed = (id, width) => ({ id, width });
  const plans = new PlanStore({ beds: [bed('A', 1), bed('B', 1)] });
  plans.run(plan => ({ beds: [bed('A', 2), plan.beds[1]] }));
  plans.run(plan => ({ ...plan, name: 'mine' }));
  plans.undo();
  plans.replace({ beds: [bed('A', 2), bed('B', 9), bed('C', 9)] });
  plans.undo();
  equal(plans.plan, { beds: [bed('A', 1), bed('B', 9), bed('C', 9)] });
  plans.redo();
  plans.redo();
  equal(plans.plan, { beds: [bed('A', 2), bed('B', 9), bed('C', 9)], name: 'mine' });
});

test('where somebody else changed the same bed, taking our step back brings ours of before', () => {
  const plans = new PlanStore({ beds: [{ id: 'A', width: 1 }] });
  plans.run(() => ({ beds: [{ id: 'A', width: 2 }] }));
  plans.replace({ beds: [{ id: 'A', width: 3 }] });
  plans.undo();
  equal(plans.plan, { beds: [{ id: 'A', width: 1 }] });
});

test('what stands beside a try-out takes what somebody else changed into its steps', () => {
  const plans = new PlanStore({ a: 1, b: 1 });
  plans.run(plan => ({ ...plan, a: 2 }));
  plans.tryOut();
  plans.standBeside({ a: 2, b: 5 }, tried => ({ ...tried, b: 5 }));
  plans.letGo();
  plans.undo();
  equal(plans.plan, { a: 1, b: 5 });
});
