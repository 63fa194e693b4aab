import { shown } from '../geometry/length.js';
import { readName, sideCheck } from '../state/checks.js';
import { lastBed } from '../state/commands.js';
import { bedsOf, calledOf, unitsOf } from '../state/plan.js';
import { roomFor, saidOfRoom } from '../state/room.js';
import { followType, readTypes, removeType, setDefaults, setType, sizeOf, standType, typeLaid, typeOf } from '../state/types.js';
import './bed-card.js';
import './beds-card.js';
import { buildFields } from './build-fields.js';
import { countField } from './count-field.js';
import { lengthField } from './length-field.js';
import { custom, GardenElement, h } from './make.js';
import { patch } from './patch.js';
import { place } from './places.js';
import './shelf-piece.js';

/** lap-beds: all about what is in hand, the types and what differs from them, all beds, and how beds are usually built here. */
export class LapBeds extends GardenElement {
  follows = ['plans', 'choice'];

  attached() {
    const make = tag => custom(tag, { garden: this.garden, yard: this.yard });
    this.#list = h('div');
    this.replaceChildren(make('bed-card'), make('beds-card'), this.#list, custom('shelf-piece', { garden: this.garden, kind: 'type',
      contentOf: plan => typeOf(plan, this.garden.bed?.type), nothing: 'Take a bed of the type in hand first.' }));
    super.attached();
  }

  #list;

  render() {
    const { plan } = this.garden;
    const types = readTypes(plan);
    const own = bedsOf(plan).filter(bed => !bed.type);
    patch(this.#list, [
      h('h3', {}, 'Types'),
      types.length ? null : h('p.hint', {}, 'None yet. Take a bed in hand and make a type of it: then it is placed many times and changed once.'),
      h('ul.types', {}, types.map(type => this.#type(type))),
      own.length ? [h('h3', {}, types.length ? 'Beds of their own' : 'Beds'), h('ul.own', {}, own.map(bed => this.#bed(bed)))] : null,
      h('details', {}, h('summary', { 'data-key': 'usual' }, 'How beds are usually built here'),
        h('div.fields', {}, buildFields({ plan, key: 'usual', isUsual: true, layers: { own: plan.defaults ?? {} }, set: fields => this.run(setDefaults(fields)) })))]);
  }

  #type({ id, name, type, beds, exceptions }) {
    const { plan } = this.garden;
    const units = unitsOf(plan);
    const laid = typeLaid(plan, id);
    const [width, depth] = sizeOf(laid.own);
    const size = (label, key) => lengthField({ label, units, mm: type[key], key: `type ${id} ${key}`, check: sideCheck(plan, laid.section.thickness, key),
      onlength: ({ detail }) => this.run(setType(id, { [key]: detail.mm })) });
    return h('li', { 'data-key': `type ${id}` },
      h('div.row', {}, h('p', {}, h('strong', {}, name || `Type ${id}`), ` ${shown(width, units)} × ${shown(depth, units)} · ${laid.courses}, ${beds.length} of them`),
        h('button', { type: 'button', 'data-key': `type ${id} stand`, onclick: () => this.#stand(id) }, 'Add one')),
      beds.length ? h('p.placed', {}, beds.map(bed => this.#to(bed))) : null,
      exceptions.map(({ bed, keys }) => h('p.differs', { 'data-key': `differs ${bed}` }, `${bed} differs in ${keys.join(', ')}. `,
        h('button.quiet', { type: 'button', 'data-key': `follow ${bed}`, onclick: () => this.run(followType(bed)) }, 'Make it like its type'))),
      h('details', {}, h('summary', { 'data-key': `type ${id} edit` }, 'Change the type'),
        h('div.fields', {},
          countField({ label: 'Name', mode: 'text', key: `type ${id} name`, value: name, read: readName,
            oncount: ({ detail }) => this.run(setType(id, { name: detail || undefined })) }),
          type.width && type.depth ? [size('Width', 'width'), size('Depth', 'depth')] : null,
          buildFields({ plan, key: `type ${id}`, layers: { own: type, garden: plan.defaults }, set: fields => this.run(setType(id, fields)) })),
        beds.length ? null : h('button', { type: 'button', 'data-key': `type ${id} delete`, onclick: () => this.run(removeType(id)) }, 'Delete the type')));
  }

  #to(bed) {
    return h('button.code', { type: 'button', 'data-key': `take ${bed.id}`, 'aria-pressed': String(this.garden.choice.has(bed.id)), title: calledOf(bed),
      'aria-label': `Take hold of ${calledOf(bed)}`, onclick: () => this.garden.choice.takeBed(bed.id) }, bed.id);
  }

  #bed(bed) {
    const units = unitsOf(this.garden.plan);
    const [width, depth] = sizeOf(bed.own);
    return h('li', { 'data-key': `own ${bed.id}` }, h('div.row', {},
      h('p', {}, this.#to(bed), ` ${bed.name ? `${bed.name}, ` : ''}${shown(width, units)} × ${shown(depth, units)} · ${bed.courses}`)));
  }

  #stand(id) {
    const { plan } = this.garden;
    const room = roomFor(typeLaid(plan, id).own, plan, this.garden.reckoning.sheet);
    const { at } = room;
    this.run(standType(id, at));
    const bed = lastBed(this.garden.plan);
    this.garden.choice.takeBed(bed);
    this.say(`Bed ${bed} is added, ${this.yard.lengthText(at[0])} along and ${this.yard.lengthText(at[1])} away from the house.${saidOfRoom(room)}`);
  }
}

customElements.define('lap-beds', LapBeds);
place({ key: 'beds', title: 'Beds', tag: 'lap-beds', table: 'lay-out', order: 20 });
