import { Choice } from '../../main/resources/META-INF/resources/state/choice.js';
import { equal, test } from '../trial.js';

test('taking another bed puts the lifted course back, and the same bed again is no news', () => {
  const choice = new Choice();
  let told = 0;
  choice.addEventListener('change', () => told++);
  choice.takeBed('A');
  choice.liftCourse(2);
  choice.takeBed('A');
  equal([choice.course, told], [2, 2]);
  choice.takeBed('B');
  equal([choice.bed, choice.course, told], ['B', null, 3]);
});

test('a working stays unfolded until it is folded', () => {
  const choice = new Choice();
  choice.unfold('soil', true);
  equal([choice.isOpen('soil'), choice.isOpen('screws')], [true, false]);
  choice.unfold('soil', false);
  equal(choice.isOpen('soil'), false);
});

test('several beds are in hand together, and none of them alone', () => {
  const choice = new Choice();
  choice.takeBed('A');
  choice.alsoTake('B');
  equal([choice.bed, choice.beds], [null, ['A', 'B']]);
  choice.alsoTake('A');
  equal([choice.bed, choice.beds], ['B', ['B']]);
  choice.takeBeds(['C', 'C', 'D']);
  equal(choice.beds, ['C', 'D']);
  choice.takeBed(null);
  equal([choice.bed, choice.beds], [null, []]);
});
