import { keptClear, roomFor, takenOf } from '../../main/resources/META-INF/resources/state/room.js';
import { gap, overlap } from '../../main/resources/META-INF/resources/geometry/distance.js';
import { placed, rectangle } from '../../main/resources/META-INF/resources/geometry/outline.js';
import { equal, holds, test } from '../trial.js';

const yard = rectangle(12000, 9000);

test('a new bed keeps a path of the standard to the others, and clear of the tap, the gate and the path', () => {
  const plan = {
    ground: { outline: yard, keepClear: [{ kind: 'tap', at: [700, 700] }, { kind: 'gate', hinge: [3000, 0], leaf: 1000, closed: 0 }] },
    beds: [{ id: 'A', width: 2400, depth: 1200, at: [4000, 600] }], paths: [{ line: [[0, 3000], [12000, 3000]], width: 1200 }],
  };
  const { at, free } = roomFor(rectangle(1800, 900), plan, null);
  holds(free, 'no free place');
  const bed = placed(rectangle(1800, 900), { at, turn: 0, mirror: false });
  for (const { outline, clear } of takenOf(plan, null)) holds(!overlap(bed, outline) && (clear === 0 || gap(bed, outline).mm >= clear - 0.1), `${at} is ${gap(bed, outline).mm} from what wants ${clear}`);
});

test('the standard of the garden is asked for, and where it leaves no room less is kept and said', () => {
  const plan = { ground: { outline: rectangle(6000, 3000) }, beds: [{ id: 'A', width: 2400, depth: 1200, at: [600, 600] }] };
  holds(!roomFor(rectangle(1800, 900), plan, { ground: { access: { values: { path: 2000 } } } }).free, 'too little room passed for enough');
  holds(roomFor(rectangle(1800, 900), plan, { ground: { access: { values: { path: 600 } } } }).free, 'room was there');
});

test('in feet a new bed stands on round inches, past a wall of millimetres too', () => {
  const plan = { units: 'imperial', ground: { outline: [[37, 11], [12229, 11], [12229, 9155], [37, 9155]] }, beds: [] };
  for (let i = 0; i < 6; i++) {
    const { at, free } = roomFor(rectangle(2438.4, 1219.2), plan, null);
    holds(free && at.every(mm => Math.abs(mm / 25.4 - Math.round(mm / 25.4)) < 0.005), `bed ${i} stands at ${at}`);
    plan.beds.push({ id: `B${i}`, width: 2438.4, depth: 1219.2, at });
  }
});

test('in feet room that is just enough is found: to the edges, and between two beds with paths of four feet', () => {
  const feet = count => Math.round(3048 * count) / 10;
  for (let wide = 4; wide <= 56; wide++) {
    const own = rectangle(feet(wide), feet(8));
    equal(roomFor(own, { units: 'imperial', ground: { outline: rectangle(feet(wide + 4), feet(12)) } }, null), { at: [609.6, 609.6], free: true });
    if (wide > 30) continue;
    const beds = [0, wide + 12].map((along, i) => ({ id: `B${i}`, width: feet(4), depth: feet(8), at: [feet(along), 609.6] }));
    equal(roomFor(own, { units: 'imperial', ground: { outline: rectangle(feet(wide + 20), feet(12)) }, beds }, null), { at: [feet(8), 609.6], free: true });
  }
});

test('what is kept clear of by its own clearance, else by the usual of its kind', () => {
  equal(keptClear({ kind: 'tree', at: [0, 0] }, {}, { tree: 1500 })[0].clear, 1500);
  equal(keptClear({ kind: 'tree', at: [0, 0], clearance: 900 }, {}, { tree: 1500 })[0].clear, 900);
  equal(keptClear({ kind: 'cable', line: [[0, 0], [9, 0]] }, {}, {})[0].outline.length, 4);
  const [bent] = keptClear({ kind: 'drain', line: [[0, 0], [9000, 0], [9000, 9000]] }, {}, {});
  holds(!overlap(bent.outline, placed(rectangle(1000, 1000), { at: [6000, 2000], turn: 0, mirror: false })), 'a bent drain takes the ground inside its bend');
});
