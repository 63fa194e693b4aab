import { measured, metricOf, unitIn, valueIn } from '../../main/resources/META-INF/resources/geometry/measure.js';
import { equal, test } from '../trial.js';

/** NIST SP 811 (2008), appendix B: 1 lb 0.45359237 kg, 1 yd3 0.764554857984 m3, 1 US gal 3.785411784 l, 1 lbf 4.4482216152605 N, 1 psf 47.88026 Pa. */
test('amounts in the measures that go with feet and inches', () => {
  equal([measured(45.359237, 'kg', 'imperial', 1), measured(9.290304, 'm2', 'imperial', 1), measured(1.529109715968, 'm3', 'imperial', 2),
    measured(37.85411784, 'l', 'imperial', 2), measured(44.482216152605, 'kN', 'imperial', 1), measured(4.788026, 'kN/m2', 'imperial', 2), measured(2400, 'mm', 'imperial', 1)],
  ['100 lb', '100 sq ft', '2 cu yd', '10 gal', '10000 lbf', '100 psf', `7' 10 1/2"`]);
});

test('a garden in millimetres keeps its numbers, counts have no measure', () => {
  equal([measured(45.36, 'kg', 'metric', 1), measured(2400, 'mm', 'metric', 1), unitIn('m2', 'metric'), unitIn('screws', 'imperial'), valueIn(4, 'screws', 'imperial')],
    ['45.4 kg', '2400 mm', 'm²', 'screws', 4]);
});

test('what is typed in gallons is kept in litres', () => {
  equal([metricOf(10, 'l', 'imperial').toFixed(3), metricOf(10, 'l', 'metric')], ['37.854', 10]);
});
