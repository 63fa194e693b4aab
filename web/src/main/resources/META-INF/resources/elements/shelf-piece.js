import { api } from '../api.js';
import { money } from '../state/changes.js';
import { STATES, stateOf } from '../state/gardens.js';
import { form, GardenElement, h, verb } from './make.js';

/** What each kind is called. */
const KINDS = { catalogue: 'price list', type: 'bed type', crew: 'crew', quote: 'terms', access: 'access standard' };

/** What a garden keeps once its price was told to somebody. */
const KEPT = ['catalogue', 'crew', 'quote'];

/**
 * shelf-piece: what is kept once for all gardens of the store. Set `kind`, and `contentOf` (plan => what would be put on the shelf, null
 * for nothing, which `nothing` explains).
 */
export class ShelfPiece extends GardenElement {
  nothing = 'This garden has nothing of its own there to put on the shelf.';
  #pieces = null;
  #uses = [];
  #effect = null;
  #warned = null;

  follows = ['plans'];

  attached() {
    this.listen(this, 'toggle', event => { if (event.target.open && !this.#pieces) this.#look(); }, true);
    super.attached();
  }

  render() {
    const what = KINDS[this.kind];
    this.rebuild(h('details.shelf', {}, h('summary', { 'data-key': `shelf ${this.kind}` }, `The shelf: a ${what} for all gardens`),
      this.wrong(),
      this.#pieces ? [this.#list(), this.#putting(what), this.#effect ? this.#effects() : null] : h('p.hint', {}, 'Fetching the shelf …')));
  }

  #list() {
    const mine = this.#pieces.filter(({ kind }) => kind === this.kind);
    const uses = id => this.#uses.find(use => use.id === id);
    return mine.length ? h('ul.shelf', {}, mine.map(({ id, name, revision, gardens }) => {
      const use = uses(id);
      const behind = use && use.revision < revision;
      return h('li', {}, h('strong', {}, name), ' ', h('small', {}, [`revision ${revision}`, `in ${gardens} ${gardens === 1 ? 'garden' : 'gardens'}`,
        use ? `here ${behind ? `revision ${use.revision}` : 'as it stands'}${use.changed ? ', changed since' : ''}` : null].filter(Boolean).join(' · ')),
      h('div.verbs', {}, !use || behind || use.changed ? verb('Take it', `shelf take ${id}`, () => (this.#keeps ? this.#warn(id) : this.#takeIt(id, false))) : null,
        verb('Keep this garden’s on it', `shelf keep ${id}`, () => this.#put(id, name, revision)),
        gardens ? verb('What it changes', `shelf effect ${id}`, () => this.#showEffect(id)) : null,
        verb('Take off', `shelf drop ${id}`, () => this.#drop(id))),
      this.#warned === id ? this.#warning(id, use) : null);
    })) : h('p.hint', {}, 'Nothing of this kind is on it yet.');
  }

  /** Whether its state says that somebody was told its price. */
  get #keeps() { return KEPT.includes(this.kind) && stateOf(this.garden.plan) !== STATES[0][0]; }

  #warning(id, use) {
    const effect = this.#effect?.gardens.find(one => one.id === this.garden.id)?.variation;
    return h('div.warning', { role: 'alert' },
      h('p', {}, `This garden is ${stateOf(this.garden.plan)}: somebody relies on its prices. `,
        use && effect ? `Its order would go from ${money(effect.before, effect.currency)} to ${money(effect.after, effect.currency)}. ` : 'Taking it can change what the order costs. ', 'Undo takes it back.'),
      h('div.verbs', {}, verb('Take it anyway', `shelf anyway ${id}`, () => this.#takeIt(id, true)), verb('Cancel', `shelf cancel ${id}`, () => { this.#warned = null; this.render(); })));
  }

  async #warn(id) {
    this.#warned = id;
    await this.#showEffect(id);
    this.querySelector(`[data-key="shelf cancel ${id}"]`)?.focus();
  }

  #putting(what) {
    return form('form.verbs', {}, sent => this.#put(null, sent.elements.name.value.trim()),
      h('input', { name: 'name', 'data-key': `shelf name ${this.kind}`, 'aria-label': `Name of the ${what}`, placeholder: `Name of the ${what}`, maxlength: 200, required: true }),
      h('button', { type: 'submit', 'data-key': `shelf put ${this.kind}` }, 'Put this garden’s on the shelf'));
  }

  #effects() {
    const { gardens } = this.#effect;
    return [h('h3', {}, `What revision ${this.#effect.revision} of ${this.#effect.name} changes`), h('ul', {}, gardens.map(({ name, uses, keeps, variation, refused }) => h('li', {}, `${name}: `,
      refused ? `cannot take it. ${refused}` : !variation ? 'has it' : [`${money(variation.before, variation.currency)}, then ${money(variation.after, variation.currency)}`, keeps ? '; it is quoted and keeps its prices' : '', `. It has revision ${uses}.`]))),
    this.#effect.next ? h('p.hint', {}, 'More gardens have it than are shown here.') : null];
  }

  async #look() {
    await this.try(null, async () => {
      const [pieces, uses] = await Promise.all([api.shelf(), api.shelfOf(this.garden.id)]);
      this.#pieces = pieces;
      this.#uses = uses;
    });
  }

  async #put(id, name, revision) {
    const content = this.contentOf(this.garden.plan);
    if (!content) return this.refuse(this.nothing);
    if (!name) return this.refuse('Give it a name first.');
    await this.try(null, async () => {
      const piece = id ? await api.changePiece(id, name, content, revision) : await api.addPiece(this.kind, name, content);
      if (!id) await this.#take(piece.id, false);
      this.say(`${name} is on the shelf.`);
    });
    return this.#look();
  }

  async #takeIt(id, anyway) {
    this.#warned = null;
    await this.try(null, () => this.#take(id, anyway));
    await this.#look();
  }

  async #take(id, anyway) {
    await this.garden.takePiece(id, anyway);
    this.say('It is taken. Undo takes it back.');
  }

  async #showEffect(id) { await this.try(null, async () => { this.#effect = await api.effectOf(id); }); }

  async #drop(id) {
    await this.try(null, () => api.dropPiece(id));
    await this.#look();
  }
}

customElements.define('shelf-piece', ShelfPiece);
