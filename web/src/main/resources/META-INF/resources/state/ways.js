import { FIELDS, valueOf, written } from './build.js';
import { moveBed, nudgeBed, setBed, shapeBed, stageBed } from './commands.js';
import { put, valueAt } from './ground.js';
import { setPath } from './paths.js';
import { bedOf } from './plan.js';
import { roomFor } from './room.js';
import { typeOf } from './types.js';
import { isRightAngled, stretched, wallLengths } from '../geometry/shapes.js';
import { wallLetter } from '../geometry/outline.js';

/**
 * The ways out of a snag: those that are a change of the document are done at a press, for the others the field where they
 * are done is known. Ways, places and figures as the job sheet's `acts` and `at` give them, lengths in millimetres.
 *
 * @typedef {{way: string, values: any[]}} Act
 * @typedef {{bed?: string, wall?: string, path?: string, weekend?: string}} At
 */

/** Away from zero to 0.1, so that what is moved is free of what it was moved from. */
const out = mm => Math.sign(mm) * Math.ceil(Math.abs(mm) * 10 - 1e-6) / 10;

/** Down to 0.1. */
const down = mm => Math.floor(mm * 10 + 1e-6) / 10;

const own = (plan, id) => (plan.beds ?? []).find(bed => String(bed.id) === id);

/** Changes a bed as it lies; a bed that is gone changes nothing. */
const onBed = change => ({ bed: id }, values) => plan => {
  const bed = bedOf(plan, id);
  return bed ? change(bed, values, plan)(plan) : plan;
};

const nothing = plan => plan;

const moves = (x, y) => onBed((bed, [mm]) => nudgeBed(bed.id, x * out(mm), y * out(mm)));

const sized = (bed, size) => (bed.size && !bed.placement.mirror ? setBed(bed.id, { ...bed.size, ...size }) : nothing);

/** Sets a field of how the bed is built, beside what it or its type says of the same thing. */
const builds = (key, sub, value) => onBed((bed, values, plan) => {
  const layers = { own: own(plan, bed.id), type: typeOf(plan, bed.type) ?? undefined, garden: plan.defaults };
  return setBed(bed.id, { [key]: written({ key, sub }, layers, value(values, layers)) });
});

const fieldNow = (key, sub, layers) => valueOf(FIELDS.find(field => field.key === key && field.sub === sub), layers).value;

const ties = change => onBed((bed, values, plan) => {
  const { own: _own, ...there } = { ...plan.defaults?.ties, ...typeOf(plan, bed.type)?.ties, ...own(plan, bed.id)?.ties };
  return setBed(bed.id, { ties: { ...there, ...change(values, there, bed) } });
});

const supports = (there, more) => ({ supports: [...(there.supports ?? []), ...more] });

const wallBy = sign => onBed((bed, [wall, mm]) => {
  const side = bed.own.findIndex((_, i) => wallLetter(i) === wall);
  if (side < 0 || !isRightAngled(bed.own)) return nothing;
  return shapeBed(bed.id, stretched(bed.own, side, down(wallLengths(bed.own)[side] + sign * out(mm))));
});

const onPath = change => ({ path: id }, values) => plan => {
  const index = (plan.paths ?? []).findIndex(path => String(path.id) === id);
  return index < 0 ? plan : change(index, values, plan.paths[index])(plan);
};

/** A path's line with its first leg shorter by so much. */
function begunLater(line, mm) {
  const [[x, y], [toX, toY]] = line;
  const share = Math.min(1, out(mm) / Math.hypot(toX - x, toY - y));
  const tenth = value => Math.round(value * 10) / 10;
  return [[tenth(x + (toX - x) * share), tenth(y + (toY - y) * share)], ...line.slice(1)];
}

