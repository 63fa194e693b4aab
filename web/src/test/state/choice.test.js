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
