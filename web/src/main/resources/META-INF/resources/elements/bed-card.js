import { bounds } from '../geometry/outline.js';
import { shown } from '../geometry/length.js';
import { nameCheck, placeCheck, readCourses, readStage, readTurn, sideCheck } from '../state/checks.js';
import { mirrorBed, moveBed, ownBed, placeBed, setBed, stageBed, turnBed } from '../state/commands.js';
import { bedsOf, calledOf, unitsOf } from '../state/plan.js';
import { differsAsBuilt, followType, makeType } from '../state/types.js';
import { labelOf } from '../state/working.js';
import './bed-build.js';
import { bedStanding } from './bed-standing.js';
import { countField } from './count-field.js';
import { lengthField } from './length-field.js';
import { GardenElement, h } from './make.js';
import { patch } from './patch.js';
import { shownNumber } from './shown-number.js';

/** Quantities that say how the ground lies under a bed, and how its bottom course is fitted to it. */
const LEVELS = /^(level|scribe)\./;

/** bed-card: the chosen bed's entries, what may be done with it, and what it takes. Set `yard`. */
export class BedCard extends GardenElement {
  #built = null;
  #fields = {};

  follows = ['plans', 'choice', 'reckoning'];

  attached() {
    this.setAttribute('role', 'region');
    this.setAttribute('aria-label', 'The chosen bed');
    super.attached();
  }