/** @type {Object<string, (at: At, values: any[], sheet: object | null) => (plan: object) => object>} */
const CHANGES = {
  'move-left': moves(-1, 0),
  'move-right': moves(1, 0),
  'move-away': moves(0, 1),
  'move-towards': moves(0, -1),
  'move-apart': (_, [bed, , by]) => (by ? nudgeBed(bed, ...by.map(out)) : nothing),
  'move-to-free-place': ({ bed: id }, _, sheet) => plan => {
    const bed = bedOf(plan, id);
    if (!bed) return plan;
    const [x, y] = bed.placement.at;
    const room = roomFor(bed.outline.map(corner => [corner[0] - x, corner[1] - y]), { ...plan, beds: plan.beds.filter(one => String(one.id) !== id) }, sheet);
    return room.free ? moveBed(id, room.at)(plan) : plan;
  },
  'cut-width': onBed((bed, [mm]) => sized(bed, { width: down(mm) })),
  'cut-depth': onBed((bed, [mm]) => sized(bed, { depth: down(mm) })),
  'make-narrower': onBed((bed, [mm]) => (bed.size ? sized(bed, { [bed.size.width < bed.size.depth ? 'width' : 'depth']: down(mm) }) : nothing)),
  'add-courses': onBed((bed, [count]) => setBed(bed.id, { courses: bed.courses + count })),
  'take-off-courses': onBed((bed, [count]) => (bed.courses > count ? setBed(bed.id, { courses: bed.courses - count }) : nothing)),
  'take-out-of-group': ({ bed: id }) => plan => {
    const rims = (valueAt(plan, ['ground', 'rims']) ?? []).map(group => ({ ...group, beds: group.beds.filter(bed => bed !== id) })).filter(group => group.beds.length > 1);
    return put(['ground', 'rims'], rims.length ? rims : undefined)(plan);
  },
  'open-base': builds('base', 'kind', () => 'open'),
  'less-mulch-by': builds('fill', 'mulch', ([mm], layers) => Math.max(0, down(fieldNow('fill', 'mulch', layers) - mm))),
  'bearers-apart': builds('base', 'bearerEvery', ([mm]) => down(mm)),
  'drain-gap': builds('base', 'drainGap', ([mm]) => mm),
  'lap-by': builds('liner', 'lap', ([mm]) => mm),
  'screws-at-most': builds('screws', 'length', ([mm]) => down(mm)),
  'screws-a-joint': builds('screws', 'perJoint', ([count]) => count),
  'notches-at-most': onBed((bed, [mm]) => setBed(bed.id, { notches: { ...bed.whole.notches, depth: down(mm) } })),
  'allow-joint': onBed(bed => setBed(bed.id, { seams: true })),
  'shorten-wall': wallBy(-1),
  'shorten-wall-no-joint': wallBy(-1),
  'lengthen-wall': wallBy(1),
  brackets: ties(() => ({ brackets: true })),
  'cross-ties': ties((_, there, bed) => {
    const { crossEvery = 1800, crossFrom = 400 } = there;
    return { crossTies: true, crossOver: crossEvery, crossFrom: Math.min(crossFrom, bed.courses * bed.section.height) };
  }),
  'ties-at': ties(([, wall, places], there) => supports(there, places.map(at => ({ wall, at })))),
  'ties-at-joints': ties(([wall], there) => supports(there, [{ wall }])),
  'posts-at-joints': ties(([wall], there) => supports(there, [{ wall, by: 'post' }])),
  'posts-at-most': ties(([wall, mm], there, bed) => {
    const length = wallLengths(bed.own)[bed.own.findIndex((_, i) => wallLetter(i) === wall)];
    const parts = Math.ceil(length / mm);
    return supports(there, Array.from({ length: parts - 1 }, (_, i) => ({ wall, at: Math.round(length * (i + 1) / parts), by: 'post' })));
  }),
  'narrow-to': onPath((index, [mm]) => setPath(index, { width: down(mm) })),
  'widen-to': onPath((index, [mm]) => setPath(index, { width: out(mm) })),
  'begin-later': onPath((index, [mm], { line }) => setPath(index, { line: begunLater(line, mm) })),
  'end-sooner': onPath((index, [mm], { line }) => setPath(index, { line: begunLater(line.toReversed(), mm).reverse() })),
  'later-weekend': (_, [id]) => plan => {
    const bed = bedOf(plan, id);
    return bed ? stageBed(id, bed.stage + 1)(plan) : plan;
  },
};

/**
 * The change that a way out asks for.
 *
 * @param {object} plan
 * @param {At} at
 * @param {Act} act
 * @param {object | null} sheet the job sheet
 * @returns {((plan: object) => object) | null} null where the way is no change that the page can make by itself
 */
export function wayOut(plan, at, act, sheet) {
  const command = CHANGES[act.way]?.(at, act.values, sheet);
  return command && command(plan) !== plan ? command : null;
}

