/**
 * The yard that tapes give, as the server works it out: two tapes from a baseline, running distance and offset, or
 * sides walked round with the closing error spread by the compass rule.
 *
 * @typedef {[number, number]} Point
 */

/** @param {object | undefined} survey of the document @returns {Point[] | null} null where the tapes give no outline */
export function cornersOf(survey) {
  if (!survey) return null;
  const from = survey.base?.from ?? [0, 0];
  const to = survey.base?.to ?? [from[0] + 1000, from[1]];
  const base = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (!(base > 0)) return null;
  const own = survey.walk?.length ? walked(survey.walk) : (survey.corners ?? []).map(corner => fixed(corner, base));
  if (own.length < 3 || own.includes(null)) return null;
  const [u, v] = [(to[0] - from[0]) / base, (to[1] - from[1]) / base];
  return own.map(([x, y]) => [from[0] + x * u - y * v, from[1] + x * v + y * u]);
}

/** x = (d1^2 - d2^2 + b^2) / (2 b), y = sqrt(d1^2 - x^2); null where the tapes cannot meet. */
function fixed({ first, second, side, along = 0, off = 0 }, base) {
  if (first === undefined || second === undefined) return [along, off];
  const x = (first ** 2 - second ** 2 + base ** 2) / (2 * base);
  const square = first ** 2 - x ** 2;
  if (square < -first) return null;
  const y = Math.sqrt(Math.max(0, square));
  return [x, side === 'right' ? -y : y];
}

function walked(legs) {
  const corners = [];
  const way = [];
  let [x, y, heading, gone] = [0, 0, 0, 0];
  for (const { length, turn = 90, fall = 0 } of legs) {
    corners.push([x, y]);
    way.push(gone);
    const level = Math.sqrt(Math.max(0, length ** 2 - fall ** 2));
    x += level * Math.cos(heading * Math.PI / 180);
    y += level * Math.sin(heading * Math.PI / 180);
    heading += turn;
    gone += level;
  }
  if (!gone) return [];
  return corners.map(([cx, cy], i) => [cx - x * way[i] / gone, cy - y * way[i] / gone]);
}
