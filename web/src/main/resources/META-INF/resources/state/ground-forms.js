import { boundsOf, unitsOf, yardOf } from './plan.js';
import { readLength, shown } from '../geometry/length.js';
import { readPlaces, writtenPlaces } from '../geometry/places-text.js';

/**
 * What can be entered about the ground, as data: sections of fields, and lists of things with fields of their own. What a
 * thing must have from its first field on stands in `begins`.
 *
 * @typedef {{key: (string|number)[], label: string, kind: 'mm' | 'choice' | 'number' | 'text' | 'places', choices?: [string, string][],
 *     usual?: any, least?: number, most?: number, when?: (thing: object) => boolean, hint?: string | ((plan: object) => string),
 *     read?: (text: string, plan: object) => object, written?: (value: any, plan: object) => string}} Field
 */

const mm = (key, label, usual, more = {}) => ({ key: [key], label, kind: 'mm', usual, ...more });
const choice = (key, label, words, usual) => ({ key: [key], label, kind: 'choice', choices: words.map(word => (Array.isArray(word) ? word : [word, word])), usual });
export const number = (key, label, least, most, usual, more = {}) => ({ key: [key], label, kind: 'number', least, most, usual, ...more });
const places = (key, label, least, most, more = {}) => ({
  key: [key], label, kind: 'places', least, most, as: least > 2 ? 'outline' : least > 1 ? 'line' : 'point', ...more,
});

/** One place is written as one in the document, several as a list. */
const place = (key, label, more = {}) => places(key, label, 1, 1, {
  read: (text, plan) => {
    const read = readPlaces(text, 1, 1, unitsOf(plan));
    return read.error ? read : { value: read.value[0] };
  },
  written: (value, plan) => (value ? writtenPlaces([value], unitsOf(plan)) : ''),
  ...more,
});

const LAYERS = /^([\p{L}\d._-]+)\s+(\.?\p{N}.*)$/u;

/** The least and the most depth of a layer, mm. */
const DEPTH = [1, 2000];

const suchLayers = plan => (unitsOf(plan) === 'imperial' ? 'sub-base 3"; gravel 1 1/2"' : 'sub-base 75; gravel 40');

/** `sub-base 75; gravel 40`, from the bottom up; in feet `sub-base 3"`. */
export function readLayers(text, plan) {
  const units = unitsOf(plan);
  const parts = text.split(/[;\n]/).map(part => part.trim()).filter(Boolean);
  const layers = [];
  for (const part of parts) {
    const match = LAYERS.exec(part);
    if (!match) return { error: `“${part.slice(0, 20)}” is no layer. Write a material and its depth, as in ${suchLayers(plan)}.` };
    const depth = readLength(match[2], units);
    if (depth.error) return depth;
    if (depth.mm < DEPTH[0] || depth.mm > DEPTH[1]) return { error: `${match[2]} is no depth: write ${DEPTH[0]} to ${DEPTH[1]} mm.` };
    layers.push({ material: match[1], depth: depth.mm });
  }
  return { value: layers.length ? layers : undefined };
}

export const writtenLayers = (layers, plan) => (layers ?? []).map(({ material = 'bark', depth = 50 }) => `${material} ${shown(depth, unitsOf(plan))}`).join('; ');

/** How far rims may lie below the string, or above it, mm. */
const MOST_BELOW = 20000;

function readLevel(text, plan) {
  const { mm, error } = readLength(text, unitsOf(plan));
  if (error) return { error };
  return Math.abs(mm) <= MOST_BELOW ? { value: mm } : { error: `${text.trim()} lies outside -${MOST_BELOW} to ${MOST_BELOW} mm.` };
}

/** `A, B`: at least two beds. */
export function readBeds(text, plan) {
  const beds = text.split(/[,;\s]+/).filter(Boolean);
  if (beds.length < 2) return { error: `${beds.length} of 2 beds at least. Write their codes, as in A, B.` };
  const known = (plan.beds ?? []).map(bed => String(bed.id));
  const stranger = beds.find(bed => known.length && !known.includes(bed));
  return stranger ? { error: `There is no bed ${stranger}.` } : { value: beds };
}

