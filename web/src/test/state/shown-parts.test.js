import { ShownParts } from '../../main/resources/META-INF/resources/state/shown-parts.js';
import { equal, test } from '../trial.js';

test('what is always shown is asked for, and what the open places show, once however many show it', () => {
  const shown = new ShownParts();
  equal(shown.asked, { parts: ['ground', 'searches', 'slip', 'snags', 'yard'] });
  const closed = shown.want(['cutting', 'strips']);
  shown.want(['cutting', 'weekends']);
  equal(shown.asked.parts, ['cutting', 'ground', 'searches', 'slip', 'snags', 'strips', 'weekends', 'yard']);
  closed();
  equal(shown.asked.parts, ['cutting', 'ground', 'searches', 'slip', 'snags', 'weekends', 'yard']);
});

test('of the beds the one in hand is asked for, where a place shows it', () => {
  const shown = new ShownParts();
  let told = 0;
  shown.addEventListener('change', () => { told++; });
  shown.take('A');
  equal([shown.asked.bed, told], [undefined, 1]);
  shown.take('A', true);
  equal(shown.asked.bed, 'A', 'a course that is lifted in the yard shows it too');
  shown.take('A');
  shown.want(['beds']);
  equal([shown.asked.bed, shown.asked.parts.includes('beds'), told], ['A', true, 4]);
  shown.take('A');
  equal(told, 4);
  shown.take(null);
  equal([shown.asked.bed, shown.asked.parts.includes('beds')], [undefined, false]);
});

test('a sheet lacks what is shown and not in it', () => {
  const shown = new ShownParts();
  const sheet = { ground: {}, searches: [], slip: {}, snags: [], yard: [], beds: [{ id: 'A' }] };
  equal(shown.lackedBy(sheet), { parts: [] });
  shown.want(['beds', 'rolls']);
  shown.take('A');
  equal(shown.lackedBy(sheet), { parts: ['rolls'] });
  shown.take('B');
  equal(shown.lackedBy(sheet), { parts: ['beds', 'rolls'], bed: 'B' });
  equal(shown.lackedBy(sheet, ['slip']), { parts: [] });
});

test('a bed that is only tried is not asked for with what is saved', () => {
  const shown = new ShownParts();
  shown.take('B', true);
  equal(shown.askedOf({ beds: [{ id: 'A' }, { id: 'B' }] }).bed, 'B');
  equal(shown.askedOf({ beds: [{ id: 'A' }] }), new ShownParts().asked);
});
