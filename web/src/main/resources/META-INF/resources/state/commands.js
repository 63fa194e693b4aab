import { withFields, word } from './fields.js';
import { aboutItsMiddle, bounds, placePoint } from '../geometry/outline.js';
import { bedOf, bedsOf, freeBedCode } from './plan.js';

/** Documents hold tenths of a millimetre. */
const tenth = value => Math.round(value * 10) / 10;

/** Every change to a garden, each a function plan => newPlan. A bed nobody knows leaves the plan as it is. */

const withBeds = (plan, beds) => ({ ...plan, beds });

function changeBed(id, change) {
  return plan => {
    const beds = plan.beds ?? [];
    const index = beds.findIndex(bed => String(bed.id) === id);
    if (index < 0) return plan;
    const changed = change(beds[index], plan);
    return changed === beds[index] ? plan : withBeds(plan, beds.toSpliced(index, 1, changed));
  };
}

const samePlacement = (a, b) => a.at[0] === b.at[0] && a.at[1] === b.at[1] && a.turn === b.turn && a.mirror === b.mirror;

/** The bed with a placement; keys that say the usual are left out. */
function lying(bed, { at, turn, mirror }) {
  const { turn: _turn, mirror: _mirror, ...rest } = bed;
  return { ...rest, at, ...(turn ? { turn } : {}), ...(mirror ? { mirror } : {}) };
}

/** Stands a new bed. @param {object} bed as the document holds it, without a code or with one */
export function standBed(bed) {
  return plan => {
    return withBeds(plan, [...plan.beds ?? [], { ...bed, id: bed.id ?? freeBedCode(plan) }]);
  };
}

/** @param {[number, number]} at yard millimetres, kept to 0.1 */
export function moveBed(id, at) {
  const clean = at.map(tenth);
  return changeBed(id, bed => (bed.at?.[0] === clean[0] && bed.at?.[1] === clean[1] ? bed : { ...bed, at: clean }));
}

export function nudgeBed(id, dx, dy) {
  return plan => {
    const bed = bedOf(plan, id);
    return bed ? moveBed(id, [bed.placement.at[0] + dx, bed.placement.at[1] + dy])(plan) : plan;
  };
}

/** Turns about the middle. @param {number} degrees counter-clockwise */
export function turnBed(id, degrees) {
  return changeBed(id, (bed, plan) => {
    const { own, placement } = bedOf(plan, id);
    return lying(bed, aboutItsMiddle(own, placement, { turn: (placement.turn + degrees + 360) % 360 }));
  });
}

export function mirrorBed(id) {
  return changeBed(id, (bed, plan) => {
    const { own, placement } = bedOf(plan, id);
    return lying(bed, aboutItsMiddle(own, placement, { mirror: !placement.mirror }));
  });
}

/** Puts a bed where it was or anywhere else, all at once. */
export function placeBed(id, placement) {
  return changeBed(id, (bed, plan) => (samePlacement(bedOf(plan, id).placement, placement) ? bed : lying(bed, placement)));
}

/** Sets or, with undefined, takes away fields of a bed. */
export function setBed(id, fields) {
  return changeBed(id, bed => withFields(bed, fields));
}

/** Builds a bed with another stage; the stage's old name goes from the document. */
export const stageBed = (id, stage) => setBed(id, { stage, weekend: undefined });

/**
 * Gives a bed another outline, in its own frame. One that is given by width and depth stays so: where the outline's front
 * left corner has moved, the bed moves with it.
 */
export function shapeBed(id, drawn) {
  const outline = drawn.map(point => point.map(tenth));
  return plan => {
    const bed = bedOf(plan, id);
    if (!bed) return plan;
    if (!bed.size) return setBed(id, { outline, walls: undefined })(plan);
    const box = bounds(outline);
    const at = placePoint([box.left, box.front], bed.placement);
    return moveBed(id, at)(setBed(id, { width: tenth(box.right - box.left), depth: tenth(box.back - box.front) })(plan));
  };
}

export function removeBed(id) {
  return plan => {
    const beds = (plan.beds ?? []).filter(bed => String(bed.id) !== id);
    return beds.length === (plan.beds ?? []).length ? plan : withBeds(plan, beds);
  };
}

/** A copy of a bed at another place, with a code of its own. */
export function copyBed(id, at) {
  return plan => {
    const bed = (plan.beds ?? []).find(one => String(one.id) === id);
    if (!bed) return plan;
    const { id: _id, name: _name, ...rest } = bed;
    return standBed({ ...rest, at })(plan);
  };
}

/** A bed that follows a type becomes one of its own: the type's figures are written into it. */
export function ownBed(id) {
  return changeBed(id, (bed, plan) => {
    if (!bed.type) return bed;
    const { id: _typeId, ...figures } = (plan.types ?? []).find(type => type.id === bed.type) ?? {};
    const { type: _type, ...rest } = bed;
    return { ...figures, ...rest };
  });
}

export function nameGarden(name) {
  return plan => (plan.name === name ? plan : { ...plan, name });
}

/** How lengths are shown; what is stored stays millimetres. @param {'metric'|'imperial'} units */
export const showIn = word('units', 'metric');

/** How long the cheapest plans are looked for. @param {'short'|'long'} search */
export const lookFor = word('search', 'short');

/** The code of the bed that a command stood last. */
export const lastBed = plan => bedsOf(plan).at(-1)?.id ?? null;
