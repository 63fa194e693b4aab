import { bounds } from '../../main/resources/META-INF/resources/geometry/outline.js';
import { alignBeds, arrayBeds, boxOf, moveBeds, removeBeds, spreadBeds, turnBeds } from '../../main/resources/META-INF/resources/state/group.js';
import { bedsOf } from '../../main/resources/META-INF/resources/state/plan.js';
import { equal, seeded, test } from '../trial.js';

const plan = {
  beds: [
    { id: 'A', width: 2000, depth: 1000, at: [0, 0] }, { id: 'B', width: 1000, depth: 1000, at: [3500, 400] },
    { id: 'C', width: 1500, depth: 500, at: [6000, 2000] },
  ],
};

const at = now => bedsOf(now).map(bed => bed.placement.at);
const lefts = now => bedsOf(now).map(bed => bounds(bed.outline).left);

test('all in hand move together, those nobody knows stay out of it', () => {
  equal(at(moveBeds(['A', 'C', 'Z'], 100, -50)(plan)), [[100, -50], [3500, 400], [6100, 1950]]);
  equal(bedsOf(removeBeds(['A', 'B'])(plan)).map(bed => bed.id), ['C']);
});

test('edges come into line with the outermost, middles with the middle of all', () => {
  equal(lefts(alignBeds(['A', 'B', 'C'], 'left')(plan)), [0, 0, 0]);
  equal(bedsOf(alignBeds(['A', 'B', 'C'], 'back')(plan)).map(bed => bounds(bed.outline).back), [2500, 2500, 2500]);
  equal(at(alignBeds(['A', 'B'], 'level')(plan)), [[0, 200], [3500, 200], [6000, 2000]]);
});

test('beds spread with the same room between, the outer two staying', () => {
  // 7500 in all, 4500 of bed, two rooms of 1500
  equal(lefts(spreadBeds(['A', 'B', 'C'], 0)(plan)), [0, 3500, 6000]);
  equal(lefts(spreadBeds(['C', 'A', 'B'], 0, 900)(plan)), [0, 2900, 4800]);
});

test('four quarter turns and two mirrorings of several beds bring them back', () => {
  const random = seeded(21);
  for (let i = 0; i < 40; i++) {
    const beds = ['A', 'B', 'C'].map(id => ({
      id, width: 600 + 2 * Math.round(random() * 900), depth: 600 + 2 * Math.round(random() * 900),
      at: [2 * Math.round(random() * 4000), 2 * Math.round(random() * 4000)], turn: [0, 90, 180, 270][Math.floor(random() * 4)],
    }));
    const ids = ['A', 'B', 'C'];
    let now = { beds };
    const before = JSON.stringify(bedsOf(now).map(bed => [...bed.outline].map(corner => corner.map(Math.round)).sort()));
    for (let turn = 0; turn < 4; turn++) now = turnBeds(ids, { turn: 90 })(now);
    const near = JSON.stringify(bedsOf(now).map(bed => [...bed.outline].map(corner => corner.map(Math.round)).sort()));
    const off = Math.max(...JSON.parse(before).flat(2).map((value, j) => Math.abs(value - JSON.parse(near).flat(2)[j])));
    equal(off <= 2, true, `seed 21, ${i}: ${off} off`);
    for (let turn = 0; turn < 2; turn++) now = turnBeds(ids, { mirror: true })(now);
    equal(bedsOf(now).map(bed => [bed.placement.turn, bed.placement.mirror]), beds.map(bed => [bed.turn, false]), `seed 21, ${i}`);
  }
});

test('turned as one they keep their distances: a row along the house becomes a row away from it', () => {
  const turned = turnBeds(['A', 'B'], { turn: 90 })(plan);
  const [a, b] = bedsOf(turned).map(bed => bounds(bed.outline));
  equal([b.front - a.back, a.right - a.left, a.back - a.front], [1500, 1000, 2000]);
});

test('a block of three columns and two rows, with the paths between them', () => {
  const block = { columns: 3, rows: 2, across: 1200, away: 900 };
  const laid = arrayBeds(['A'], block, { paths: true })({ beds: [plan.beds[0]] });
  equal(laid.beds.map(bed => [bed.id, ...bed.at]),
    [['A', 0, 0], ['B', 3200, 0], ['C', 6400, 0], ['D', 0, 1900], ['E', 3200, 1900], ['F', 6400, 1900]]);
  equal(laid.paths, [
    { line: [[2600, 0], [2600, 2900]], width: 1200 }, { line: [[5800, 0], [5800, 2900]], width: 1200 },
    { line: [[0, 1450], [8400, 1450]], width: 900 },
  ]);
  equal(boxOf(laid, ['A', 'F']), { left: 0, right: 8400, front: 0, back: 2900 });
});