const has = key => thing => thing?.[key] !== undefined;

/** Documents hold tenths of a millimetre. */
const tenth = mm => Math.round(mm * 10) / 10;

/** Where new things are put: the edges of what is drawn, as they are, and a round place in the middle. */
function inside(plan) {
  const { left, right, front, back } = boundsOf(plan);
  const step = unitsOf(plan) === 'imperial' ? 25.4 : 10;
  const round = value => tenth(Math.round(value / step) * step);
  return { left: tenth(left), right: tenth(right), front: tenth(front), back: tenth(back), x: round((left + right) / 2), y: round((front + back) / 2) };
}

/** The kind of a keep-clear decides what else is asked. */
const SHAPES = { gate: 'hinge', wall: 'line', drain: 'line', cable: 'line' };

export const LISTS = {
  corners: {
    title: 'Corners', path: ['ground', 'survey', 'corners'], one: 'corner', least: 3,
    fresh: () => [{ along: 0, off: 3000 }],
    fields: [
      mm('first', 'Tape from the first mark', undefined, { when: has('first') }),
      mm('second', 'From the second mark', undefined, { when: has('first') }),
      { ...choice('side', 'Seen from the first mark, it lies', ['left', 'right'], 'left'), when: has('first') },
      mm('along', 'Along the baseline', 0, { when: thing => thing.first === undefined }),
      mm('off', 'Off it', 0, { when: thing => thing.first === undefined }),
    ],
  },
  walk: {
    title: 'Sides, walked round', path: ['ground', 'survey', 'walk'], one: 'side', least: 3,
    fresh: () => [{ length: 1000, turn: 90 }],
    fields: [
      mm('length', 'Length'),
      number('turn', 'Turn at its end, degrees to the left', -180, 180, 90),
      mm('fall', 'Fall between its ends, for a sloping tape', 0),
    ],
  },
  checks: {
    title: 'Check tapes', path: ['ground', 'survey', 'checks'], one: 'check tape',
    fresh: plan => [{ from: 1, to: 3, taped: Math.round(apart(yardOf(plan), 0, 2)) || 1000 }],
    fields: [number('from', 'From corner', 1, 200, 1), number('to', 'to corner', 1, 200, 1), mm('taped', 'Taped')],
  },
  surfaces: {
    title: 'Surfaces', path: ['ground', 'surfaces'], one: 'surface',
    fresh: plan => {
      const box = inside(plan);
      return [{ kind: 'grass', outline: yardOf(plan)?.map(corner => corner.map(tenth)) ?? [[box.left, box.front], [box.right, box.front], [box.right, box.back], [box.left, box.back]] }];
    },
    fields: [choice('kind', 'Kind', ['slab', 'concrete', 'gravel', 'grass', 'soil', 'deck'], 'slab'), places('outline', 'Corners', 3, 200)],
  },
  levels: {
    title: 'Levels', path: ['ground', 'levels'], one: 'reading', hint: 'Level readings: heights below a level string. Take at least three, not in a line.',
    fresh: (plan, count) => {
      const box = inside(plan);
      const all = [[box.left, box.front], [box.right, box.front], [box.left, box.back]].map(at => ({ at, drop: 0 }));
      return count >= 3 ? [{ at: [box.x, box.y], drop: 0 }] : all.slice(count);
    },
    fields: [place('at', 'Where'), mm('drop', 'Below the string')],
  },
  keepClear: {
    title: 'Keep clear', path: ['ground', 'keepClear'], one: 'thing to keep clear',
    fresh: plan => [{ kind: 'cover', at: [inside(plan).x, inside(plan).y] }],
    fields: [
      {
        ...choice('kind', 'Kind', ['air-brick', 'cable', 'cover', 'door', 'drain', 'gate', 'other', 'tap', 'tree', 'wall'], 'other'),
        becomes: (thing, kind, plan) => kindOfKeepClear(thing, kind, plan),
      },
      { ...mm('clearance', 'Clearance'), usualOf: (thing, sheet) => sheet?.ground?.usual?.clearances?.[thing.kind ?? 'other'], when: thing => thing.kind !== 'gate' },
      place('at', 'Where', { when: has('at') }),
      places('line', 'Along', 2, 200, { when: has('line') }),
      places('outline', 'Corners', 3, 200, { when: has('outline') }),
      place('hinge', 'Hinge', { when: has('hinge') }),
      mm('leaf', 'Leaf', 900, { when: has('hinge') }),
      { ...choice('swing', 'Swings', ['in', 'out'], 'in'), when: has('hinge') },
      number('closed', 'Closed leaf points, degrees', -360, 360, undefined, { when: has('hinge'), empty: true }),
      mm('dampCourse', 'Damp-proof course above the ground', 0, { when: thing => thing.kind === 'wall' }),
    ],
  },
  paths: {
    title: 'Paths', path: ['paths'], one: 'path',
    fields: [
      { key: ['layers'], label: 'Layers, bottom first', kind: 'text', read: readLayers, written: writtenLayers, hint: suchLayers },
      { key: ['edging'], label: 'Edging', kind: 'choice', choices: [['', 'none'], ['edging.board', 'edging board']], usual: '' },
      { key: ['membrane'], label: 'Membrane', kind: 'choice', choices: [['', 'none'], ['membrane', 'membrane']], usual: '' },
      mm('membraneLap', 'Lap of its strips', 200, { when: path => Boolean(path.membrane) }),
    ],
  },
  rims: {
    title: 'Rims to be level', path: ['ground', 'rims'], one: 'rim group', needsBeds: 2,
    fresh: plan => [{ beds: (plan.beds ?? []).slice(0, 2).map(bed => String(bed.id)) }],
    fields: [
      { key: ['beds'], label: 'Beds', kind: 'text', read: readBeds, written: beds => (beds ?? []).join(', ') },
      { key: ['level'], label: 'Rims below the string, empty for the highest', kind: 'text', empty: true, read: readLevel, written: (level, plan) => (level === undefined ? '' : shown(level, unitsOf(plan))) },
    ],
  },
  tall: {
    title: 'What throws shade', path: ['ground', 'tall'], one: 'tall thing',
    fresh: plan => {
      const box = inside(plan);
      return [{ kind: 'fence', line: [[box.left, box.back], [box.right, box.back]], height: 1800 }];
    },
    fields: [
      {
        ...choice('kind', 'Kind', ['house', 'wall', 'fence', 'hedge', 'tree', 'other'], 'fence'),
        becomes: (thing, kind, plan) => kindOfTall(thing, kind, plan),
      },
      mm('height', 'Height'),
      place('at', 'Where', { when: has('at') }),
      places('line', 'Along', 2, 200, { when: has('line') }),
      mm('spread', 'Crown across', 3000, { when: has('at') }),
      mm('stem', 'Clear under the crown', 0, { when: has('at') }),
    ],
  },
};

