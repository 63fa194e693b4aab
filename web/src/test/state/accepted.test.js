import { acceptSnag, isAccepted, noLongerAccept, readReason, listed } from '../../main/resources/META-INF/resources/state/accepted.js';
import { equal, holds, test } from '../trial.js';

test('a snag is accepted with a reason, once for its place, and taken back', () => {
  const plan = acceptSnag('bed C', 'Sam: the fence stays')(acceptSnag('bed C', 'first')({ beds: [] }));
  equal(plan.accepted, [{ where: 'bed C', reason: 'Sam: the fence stays' }]);
  equal([isAccepted(plan, 'bed C'), isAccepted(plan, 'bed D')], [true, false]);
  equal(noLongerAccept('bed C')(plan), { beds: [] });
  holds(noLongerAccept('bed D')(plan) === plan, 'another plan');
});

test('a snag is not accepted without a word', () => {
  equal(readReason('  ').error, 'Nothing here yet. Write who takes it on, and why.');
  equal(readReason(' Ada: it is low ').value, 'Ada: it is low');
  equal(readReason('x'.repeat(1003)).error, '3 letters too many: 1000 at most.');
});

test('what is in the way is listed however many notes of danger stand before it', () => {
  const snags = ['NOTE', 'NOTE', 'SNAG', 'NOTE', 'STOP'].map((weight, i) => ({ weight, i }));
  equal(listed(snags, 0).map(one => one.i), [2, 4]);
  equal(listed(snags, 2).map(one => one.i), [0, 1, 2, 4]);
});
