import { countField } from './count-field.js';
import { lengthField } from './length-field.js';
import { readLengths, shown } from '../geometry/length.js';
import { rectangle } from '../geometry/outline.js';
import { roomFor } from '../state/room.js';
import { readName } from '../state/checks.js';
import { nameGarden, showIn } from '../state/commands.js';
import { readCurrency } from '../state/catalogue.js';
import { beginWith, currencyFor, newGarden } from '../state/new-garden.js';
import { STATES, setState, stateOf } from '../state/gardens.js';
import { unitsOf } from '../state/plan.js';
import { asNewJob, hasHappened } from '../state/tally.js';
import { withoutServer } from '../state/words.js';
import { form, GardenElement, h, options, verb } from './make.js';

/** What a yard can be made of, before it is drawn more closely. */
const SURFACES = [['', 'not said yet'], ['grass', 'grass'], ['soil', 'soil'], ['slab', 'slabs'], ['concrete', 'concrete'], ['gravel', 'gravel'], ['deck', 'a deck']];

const UNITS = [['metric', 'mm'], ['imperial', 'ft, in']];

const named = text => (text.trim() === '' ? { error: 'Nothing here yet. Write a name.' } : readName(text));

/**
 * garden-title: which garden this is, how it is kept, and the way to the others. Set `gardens` (see Gardens).
 * Fires `open-garden` (detail: id), `start-garden` (detail: the first document), `archive-garden`, `delete-garden` and
 * `bring-back-garden` (detail: id, from).
 */
export class GardenTitle extends GardenElement {
  #folded = true;
  #asking = null;

