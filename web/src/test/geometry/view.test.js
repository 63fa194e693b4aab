import { fitted, panned, toScreen, toYard, zoomed } from '../../main/resources/META-INF/resources/geometry/view.js';
import { equal, near, test } from '../trial.js';

const frame = { left: 100, top: 50, width: 800, height: 600 };
const box = { left: 0, right: 8000, front: 0, back: 3000 };

test('the whole yard stands in the middle of its frame', () => {
  const view = fitted(box, frame);
  equal(view.k, 0.1);
  equal(toScreen(view, [0, 0]), [100, 500]);
  equal(toScreen(view, [8000, 3000]), [900, 200]);
});

test('nearer and further keep the ground under the pointer', () => {
  const view = fitted(box, frame);
  const point = [333, 444];
  const before = toYard(view, point);
  const after = toYard(zoomed(view, 1.7, point), point);
  near(after[0], before[0], 1e-6);
  near(after[1], before[1], 1e-6);
  equal(zoomed(view, 1e9, point).k, 2, 'no nearer than two pixels a millimetre');
});

test('panning moves what is seen by as many pixels', () => {
  equal(toScreen(panned({ k: 1, x: 0, y: 0 }, 5, -7), [0, 0]), [5, -7]);
});
