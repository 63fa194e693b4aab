/**
 * Outlines are lists of corners `[x, y]` in millimetres, x to the right and y away from the house,
 * counter-clockwise in the bed's own frame; the last side closes them.
 * @typedef {[number, number]} Point
 * @typedef {{at: Point, turn: number, mirror: boolean}} Placement
 * @typedef {{left: number, right: number, front: number, back: number}} Bounds
 */

/** @returns {Point[]} from the front left corner */
export function rectangle(width, depth) {
  return [[0, 0], [width, 0], [width, depth], [0, depth]];
}

/**
 * Walks the sides: the first runs to the right, each ends in a left or right turn or one of so many degrees to the left.
 *
 * @param {{length: number, turn?: 'left'|'right'|number}[]} walls
 * @returns {{outline: Point[], gap: number}} `gap` is how far the walk ends from where it began
 */
export function walked(walls) {
  let [x, y] = [0, 0];
  let heading = 0;
  const outline = [];
  for (const { length, turn = 'left' } of walls) {
    outline.push([x, y]);
    const [dx, dy] = turned(1, 0, heading);
    x += dx * length;
    y += dy * length;
    heading += turn === 'left' ? 90 : turn === 'right' ? -90 : turn;
  }
  return { outline: fromFrontLeft(counterClockwise(outline)), gap: Math.hypot(x, y) };
}

/** The same outline without corners in the middle of a straight side. */
export function straightened(outline) {
  const kept = outline.filter((here, i) => {
    const before = outline[(i + outline.length - 1) % outline.length];
    const after = outline[(i + 1) % outline.length];
    const cross = (here[0] - before[0]) * (after[1] - here[1]) - (here[1] - before[1]) * (after[0] - here[0]);
    const along = (here[0] - before[0]) * (after[0] - here[0]) + (here[1] - before[1]) * (after[1] - here[1]);
    return cross !== 0 || along < 0;
  });
  return kept.length > 2 ? kept : outline;
}

/** Shoelace; above 0 where the corners run counter-clockwise. */
export function signedArea(outline) {
  let twice = 0;
  outline.forEach(([x, y], i) => {
    const [nextX, nextY] = outline[(i + 1) % outline.length];
    twice += x * nextY - nextX * y;
  });
  return twice / 2;
}

export const area = outline => Math.abs(signedArea(outline));

export const counterClockwise = outline => (signedArea(outline) >= 0 ? outline : [...outline].reverse());

/** The same outline, beginning at the corner with the least y, then the least x. */
export function fromFrontLeft(outline) {
  let first = 0;
  outline.forEach(([x, y], i) => {
    const [bestX, bestY] = outline[first];
    if (y < bestY || (y === bestY && x < bestX)) first = i;
  });
  return [...outline.slice(first), ...outline.slice(0, first)];
}

export const distance = ([ax, ay], [bx, by]) => Math.hypot(bx - ax, by - ay);

/** A, B ... Z, AA, AB ... for side 0, 1 ... */
export function wallLetter(side) {
  const letter = String.fromCharCode(65 + (side % 26));
  return side < 26 ? letter : wallLetter(Math.floor(side / 26) - 1) + letter;
}

/** Mirror first (x to -x), then turn counter-clockwise about the origin, then move it to `at`. Quarter turns are exact. */
export function placePoint([x, y], { at, turn, mirror }) {
  const ownX = mirror ? -x : x;
  const [turnedX, turnedY] = turned(ownX, y, turn);
  return [turnedX + at[0], turnedY + at[1]];
}

function turned(x, y, degrees) {
  const clean = ((degrees % 360) + 360) % 360;
  if (clean === 0) return [x, y];
  if (clean === 90) return [-y, x];
  if (clean === 180) return [-x, -y];
  if (clean === 270) return [y, -x];
  const angle = clean * Math.PI / 180;
  return [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)];
}

/** @param {Point[]} outline @param {Placement} placement */
export const placed = (outline, placement) => outline.map(corner => placePoint(corner, placement));

/** @returns {Bounds} of one or more outlines; null for none */
export function bounds(...outlines) {
  const corners = outlines.flat();
  if (!corners.length) return null;
  const box = { left: Infinity, right: -Infinity, front: Infinity, back: -Infinity };
  for (const [x, y] of corners) {
    box.left = Math.min(box.left, x);
    box.right = Math.max(box.right, x);
    box.front = Math.min(box.front, y);
    box.back = Math.max(box.back, y);
  }
  return box;
}

export const middle = box => [(box.left + box.right) / 2, (box.front + box.back) / 2];

/**
 * The placement turned by `degrees` or mirrored so that the middle of its box stays where it was, to the millimetre.
 *
 * @param {Point[]} outline own frame
 * @param {Placement} placement
 * @param {{turn?: number, mirror?: boolean}} change
 */
export function aboutItsMiddle(outline, placement, change) {
  const [x, y] = middle(bounds(placed(outline, placement)));
  const next = { ...placement, ...change };
  const [nextX, nextY] = middle(bounds(placed(outline, next)));
  return { ...next, at: [next.at[0] + x - nextX, next.at[1] + y - nextY].map(mm => Math.round(mm * 10) / 10) };
}

/**
 * Every side moved inwards by `by`, for outlines that run counter-clockwise; corners where neighbours meet. An outline
 * without area has no inside and stays as it is.
 *
 * @param {Point[]} outline own frame, counter-clockwise
 */
export function inset(outline, by) {
  if (!area(outline)) return outline;
  const count = outline.length;
  const lines = outline.map((from, i) => {
    const to = outline[(i + 1) % count];
    const length = distance(from, to);
    const [dx, dy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    return { dx, dy, x: from[0] - dy * by, y: from[1] + dx * by };
  });
  return outline.map((corner, i) => {
    const before = lines[(i + count - 1) % count];
    const after = lines[i];
    const cross = before.dx * after.dy - before.dy * after.dx;
    if (Math.abs(cross) < 1e-9) return [after.x, after.y];
    const along = ((after.x - before.x) * after.dy - (after.y - before.y) * after.dx) / cross;
    return [before.x + before.dx * along, before.y + before.dy * along];
  });
}

/**
 * The ground a line of some width covers, bends mitred and ends flat.
 *
 * @param {Point[]} line centre line, two points or more
 */
export function widened(line, width) {
  const half = width / 2;
  const side = sign => line.map((point, i) => {
    const before = i > 0 ? direction(line[i - 1], point) : null;
    const after = i < line.length - 1 ? direction(point, line[i + 1]) : null;
    const [ax, ay] = before ?? after;
    const [bx, by] = after ?? before;
    const [nx, ny] = [-(ay + by), ax + bx];
    const scale = half * 2 / Math.max(nx * nx + ny * ny, 1e-9);
    return [point[0] + sign * nx * scale, point[1] + sign * ny * scale];
  });
  return [...side(1), ...side(-1).reverse()];
}

function direction(from, to) {
  const length = distance(from, to) || 1;
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
}