function apart(yard, a, b) {
  return yard?.[a] && yard[b] ? Math.hypot(yard[b][0] - yard[a][0], yard[b][1] - yard[a][1]) : 0;
}

/** Another kind keeps its place; what only the old kind had goes. */
export function kindOfKeepClear(thing, kind, plan) {
  const shape = SHAPES[kind] ?? 'at';
  const box = inside(plan);
  const at = thing.at ?? thing.hinge ?? thing.line?.[0] ?? thing.outline?.[0] ?? [box.x, box.y];
  if (shape === 'hinge') return { kind, hinge: at, leaf: 900, swing: 'in' };
  if (shape === 'line') return { kind, line: thing.line ?? [at, [at[0] + 2000, at[1]]] };
  return thing.outline ? { kind, outline: thing.outline } : { kind, at };
}

function kindOfTall(thing, kind, plan) {
  const box = inside(plan);
  if (kind === 'tree') return thing.at ? { ...thing, kind } : { kind, at: thing.line?.[0] ?? [box.x, box.back], height: Math.max(thing.height, 4000), spread: 3000, stem: 1500 };
  if (thing.line) return { ...thing, kind };
  const at = thing.at ?? [box.left, box.back];
  return { kind, line: [at, [at[0] + 3000, at[1]]], height: thing.height };
}

