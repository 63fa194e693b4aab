import { cornersOf } from '../geometry/survey.js';
import { bounds, counterClockwise, fromFrontLeft, placed, rectangle, straightened, walked, wallLetter } from '../geometry/outline.js';

/**
 * Reads a garden document for drawing. Nothing here changes a document: `commands.js` does.
 *
 * @typedef {object} LaidBed a bed with its type and the defaults filled in
 * @property {string} id
 * @property {string} name empty where none was given
 * @property {string|null} type
 * @property {import('../geometry/outline.js').Point[]} own outline in its own frame
 * @property {import('../geometry/outline.js').Point[]} outline as it lies in the yard
 * @property {import('../geometry/outline.js').Placement} placement
 * @property {{width: number, depth: number} | null} size where it is given by width and depth
 * @property {number} courses
 * @property {{id: string, thickness: number, height: number}} section
 * @property {'turning'|'long-wall'} lap
 * @property {number} stage group of beds with which it is built; older documents call it weekend
 * @property {object} whole the document's own words for it, type and defaults filled in
 */

/** Defaults of the trade that the drawing needs before the job sheet is there. */
export const USUAL = { section: '100x200', courses: 3, lap: 'turning', stage: 1, pathWidth: 1200 };

const memo = new WeakMap();

/** @returns {LaidBed[]} in the order of the document */
export function bedsOf(plan) {
  if (!memo.has(plan)) memo.set(plan, (plan.beds ?? []).map(bed => laid(plan, bed)));
  return memo.get(plan);
}

export const bedOf = (plan, id) => bedsOf(plan).find(bed => bed.id === id) ?? null;

function laid(plan, bed) {
  const type = (plan.types ?? []).find(one => one.id === bed.type) ?? {};
  const whole = { ...plan.defaults, ...shapeless(type, bed), ...bed };
  const placement = { at: bed.at ?? [0, 0], turn: bed.turn ?? 0, mirror: bed.mirror ?? false };
  const own = ownOutline(whole);
  return {
    id: String(bed.id ?? ''),
    name: bed.name ?? '',
    type: bed.type ?? null,
    own,
    outline: placed(own, placement),
    placement,
    size: whole.width && !whole.outline && !whole.walls ? { width: whole.width, depth: whole.depth } : null,
    courses: whole.courses ?? USUAL.courses,
    section: sectionOf(plan, whole.section ?? USUAL.section),
    lap: whole.lap ?? USUAL.lap,
    stage: bed.stage ?? bed.weekend ?? type.stage ?? type.weekend ?? USUAL.stage,
    whole,
  };
}

/** A bed that says its own shape takes none from its type. */
function shapeless(type, bed) {
  if (!bed.width && !bed.walls && !bed.outline) return type;
  const { width: _width, depth: _depth, walls: _walls, outline: _outline, ...rest } = type;
  return rest;
}

/** Corners counter-clockwise from the front left, so that side 0 is wall A. */
function ownOutline(bed) {
  if (bed.outline?.length > 2) return fromFrontLeft(counterClockwise(straightened(bed.outline)));
  if (bed.walls) return fromFrontLeft(counterClockwise(straightened(walked(bed.walls).outline)));
  return rectangle(bed.width ?? 0, bed.depth ?? 0);
}

function sectionOf(plan, id) {
  const named = (plan.catalogue?.sections ?? []).find(section => section.id === id);
  const [thickness, height] = String(id).split('x').map(Number);
  return { id, thickness: named?.thickness || thickness || 100, height: named?.height || height || 200 };
}

/** The timber of a bed that says none of its own. */
export const usualSection = plan => sectionOf(plan, plan.defaults?.section ?? USUAL.section);

/** @returns {import('../geometry/outline.js').Point[] | null} */
export function yardOf(plan) {
  const outline = plan.ground?.outline ?? cornersOf(plan.ground?.survey);
  return Array.isArray(outline) && outline.length > 2 ? outline : null;
}

/** All that is drawn, with a step to stand on round beds that have no yard. */
export function boundsOf(plan) {
  const shapes = bedsOf(plan).map(bed => bed.outline);
  const yard = yardOf(plan);
  if (yard) shapes.push(yard);
  for (const path of plan.paths ?? []) shapes.push(path.line ?? []);
  const box = bounds(...shapes) ?? { left: 0, right: 6000, front: 0, back: 4000 };
  const margin = yard ? 0 : 1000;
  return {
    left: box.left - margin, right: box.right + margin,
    front: yard ? box.front : Math.min(box.front, 0), back: box.back + margin,
  };
}

export const unitsOf = plan => (plan.units === 'imperial' ? 'imperial' : 'metric');

/** How a bed is called: its name, else its code. */
export const calledOf = bed => bed.name || `Bed ${bed.id}`;

/** The next code nobody has: A ... Z, then AA, AB ... */
export function freeId(taken) {
  const used = new Set(taken);
  let next = 0;
  while (used.has(wallLetter(next))) next++;
  return wallLetter(next);
}

/** The next code for a bed: none that a bed has, and none of a bed that is gone and of which the tally or the snag list still tells. */
export function freeBedCode(plan) {
  const { done = [], boards = [] } = plan.tally ?? {};
  const told = [...done.map(({ task }) => task), ...boards.flatMap(({ cut = [], spoiled = [] }) => [...cut, ...spoiled]).flatMap(marks => marks.split('+'))].map(text => /^[A-Z]+(?=[.-])/.exec(text)?.[0]);
  return freeId([...(plan.beds ?? []).map(bed => bed.id), ...told, ...(plan.handOver?.snags ?? []).map(snag => snag.bed)]);
}

/**
 * The document with a code for every bed, as the job sheet names them; the same document where none is missing.
 *
 * @param {object} plan
 * @param {object | null} sheet its job sheet, beds in the same order
 */
export function named(plan, sheet) {
  const beds = plan.beds ?? [];
  if (beds.every(bed => bed.id)) return plan;
  const taken = beds.map(bed => bed.id).filter(Boolean);
  return {
    ...plan,
    beds: beds.map((bed, i) => {
      if (bed.id) return bed;
      const id = sheet?.yard?.[i]?.bed ?? freeId(taken);
      taken.push(id);
      return { ...bed, id };
    }),
  };
}
