import { acceptSnag, isAccepted, listed, noLongerAccept, readReason } from '../state/accepted.js';
import { moneyIn } from '../state/changes.js';
import { placeOf } from '../state/places.js';
import { counted } from '../state/words.js';
import { wayField, wayOut } from '../state/ways.js';
import { countField } from './count-field.js';
import { form, GardenElement, h } from './make.js';
import { place } from './places.js';

/** Notes shown until all are asked for, none beside a bed in hand; stops and snags are always all shown. */
const FEW_NOTES = 3;

/** As `lapyard snags` says them. */
const WEIGHTS = { STOP: 'must be solved', SNAG: 'look at this', NOTE: 'for information' };

/** lap-snags: what is in the way, worst first. A snag under the pointer or the focus draws its thread to its place. */
export class LapSnags extends GardenElement {
  #all = false;

  attached() {
    const { reckoning, keeper, plans, choice } = this.garden;
    this.follow([reckoning, keeper, plans], () => this.render());
    this.follow([choice], () => {
      if (this.#withBed !== Boolean(this.garden.bed)) this.render();
    });
    this.render();
  }

  /** Of what is chosen only this changes the list; pointing at a snag does not. */
  #withBed = false;

  get snags() { return this.garden.snags; }

  render() {
    const snags = this.snags;
    const inTheWay = snags.filter(snag => snag.weight !== 'NOTE');
    this.#withBed = Boolean(this.garden.bed);
    const few = listed(snags, this.#withBed ? 0 : FEW_NOTES);
    const shownSnags = this.#all ? snags : few;
    this.rebuild(
      shownSnags.length ? null : h('p.hint', {}, 'Nothing is in the way.'),
      snags.length && this.garden.reckoning.sheet?.caution ? h('p.hint', {}, this.garden.reckoning.sheet.caution) : null,
      h('ul', {}, shownSnags.map(snag => this.#snag(snag, snags.indexOf(snag)))),
      snags.length > few.length ? h('button.quiet', {
        type: 'button', 'data-key': 'all', 'aria-expanded': String(this.#all),
        onclick: () => { this.#all = !this.#all; this.render(); },
      }, this.#all ? 'Show fewer' : `Show all ${snags.length}`) : null);
    this.#sayNew(inTheWay);
  }

  #text(snag) { return moneyIn(snag.text, this.garden.reckoning.sheet?.slip?.currency); }

  #told = 0;

  #sayNew(inTheWay) {
    if (inTheWay.length > this.#told) this.say(`${counted(inTheWay.length, 'snag')}. ${this.#text(inTheWay[0])}`);
    this.#told = inTheWay.length;
  }

  /** @param {number} i place among all, so that a key is of one snag whatever else is listed */
  #snag(snag, i) {
    const place = placeOf(this.garden.plan, snag.where, snag.text);
    const point = on => this.garden.choice.pointAt(on && place ? { ...snag, ...place, key: `snag ${i}` } : null);
    const text = [
      h('span.weight', {}, WEIGHTS[snag.weight]), ' ',
      h('span.where', {}, snag.place ?? snag.where), ': ', h('span.text', {}, this.#text(snag)),
    ];
    return h(`li.${String(snag.weight).toLowerCase()}`, { 'data-snag': `snag ${i}`, onpointerenter: () => point(true), onpointerleave: () => point(false) },
      place
        ? h('button', {
          type: 'button', 'data-key': `snag ${i}`, onfocus: () => point(true), onblur: () => point(false),
          onclick: () => {
            point(true);
            if (place.bed) this.garden.choice.takeBed(place.bed);
          },
        }, ...text)
        : h('p', {}, ...text),
      this.#ways(snag, i),
      snag.list?.length ? h('details.alike', {}, h('summary', { 'data-key': `alike ${i}` }, `All ${snag.list.length}`),
        h('ul', {}, snag.list.map((one, j) => h('li.one', {}, h('strong', {}, one.place ?? one.where), ` ${this.#text(one)}`, this.#ways(one, `${i} ${j}`))))) : null,
      this.#accepting(snag, i));
  }

  /** The ways out: what a press does, what a press leads to, and what nobody can do on a page. */
  #ways(snag, key) {
    if (!snag.ways?.length) return null;
    const { plan, reckoning } = this.garden;
    return h('ul.ways', {}, snag.ways.map((text, j) => {
      const act = snag.acts?.[j];
      const command = act && wayOut(plan, snag.at, act, reckoning.sheet);
      const field = act && !command && (act.way === 'accept-it' && snag.weight !== 'SNAG' ? null : wayField(snag.at, act));
      const parts = { type: 'button', 'data-key': `way ${key} ${j}`, 'data-way': act?.way };
      return h('li', {}, command ? h('button', { ...parts, onclick: () => this.#take(command, text) }, text)
        : field ? h('button.quiet', { ...parts, onclick: () => this.#show(field) }, `${text} …`) : h('span', {}, `${text}.`));
    }));
  }

  #take(command, text) {
    this.run(command);
    this.say(`${text}: done. Undo takes it back.`);
  }

  /** Takes the person to where a way is done by hand. */
  #show({ place, field, bed, path }) {
    if (bed) this.garden.choice.takeBed(bed);
    const index = path === null ? -1 : (this.garden.plan.paths ?? []).findIndex(one => String(one.id) === path);
    const key = place === 'paths' && index >= 0 ? (field ? `paths ${index} ${field}` : `path ${index} open`) : field;
    this.openPlace(place);
    if (key) this.dispatchEvent(new CustomEvent('show-field', { detail: key, bubbles: true }));
  }

  #asked = null;

  /** A snag can stay where somebody says why; what was accepted can be taken back. */
  #accepting(snag, i) {
    const { plans, plan } = this.garden;
    if (isAccepted(plan, snag.where)) {
      return h('div.accept', {}, h('button.quiet', { type: 'button', 'data-key': `accepted ${i}`, onclick: () => plans.run(noLongerAccept(snag.where)) }, 'No longer accept it'));
    }
    if (snag.weight !== 'SNAG') return null;
    const key = `${snag.where}: ${snag.text}`;
    if (this.#asked !== key) {
      return h('div.accept', {}, h('button.quiet', { type: 'button', 'data-key': `accept ${i}`, onclick: () => {
        this.#asked = key;
        this.render();
        this.querySelector('.accept input')?.focus();
      } }, 'Accept it'));
    }
    return form('form.accept', { novalidate: true, 'data-key': `accept form ${i}` }, sent => {
      this.#asked = null;
      plans.run(acceptSnag(snag.where, sent.querySelector('count-field').entry));
      this.say(`${snag.where}: accepted.`);
    },
    countField({ label: `Who takes on ${snag.where}, and why`, mode: 'text', key: `accept reason ${i}`, read: readReason }),
    h('div.verbs', {}, h('button.main', { type: 'submit', 'data-key': `accept yes ${i}` }, 'Accept it'),
      h('button', { type: 'button', 'data-key': `accept no ${i}`, onclick: () => { this.#asked = null; this.render(); } }, 'Cancel')));
  }
}

customElements.define('lap-snags', LapSnags);
place({ key: 'snags', title: 'Snags', tag: 'lap-snags', order: 10 });
