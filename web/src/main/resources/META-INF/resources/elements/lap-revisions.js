import { api } from '../api.js';
import { withHappened } from '../state/tally.js';
import { form, GardenElement, h } from './make.js';
import { place } from './places.js';
import { bringingLink } from './sheet-link.js';

const KINDS = { created: 'begun', saved: 'saved', restored: 'brought back', deleted: 'taken off the list' };

const when = saved => new Date(saved).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' });

/** lap-revisions: every revision that was kept, what changed between two, and names that keep one for good. */
export class LapRevisions extends GardenElement {
  #revisions = [];
  #older = false;
  #of = null;
  #from = null;
  #to = null;
  #lines = null;
  #naming = null;

  follows = ['keeper'];

  render() {
    this.#fetch();
    const { keeper } = this.garden;
    const newest = this.#revisions[0]?.number;
    this.rebuild(
      this.wrong(),
      h('section', {},
        h('h3', {}, 'What changed'),
        this.#revisions.length < 2 ? h('p.hint', {}, 'One revision so far: the next change makes the second.') : this.#difference(newest)),
      h('section', {},
        h('h3', {}, 'Kept'),
        h('ol.revisions', {}, this.#revisions.map(one => this.#revision(one, one.number === newest, keeper.standing === 'kept'))),
        this.#older ? h('button.quiet', { type: 'button', 'data-key': 'older revisions', onclick: () => this.#more() }, 'Show older ones') : null),
      h('section', {},
        h('h3', {}, 'As a file'),
        h('p', {}, bringingLink(this, api, 'file', 'The garden with its history', 'garden.json')),
        h('label.file', {}, 'Bring one in ', h('input', { type: 'file', accept: '.json,application/json', 'data-key': 'bring in', onchange: event => this.#bringIn(event.target) }))));
  }

  /** Once for each revision that is kept. */
  async #fetch() {
    const { keeper, id } = this.garden;
    if (keeper.standing !== 'kept' || this.#of === keeper.revision) return;
    this.#of = keeper.revision;
    await this.try('The history could not be fetched', async () => {
      const { revisions, next } = await api.revisions(id);
      this.#revisions = revisions;
      this.#older = Boolean(next);
      this.#to = revisions[0]?.number ?? null;
      this.#from = revisions[1]?.number ?? null;
      this.#lines = null;
    });
  }

  async #more() {
    await this.try('Older revisions could not be fetched', async () => {
      const { revisions, next } = await api.revisions(this.garden.id, this.#revisions.at(-1).number);
      this.#revisions.push(...revisions);
      this.#older = Boolean(next);
    });
  }

  #difference(newest) {
    const choice = (key, label, value, act) => h('label', {}, `${label} `, h('select', { 'data-key': key, onchange: event => { act(Number(event.target.value)); this.#lines = null; this.render(); } },
      this.#revisions.map(({ number, stamp }) => h('option', { value: String(number), selected: number === value }, `${number}${stamp ? `, ${stamp}` : ''}${number === newest ? ', as it stands' : ''}`))));
    return [
      h('div.between', {},
        choice('difference from', 'From', this.#from, number => { this.#from = number; }),
        choice('difference to', 'to', this.#to, number => { this.#to = number; }),
        h('button', { type: 'button', 'data-key': 'difference', onclick: () => this.#show() }, 'Show')),
      this.#lines ? h('ul.difference', { 'data-key': 'difference lines' }, this.#lines.length
        ? this.#lines.map(({ where, text }) => h('li', {}, h('strong', {}, where), ` ${text}`)) : h('li', {}, 'Nothing: the two are alike.')) : null,
    ];
  }

  async #show() {
    await this.try('The difference could not be fetched', async () => {
      this.#lines = await api.difference(this.garden.id, this.#from, this.#to);
      this.say(`${this.#lines.length} ${this.#lines.length === 1 ? 'change' : 'changes'}.`);
    });
  }

  #revision({ number, kind, saved, stamp, printed, restored }, stands, kept) {
    const what = [`${KINDS[kind] ?? kind}${restored ? ` from ${restored}` : ''}`, when(saved), printed ? 'printed' : null, stands ? 'stands now' : null].filter(Boolean).join(', ');
    return h('li', { 'data-key': `revision ${number}` },
      h('p', {}, h('strong', {}, `${number}`), stamp ? h('em', {}, ` ${stamp}`) : null, ` ${what}`),
      this.#naming === number ? this.#name(number, stamp) : h('div.verbs', {},
        h('button.quiet', { type: 'button', 'data-key': `name ${number}`, 'aria-label': `Name revision ${number}`, onclick: () => this.#ask(number) }, stamp ? 'Rename' : 'Name'),
        stamp ? h('button.quiet', { type: 'button', 'data-key': `unname ${number}`, 'aria-label': `Take the name off revision ${number}`, onclick: () => this.#stamp(number, null) }, 'Take the name off') : null,
        stands || kind === 'deleted' ? null : h('button.quiet', {
          type: 'button', 'data-key': `restore ${number}`, 'aria-label': `Bring back revision ${number}`, 'aria-disabled': kept ? null : 'true', onclick: () => kept && this.#restore(number),
        }, 'Bring back'),
        kind === 'deleted' ? null : h('button.quiet', { type: 'button', 'data-key': `copy ${number}`, 'aria-label': `New job from revision ${number}`, onclick: () => this.#copy(number) }, 'New job from it')));
  }

  #ask(number) {
    this.#naming = number;
    this.render();
    this.querySelector('form.name input')?.focus();
  }

  #name(number, stamp = '') {
    return form('form.name', {}, sent => {
      const text = sent.querySelector('input').value.trim();
      if (text) this.#stamp(number, text);
    },
    h('label', { for: `name-${number}` }, `Name of revision ${number}`),
    h('input', { id: `name-${number}`, maxlength: 100, value: stamp, required: true, autocomplete: 'off', 'data-key': `name text ${number}` }),
    h('div.verbs', {}, h('button.main', { type: 'submit', 'data-key': `name yes ${number}` }, 'Name it'),
      h('button', { type: 'button', 'data-key': `name no ${number}`, onclick: () => { this.#naming = null; this.render(); } }, 'Cancel')));
  }

  async #stamp(number, stamp) {
    await this.try('The name is not kept', async () => {
      await api.stamp(this.garden.id, number, stamp);
      this.#naming = null;
      const one = this.#revisions.find(revision => revision.number === number);
      if (stamp === null) delete one.stamp;
      else one.stamp = stamp;
      this.say(stamp === null ? `Revision ${number} has no name.` : `Revision ${number} is ${stamp}.`);
    });
  }

  async #restore(number) {
    await this.try(`Revision ${number} is not brought back`, async () => {
      const { keeper, id, plan } = this.garden;
      await api.restore(id, number, keeper.revision);
      await keeper.lookForNews();
      const back = this.garden.plan;
      this.run(withHappened(plan));
      this.say(this.garden.plan === back ? `Revision ${number} is back.`
        : `Revision ${number} is back, with what has been done, cut, bought and found since. Undo leaves it as it was then.`);
    });
  }

  async #copy(number) { await this.#leaveFor('It is not copied', () => api.copyOf(this.garden.id, number)); }

  async #bringIn(input) {
    const [file] = input.files;
    if (!file) return;
    await this.#leaveFor(`${file.name} could not be brought in`, async () => api.bringIn(await file.text()));
  }

  async #leaveFor(what, made) {
    await this.try(what, async () => {
      const id = await made();
      this.dispatchEvent(new CustomEvent('open-garden', { detail: id, bubbles: true }));
    });
  }
}

customElements.define('lap-revisions', LapRevisions);
place({ key: 'revisions', title: 'Revisions', tag: 'lap-revisions', table: 'share', order: 30 });
