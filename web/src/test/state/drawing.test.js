import { Drawing } from '../../main/resources/META-INF/resources/state/drawing.js';
import { equal, test } from '../trial.js';

test('an outline ends where its first point is put again, a line where its last is', async () => {
  const outline = new Drawing({ as: 'outline', name: 'Yard' });
  for (const point of [[0, 0], [1000, 0], [1000, 1000], [0, 0], [5, 5]]) outline.put(point);
  equal(await outline.promise, [[0, 0], [1000, 0], [1000, 1000]]);
  const line = new Drawing({ as: 'line', name: 'Path' });
  for (const point of [[0, 0], [1000, 0], [1000, 0.3]]) line.put(point);
  equal(await line.promise, [[0, 0], [1000, 0]]);
});

test('a pointer that rests where the last point was put adds no side', () => {
  const line = new Drawing({ as: 'line', name: 'Path', width: 1200 });
  for (const point of [[0, 0], [1000, 0]]) line.put(point);
  line.lookAt([1000, 0.4]);
  equal(line.shown, [[0, 0], [1000, 0]]);
  line.lookAt([1000, 900]);
  equal(line.shown, [[0, 0], [1000, 0], [1000, 900]]);
});

test('a single point is enough where one is wanted', async () => {
  const point = new Drawing({ as: 'point', name: 'Tree' });
  point.put([700, 800]);
  equal(await point.promise, [[700, 800]]);
});

test('too few points are not done, points can be taken back, and giving up gives nothing', async () => {
  const line = new Drawing({ as: 'line', name: 'Path' });
  line.put([0, 0]);
  line.put([0, 0]);
  equal([line.done(), line.points.length], [false, 1]);
  line.put([0, 900]);
  line.takeBack();
  equal([line.isEnough, line.points], [false, [[0, 0]]]);
  line.leave();
  line.put([9, 9]);
  equal([await line.promise, line.points.length], [null, 1]);
});
