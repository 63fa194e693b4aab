import { arithmetic, labelOf, roundedWithUnit } from '../state/working.js';
import { custom, h } from './make.js';
import { patch } from './patch.js';

/**
 * shown-number: a number that unfolds its working when pressed. Set `key`, `value`, `unit`, `units`, `working`, `choice` and,
 * where the number reads otherwise than value and unit, `text`; `name` says what number it is.
 */
export class ShownNumber extends HTMLElement {
  connectedCallback() { this.#draw(); }

  /** Becomes what another number was made to be. */
  takeOver(fresh) {
    Object.assign(this, { text: undefined, working: undefined, name: undefined }, fresh);
    if (this.isConnected) this.#draw();
  }

  #draw() {
    const text = this.text ?? roundedWithUnit(this.value, this.unit, this.units);
    if (!this.working) {
      patch(this, [text]);
      return;
    }
    const open = this.choice.isOpen(this.key);
    patch(this, [h('button.number', {
      type: 'button', 'aria-expanded': String(open), 'data-key': `number ${this.key}`,
      'aria-label': `${this.name ? `${this.name}: ` : ''}${text}, show the working`, onclick: this.#press,
    }, text), open ? this.#unfolded() : null]);
  }

  #press = () => {
    this.choice.unfold(this.key, !this.choice.isOpen(this.key));
    this.#draw();
  };

  #unfolded() {
    const { lines, words, inputs, source } = arithmetic(this.working, this.value, this.unit, this.units);
    return h('div.working', {},
      ...lines.map(line => h('p.line', {}, line)),
      words ? h('p.words', {}, words) : null,
      inputs.length ? h('p.inputs', {}, inputs.join(' · ')) : null,
      source ? h('p.source', {}, `Source: ${source}`) : null);
  }
}

customElements.define('shown-number', ShownNumber);

/**
 * @param {object} choice see state/choice.js
 * @param {'metric'|'imperial'} [units] in which the garden reads the number
 */
export function shownNumber(choice, key, { value, unit, units, working, text, name }) {
  return custom('shown-number', { choice, key, value, unit, units, working, text, name });
}

/** A quantity of the job sheet as a row of a list: what it is called, and its number. */
export const shownQuantity = (choice, key, quantity, units) => h('div', {}, h('dt', {}, labelOf(quantity.key)),
  h('dd', {}, shownNumber(choice, key, { ...quantity, units, name: labelOf(quantity.key) })));
