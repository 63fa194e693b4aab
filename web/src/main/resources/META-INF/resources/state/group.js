import { bounds, middle, placed } from '../geometry/outline.js';
import { bedsOf } from './plan.js';
import { copyBed, nudgeBed, placeBed, removeBed } from './commands.js';

/** Changes to several beds at once, each a function plan => newPlan. Beds nobody knows are left out. */

const tenth = value => Math.round(value * 10) / 10;

const those = (plan, ids) => bedsOf(plan).filter(bed => ids.includes(bed.id));

const each = (ids, commandOf) => plan => ids.reduce((now, id) => commandOf(id, now)(now), plan);

/** @returns {import('../geometry/outline.js').Bounds | null} round all of them */
export const boxOf = (plan, ids) => bounds(...those(plan, ids).map(bed => bed.outline));

export const moveBeds = (ids, dx, dy) => each(ids, id => nudgeBed(id, dx, dy));

export const removeBeds = ids => each(ids, id => removeBed(id));

/** Turns or mirrors all of them as one about the middle of their common box. @param {{turn?: number, mirror?: true}} change */
export const turnBeds = (ids, change) => plan => {
  const box = boxOf(plan, ids);
  if (!box) return plan;
  const turned = those(plan, ids).map(bed => ({ bed, next: change.mirror ? mirrored(bed.placement) : spun(bed.placement, change.turn) }));
  const [x, y] = middle(box);
  const [nowX, nowY] = middle(bounds(...turned.map(({ bed, next }) => placed(bed.own, next))));
  return turned.reduce((now, { bed, next }) =>
    placeBed(bed.id, { ...next, at: [next.at[0] + x - nowX, next.at[1] + y - nowY].map(tenth) })(now), plan);
};

/** About the yard's origin: the common middle is put right afterwards. */
function spun({ at, turn, mirror }, degrees) {
  const angle = degrees * Math.PI / 180;
  const [cos, sin] = [Math.round(Math.cos(angle) * 1e12) / 1e12, Math.round(Math.sin(angle) * 1e12) / 1e12];
  return { at: [at[0] * cos - at[1] * sin, at[0] * sin + at[1] * cos], turn: (turn + degrees + 360) % 360, mirror };
}

const mirrored = ({ at, turn, mirror }) => ({ at: [-at[0], at[1]], turn: (360 - turn) % 360, mirror: !mirror });

const EDGES = {
  left: box => [box.left, 0], right: box => [box.right, 0], front: box => [box.front, 1], back: box => [box.back, 1],
  centre: box => [(box.left + box.right) / 2, 0], level: box => [(box.front + box.back) / 2, 1],
};

/** Brings one edge, or the middle, of each into line with that of the box round them all. @param {keyof EDGES} edge */
export const alignBeds = (ids, edge) => plan => {
  const all = boxOf(plan, ids);
  if (!all) return plan;
  const [line, axis] = EDGES[edge](all);
  return those(plan, ids).reduce((now, bed) => {
    const [own] = EDGES[edge](bounds(bed.outline));
    return along(bed, axis, line - own)(now);
  }, plan);
};

const along = ({ id }, axis, by) => nudgeBed(id, ...(axis === 0 ? [by, 0] : [0, by]));

/**
 * The same room between each and the next, along the house or away from it. The first and the last stay where no room
 * is given; else the first stays and the others follow.
 *
 * @param {0|1} axis 0 along the house
 * @param {number} [room] millimetres
 */
export const spreadBeds = (ids, axis, room) => plan => {
  const [low, high] = axis === 0 ? ['left', 'right'] : ['front', 'back'];
  const beds = those(plan, ids).map(bed => ({ bed, box: bounds(bed.outline) })).sort((a, b) => a.box[low] - b.box[low] || a.box[high] - b.box[high]);
  if (beds.length < 2) return plan;
  const filled = beds.reduce((sum, { box }) => sum + box[high] - box[low], 0);
  const between = room ?? tenth((Math.max(...beds.map(({ box }) => box[high])) - beds[0].box[low] - filled) / (beds.length - 1));
  let next = beds[0].box[low];
  return beds.reduce((now, { bed, box }) => {
    const by = next - box[low];
    next += box[high] - box[low] + between;
    return along(bed, axis, by)(now);
  }, plan);
};

/**
 * How a block of copies lies: the first is what is there already.
 *
 * @param {import('../geometry/outline.js').Bounds} box of what is copied
 * @param {{columns: number, rows: number, across: number, away: number}} block room between columns and between rows
 * @returns {{steps: [number, number][], box: import('../geometry/outline.js').Bounds}} without the first
 */
export function blockOf(box, { columns, rows, across, away }) {
  const [stepX, stepY] = [box.right - box.left + across, box.back - box.front + away];
  const steps = [];
  for (let row = 0; row < rows; row++) for (let column = 0; column < columns; column++) if (row || column) steps.push([column * stepX, row * stepY]);
  return { steps, box: { ...box, right: box.right + (columns - 1) * stepX, back: box.back + (rows - 1) * stepY } };
}

/** Copies them so many times; with `paths` the room between columns and rows is laid as paths. */
export const arrayBeds = (ids, block, { paths = false } = {}) => plan => {
  const box = boxOf(plan, ids);
  if (!box) return plan;
  const { steps, box: whole } = blockOf(box, block);
  const known = those(plan, ids);
  let next = steps.reduce((now, [dx, dy]) => known.reduce((then, bed) =>
    copyBed(bed.id, [tenth(bed.placement.at[0] + dx), tenth(bed.placement.at[1] + dy)])(then), now), plan);
  if (paths) next = { ...next, paths: [...(next.paths ?? []), ...pathsBetween(box, whole, block)] };
  return next;
};

function pathsBetween(box, whole, { columns, rows, across, away }) {
  const lines = [];
  for (let i = 1; i < columns && across > 0; i++) {
    const x = tenth(box.left + i * (box.right - box.left + across) - across / 2);
    lines.push({ line: [[x, whole.front], [x, whole.back]], width: across });
  }
  for (let i = 1; i < rows && away > 0; i++) {
    const y = tenth(box.front + i * (box.back - box.front + away) - away / 2);
    lines.push({ line: [[whole.left, y], [whole.right, y]], width: away });
  }
  return lines;
}

/** Sets or takes away fields of all of them. */
export const setBeds = (ids, setOne) => each(ids, id => setOne(id));

/** The beds a command has stood last, so many. */
export const lastBeds = (plan, count) => bedsOf(plan).slice(-count).map(bed => bed.id);
