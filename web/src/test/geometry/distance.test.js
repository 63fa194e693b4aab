import { contains, gap, neighbours, overlap, within } from '../../main/resources/META-INF/resources/geometry/distance.js';
import { bounds, rectangle } from '../../main/resources/META-INF/resources/geometry/outline.js';
import { equal, holds, near, seeded, test } from '../trial.js';

const at = (x, y, width, depth) => rectangle(width, depth).map(([a, b]) => [a + x, b + y]);
const L = [[0, 0], [3000, 0], [3000, 1500], [1800, 1500], [1800, 2400], [0, 2400]];

test('the gap between two beds is the least distance, also corner to corner', () => {
  equal(gap(at(0, 0, 1000, 1000), at(1600, 0, 1000, 1000)).mm, 600);
  equal(gap(at(0, 0, 1000, 1000), at(1300, 1400, 1000, 1000)).mm, 500);
  equal(gap(L, at(1900, 1600, 500, 500)).mm, 100, 'in the notch of an L');
});

test('beds that touch do not overlap, beds that share ground do', () => {
  equal(overlap(at(0, 0, 1000, 1000), at(1000, 0, 1000, 1000)), false);
  equal(overlap(at(0, 0, 1000, 1000), at(999, 0, 1000, 1000)), true);
  equal(overlap(at(0, 0, 1000, 1000), at(0, 0, 1000, 1000)), true, 'one on the other');
  equal(overlap(L, at(1800, 1500, 1200, 900)), false, 'filling the notch');
  equal(overlap(at(0, 0, 3000, 200), at(1000, -500, 200, 2000)), true, 'a cross');
});

test('within counts the edge in', () => {
  equal(within(at(0, 0, 1000, 1000), at(0, 0, 5000, 5000)), true);
  equal(within(at(-1, 0, 1000, 1000), at(0, 0, 5000, 5000)), false);
  equal(within(at(1700, 1400, 500, 500), L), false);
});

test('overlap and gap agree with rectangles compared side by side, over seeded pairs', () => {
  const random = seeded(3);
  const number = most => Math.round(random() * most);
  for (let i = 0; i < 500; i++) {
    const a = at(number(4000), number(4000), 500 + number(2000), 500 + number(2000));
    const b = at(number(4000), number(4000), 500 + number(2000), 500 + number(2000));
    const [p, q] = [bounds(a), bounds(b)];
    const across = Math.max(p.left - q.right, q.left - p.right);
    const along = Math.max(p.front - q.back, q.front - p.back);
    equal(overlap(a, b), across < 0 && along < 0, `seed 3, ${i}`);
    near(gap(a, b).mm, Math.hypot(Math.max(across, 0), Math.max(along, 0)), 1e-9, `seed 3, ${i}`);
  }
});

test('contains tells inside from outside of an L', () => {
  holds(contains(L, [900, 2000]) && !contains(L, [2500, 2000]), 'the notch is outside');
});

test('neighbours are the nearest things straight to each side, with their codes', () => {
  const thing = (id, outline, round = false) => ({ id, outline, box: bounds(outline), round });
  const found = neighbours([at(2000, 2000, 1000, 1000)],
    [thing('P', at(0, 2000, 1000, 1000)), thing('Q', at(2500, 4000, 1000, 1000)), thing('R', at(9000, 9000, 10, 10))],
    thing(null, at(0, 0, 10000, 10000), true));
  equal(found.map(({ side, mm, id }) => [side, mm, id]), [['left', 1000, 'P'], ['right', 7000, null], ['front', 2000, null], ['back', 1000, 'Q']]);
});
