import { lengthField } from './length-field.js';
import { countField } from './count-field.js';
import { nameCheck } from '../state/checks.js';
import { nameGarden } from '../state/commands.js';
import { unitsOf } from '../state/plan.js';
import { GardenElement, h } from './make.js';

/** A yard a new garden begins with until it is measured, millimetres. */
const NEW_YARD = { width: 12000, depth: 9000 };

const named = text => {
  const wrong = text.trim() === '' ? 'Nothing here yet. Write a name.' : nameCheck(text);
  return wrong ? { error: wrong } : { value: text.trim() };
};

/**
 * garden-title: which garden this is, how it is kept, and the way to the others. Set `gardens` (the list).
 * Fires `open-garden` (detail: id) and `start-garden` (detail: the first document).
 */
export class GardenTitle extends GardenElement {
  #folded = true;
  #asking = null;

  attached() {
    this.follow([this.garden.plans, this.garden.keeper], () => this.render());
    this.render();
  }

  render() {
    const name = this.garden.plan.name || 'A garden without a name';
    const { keeper } = this.garden;
    const { text, acts } = standingOf(keeper);
    this.rebuild(
      h('h1', {}, name),
      h('p', { class: `standing ${keeper.standing}` }, text, acts.map(([label, act]) => h('button.quiet', { type: 'button', 'data-key': label, onclick: act }, label))),
      h('div.verbs', {},
        h('button', { type: 'button', 'data-key': 'gardens', 'aria-expanded': String(!this.#folded), onclick: () => this.#fold(!this.#folded) }, 'Gardens'),
        h('button', { type: 'button', 'data-key': 'start', 'aria-expanded': String(this.#asking === 'start'), onclick: () => this.#ask('start') }, 'New'),
        h('button', { type: 'button', 'data-key': 'copy', onclick: () => this.#copy() }, 'Copy'),
        h('button', { type: 'button', 'data-key': 'rename', 'aria-expanded': String(this.#asking === 'rename'), onclick: () => this.#ask('rename') }, 'Rename')),
      this.#form,
      this.#folded ? null : this.#list());
    this.#sayStanding(text);
  }

  #sayStanding(text) {
    const { keeper } = this.garden;
    if (keeper.standing !== this.#told && ['away', 'refused', 'clash'].includes(keeper.standing)) this.say(text);
    if (keeper.standing === 'kept' && ['away', 'refused', 'clash'].includes(this.#told)) this.say('Saved.');
    if (keeper.standing !== 'saving') this.#told = keeper.standing;
  }

  #told = 'kept';

  #fold(folded) {
    this.#folded = folded;
    this.#ask(null);
  }

  #list() {
    return h('ul.gardens', {}, this.gardens.map(({ id, name }) => h('li', {},
      h('button', {
        type: 'button', 'data-key': `garden ${id}`, 'aria-current': id === this.garden.id ? 'true' : null,
        onclick: () => this.dispatchEvent(new CustomEvent('open-garden', { detail: id, bubbles: true })),
      }, (id === this.garden.id ? this.garden.plan.name : name) || id))));
  }

  #ask(what) {
    const within = this.#form?.contains(document.activeElement) ? this.#asking : null;
    this.#asking = this.#asking === what ? null : what;
    if (this.#asking) this.#folded = true;
    this.#form = this.#asking ? this.#made() : null;
    this.render();
    this.querySelector(this.#asking ? 'form input' : `[data-key="${within}"]`)?.focus();
  }

  /** Made once for what is asked, so that what is typed stays. */
  #form = null;

  #made() {
    const starting = this.#asking === 'start';
    const units = unitsOf(this.garden.plan);
    const positive = mm => (mm > 0 ? null : `${mm} is no yard. Write what the tape says.`);
    const name = countField({ label: 'Name', mode: 'text', read: named, key: 'ask name', value: starting ? undefined : this.garden.plan.name ?? '' });
    const width = starting && lengthField({ label: 'Yard, along the house', units, mm: NEW_YARD.width, check: positive, many: true, key: 'ask width' });
    const depth = starting && lengthField({ label: 'Yard, away from it', units, mm: NEW_YARD.depth, check: positive, key: 'ask depth' });
    const fields = [name, width, depth].filter(Boolean);
    if (starting) width.addEventListener('length', event => { if (event.detail.more) depth.show(event.detail.more); });
    const submit = event => {
      event.preventDefault();
      const wrong = fields.find(field => !field.confirm());
      if (wrong) return wrong.input.focus();
      this.#ask(null);
      if (starting) this.#start(name.entry, width.length, depth.length);
      else this.garden.plans.run(nameGarden(name.entry));
      return undefined;
    };
    return h('form', { novalidate: true, 'aria-label': starting ? 'Start a garden' : 'Rename the garden', onsubmit: submit },
      ...fields,
      h('div.verbs', {}, h('button.main', { type: 'submit', 'data-key': 'ask yes' }, starting ? 'Start it' : 'Write it'),
        h('button', { type: 'button', 'data-key': 'ask no', onclick: () => this.#ask(this.#asking) }, 'Leave it')));
  }

  #start(name, width, depth) {
    const { units, currency } = this.garden.plan;
    this.#send({ format: 1, name, ...(currency ? { currency } : {}), ...(units ? { units } : {}),
      ground: { outline: [[0, 0], [width, 0], [width, depth], [0, depth]] }, beds: [] });
  }

  #copy() { this.#send({ ...this.garden.plan, name: `${this.garden.plan.name || 'Garden'}, copy` }); }

  #send(plan) { this.dispatchEvent(new CustomEvent('start-garden', { detail: plan, bubbles: true })); }
}

/** How the garden is kept, in plain words, with what can be done about it. */
function standingOf(keeper) {
  switch (keeper.standing) {
    case 'saving': return { text: 'Saving …', acts: [] };
    case 'away': return {
      text: keeper.storageFull
        ? 'The server is away, and this browser has no room to keep your changes over a reload. Leave the page open. '
        : 'The server is away. Your changes are kept in this browser and sent when it is back. ',
      acts: [['Try now', () => keeper.again()]],
    };
    case 'refused': return { text: `Not saved: ${keeper.snags[0]?.text ?? 'the store refuses it.'}`, acts: [] };
    case 'clash': return { text: 'Someone else changed the same thing. Choose below.', acts: [] };
    default: return { text: 'Saved.', acts: [] };
  }
}

customElements.define('garden-title', GardenTitle);
