import { addTo, dropFrom, put, valueAt } from '../state/ground.js';
import { CREW_LISTS, CREW_OBJECTS } from '../state/crew-forms.js';
import { LISTS, OBJECTS, readerOf, writtenBy } from '../state/ground-forms.js';
import { unitsOf } from '../state/plan.js';
import { countField } from './count-field.js';
import { lengthField } from './length-field.js';
import { GardenElement, h } from './make.js';

/** A label longer than this wants the whole width. */
const WIDE_LABEL = 26;

const ALL_LISTS = { ...LISTS, ...CREW_LISTS };
const ALL_OBJECTS = { ...OBJECTS, ...CREW_OBJECTS };

/**
 * ground-form: one section of the ground or of the crew, either one thing with its fields or a list of things. Set `garden`,
 * `form`, a key of the lists or objects, where something is drawn `yard`, and to have one thing of a list without the others `index`, its place in it, before attaching.
 */
export class GroundForm extends GardenElement {
  #built = null;
  #shows = [];

  get #spec() { return ALL_LISTS[this.form] ?? ALL_OBJECTS[this.form]; }

  get #list() { return this.form in ALL_LISTS; }

  follows = ['plans', 'reckoning'];

  attached() {
    this.#built = null;
    super.attached();
  }

  render() {
    const { plan } = this.garden;
    const built = JSON.stringify([unitsOf(plan), this.#things().map(({ thing }) => this.#fieldsOf(thing).map(field => field.key)), (plan.beds ?? []).length]);
    if (built !== this.#built) this.#build();
    this.#built = built;
    for (const show of this.#shows) show();
  }

  /** Each thing with its path in the document; an object that does not stand there yet is an empty one. */
  #things() {
    const { path } = this.#spec;
    const value = valueAt(this.garden.plan, path);
    if (!this.#list) return [{ thing: value ?? {}, path }];
    return (value ?? []).map((thing, i) => ({ thing, path: [...path, i] })).filter((_, i) => i === (this.index ?? i));
  }

  #fieldsOf(thing) { return this.#spec.fields.filter(field => field.when?.(thing) ?? true); }

  #build() {
    this.#shows = [];
    const spec = this.#spec;
    const things = this.#things();
    const rows = things.map(({ thing, path }) => this.#row(thing, path, path.at(-1)));
    const short = spec.needsBeds > (this.garden.plan.beds ?? []).length;
    this.replaceChildren(
      ...(spec.hint ? [h('p.hint', {}, spec.hint)] : []),
      ...rows,
      ...(this.#list && this.index === undefined ? [h('button', {
        type: 'button', 'data-key': `add ${this.form}`, 'aria-disabled': short ? 'true' : null, onclick: () => (short ? this.say(`Add ${spec.needsBeds} beds first.`) : this.#add()),
      }, `Add a ${spec.one}`)] : []));
  }

  #row(thing, path, i) {
    const fields = this.#fieldsOf(thing).map(field => this.#field(field, path, i));
    if (!this.#list || this.index !== undefined) return h('div.fields', {}, fields);
    const name = `${this.#spec.one} ${i + 1}`;
    return h('fieldset', { 'data-row': `${this.form} ${i}` },
      h('legend', {}, name.charAt(0).toUpperCase() + name.slice(1)),
      h('div.fields', {}, fields),
      h('button.quiet', { type: 'button', 'data-key': `drop ${this.form} ${i}`, 'aria-label': `Take out ${name}`, onclick: () => this.#drop(i, name) }, 'Delete'));
  }

  #field(field, path, i) {
    const key = `${this.form}${this.#list ? ` ${i}` : ''} ${field.key.join(' ')}`;
    const whole = [...path, ...field.key];
    const now = () => valueAt(this.garden.plan, whole);
    if (field.kind === 'choice') return this.#choice(field, path, whole, key);
    if (field.kind === 'mm') {
      const usual = () => field.usualOf?.(valueAt(this.garden.plan, path) ?? {}, this.garden.reckoning.sheet) ?? field.usual;
      const entry = lengthField({ label: field.label, units: unitsOf(this.garden.plan), key });
      entry.addEventListener('length', event => { event.stopPropagation(); this.#set(whole, event.detail.mm); });
      this.#shows.push(() => {
        const value = now() ?? usual();
        entry.hint = now() === undefined && value !== undefined ? 'as usual' : '';
        if (value !== undefined) entry.show(value);
      });
      return entry;
    }
    const entry = countField({ label: field.label, mode: 'text', key, hint: field.hint?.call ? field.hint(this.garden.plan) : field.hint, read: text => readerOf(field, this.garden.plan)(text) });
    if (field.kind !== 'number' || field.label.length > WIDE_LABEL) entry.classList.add('wide');
    // an event turns an undefined detail into null
    entry.addEventListener('count', event => { event.stopPropagation(); this.#set(whole, event.detail ?? undefined, field.command); });
    this.#shows.push(() => entry.show(writtenBy(field, now(), this.garden.plan)));
    return field.as ? h('div.with-draw', {}, entry, h('button', { type: 'button', 'data-key': `draw ${key}`, 'aria-label': `Draw ${field.label.toLowerCase()}`, onclick: () => this.#draw(field, whole) }, 'Draw')) : entry;
  }

  #choice(field, path, whole, key) {
    const id = `ground-${key.replaceAll(' ', '-')}`;
    const select = h('select', { id, 'data-key': key, onchange: event => {
      const chosen = event.target.value;
      if (field.becomes) this.run(put(path, field.becomes(valueAt(this.garden.plan, path), chosen, this.garden.plan)));
      else if (field.whole && chosen === '') this.run(put(path, undefined));
      else this.#set(whole, chosen === field.usual && !field.whole ? undefined : chosen);
    } }, field.choices.map(([value, text]) => h('option', { value }, text)));
    this.#shows.push(() => { select.value = valueAt(this.garden.plan, whole) ?? field.usual; });
    return h('div.field', {}, h('label', { for: id }, field.label), select);
  }

  /** Put in the yard, press by press, in place of typed. */
  async #draw(field, whole) {
    const points = await this.yard.draw({ as: field.as, name: this.#spec.one ?? this.#spec.title });
    if (!points) return;
    this.#set(whole, field.as === 'point' ? points[0] : points);
    this.say(`${field.label} drawn.`);
  }

  /** The same list or number again is no change. @param {(value: any) => (plan: object) => object} [more] where more changes with it */
  #set(path, value, more) {
    if (JSON.stringify(valueAt(this.garden.plan, path)) === JSON.stringify(value)) return;
    const { begins, path: own } = this.#spec;
    const command = more?.(value) ?? put(path, value);
    this.run(begins && !valueAt(this.garden.plan, own) ? plan => command(put(own, begins)(plan)) : command);
  }

  #add() {
    const { path, fresh, one } = this.#spec;
    const count = (valueAt(this.garden.plan, path) ?? []).length;
    const items = fresh(this.garden.plan, count);
    this.run(addTo(path, ...items));
    this.render();
    this.querySelector(`[data-row="${this.form} ${count}"] :is(input, select)`)?.focus();
    this.say(items.length > 1 ? `${items.length} of them added.` : `A ${one} is added.`);
  }

  #drop(i, name) {
    const { path, least } = this.#spec;
    if (least && (valueAt(this.garden.plan, path) ?? []).length <= least) return this.say(`At least ${least} are needed.`);
    this.run(dropFrom(path, i));
    this.render();
    this.querySelector(`[data-key="add ${this.form}"]`)?.focus();
    return this.say(`${name} is deleted. Undo brings it back.`);
  }
}

customElements.define('ground-form', GroundForm);
