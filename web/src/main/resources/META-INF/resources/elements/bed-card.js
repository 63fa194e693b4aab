import { bounds } from '../geometry/outline.js';
import { shown } from '../geometry/length.js';
import { sectionName } from '../state/build.js';
import { placeCheck, readName } from '../state/checks.js';
import { mirrorBed, nudgeBed, ownBed, setBed, turnBed } from '../state/commands.js';
import { boxOf } from '../state/group.js';
import { bedsOf, calledOf, unitsOf } from '../state/plan.js';
import { differsAsBuilt, followType, makeType } from '../state/types.js';
import './bed-build.js';
import { bedFields, showBed } from './bed-fields.js';
import { bedStanding } from './bed-standing.js';
import { countField } from './count-field.js';
import { lengthField } from './length-field.js';
import { custom, GardenElement, h, verb } from './make.js';
import { patch } from './patch.js';
import { shownQuantity } from './shown-number.js';

/** Quantities that say how the ground lies under a bed, and how its bottom course is fitted to it. */
const LEVELS = /^(level|scribe)\./;

/** bed-card: the chosen bed's entries, what may be done with it, and what it takes. Set `yard`. */
export class BedCard extends GardenElement {
  #built = null;
  #fields = {};

  follows = ['plans', 'choice', 'reckoning'];

  shows = ['beds'];

  named = ['region', 'The chosen bed'];

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
      ...bedFields(this, bed, 'bed'),
      name: countField({ label: 'Name', mode: 'text', key: 'bed name', read: readName, oncount: ({ detail }) => this.run(setBed(id, { name: detail || undefined })) }),
      x: lengthField({ label: 'Along the house', units, check: mm => placeCheck(mm, units), key: 'bed x', onlength: ({ detail }) => this.run(this.#moved(id, 0, detail.mm)) }),
      y: lengthField({ label: 'Away from it', units, check: mm => placeCheck(mm, units), key: 'bed y', onlength: ({ detail }) => this.run(this.#moved(id, 1, detail.mm)) }),
    };
    this.#head = h('h2');
    this.#kind = h('p.kind');
    this.#takes = h('div.takes');
    this.replaceChildren(
      h('header', {}, this.#head, h('button.quiet', { type: 'button', 'data-key': 'let go of it', onclick: () => this.garden.choice.takeBed(null) }, 'Done')),
      this.#kind,
      h('div.fields', {}, f.name, f.width, f.depth, f.courses, f.stage, f.x, f.y, f.turn),
      h('div.verbs', {},
        verb('Turn 90°', 'turn 90', () => this.turn()),
        verb('Mirror', 'bed mirror', () => this.mirror()),
        verb('Duplicate', 'bed copy', () => this.yard.ask('duplicate')),
        verb('Delete', 'bed delete', () => this.yard.ask('delete'))),
      custom('bed-build', { garden: this.garden }),
      this.#takes);
  }

  #head; #kind; #takes;

  /** The typed place is that of the box's front left corner, whatever the turn. */
  #moved(id, axis, mm) {
    return plan => {
      const { left, front } = boxOf(plan, [id]);
      return nudgeBed(id, ...(axis === 0 ? [mm - left, 0] : [0, mm - front]))(plan);
    };
  }

  #show(bed) {
    const f = this.#fields;
    const box = bounds(bed.outline);
    this.#head.textContent = bed.name ? `${bed.id} · ${bed.name}` : `Bed ${bed.id}`;
    f.name.show(bed.name);
    showBed(f, bed);
    f.x.show(Math.round(box.left * 10) / 10);
    f.y.show(Math.round(box.front * 10) / 10);
    patch(this.#kind, this.#kindOf(bed));
    this.#showTakes(bed);
  }

  #kindOf(bed) {
    const units = unitsOf(this.garden.plan);
    const box = bounds(bed.own);
    const size = `${shown(box.right - box.left, units)} by ${shown(box.back - box.front, units)}, ${bed.own.length} walls, `
      + `timber ${sectionName(bed.section.id, units)}${bed.placement.mirror ? ', mirrored' : ''}`;
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
    const row = quantity => shownQuantity(this.garden.choice, `${part.id} ${quantity.key} ${quantity.i}`, quantity, unitsOf(this.garden.plan));
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
