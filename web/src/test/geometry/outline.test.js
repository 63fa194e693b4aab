import { aboutItsMiddle, area, bounds, counterClockwise, fromFrontLeft, inset, middle, placed, placePoint, rectangle, signedArea, straightened, walked, wallLetter, widened } from '../../main/resources/META-INF/resources/geometry/outline.js';
import { equal, near, seeded, test } from '../trial.js';

/** An L of 3000 x 2400, 1200 x 900 missing at the rear right; its figures are worked by hand beside the checks. */
const L = [[0, 0], [3000, 0], [3000, 1500], [1800, 1500], [1800, 2400], [0, 2400]];

test('area of an L: 7.20 - 1.08 = 6.12 m2', () => {
  equal(area(L), 6120000);
});

test('the shoelace of a yard with five corners: 106.0 m2, worked by hand', () => {
  equal(area([[0, 0], [12000, 0], [12000, 7000], [7000, 9500], [0, 9000]]), 106000000);
});

test('the inside of a right-angled outline has area less t(P - 4t): 6.12 - 0.1 x 10.4 = 5.08 m2', () => {
  near(area(inset(L, 100)), 5080000, 1e-6);
  equal(inset(rectangle(2400, 1200), 100), [[100, 100], [2300, 100], [2300, 1100], [100, 1100]]);
});

test('walls walked with turns come round to the same outline', () => {
  const turns = ['left', 'left', 'right', 'left', 'left', 'left'];
  const walls = [3000, 1500, 1200, 900, 1800, 2400].map((length, i) => ({ length, turn: turns[i] }));
  const { outline, gap } = walked(walls);
  equal(outline, L);
  near(gap, 0, 1e-9);
  near(walked(walls.slice(0, 5)).gap, 2400, 1e-9, 'an open walk says by how much');
});

test('six walls of 1000 with turns of 60 degrees come round; 3 x sqrt(3) / 2 m2, worked by hand', () => {
  const { outline, gap } = walked(Array.from({ length: 6 }, () => ({ length: 1000, turn: 60 })));
  near(gap, 0, 1e-9);
  near(area(outline), 2598076.2, 0.1);
});

test('an outline begins at the front left and runs counter-clockwise', () => {
  const turnedRound = [...L.slice(3), ...L.slice(0, 3)];
  equal(fromFrontLeft(turnedRound), L);
  equal(signedArea(counterClockwise([...L].reverse())) > 0, true);
});

test('walls are lettered A to Z, then AA', () => {
  equal([0, 25, 26, 27, 52].map(wallLetter), ['A', 'Z', 'AA', 'AB', 'BA']);
});

test('a shape is mirrored first, then turned counter-clockwise, then moved', () => {
  equal(placePoint([100, 50], { at: [1000, 2000], turn: 0, mirror: false }), [1100, 2050]);
  equal(placePoint([100, 50], { at: [1000, 2000], turn: 90, mirror: false }), [950, 2100]);
  equal(placePoint([100, 50], { at: [1000, 2000], turn: 90, mirror: true }), [950, 1900]);
  equal(placePoint([100, 50], { at: [0, 0], turn: -90, mirror: false }), [50, -100]);
});

test('turning and mirroring keep area, and four quarter turns about the middle come home, over seeded places', () => {
  const random = seeded(11);
  for (let i = 0; i < 200; i++) {
    const at = [Math.round(random() * 20000 - 10000), Math.round(random() * 20000 - 10000)];
    const start = { at, turn: Math.floor(random() * 4) * 90, mirror: random() < 0.5 };
    near(area(placed(L, start)), 6120000, 1e-3, `seed 11, ${i}`);
    let now = start;
    for (let quarter = 0; quarter < 4; quarter++) now = aboutItsMiddle(L, now, { turn: (now.turn + 90) % 360 });
    equal(now, start, `seed 11, ${i}`);
    const before = middle(bounds(placed(L, start)));
    const after = middle(bounds(placed(L, aboutItsMiddle(L, start, { mirror: !start.mirror }))));
    near(Math.hypot(after[0] - before[0], after[1] - before[1]), 0, 1, 'the middle stays');
  }
});

test('a path of one bend covers its two legs, the bend mitred: 900 x (4000 + 3000) for a corner of right angle', () => {
  near(area(widened([[0, 0], [4000, 0], [4000, 3000]], 900)), 900 * 7000, 1e-6);
});

test('a corner in the middle of a straight side is none', () => {
  equal(straightened([[0, 0], [1000, 0], [2400, 0], [2400, 1200], [0, 1200], [0, 600]]), [[0, 0], [2400, 0], [2400, 1200], [0, 1200]]);
  equal(straightened(L), L);
});

test('an outline without area has no inside and is drawn as it is', () => {
  for (const none of [rectangle(0, 0), rectangle(2400, 0), [[0, 0], [1000, 0], [2000, 0]]]) equal(inset(none, 100), none);
});

test('a bed in feet that is turned by quarters stays on its inches', () => {
  equal(aboutItsMiddle(rectangle(2438.4, 1219.2), { at: [609.6, 609.6], turn: 0, mirror: false }, { turn: 90 }).at, [2438.4, 0]);
});
