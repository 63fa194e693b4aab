import { swept } from '../../main/resources/META-INF/resources/geometry/gate.js';
import { area, rectangle } from '../../main/resources/META-INF/resources/geometry/outline.js';
import { equal, holds, near, test } from '../trial.js';

const yard = rectangle(12000, 9000);

test('a gate in the right hand edge sweeps a quarter disc into the yard, or out of it', () => {
  const gate = { hinge: [12000, 4000], leaf: 1000, closed: 90 };
  const into = swept({ ...gate, swing: 'in' }, yard);
  holds(into.every(([x, y]) => x <= 12000.1 && y >= 3999.9), 'into the yard');
  holds(swept({ ...gate, swing: 'out' }, yard).every(([x]) => x >= 11999.9), 'out of it');
  near(area(into), Math.PI / 4 * 1e6, 2000, 'a quarter of a disc of 1000');
});

test('with the hinge alone all of the disc on that side of the edge is swept', () => {
  for (const hinge of [[6000, 0], [12000, 3000], [6000, 9000], [0, 3300]]) near(area(swept({ hinge, leaf: 1000 }, yard)), Math.PI / 2 * 1e6, 3000, `half a disc at ${hinge}`);
  near(area(swept({ hinge: [12000, 0], leaf: 1000 }, yard)), Math.PI / 4 * 1e6, 1500, 'a quarter in a corner');
  equal(swept({ hinge: [6000, 4000], leaf: 1000 }, null).length, 72, 'no yard: the whole disc');
});
