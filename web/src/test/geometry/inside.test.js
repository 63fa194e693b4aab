import { contains } from '../../main/resources/META-INF/resources/geometry/distance.js';
import { insidePoint } from '../../main/resources/META-INF/resources/geometry/inside.js';
import { equal, holds, seeded, test } from '../trial.js';

test('a name stands inside its outline, whatever the shape', () => {
  equal(insidePoint([[0, 0], [2400, 0], [2400, 1200], [0, 1200]]), [1200, 600]);
  const u = [[0, 0], [3600, 0], [3600, 2400], [2400, 2400], [2400, 900], [1200, 900], [1200, 2400], [0, 2400]];
  const random = seeded(5);
  for (let i = 0; i < 100; i++) {
    const [dx, dy] = [random() * 9000, random() * 9000];
    const moved = u.map(([x, y]) => [x + dx, y + dy]);
    holds(contains(moved, insidePoint(moved)), `seed 5, ${i}`);
  }
});
