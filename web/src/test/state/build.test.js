import { choicesOf, chosenValue, turnedOver } from '../../main/resources/META-INF/resources/state/build.js';
import { equal, test } from '../trial.js';

const now = whole => choicesOf(whole).map(choice => choice.now);

test('what a bed does not say is as usual', () => {
  equal(now({}), ['slatted', 'yes', 'yes']);
  equal(now({ base: 'open', liner: false, finish: { wanted: false, coats: 3 } }), ['open', 'no', 'no']);
  equal(now({ base: { bearerLift: 30 }, liner: true }), ['slatted', 'yes', 'yes']);
});

test('a choice keeps what else the bed says', () => {
  equal(chosenValue({ finish: { coats: 3 } }, 'finish', 'no'), { coats: 3, wanted: false });
  equal(chosenValue({}, 'base', 'open'), 'open');
  equal(chosenValue({ liner: false }, 'liner', 'yes'), true);
});

test('walls are hidden and seen one by one; all seen is said by saying nothing', () => {
  const walls = ['A', 'B', 'C', 'D'];
  equal(turnedOver(walls, undefined, 'C'), ['A', 'B', 'D']);
  equal(turnedOver(walls, ['A', 'B', 'D'], 'A'), ['B', 'D']);
  equal(turnedOver(walls, ['A', 'B', 'D'], 'C') ?? 'all', 'all');
});
