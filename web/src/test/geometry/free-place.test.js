import { freePlace } from '../../main/resources/META-INF/resources/geometry/free-place.js';
import { overlap, within } from '../../main/resources/META-INF/resources/geometry/distance.js';
import { placed, rectangle } from '../../main/resources/META-INF/resources/geometry/outline.js';
import { equal, holds, test } from '../trial.js';

const yard = rectangle(12000, 9000);
const how = { edge: 600, step: 250, grid: 1 };
const stand = at => placed(rectangle(2400, 1200), { at, turn: 0, mirror: false });

test('ten beds one after another find room in the yard and never stand on each other', () => {
  const taken = [];
  for (let i = 0; i < 10; i++) {
    const bed = stand(freePlace(rectangle(2400, 1200), taken.map(outline => ({ outline, clear: 600 })), yard, how).at);
    holds(within(bed, yard), `bed ${i} leaves the yard`);
    holds(taken.every(other => !overlap(bed, other)), `bed ${i} stands on another`);
    taken.push(bed);
  }
});

test('a full yard puts the bed beside everything, and no yard begins at the house', () => {
  equal(freePlace(rectangle(2400, 1200), [{ outline: yard, clear: 600 }], yard, how), { at: [12600, 0], free: false });
  equal(freePlace(rectangle(2400, 1200), [], null, how).at, [0, 0]);
});
