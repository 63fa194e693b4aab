import { cornersOf } from '../../main/resources/META-INF/resources/geometry/survey.js';
import { addTo, dropFrom, houseWall, put, saidBy, valueAt, wayOf } from '../../main/resources/META-INF/resources/state/ground.js';
import { equal, holds, near, test } from '../trial.js';

const PLAN = { ground: { outline: [[0, 0], [12000, 0], [12000, 7000], [7000, 9500], [0, 9000]] } };

test('a value deep in the document is set, and taken away with what is empty then', () => {
  const set = put(['ground', 'access', 'standard'], 'ada-2010')({});
  equal(set, { ground: { access: { standard: 'ada-2010' } } });
  equal(put(['ground', 'access', 'standard'], undefined)(set), {});
  holds(put(['ground', 'access', 'standard'], 'ada-2010')(set) === set, 'no change is the same plan');
});

test('things come into lists and go out of them', () => {
  const one = addTo(['ground', 'levels'], { at: [0, 0], drop: 1 })({ name: 'x' });
  equal(one, { name: 'x', ground: { levels: [{ at: [0, 0], drop: 1 }] } });
  equal(put(['ground', 'levels', 0, 'drop'], 5)(one).ground.levels[0].drop, 5);
  equal(dropFrom(['ground', 'levels'], 0)(one), { name: 'x' });
});

test('a yard said in another way is the same yard', () => {
  for (const way of ['tapes', 'walk']) {
    const said = saidBy(way)(PLAN);
    equal(wayOf(said), way);
    holds(said.ground.outline === undefined, 'one of the two only');
    cornersOf(said.ground.survey).forEach((corner, i) => {
      near(corner[0], PLAN.ground.outline[i][0], 1, `${way}, corner ${i + 1}`);
      near(corner[1], PLAN.ground.outline[i][1], 1, `${way}, corner ${i + 1}`);
    });
    saidBy('drawn')(said).ground.outline.forEach((corner, i) => near(corner[0], PLAN.ground.outline[i][0], 1));
  }
});

test('the house wall is the front side', () => equal(houseWall(PLAN.ground.outline), [[0, 0], [12000, 0]]));

test('what stands deep in the document is found', () => equal(valueAt(PLAN, ['ground', 'outline', 1]), [12000, 0]));
