import { freeCode, given, isNothing, saying, withFields, withOne, word } from '../../main/resources/META-INF/resources/state/fields.js';
import { setPath } from '../../main/resources/META-INF/resources/state/paths.js';
import { setBoard } from '../../main/resources/META-INF/resources/state/rack.js';
import { setType } from '../../main/resources/META-INF/resources/state/types.js';
import { equal, holds, test } from '../trial.js';

test('a field is set, and goes with undefined; what changes nothing is the same object', () => {
  const bed = { id: 'A', courses: 2 };
  equal(withFields(bed, { courses: 3 }), { id: 'A', courses: 3 });
  equal(withFields(bed, { courses: undefined }), { id: 'A' });
  holds(withFields(bed, { courses: 2 }) === bed, 'no change is the same');
  const placed = { at: [0, 100], food: true };
  holds(withFields(placed, { at: [0, 100] }) === placed, 'nor is a list that is equal one');
  const plan = { name: 'x', beds: [bed] };
  const same = changed => holds(changed === plan, 'a plan without a change is the same');
  same(withOne(plan, 'beds', 0, { courses: 2 }));
  same(withOne(plan, 'beds', 4, { courses: 3 }));
  same(setPath(0, { width: 900 })(plan));
  same(setBoard(0, { length: 900 })(plan));
  same(setType('T1', { courses: 3 })(plan));
  equal(withOne(plan, 'beds', 0, { courses: 4 }), { name: 'x', beds: [{ id: 'A', courses: 4 }] });
});

test('what says nothing is left out of a document', () => {
  equal([undefined, '', [], 0, false, 'a'].map(isNothing), [true, true, true, false, false, false]);
  equal(given({ a: '', b: 0, c: undefined }, isNothing), { b: 0 });
  equal(saying({ name: 'x', crew: { hours: 6 } }, 'crew', {}), { name: 'x' });
  equal(word('units', 'metric')('imperial')({}), { units: 'imperial' });
  equal(word('units', 'metric')('metric')({ units: 'imperial' }), {});
});

test('a new thing has the first code that is free', () => {
  equal(freeCode('P', [{ id: 'P1' }, { id: 'P3' }]), 'P2');
});
