import { acceptSnag, isAccepted, noLongerAccept, readReason } from '../../main/resources/META-INF/resources/state/accepted.js';
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