  render() {
    const { bed } = this.garden;
    this.hidden = !bed;
    if (!bed) {
      this.#built = null;
      this.replaceChildren();
      return;
    }
    const build = `${bed.id}|${bed.type}|${Boolean(bed.size)}|${bed.section.id}|${unitsOf(this.garden.plan)}`;
    if (this.#built !== build) this.#build(bed);
    this.#built = build;
    this.#show(bed);
  }

  #build(bed) {
    const { plan } = this.garden;
    const units = unitsOf(plan);
    const { id } = bed;
    const f = this.#fields = {
      name: countField({ label: 'Name', mode: 'text', key: 'bed name', read: text => {
        const wrong = nameCheck(text);
        return wrong ? { error: wrong } : { value: text.trim() };
      } }),
      width: bed.size && lengthField({ label: 'Width', units, check: sideCheck(plan, bed.section.thickness, 'width'), key: 'bed width' }),
      depth: bed.size && lengthField({ label: 'Depth', units, check: sideCheck(plan, bed.section.thickness, 'depth'), key: 'bed depth' }),
      courses: countField({ label: 'Courses', read: readCourses, key: 'bed courses' }),
      stage: countField({ label: 'Stage', read: readStage, key: 'bed stage' }),
      x: lengthField({ label: 'Along the house', units, check: mm => placeCheck(mm, units), key: 'bed x' }),
      y: lengthField({ label: 'Away from it', units, check: mm => placeCheck(mm, units), key: 'bed y' }),
      turn: countField({ label: 'Turned, degrees', mode: 'decimal', read: readTurn, key: 'bed turn' }),
    };
    const on = (field, type, command) => field?.addEventListener(type, event => this.run(command(event.detail)));
    on(f.name, 'count', name => setBed(id, { name: name || undefined }));
    on(f.width, 'length', ({ mm }) => setBed(id, { width: mm }));
    on(f.depth, 'length', ({ mm }) => setBed(id, { depth: mm }));
    on(f.courses, 'count', courses => setBed(id, { courses }));
    on(f.stage, 'count', stage => stageBed(id, stage));
    on(f.x, 'length', ({ mm }) => this.#moved(id, 0, mm));
    on(f.y, 'length', ({ mm }) => this.#moved(id, 1, mm));
    on(f.turn, 'count', turn => now => placeBed(id, { ...bedsOf(now).find(one => one.id === id).placement, turn })(now));
    this.#head = h('h2');
    this.#kind = h('p.kind');
    this.#takes = h('div.takes');
    this.replaceChildren(
      h('header', {}, this.#head, h('button.quiet', { type: 'button', 'data-key': 'let go of it', onclick: () => this.garden.choice.takeBed(null) }, 'Done')),
      this.#kind,
      h('div.fields', {}, f.name, f.width, f.depth, bed.type ? null : f.courses, f.stage, f.x, f.y, f.turn),
      h('div.verbs', {},
        this.#verb('Turn 90°', 'turn 90', () => this.turn()),
        this.#verb('Mirror', 'bed mirror', () => this.mirror()),
        this.#verb('Duplicate', 'bed copy', () => this.yard.ask('duplicate')),
        this.#verb('Delete', 'bed delete', () => this.yard.ask('delete'))),
      Object.assign(document.createElement('bed-build'), { garden: this.garden }),
      this.#takes);
  }

  #head; #kind; #takes;

  #verb(text, key, act) { return h('button', { type: 'button', 'data-key': key, onclick: act }, text); }

  /** The typed place is that of the box's front left corner, whatever the turn. */
  #moved(id, axis, mm) {
    return plan => {
      const bed = bedsOf(plan).find(one => one.id === id);
      const box = bounds(bed.outline);
      const by = mm - (axis === 0 ? box.left : box.front);
      const at = [...bed.placement.at];
      at[axis] += by;
      return moveBed(id, at)(plan);
    };
  }

  #show(bed) {
    const f = this.#fields;
    const box = bounds(bed.outline);
    this.#head.textContent = bed.name ? `${bed.id} · ${bed.name}` : `Bed ${bed.id}`;
    f.name.show(bed.name);
    f.width?.show(bed.size.width);
    f.depth?.show(bed.size.depth);
    if (!bed.type) f.courses.show(bed.courses);
    f.stage.show(bed.stage);
    f.x.show(Math.round(box.left * 10) / 10);
    f.y.show(Math.round(box.front * 10) / 10);
    f.turn.show(bed.placement.turn);
    patch(this.#kind, this.#kindOf(bed));
    this.#showTakes(bed);
  }

  #kindOf(bed) {
    const units = unitsOf(this.garden.plan);
    const box = bounds(bed.own);
    const size = `${shown(box.right - box.left, units)} by ${shown(box.back - box.front, units)}, ${bed.own.length} walls, `
      + `timber ${bed.section.id}${bed.placement.mirror ? ', mirrored' : ''}`;
    if (!bed.type) {
      return [`${size}. `, h('button.quiet', { type: 'button', 'data-key': 'make type', onclick: () => {
        this.run(makeType(bed.id));
        this.say(`${calledOf(bed)} is the first of type ${this.garden.bed.type}. Beds adds more of them.`);
      } }, 'Make a type of it')];
    }
    const differs = differsAsBuilt(this.garden.plan, bed.id);
    const others = bedsOf(this.garden.plan).filter(one => one.type === bed.type).length;
    return [`Type ${bed.type}, ${others} of them: ${size}, ${bed.courses} courses. `,
      differs.length ? `Differs in ${differs.join(', ')}. ` : null,
      differs.length ? h('button.quiet', { type: 'button', 'data-key': 'follow', onclick: () => this.run(followType(bed.id)) }, 'Make it like its type') : null,
      h('button.quiet', { type: 'button', 'data-key': 'own', onclick: () => this.run(ownBed(bed.id)) }, 'Make it a bed of its own')];
  }

  #showTakes(bed) {
    const part = this.garden.reckoning.bed(bed.id);
    patch(this.#takes, part ? this.#quantities(part) : []);
  }

  #quantities(part) {
    const row = quantity => h('div', {},
      h('dt', {}, labelOf(quantity.key)),
      h('dd', {}, shownNumber(this.garden.choice, `${part.id} ${quantity.key} ${quantity.i}`, { ...quantity, units: unitsOf(this.garden.plan), name: labelOf(quantity.key) })));
    const all = (part.quantities ?? []).map((quantity, i) => ({ ...quantity, i }));
    const levels = all.filter(({ key }) => LEVELS.test(key));
    const takes = all.filter(({ key }) => !LEVELS.test(key));
    return [
      takes.length ? [h('h3', {}, 'What it takes'), h('p.hint', {}, 'Press a number for its working.'), h('dl', {}, takes.map(row))] : [],
      levels.length ? h('details', {}, h('summary', { 'data-key': 'levels' }, 'Levels and scribe'), h('dl', {}, levels.map(row))) : null,
      bedStanding(this.garden.choice, part, unitsOf(this.garden.plan))];
  }

  turn(degrees = 90) {
    const { bed } = this.garden;
    this.run(turnBed(bed.id, degrees));
    this.say(`${calledOf(bed)} turned to ${this.garden.bed.placement.turn} degrees.`);
  }

  mirror() {
    const { bed } = this.garden;
    this.run(mirrorBed(bed.id));
    this.say(`${calledOf(bed)} ${this.garden.bed.placement.mirror ? 'mirrored' : 'as drawn again'}.`);
  }
}

customElements.define('bed-card', BedCard);
