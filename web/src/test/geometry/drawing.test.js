import { cleaned, further, nextPoint } from '../../main/resources/META-INF/resources/geometry/drawing.js';
import { equal, test } from '../trial.js';

const how = { within: 80, grid: 50, corners: [[3000, 1480]], square: false, free: false };

test('a point rests on a corner nearby, in line with a point put before, or on the grid', () => {
  equal(nextPoint([], [2960, 1520], how), [3000, 1480]);
  equal(nextPoint([[1007, 2003]], [4018, 2031], how), [4000, 2003]);
  equal(nextPoint([], [512, 777], how), [500, 800]);
  equal(nextPoint([[1007, 2003]], [4018.4, 2031.6], { ...how, free: true }), [4018, 2032]);
});

test('a square leg runs along the house or away from it, whichever is nearer', () => {
  equal(nextPoint([[1000, 2000]], [4020, 2900], { ...how, square: true }), [4000, 2000]);
  equal(nextPoint([[1000, 2000]], [1400, 6020], { ...how, square: true }), [1000, 6000]);
});

test('a typed length runs the way that is pressed', () => {
  equal(['right', 'back', 'left', 'front'].map(way => further([1000, 2000], way, 500.25)),
    [[1500.3, 2000], [1000, 2500.3], [499.8, 2000], [1000, 1499.8]]);
});

test('points that stand on one another are one', () => {
  equal(cleaned([[0, 0], [0, 0.4], [1000, 0], [1000, 900], [0, 0]], true), [[0, 0], [1000, 0], [1000, 900]]);
  equal(cleaned([[0, 0], [1000, 0], [0, 0]], false), [[0, 0], [1000, 0], [0, 0]]);
});
