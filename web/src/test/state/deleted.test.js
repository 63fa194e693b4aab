import { Deleted } from '../../main/resources/META-INF/resources/state/deleted.js';
import { equal, test } from '../trial.js';

const storage = () => ({ text: null, getItem() { return this.text; }, setItem(_, value) { this.text = value; }, removeItem() { this.text = null; } });

test('deleted gardens are remembered, the latest first, until they are back', () => {
  const deleted = new Deleted(storage());
  deleted.add({ id: 'a', name: 'One' }, '2027-01-01');
  deleted.add({ id: 'b', name: 'Two' }, '2027-01-02');
  equal(deleted.all().map(({ id }) => id), ['b', 'a']);
  deleted.drop('b');
  equal(deleted.all(), [{ id: 'a', name: 'One', deleted: '2027-01-01' }]);
});