const GROUND = ['take-levels', 'take-more-levels', 'level-beside', 'read-again', 'read-round-it', 'check-corner', 'corners-in-order', 'one-ground', 'common-edge', 'free-turning', 'passing-places',
  'level-strip', 'step-base', 'pour-earlier', 'level-instead', 'draw-surface', 'off-deck', 'move-obstacle', 'standing-room', 'tape-again', 'check-marks', 'third-tape', 'tape-sides', 'take-diagonal', 'two-marks', 'add-bed', 'step-ground'];
const BEDS = ['name-base', 'move-bed', 'move-off-wall', 'narrower-by', 'less-soil', 'thinner-timber', 'shorter-screws', 'fitting-screws', 'liner-nearer-rim', 'other-low-wall', 'longer-low-wall', 'name-low-walls', 'name-seen-walls',
  'hide-wall', 'join-or-shorten', 'shorter-list', 'narrower-or-no-liner', 'thicker-slats', 'deeper-bearer', 'thicker-bearers', 'lap-corner', 'cut-point-off', 'open-corner', 'timber-thick', 'ties-apart', 'bearers-closer', 'free-wall', 'add-courses-and', 'take-off-courses-and'];
const MERCHANTS = ['own-prices', 'give-price', 'longer-board', 'longer-stock', 'add-roll', 'wider-roll', 'larger-roll', 'add-section', 'own-section', 'good-faces-two', 'good-faces-one', 'timber-stamped', 'quicker-supplier', 'find-good-faces', 'smaller-packs'];
const WEEKENDS = ['more-people', 'longer-days', 'begin-later-by', 'helper', 'more-lifters', 'say-who-comes', 'take-holidays-out', 'day-dry'];
const PATHS = ['delete-path', 'give-layers', 'lead-round', 'across-fall', 'lead-on', 'move-point-in', 'path-line'];
const RACK = ['name-treatment', 'name-origin', 'name-board-treatment', 'measure-again', 'licensed-tip', 'use-where-not-planted', 'look-for-ht', 'find-slats'];
const TALLY = ['call-cut', 'tick-too', 'take-off-tally', 'call-spoiled', 'take-off-board', 'order-by'];

/** Where a way is done by hand, as keys of places. */
const PLACES = new Map([[GROUND, 'ground'], [BEDS, 'beds'], [MERCHANTS, 'catalogue'], [WEEKENDS, 'weekends'], [PATHS, 'paths'], [RACK, 'rack'], [TALLY, 'tally']]
  .flatMap(([ways, place]) => ways.map(way => [way, place])));

/** The very field, as its key on the page. */
const FIELD_OF = {
  'give-layers': 'layers', 'own-prices': 'prices', 'give-price': 'prices',
  'name-base': 'build base.kind', 'thinner-timber': 'build section', 'timber-thick': 'build section', 'shorter-screws': 'build screws.length', 'fitting-screws': 'build screws.length',
  'narrower-or-no-liner': 'build liner.wanted', 'bearers-closer': 'build base.bearerEvery', 'narrower-by': 'bed depth', 'move-bed': 'bed x', 'move-off-wall': 'bed y', 'less-soil': 'bed courses',
  'add-courses-and': 'bed courses', 'take-off-courses-and': 'bed courses', 'cut-width': 'bed width', 'cut-depth': 'bed depth', 'make-narrower': 'bed width', 'move-to-free-place': 'bed x',
  'take-levels': 'section levels', 'take-more-levels': 'section levels', 'level-beside': 'section levels', 'draw-surface': 'section surfaces', 'one-ground': 'section surfaces', 'common-edge': 'section surfaces',
  'more-people': 'crew open people', 'helper': 'crew open people', 'more-lifters': 'crew open people', 'say-who-comes': 'crew open people', 'longer-days': 'crew open crew', 'begin-later-by': 'crew open crew',
};

/** @returns {{place: string, field: string | null, bed: string | null, path: string | null} | null} null where it is done nowhere on the page */
export function wayField(at, { way, values }) {
  const place = PLACES.get(way) ?? (CHANGES[way] ? (at.path ? 'paths' : 'beds') : null);
  return place && { place, field: FIELD_OF[way] ?? null, bed: way === 'later-weekend' ? values[0] : at.bed ?? null, path: at.path ?? null };
}
