import { OpenPlaces, ROOM } from '../../main/resources/META-INF/resources/state/open-places.js';
import { equal, holds, storage, test } from '../trial.js';

const PLACES = [
  { key: 'ground', side: 'lee' }, { key: 'rack', side: 'lee' }, { key: 'snags', side: 'lee', first: true },
  { key: 'slip', side: 'strip', first: true }, { key: 'catalogue', side: 'strip' }, { key: 'weekends', side: 'foot' },
];

const keys = places => places.map(place => place.key);

test('no more than four places are shown at once, and a full side puts away what was opened first', () => {
  const places = new OpenPlaces(PLACES, storage());
  for (const { key } of PLACES) places.open(key);
  equal(['lee', 'strip', 'foot'].map(side => keys(places.shown(side))), [['rack', 'snags'], ['catalogue'], ['weekends']]);
  equal([places.isOpen('ground'), places.isOpen('slip'), places.latest], [false, false, 'weekends']);
  holds(Object.values(ROOM).reduce((sum, room) => sum + room) === 4, 'room for four');
});

test('a bed in hand takes one room of the lee, and gives it back', () => {
  const places = new OpenPlaces(PLACES, storage());
  places.open('rack');
  equal([keys(places.shown('lee', true)), keys(places.shown('lee', false))], [['rack'], ['rack', 'snags']]);
});

test('what lies open is found again, places that are gone are not', () => {
  const kept = storage();
  const places = new OpenPlaces(PLACES, kept);
  places.putAway('slip');
  places.open('ground');
  const again = new OpenPlaces(PLACES.filter(place => place.key !== 'snags'), kept);
  equal([keys(again.shown('lee')), again.shown('strip')], [['ground'], []]);
});

test('opening what is open brings it to the fore, and says so once', () => {
  const places = new OpenPlaces(PLACES, storage());
  let told = 0;
  places.addEventListener('change', () => told++);
  places.open('snags');
  places.open('snags');
  places.open('nothing of the kind');
  equal([places.latest, told], ['snags', 1]);
});