export const OBJECTS = {
  base: {
    title: 'Baseline of the survey', path: ['ground', 'survey', 'base'],
    fields: [place('from', 'First mark', { usual: [0, 0] }), place('to', 'Second mark')],
  },
  preparation: {
    title: 'Under the walls', path: ['ground', 'preparation'],
    hint: 'Slabs and concrete are scribed to. Nothing is designed on a deck.',
    fields: [
      choice('soft', 'On grass, soil and gravel', [['scribe', 'cut the bottom course to the ground'], ['level', 'level a trench'], ['strip', 'a strip of concrete'], ['pads', 'pads of concrete']], 'level'),
      mm('strip', 'Strip wide', 200), mm('depth', 'Concrete deep', 100), mm('subBase', 'Sub-base deep', 100),
      mm('pad', 'Pad square', 300), mm('padEvery', 'Pads at most apart', 1200),
    ],
  },
  north: {
    title: 'North', path: ['ground'],
    fields: [number('north', 'North, degrees to the left of straight away from the house', -360, 360, 0)],
  },
  access: {
    title: 'Access', path: ['ground', 'access'],
    fields: [
      { ...choice('standard', 'Standard', [['', 'none: notes only'], ['usual', 'our usual figures'], ['ada-2010', 'ADA 2010']], ''), whole: true },
      { ...choice('rim', 'Who gardens', [['any', 'anyone'], 'kneeling', 'seated', 'standing'], 'any'), when: has('standard') },
    ],
  },
  sun: {
    title: 'Sun', path: ['ground', 'sun'], begins: { latitude: 0, longitude: 0 },
    fields: [
      number('latitude', 'Latitude, degrees north', -90, 90), number('longitude', 'Longitude, degrees east', -180, 180),
      { key: ['zone'], label: 'Time zone', kind: 'text', usual: 'UTC', hint: 'as in Europe/London', read: readZone },
      { key: ['day'], label: 'Day', kind: 'text', usual: '2026-06-21', hint: 'year-month-day', read: readDay },
    ],
  },
  baseline: {
    title: 'Baseline', path: ['ground', 'baseline'],
    fields: [place('from', 'From'), place('to', 'To'), mm('standOff', 'String pegs past the corners by', 0)],
  },
};

/** A time zone by its name in the IANA list, in any case. */
export function readZone(text) {
  const asked = text.trim();
  if (asked === '') return { value: undefined };
  const zone = Intl.supportedValuesOf('timeZone').find(one => one.toLowerCase() === asked.toLowerCase()) ?? asked;
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone }).format();
    return { value: zone };
  } catch {
    return { error: `“${asked.slice(0, 20)}” is no time zone. Write one as in Europe/London.` };
  }
}

/** A date as the document holds it. */
export function readDay(text) {
  const day = text.trim();
  const date = new Date(/^\d{4}-\d{2}-\d{2}$/.test(day) ? `${day}T00:00:00Z` : NaN);
  const real = !Number.isNaN(date.getTime()) && date.toISOString().slice(0, 10) === day;
  return real ? { value: day } : { error: 'Write year-month-day, as in 2026-06-21.' };
}

/** @param {Field} field @returns {(text: string) => {value: any} | {error: string}} */
export function readerOf(field, plan) {
  if (field.read) return text => (text.trim() === '' && field.empty ? { value: undefined } : field.read(text, plan));
  if (field.kind === 'places') return text => readPlaces(text, field.least, field.most, unitsOf(plan));
  if (field.kind === 'number') {
    return text => {
      const plain = text.trim().replace(',', '.').replace('−', '-');
      if (plain === '' && field.empty) return { value: undefined };
      const value = Number(plain);
      if (plain === '' || !Number.isFinite(value)) return { error: `“${text.slice(0, 12)}” is no number.` };
      if (value < field.least || value > field.most) return { error: `${value} lies outside ${field.least} to ${field.most}.` };
      return { value: Math.round(value * 1e6) / 1e6 };
    };
  }
  return text => ({ value: text.trim() || undefined });
}

export function writtenBy(field, value, plan) {
  const now = value ?? field.usual;
  if (field.written) return field.written(now, plan);
  if (field.kind === 'places') return writtenPlaces(now, unitsOf(plan));
  return now === undefined ? '' : String(now);
}

