import { freeCode, given, isNothing, saying, withFields, withOne, word } from '../../main/resources/META-INF/resources/state/fields.js';
import { equal, holds, test } from '../trial.js';

test('a field is set, and goes with undefined; what changes nothing is the same object', () => {
  const bed = { id: 'A', courses: 2 };
  equal(withFields(bed, { courses: 3 }), { id: 'A', courses: 3 });
  equal(withFields(bed, { courses: undefined }), { id: 'A' });
  holds(withFields(bed, { courses: 2 }) === bed, 'no change is the same');
  const list = [bed];
  holds(withOne(list, 0, { courses: 2 }) === list && withOne(list, 4, { courses: 3 }) === list, 'a list without a change is the same');
  equal(withOne(list, 0, { courses: 4 }), [{ id: 'A', courses: 4 }]);
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
