import { arithmetic, roundedWithUnit } from '../state/working.js';
import { h } from './make.js';

/**
 * shown-number: a number that unfolds its working when pressed. Set `key`, `value`, `unit`, `working`, `choice` and,
 * where the number reads otherwise than value and unit, `text`; `name` says what number it is.
 */
export class ShownNumber extends HTMLElement {
  connectedCallback() {
    const text = this.text ?? roundedWithUnit(this.value, this.unit);
    if (!this.working) {
      this.replaceChildren(text);
      return;
    }
    this.#button = h('button.number', {
      type: 'button', 'aria-expanded': 'false', 'data-key': `number ${this.key}`,
      'aria-label': `${this.name ? `${this.name}: ` : ''}${text}, show the working`, onclick: this.#press,
    }, text);
    this.replaceChildren(this.#button);
    this.#fold(this.choice.isOpen(this.key));
  }

  #button;

  #press = () => {
    const open = this.#button.getAttribute('aria-expanded') !== 'true';
    this.choice.unfold(this.key, open);
    this.#fold(open);
  };

  #fold(open) {
    this.#button.setAttribute('aria-expanded', String(open));
    this.querySelector('.working')?.remove();
    if (!open) return;
    const { lines, words, inputs, source } = arithmetic(this.working, this.value, this.unit);
    this.append(h('div.working', {},
      ...lines.map(line => h('p.line', {}, line)),
      words ? h('p.words', {}, words) : null,
      inputs.length ? h('p.inputs', {}, inputs.join(' · ')) : null,
      source ? h('p.source', {}, `Source: ${source}`) : null));
  }
}

customElements.define('shown-number', ShownNumber);

/** @param {object} choice see state/choice.js */
export function shownNumber(choice, key, { value, unit, working, text, name }) {
  return Object.assign(document.createElement('shown-number'), { choice, key, value, unit, working, text, name });
}
