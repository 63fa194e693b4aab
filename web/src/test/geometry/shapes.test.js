import { area, rectangle, signedArea } from '../../main/resources/META-INF/resources/geometry/outline.js';
import { ell, isRightAngled, stretched, tee, wallLengths, wallMoved, wallRoom, you } from '../../main/resources/META-INF/resources/geometry/shapes.js';
import { equal, holds, test } from '../trial.js';

test('an L of 3000 x 2400 without 1200 x 900 has walls 3000, 1500, 1200, 900, 1800, 2400, worked by hand', () => {
  equal(wallLengths(ell(3000, 2400, { width: 1200, depth: 900 })), [3000, 1500, 1200, 900, 1800, 2400]);
});

test('a U of 3600 x 2400 with a recess of 1200 x 1500 covers 8.64 - 1.80 = 6.84 m2', () => {
  const u = you(3600, 2400, { width: 1200, depth: 1500 });
  equal(area(u), 6840000);
  equal(wallLengths(u), [3600, 2400, 1200, 1500, 1200, 1500, 1200, 2400]);
});

test('shapes in feet keep their inches: arms of 3 1/2 feet beside a recess of 3 feet in 10', () => {
  const feet = count => Math.round(3048 * count) / 10;
  equal(you(feet(10), feet(8), { width: feet(3), depth: feet(5) })[5], [feet(3.5), feet(3)]);
  equal(tee(feet(10), feet(8), { width: feet(3), depth: feet(5) })[2], [feet(6.5), feet(5)]);
});

test('a T of 3000 x 2000 with a stem of 1000 x 1200 covers 3.0 x 0.8 + 1.0 x 1.2 = 3.6 m2', () => {
  equal(area(tee(3000, 2000, { width: 1000, depth: 1200 })), 3600000);
});

test('every shape runs counter-clockwise with square corners', () => {
  for (const shape of [ell(3000, 2400, { width: 1200, depth: 900 }), you(3600, 2400, { width: 1200, depth: 1500 }), tee(3000, 2000, { width: 1000, depth: 1200 })]) {
    holds(signedArea(shape) > 0 && isRightAngled(shape), JSON.stringify(shape));
  }
  equal(isRightAngled([[0, 0], [1000, 0], [1000, 1000], [0, 900]]), false);
});

test('a stretched wall takes its neighbours with it and no corner is bent', () => {
  const l = ell(3000, 2400, { width: 1200, depth: 900 });
  equal(wallLengths(stretched(l, 0, 3300)), [3300, 1500, 1500, 900, 1800, 2400]);
  equal(wallLengths(stretched(l, 3, 1000)), [3000, 1500, 1200, 1000, 1800, 2500]);
  equal(wallLengths(stretched(l, 2, 1000)), [2800, 1500, 1000, 900, 1800, 2400]);
  for (let side = 0; side < 6; side++) {
    const longer = stretched(l, side, wallLengths(l)[side] + 77);
    holds(isRightAngled(longer), `wall ${side}`);
    equal(wallLengths(longer)[side], wallLengths(l)[side] + 77, `wall ${side}`);
    equal(stretched(longer, side, wallLengths(l)[side]), l, `wall ${side} and back`);
  }
});

test('a wall that is dragged out makes the walls beside it longer, or shorter at an inside corner', () => {
  const L = ell(3000, 2400, { width: 1200, depth: 900 });
  equal(wallLengths(wallMoved(L, 1, 200)), [3200, 1500, 1400, 900, 1800, 2400]);
  equal(wallLengths(wallMoved(L, 2, 100)), [3000, 1600, 1200, 800, 1800, 2400]);
  equal(wallMoved(rectangle(2000, 1000), 3, 300), [[-300, 0], [2000, 0], [2000, 1000], [-300, 1000]]);
});

test('a dragged wall leaves room for two joints in the walls beside it', () => {
  const L = ell(3000, 2400, { width: 1200, depth: 900 });
  equal(wallRoom(rectangle(2000, 1000), 1, 100), { least: -1700, most: Infinity });
  equal(wallRoom(L, 2, 100), { least: -1200, most: 600 });
});
