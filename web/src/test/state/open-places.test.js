import { OpenPlaces } from '../../main/resources/META-INF/resources/state/open-places.js';
import { equal, test } from '../trial.js';

const PLACES = [{ key: 'ground', table: 'lay-out' }, { key: 'beds', table: 'lay-out' }, { key: 'slip', table: 'buy' }, { key: 'snags' }];

const storage = (text = null) => ({ text, getItem() { return this.text; }, setItem(_, value) { this.text = value; }, removeItem() { this.text = null; } });

test('one place lies open, and a table opens the one that was open at it last', () => {
  const open = new OpenPlaces(PLACES, storage(), 'slip');
  equal([open.shown, open.table], ['slip', 'buy']);
  open.openTable('lay-out');
  equal(open.shown, 'ground');
  open.open('beds');
  open.openTable('buy');
  open.openTable('lay-out');
  equal(open.shown, 'beds');
  open.openTable('lay-out');
  equal([open.shown, open.table], [null, null]);
});

test('a place without a table lies open by itself, and one that is unknown changes nothing', () => {
  const open = new OpenPlaces(PLACES, storage(), 'slip');
  open.open('snags');
  equal([open.shown, open.table], ['snags', null]);
  open.open('nowhere');
  equal(open.shown, 'snags');
});

test('what is open is remembered, and what makes no sense is forgotten', () => {
  const kept = storage();
  new OpenPlaces(PLACES, kept, 'slip').open('beds');
  const again = new OpenPlaces(PLACES, kept, 'slip');
  equal(again.shown, 'beds');
  again.close();
  equal(new OpenPlaces(PLACES, kept, 'slip').shown, null);
  equal(new OpenPlaces(PLACES, storage('not json'), 'slip').shown, 'slip');
  equal(new OpenPlaces(PLACES, storage('{"shown":"gone"}'), 'slip').shown, null);
});

test('a table may begin with another place than its first', () => {
  const open = new OpenPlaces(PLACES, storage(), null, { 'lay-out': 'beds' });
  open.openTable('lay-out');
  equal(open.shown, 'beds');
});
