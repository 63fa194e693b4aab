import { shown } from '../geometry/length.js';
import { measured } from '../geometry/measure.js';
import { rectangle, walked } from '../geometry/outline.js';
import { ell, tee, you } from '../geometry/shapes.js';
import { leastSide, partCheck, readCourses, sideCheck } from '../state/checks.js';
import { sectionName } from '../state/build.js';
import { lastBed, standBed } from '../state/commands.js';
import { readSides } from '../state/sides.js';
import { USUAL, unitsOf, usualSection } from '../state/plan.js';
import { roomFor, saidOfRoom } from '../state/room.js';
import { countField } from './count-field.js';
import { lengthField } from './length-field.js';
import { GardenElement, h } from './make.js';

/** A side needs room for two joints; what holds soil needs room inside as well. */
const jointsIn = thickness => 3 * thickness;

/** Shapes beyond the rectangle: what their two further entries are called, and what they need across for joints and soil. */
const SHAPES = {
  L: { make: ell, part: 'Missing at the rear right', needs: (joints, room) => ({ least: joints, left: room }) },
  U: { make: you, part: 'Missing in the middle of the back', needs: (joints, room) => ({ least: joints, left: 2 * room }) },
  T: { make: tee, part: 'Stem towards the house', needs: (joints, room) => ({ least: room, left: 2 * joints }) },
};

/** What can be written, in the garden's measures. */
const SUCH_AS = {
  metric: { width: `2400, 2.4 m or 7' 10 1/2"`, depth: '1200, or 2400 x 1200 above', sides: '3000, 1500, 1200 right, 900, 1800, 2400', turn: '1000 left 60' },
  imperial: { width: `8', 7' 10 1/2" or 2.4 m`, depth: `4', or 8' x 4' above`, sides: `10', 5', 4' right, 3', 6', 8'`, turn: `3' left 60` },
};

/** add-bed: a bed in three entries, five where it is no rectangle. Fires `closed` when done or given up, `added` with its code. */
export class AddBed extends GardenElement {
  attached() {
    const { plan } = this.garden;
    const units = unitsOf(plan);
    const hints = SUCH_AS[units];
    const { thickness, height } = this.#section = usualSection(plan);
    this.width = lengthField({ label: 'Width, along the house', units, many: true, hint: hints.width,
      check: sideCheck(plan, thickness, 'width'), key: 'add width' });
    this.depth = lengthField({ label: 'Depth, away from the house', units, hint: hints.depth,
      check: sideCheck(plan, thickness, 'depth'), key: 'add depth' });
    this.courses = countField({ label: 'Courses', read: readCourses, value: plan.defaults?.courses ?? USUAL.courses, hint: `rings of timber, ${shown(height, units)} high each`,
      key: 'add courses' });
    this.listen(this.width, 'length', event => {
      if (event.detail.more !== undefined) this.depth.show(event.detail.more);
    });
    this.shape = h('select', { id: 'add-shape', 'data-key': 'add shape', onchange: () => this.#showParts() },
      h('option', { value: '' }, 'rectangle'), Object.keys(SHAPES).map(shape => h('option', { value: shape }, shape)), h('option', { value: 'sides' }, 'by its sides'));
    this.parts = h('div.parts');
    this.replaceChildren(h('form', { novalidate: true, 'aria-labelledby': 'add-title', onsubmit: this.#add },
      h('h2', { id: 'add-title' }, 'Add a bed'),
      this.width, this.depth, this.courses,
      h('div.field', {}, h('label', { for: 'add-shape' }, 'Shape'), this.shape), this.parts,
      h('p.usual', {}, `Timber ${sectionName(this.#section.id, units)}, lap, base, liner and fill as usual in this garden: all can be changed later.`),
      h('div.verbs', {},
        h('button.main', { type: 'submit' }, 'Add it'),
        h('button', { type: 'button', onclick: () => this.#close() }, 'Cancel'))));
    this.listen(this, 'keydown', event => { if (event.key === 'Escape') this.#close(); });
  }

  begin() { this.width.input.focus(); }

  #section;
  #partFields = [];
  #sides = null;

  /** The two entries that make an L, a U or a T of the rectangle. */
  #showParts() {
    const { thickness } = this.#section;
    const [joints, room] = [jointsIn(thickness), leastSide(thickness)];
    const units = unitsOf(this.garden.plan);
    const bySides = this.shape.value === 'sides';
    this.width.hidden = bySides;
    this.depth.hidden = bySides;
    this.#sides = bySides ? countField({ label: 'Sides, walked round', mode: 'text', key: 'add sides', read: text => {
      const read = readSides(text, joints, units);
      return read.error ? read : { value: text };
    }, hint: `${SUCH_AS[units].sides}: the first to the right, each with the turn at its end, to the left by 90° unless said; ${SUCH_AS[units].turn} turns by 60°` }) : null;
    if (bySides) {
      this.#partFields = [];
      this.parts.replaceChildren(this.#sides);
      return;
    }
    const shape = SHAPES[this.shape.value];
    const needs = shape?.needs(joints, room);
    const field = (label, key, check) => lengthField({ label, key, units, check });
    this.#partFields = shape ? [
      field(`${shape.part}: width`, 'add part width', mm => partCheck(this.width.length ?? Infinity, needs.least, needs.left, units)(mm)),
      field(`${shape.part}: depth`, 'add part depth', mm => partCheck(this.depth.length ?? Infinity, joints, room, units)(mm)),
    ] : [];
    this.parts.replaceChildren(...this.#partFields);
  }

  #add = event => {
    event.preventDefault();
    const fields = this.#sides ? [this.#sides, this.courses] : [this.width, this.depth, this.courses, ...this.#partFields];
    const good = fields.map(field => field.confirm());
    const wrong = fields[good.indexOf(false)];
    if (wrong) {
      wrong.input.focus();
      this.say(wrong.querySelector('.note').textContent);
      return;
    }
    const { plans } = this.garden;
    const [width, depth, courses] = [this.width.length, this.depth.length, this.courses.entry];
    const shape = SHAPES[this.shape.value];
    const [partWidth, partDepth] = this.#partFields.map(field => field.length);
    const walls = this.#sides && readSides(this.#sides.entry, jointsIn(this.#section.thickness), unitsOf(plans.plan)).value;
    const outline = walls ? walked(walls).outline : shape?.make(width, depth, { width: partWidth, depth: partDepth });
    const room = roomFor(outline ?? rectangle(width, depth), plans.plan, this.garden.reckoning.sheet);
    const { at } = room;
    plans.run(standBed({ ...(walls ? { walls } : outline ? { outline } : { width, depth }), courses, at }));
    const id = lastBed(plans.plan);
    this.garden.choice.takeBed(id);
    this.say(`Bed ${id} is added, ${at.map(mm => measured(mm, 'mm', unitsOf(plans.plan), 1)).join(' along and ')} away from the house.${saidOfRoom(room)}`);
    this.dispatchEvent(new CustomEvent('added', { detail: id, bubbles: true }));
    this.#close();
  };

  #close() { this.dispatchEvent(new CustomEvent('closed', { bubbles: true })); }
}

customElements.define('add-bed', AddBed);
