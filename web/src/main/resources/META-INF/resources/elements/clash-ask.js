import { toldApart } from '../state/merge.js';
import { GardenElement, h, row, table } from './make.js';

/** clash-ask: two people changed the same thing. Shows both and asks; fires `start-garden` where mine is kept as a copy. */
export class ClashAsk extends GardenElement {
  follows = ['keeper'];

  render() {
    const { clash } = this.garden.keeper;
    if (!clash) return this.replaceChildren();
    if (this.querySelector('dialog')) return undefined;
    const dialog = h('dialog', { 'aria-labelledby': 'clash-title', oncancel: event => event.preventDefault() },
      h('h2', { id: 'clash-title' }, 'Changed in two places'),
      h('p', {}, 'While you worked, someone else saved this garden. These do not go together:'),
      h('div.both', { tabindex: 0, role: 'group', 'aria-label': 'Both versions' }, table(['Where', 'Yours', 'Theirs'],
        toldApart(clash.clashes).map(({ where, mine, theirs }) => row(where, [mine, theirs])))),
      h('div.verbs', {},
        h('button.main', { type: 'button', onclick: () => this.#settle('mine') }, 'Keep yours'),
        h('button', { type: 'button', onclick: () => this.#settle('theirs') }, 'Take theirs'),
        h('button', { type: 'button', onclick: () => this.#both(clash.mine) }, 'Take theirs, keep yours as a copy')));
    this.replaceChildren(dialog);
    dialog.showModal();
    return undefined;
  }

  #settle(whose) {
    this.querySelector('dialog').close();
    this.replaceChildren();
    this.garden.settle(whose);
    this.say(whose === 'mine' ? 'Yours is kept.' : 'Theirs is taken.');
  }

  #both(mine) {
    const copy = { ...mine, name: `${mine.name || 'Garden'}, your version` };
    this.dispatchEvent(new CustomEvent('start-garden', { detail: copy, bubbles: true }));
    this.#settle('theirs');
  }
}

customElements.define('clash-ask', ClashAsk);
