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
