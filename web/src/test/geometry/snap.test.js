import { facesOf, rest, restLines, restWall } from '../../main/resources/META-INF/resources/geometry/snap.js';
import { rectangle } from '../../main/resources/META-INF/resources/geometry/outline.js';
import { equal, test } from '../trial.js';

const at = (left, front, width, depth) => rectangle(width, depth).map(([x, y]) => [x + left, y + front]);
const yard = facesOf([at(0, 0, 10000, 8000)]);
const neighbour = { faces: facesOf([at(3000, 1000, 2000, 1000)]) };
const how = { within: 60, grid: 50, gaps: [1200] };
const bed = (left, front) => facesOf([at(left, front, 1000, 1000)]);
const STILL = [0, 0];

test('a bed comes to rest on the yard edge', () => {
  equal(rest(bed(40, -30), STILL, restLines([], yard, how.gaps), how), { dx: -40, dy: 30, onX: 0, onY: 0 });
  equal(rest(bed(5000, 5000), [4020, 100], restLines([], yard, how.gaps), how).dx, -20, 'the far edge, carried there');
});

test('a bed comes to rest against a neighbour, in line with it, or a path away from it', () => {
  equal(rest(bed(1985, 1020), STILL, restLines([neighbour], yard, how.gaps), how), { dx: 15, dy: -20, onX: 3000, onY: 1000 });
  equal(rest(bed(6190, 4444), STILL, restLines([neighbour], yard, how.gaps), how).dx, 10);
});

test('a bed comes to rest against the inner face of an L', () => {
  const L = { faces: facesOf([[[0, 0], [3000, 0], [3000, 1500], [1800, 1500], [1800, 2400], [0, 2400]]]) };
  equal(rest(bed(1830, 1540), STILL, restLines([L], null, how.gaps), how), { dx: -30, dy: -40, onX: 1800, onY: 1500 });
});

test('without a face nearby the grid counts', () => {
  equal(rest(bed(2512, 4538), STILL, restLines([], yard, []), how), { dx: -12, dy: 12, onX: null, onY: null });
});

test('a dragged wall comes to rest on a face, a path away from one, the yard edge, or the grid', () => {
  const right = [[2000, 1000], [2000, 2000]];
  equal(restWall(right, [1, 0], 970, [neighbour], yard, how), 1000, 'the neighbour');
  equal(restWall(right, [1, 0], -170, [neighbour], yard, how), -200, 'a path away from the neighbour');
  equal(restWall(right, [1, 0], 431, [neighbour], yard, how), 450, 'the grid');
  equal(restWall([[500, 2000], [500, 1000]], [-1, 0], 480, [neighbour], yard, how), 500, 'the yard edge');
  equal(restWall([[0, 0], [700, 700]], [Math.SQRT1_2, -Math.SQRT1_2], 131, [neighbour], yard, how), 150, 'aslant');
});
