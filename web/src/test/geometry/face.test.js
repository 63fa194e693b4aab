import { faces, freeWay } from '../../main/resources/META-INF/resources/geometry/face.js';
import { bounds, rectangle } from '../../main/resources/META-INF/resources/geometry/outline.js';
import { equal, near, seeded, test } from '../trial.js';

const at = (x, y, width, depth) => rectangle(width, depth).map(([a, b]) => [a + x, b + y]);
const thing = (id, outline, round = false) => ({ id, outline, box: bounds(outline), round });
const L = [[0, 0], [3000, 0], [3000, 1500], [1800, 1500], [1800, 2400], [0, 2400]];

test('an L has two faces to the right and two to the back', () => {
  equal(faces(L), { left: [0], right: [3000, 1800], front: [0], back: [1500, 2400] });
});

test('the way into the notch of an L ends at its inner face', () => {
  const pushed = [at(4000, 1600, 500, 500)];
  const met = freeWay(pushed, [thing('L', L)], 'left');
  equal([met.mm, met.id, met.from[0], met.to[0]], [2200, 'L', 4000, 1800]);
  equal(freeWay([at(4000, 1400, 500, 500)], [thing('L', L)], 'left').mm, 1000);
});

test('a neighbour that is only passed at a corner is not met', () => {
  equal(freeWay([at(4000, 2400, 500, 500)], [thing('L', L)], 'left'), null);
  equal(freeWay([at(4000, -500, 500, 500)], [thing('L', L)], 'left'), null);
});

test('the yard lies round the bed and is met on all four sides', () => {
  const yard = [[0, 0], [12000, 0], [12000, 7000], [7000, 9500], [0, 9000]];
  const ways = ['left', 'right', 'front', 'back'].map(way => Math.round(freeWay([at(1000, 2000, 2000, 1000)], [thing(null, yard, true)], way).mm));
  // the back edge rises from (0, 9000) to (7000, 9500): at x 1000 it stands at 9071.43, and the bed's back is at 3000
  equal(ways, [1000, 9000, 2000, 6071]);
});

test('the free way between rectangles is the difference of their faces, over seeded pairs', () => {
  const random = seeded(11);
  const number = most => Math.round(random() * most);
  for (let i = 0; i < 300; i++) {
    const [x, y] = [number(3000), number(4000)];
    const a = at(x, y, 500 + number(1500), 500 + number(1500));
    const [p, q] = [bounds(a), bounds(at(6000 + number(1000), number(4000), 700, 900))];
    const other = at(q.left, q.front, 700, 900);
    const level = q.front < p.back && q.back > p.front;
    const met = freeWay([a], [thing('B', other)], 'right');
    if (level) near(met.mm, q.left - p.right, 1e-6, `seed 11, ${i}`);
    else equal(met, null, `seed 11, ${i}`);
  }
});
