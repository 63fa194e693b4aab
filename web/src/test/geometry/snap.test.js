import { rest } from '../../main/resources/META-INF/resources/geometry/snap.js';
import { equal, test } from '../trial.js';

const yard = { left: 0, right: 10000, front: 0, back: 8000 };
const neighbour = { left: 3000, right: 5000, front: 1000, back: 2000 };
const how = { within: 60, grid: 50, gaps: [1200] };
const box = (left, front) => ({ left, right: left + 1000, front, back: front + 1000 });

test('a bed comes to rest on the yard edge', () => {
  equal(rest(box(40, -30), [], yard, how), { dx: -40, dy: 30, onX: 0, onY: 0 });
});

test('a bed comes to rest against a neighbour, in line with it, or a path away from it', () => {
  equal(rest(box(1985, 1020), [neighbour], yard, how), { dx: 15, dy: -20, onX: 3000, onY: 1000 });
  equal(rest(box(6190, 4444), [neighbour], yard, how).dx, 10);
});

test('without a face nearby the grid counts', () => {
  equal(rest(box(2512, 4538), [], yard, { ...how, gaps: [] }), { dx: -12, dy: 12, onX: null, onY: null });
});