  attached() {
    this.follow([this.garden.plans, this.garden.keeper, this.gardens], () => this.render());
    this.listen(document, 'pointerdown', event => { if (!this.#folded && !this.contains(event.target)) this.#fold(true); });
    this.listen(this, 'keydown', event => {
      if (event.key !== 'Escape' || this.#folded) return;
      this.#fold(true);
      this.querySelector('[data-key="gardens"]').focus();
    });
    this.render();
  }

  render() {
    const name = this.garden.plan.name || 'A garden without a name';
    const { keeper } = this.garden;
    const { text, acts } = this.garden.trying ? { text: 'Trying. Nothing of it is saved.', acts: [] } : standingOf(keeper);
    this.rebuild(
      h('h1', {}, h('button', { type: 'button', 'data-key': 'gardens', title: name, 'aria-expanded': String(!this.#folded), onclick: () => this.#fold(!this.#folded) }, name)),
      h('p', { class: `standing ${keeper.standing}` }, text, acts.map(([label, act]) => h('button.quiet', { type: 'button', 'data-key': label, onclick: act }, label))),
      this.#folded ? null : this.#menu());
    this.#sayStanding(text);
  }

  /** A garden that is begun has nothing to do with the one that is open, nor with others. */
  #menu() {
    return h('div.garden-menu', { 'data-key': 'garden menu' },
      this.#asking === 'start' ? null : this.#verbs(), this.#form, this.#asking === 'start' ? null : [this.#finding(), this.#list()]);
  }

  #verbs() {
    return h('div.verbs', {},
      verb('New', 'start', () => this.#ask('start')),
      verb('Copy', 'copy', () => (hasHappened(this.garden.plan) ? this.#ask('copy') : this.#copy(asNewJob(this.garden.plan))), { 'aria-expanded': String(this.#asking === 'copy') }),
      verb('Rename', 'rename', () => this.#ask('rename'), { 'aria-expanded': String(this.#asking === 'rename') }),
      verb('Try out', 'try out', () => { this.#fold(true); this.ask('try out'); }),
      verb('Archive', 'archive garden', () => this.dispatchEvent(new CustomEvent('archive-garden', { bubbles: true })), { title: 'Off the list; nothing else changes' }),
      verb('Delete', 'delete garden', () => this.dispatchEvent(new CustomEvent('delete-garden', { bubbles: true }))),
      h('select', { 'data-key': 'state', 'aria-label': 'State of the job', title: 'State of the job', onchange: event => this.run(setState(event.target.value)) },
        options(STATES, stateOf(this.garden.plan))),
      h('select', { 'data-key': 'units', 'aria-label': 'Lengths are shown in', title: 'Lengths are shown in', onchange: event => this.run(showIn(event.target.value)) },
        options(UNITS, unitsOf(this.garden.plan))));
  }

  #sayStanding(text) {
    const { keeper } = this.garden;
    if (keeper.standing !== this.#told && ['away', 'refused', 'clash'].includes(keeper.standing)) this.say(text);
    if (keeper.standing === 'kept' && ['away', 'refused', 'clash'].includes(this.#told)) this.say('Saved.');
    if (keeper.standing !== 'saving') this.#told = keeper.standing;
  }

  #told = 'kept';

  /** Opens with the form for a new garden. */
  begin() {
    this.#asking = null;
    this.#fold(false, 'start');
  }

  #fold(folded, asking = null) {
    if (this.#folded && !folded) this.gardens.ask();
    this.#folded = folded;
    this.#ask(asking);
  }

  /** What is looked for among the gardens. */
  #finding() {
    const { asked } = this.gardens;
    const choice = (key, label, choices) => h('select', { 'data-key': `list ${key}`, 'aria-label': label, title: label, onchange: event => this.gardens.ask({ [key]: event.target.value }) },
      options(choices, asked[key]));
    return h('div.finding', { role: 'search' },
      h('input', { type: 'search', 'data-key': 'find garden', 'aria-label': 'Find a garden or client', placeholder: 'Find a garden or client', maxlength: 200, value: asked.find, oninput: event => this.gardens.ask({ find: event.target.value }) }),
      choice('which', 'Which gardens', [['', 'All'], ...STATES, ['archived', 'Archived'], ['deleted', 'Deleted']]),
      choice('order', 'Order', [['changed', 'Latest first'], ['name', 'By name'], ['client', 'By client'], ['state', 'By state']]));
  }

  #list() {
    const { rows, total, asked, wrong } = this.gardens;
    const from = ['archived', 'deleted'].includes(asked.which) ? asked.which : null;
    return [
      wrong ? h('p.hint', {}, `${wrong.message} ${rows.length ? 'These were open last.' : ''}`) : null,
      h('ul.gardens', {}, rows.map(row => h('li', {}, from ? this.#putAway(row, from) : this.#way(row)))),
      total > rows.length ? h('button.quiet', { type: 'button', 'data-key': 'more gardens', onclick: () => this.gardens.more() }, `${total - rows.length} more`) : null,
      rows.length || wrong ? null : h('p.hint', {}, this.gardens.looking ? 'Looking …' : 'No garden is found.')];
  }

  #way({ id, name, client, state }) {
    const open = id === this.garden.id;
    return h('button', { type: 'button', 'data-key': `garden ${id}`, 'aria-current': open ? 'true' : null, onclick: () => this.dispatchEvent(new CustomEvent('open-garden', { detail: id, bubbles: true })) },
      (open ? this.garden.plan.name : name) || id,
      h('small', {}, [client, STATES.find(([code]) => code === (open ? stateOf(this.garden.plan) : state))?.[1]].filter(Boolean).join(' · ')));
  }

  #putAway({ id, name, changed }, from) {
    return h('button', { type: 'button', 'data-key': `bring back ${id}`, onclick: () => this.dispatchEvent(new CustomEvent('bring-back-garden', { detail: { id, from }, bubbles: true })) },
      `Bring back ${name || id}`, from === 'deleted' ? h('small', {}, `deleted ${new Date(changed).toLocaleDateString([], { dateStyle: 'medium' })}`) : null);
  }

  #ask(what) {
    const within = this.#form?.contains(document.activeElement) ? this.#asking : null;
    this.#asking = this.#asking === what ? null : what;
    this.#form = !this.#asking ? null : this.#asking === 'copy' ? this.#copying() : this.#made();
    this.render();
    this.querySelector(this.#asking ? 'form input, form button' : `[data-key="${within}"]`)?.focus();
  }

  /** Made once for what is asked, so that what is typed stays. */
  #form = null;

  #made() {
    const starting = this.#asking === 'start';
    const units = unitsOf(this.garden.plan);
    const positive = mm => (mm > 0 ? null : `${mm} is no yard. Write what the tape says.`);
    const name = countField({ label: 'Name', mode: 'text', read: named, key: 'ask name', value: starting ? undefined : this.garden.plan.name ?? '' });
    const width = starting && lengthField({ label: 'Yard, along the house', units, mm: beginWith(units).yard.width, check: positive, many: true, key: 'ask width' });
    const depth = starting && lengthField({ label: 'Yard, away from it', units, mm: beginWith(units).yard.depth, check: positive, key: 'ask depth' });
    const surface = starting && h('select', { id: 'ask-surface', 'data-key': 'ask surface' }, options(SURFACES, ''));
    const bed = starting && lengthField({ label: 'First bed', units, mm: undefined, check: positive, many: true, key: 'ask bed', hint: bedHint(units), mayBeEmpty: true });
    const money = starting && countField({ label: 'Prices are in', mode: 'text', read: readCurrency, key: 'ask currency', value: currencyFor(units, this.garden.plan), hint: 'can be changed under Merchants' });
    const measures = starting && h('select', { id: 'ask-units', 'data-key': 'ask units', onchange: () => inUnits(measures.value, this.garden.plan, { width, depth, bed, money }) }, options(UNITS, units));
    if (starting) width.addEventListener('length', event => { if (event.detail.more) depth.show(event.detail.more); });
    const submit = () => {
      const first = starting && bed.input.value.trim() ? readLengths(bed.input.value, measures.value).mm : null;
      if (starting && bed.input.value.trim() && !first) return bed.input.focus();
      const currency = starting && money.entry;
      if (starting && !currency) return money.input.focus();
      this.#fold(true);
      if (starting) this.#start(measures.value, name.entry, currency, [width.mm, depth.mm], surface.value, [first].flat().filter(Boolean));
      else this.run(nameGarden(name.entry));
      return undefined;
    };
    return form('form', { novalidate: true, 'aria-label': starting ? 'Start a garden' : 'Rename the garden' }, submit,
      name, starting ? h('div.field', {}, h('label', { for: 'ask-units' }, 'Lengths are shown in'), measures) : null, width, depth,
      starting ? [h('div.field', {}, h('label', { for: 'ask-surface' }, 'What the ground is'), surface), bed, money] : null,
      h('div.verbs', {}, h('button.main', { type: 'submit', 'data-key': 'ask yes' }, starting ? 'Start it' : 'Rename it'),
        h('button', { type: 'button', 'data-key': 'ask no', onclick: () => this.#ask(this.#asking) }, 'Cancel')));
  }

  /** The yard, what it is made of, and the first bed, as far as they were said. */
  #start(units, name, currency, yard, surface, [bedWidth, bedDepth = bedWidth]) {
    const plan = newGarden(units, { name, currency, yard, surface });
    if (bedWidth) plan.beds.push({ id: 'A', width: bedWidth, depth: bedDepth, at: roomFor(rectangle(bedWidth, bedDepth), plan, null).at });
    this.#send(plan);
  }

  /** What has been done of a garden belongs to its job, or goes along to be safe. */
  #copying() {
    const way = (key, text, kind, made) => h(`button${kind}`, { type: 'button', 'data-key': key, onclick: () => { this.#fold(true); this.#copy(made(this.garden.plan)); } }, text);
    return form('form', { 'aria-label': 'Copy the garden' }, () => undefined,
      h('p', {}, 'Something of this garden is done, cut, bought or handed over.'),
      h('div.verbs', {}, way('copy new', 'Copy as a new job', '.main', asNewJob), way('copy done', 'Copy with what is done', '', plan => plan),
        h('button', { type: 'button', 'data-key': 'ask no', onclick: () => this.#ask(this.#asking) }, 'Cancel')));
  }

  #copy(plan) { this.#send({ ...plan, name: `${plan.name || 'Garden'}, copy` }); }

  #send(plan) { this.dispatchEvent(new CustomEvent('start-garden', { detail: plan, bubbles: true })); }
}

const bedHint = units => `${Object.values(beginWith(units).bed).map(mm => shown(mm, units)).join(' x ')}; empty: none yet`;

/** The form for a new garden in other measures: what was typed stays, what a yard begins with and pays in is that of the measures. */
function inUnits(units, open, { width, depth, bed, money }) {
  if (money.entry === currencyFor(width.units, open)) money.show(currencyFor(units, open));
  for (const [field, side] of [[width, 'width'], [depth, 'depth']]) {
    const { mm, length } = field;
    const begun = mm === beginWith(field.units).yard[side];
    field.units = units;
    if (length !== null) field.show(begun ? beginWith(units).yard[side] : mm);
  }
  bed.units = units;
  bed.hint = bedHint(units);
  bed.typed();
}

/** How the garden is kept, in plain words, with what can be done about it. */
function standingOf(keeper) {
  switch (keeper.standing) {
    case 'saving': return { text: 'Saving …', acts: [] };
    case 'away': return {
      text: `${keeper.why ? withoutServer('Not saved yet', keeper.why) : 'The server cannot be reached'}${keeper.storageFull
        ? ', and this browser has no room to keep your changes over a reload. Leave the page open. '
        : `. Your changes are kept in this browser and sent ${keeper.why ? 'again' : 'when it is back'}. `}`,
      acts: [['Try now', () => keeper.again()]],
    };
    case 'refused': return { text: `Not saved: ${keeper.why}`, acts: [] };
    case 'clash': return { text: 'Someone else changed the same thing. Choose below.', acts: [] };
    default: return { text: 'Saved.', acts: [] };
  }
}

customElements.define('garden-title', GardenTitle);
