import { cornersOf } from '../../main/resources/META-INF/resources/geometry/survey.js';
import { equal, near, test } from '../trial.js';

test('tapes of 7000 and 5000 from marks 6000 apart meet at (5000, 4899), as worked by hand', () => {
  const corners = cornersOf({ base: { to: [6000, 0] }, corners: [{ along: 0 }, { along: 6000 }, { first: 7000, second: 5000 }] });
  near(corners[2][0], 5000, 0.5);
  near(corners[2][1], 4899, 0.5);
});

test('tapes that cannot meet give no yard', () => {
  equal(cornersOf({ base: { to: [6000, 0] }, corners: [{ along: 0 }, { along: 6000 }, { first: 3100, second: 2400 }] }), null);
});

test('a closing error of 84 is spread by the compass rule', () => {
  const corners = cornersOf({ walk: [{ length: 3000 }, { length: 2000 }, { length: 3084 }, { length: 2000 }] });
  near(corners[1][0], 3000 + 84 * 3000 / 10084, 1e-6);
});

test('a walk without length gives no yard', () => {
  equal(cornersOf({ walk: [{ length: 0 }, { length: 0 }, { length: 0 }] }), null);
  equal(cornersOf({ walk: [{ length: 10, fall: 10 }, { length: 10, fall: 12 }, { length: 5, fall: 9 }] }), null);
});
