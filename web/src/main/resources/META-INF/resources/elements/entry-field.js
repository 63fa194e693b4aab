import { h } from './make.js';

let count = 0;

/**
 * A field with its label and, below it, what is wrong with the entry or what it comes to. Set before attaching: `label`,
 * `key`, optionally `hint` and what it holds. What is being typed, and an entry that is wrong, stay when it is drawn anew.
 */
export class EntryField extends HTMLElement {
  #label;
  #note;
  #written = null;

  connectedCallback() {
    if (this.input) return;
    const id = `${this.localName}-${++count}`;
    this.input = h('input', { id, type: 'text', autocomplete: 'off', 'aria-describedby': `${id}-note`, 'data-key': this.key ?? id,
      ...this.traits, oninput: () => this.typed(), onchange: () => this.#commit() });
    this.#note = h('output.note', { id: `${id}-note`, for: id });
    this.#label = h('label', { for: id }, this.label);
    this.replaceChildren(this.#label, this.input, this.#note);
    if (this[this.holds] !== undefined) this.show(this[this.holds]);
    else this.rest();
  }

  /** Becomes what another field was made to be. */
  takeOver(fresh) {
    const { [this.holds]: held, ...parts } = fresh;
    Object.assign(this, parts);
    if (!this.input) return;
    this.#label.textContent = this.label;
    this.input.dataset.key = this.key;
    if (held !== undefined) this.show(held);
  }

  show(held) {
    if (this.input?.hasAttribute('aria-invalid') && this[this.holds] === held) return;
    this[this.holds] = held;
    if (!this.input || (document.activeElement === this.input && this.input.value !== this.#written)) return;
    this.input.value = this.#written = this.written(held);
    this.rest();
  }

  /** Looks again and marks the field where it is wrong. @returns {boolean} whether the entry is good */
  confirm() {
    const read = this.look();
    this.mark(read.error ?? null, read.error ?? this.said(read));
    return !read.error;
  }

  #commit() {
    if (!this.confirm()) return;
    this.#written = this.input.value;
    this.handOn(this.look());
  }

  mark(error, text) {
    this.input.removeAttribute('aria-invalid');
    if (error) this.input.setAttribute('aria-invalid', 'true');
    this.#note.classList.toggle('wrong', Boolean(error));
    this.#note.textContent = text;
  }
}
