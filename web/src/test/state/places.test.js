import { placeOf } from '../../main/resources/META-INF/resources/state/places.js';
import { equal, test } from '../trial.js';

const plan = { ground: { outline: [[0, 0], [12000, 0], [12000, 9000], [0, 9000]] },
  beds: [{ id: 'A', width: 2400, depth: 1200, at: [1000, 2000] }, { id: 'A1', width: 600, depth: 600, at: [8000, 0] }, { id: 'Q', width: 2400, depth: 1200, at: [5000, 5000], turn: 90 }],
  paths: [{ id: 'P', line: [[0, 0], [0, 5000]], width: 1200 }] };

test('a snag is at its wall, at its bed, on its path or at its corner', () => {
  equal(placeOf(plan, 'bed A, wall B'), { point: [3400, 2600], bed: 'A' });
  equal(placeOf(plan, 'bed A'), { point: [2200, 2600], bed: 'A' });
  equal(placeOf(plan, 'bed A', '300 over the edge at corner 2. Move left 300.').point, [3400, 2000]);
  equal(placeOf(plan, 'bed A1'), { point: [8300, 300], bed: 'A1' });
  equal(placeOf(plan, 'bed Q, wall A').point, [5000, 6200]);
  equal(placeOf(plan, 'beds Q-S, walls').bed, 'Q');
  equal(placeOf(plan, 'path P'), { point: [0, 2500], bed: null });
  equal(placeOf(plan, 'yard, corner 3').point, [12000, 9000]);
});

test('what is nowhere in the yard has no place', () => {
  equal([placeOf(plan, 'catalogue'), placeOf(plan, 'bed Z'), placeOf(plan, undefined)], [null, null, null]);
});
