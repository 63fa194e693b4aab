import { custom, h } from './make.js';

let count = 0;

/**
 * count-field: a whole number, a turn or a short text. Set `label`, `read` (text => {value} or {error}) and, where
 * there is one, `value`. Shows the error at the field. Fires `count` (detail: value) when a good entry is left.
 */
export class CountField extends HTMLElement {
  #input;
  #label;
  #note;
  #written = null;

  connectedCallback() {
    if (this.#input) return;
    const id = `count-${++count}`;
    this.#input = h('input', {
      id, type: 'text', inputmode: this.mode ?? 'numeric', autocomplete: 'off', 'aria-describedby': `${id}-note`,
      'data-key': this.key ?? id, oninput: () => this.confirm(), onchange: () => this.#commit(),
    });
    this.#note = h('output.note', { id: `${id}-note`, for: id });
    this.#label = h('label', { for: id }, this.label);
    this.replaceChildren(this.#label, this.#input, this.#note);
    if (this.value !== undefined) this.show(this.value);
    else this.#note.textContent = this.hint ?? '';
  }

  get input() { return this.#input; }

  get entry() {
    const read = this.read(this.#input.value);
    return read.error ? null : read.value;
  }

  /** Becomes what another field was made to be; what is being typed stays. */
  takeOver(fresh) {
    const { value, ...parts } = fresh;
    Object.assign(this, parts);
    if (!this.#input) return;
    this.#label.textContent = this.label;
    this.#input.dataset.key = this.key;
    if (value !== undefined) this.show(value);
  }

  show(value) {
    if (this.#input?.hasAttribute('aria-invalid') && this.value === value) return;
    this.value = value;
    if (!this.#input || (document.activeElement === this.#input && this.#input.value !== this.#written)) return;
    this.#written = String(value);
    this.#input.value = this.#written;
    this.#mark(null);
  }

  /** @returns {boolean} whether the entry is good; marks the field where not */
  confirm() {
    const read = this.read(this.#input.value);
    this.#mark(read.error ?? null);
    return !read.error;
  }

  #commit() {
    if (!this.confirm()) return;
    this.#written = this.#input.value;
    this.dispatchEvent(new CustomEvent('count', { detail: this.entry, bubbles: true }));
  }

  #mark(error) {
    this.#input.removeAttribute('aria-invalid');
    if (error) this.#input.setAttribute('aria-invalid', 'true');
    this.#note.classList.toggle('wrong', Boolean(error));
    this.#note.textContent = error ?? this.hint ?? '';
  }
}

customElements.define('count-field', CountField);

/** @param {object} parts see CountField; `oncount` listens */
export function countField(parts) {
  return custom('count-field', parts);
}
