import { millimetres, readLengths, shown } from '../geometry/length.js';
import { custom, h } from './make.js';

let count = 0;

/**
 * length-field: a length as a notebook holds it. Set before attaching: `label`, `units`, `check` (mm => sentence or
 * null), optionally `mm`, `hint`, `many` (takes `2400 x 1200` and hands on the second). Shows the millimetres while
 * typing and the error at the field. Fires `length` (detail: `{mm, more}`) when a good length is left or entered.
 */
export class LengthField extends HTMLElement {
  #input;
  #label;
  #note;
  #written = null;

  connectedCallback() {
    if (this.#input) return;
    const id = `length-${++count}`;
    this.#input = h('input', {
      id, type: 'text', inputmode: 'text', autocomplete: 'off', spellcheck: 'false', maxlength: 60, 'aria-describedby': `${id}-note`,
      'data-key': this.key ?? id, oninput: () => this.#look(), onchange: () => this.#commit(),
    });
    this.#note = h('output.note', { id: `${id}-note`, for: id });
    this.#label = h('label', { for: id }, this.label);
    this.replaceChildren(this.#label, this.#input, this.#note);
    if (this.mm !== undefined) this.show(this.mm);
    else this.#rest();
  }

  /** The good length that stands in the field, else null. */
  get length() {
    const read = this.#read();
    return read.error ? null : read.mm;
  }

  get input() { return this.#input; }

  /** Becomes what another field was made to be; what is being typed stays. */
  takeOver(fresh) {
    const { mm, ...parts } = fresh;
    Object.assign(this, parts);
    if (!this.#input) return;
    this.#label.textContent = this.label;
    this.#input.dataset.key = this.key;
    if (mm !== undefined) this.show(mm);
  }

  /** Shows a length unless it is being typed, or the entry is wrong and still to be mended. */
  show(mm) {
    if (this.#input?.hasAttribute('aria-invalid') && this.mm === mm) return;
    this.mm = mm;
    if (!this.#input || (document.activeElement === this.#input && this.#input.value !== this.#written)) return;
    this.#written = shown(mm, this.units);
    this.#input.value = this.#written;
    this.#rest();
  }

  /** Marks the field with an error that was found elsewhere, or looks again. @returns {boolean} whether it is good */
  confirm() {
    const read = this.#read();
    this.#mark(read.error ?? null, read.error ? read.error : this.#equals(read.mm));
    return !read.error;
  }

  #read() {
    const read = readLengths(this.#input.value);
    if (read.error) return read;
    if (read.mm.length > (this.many ? 2 : 1)) {
      return { error: `${read.mm.length} lengths stand here, ${this.many ? '2 at most' : 'one'} is wanted: write ${read.mm[0]}.` };
    }
    const wrong = this.check?.(read.mm[0]) ?? null;
    return wrong ? { error: wrong } : { mm: read.mm[0], more: read.mm[1] };
  }

  #look() {
    const read = this.#read();
    if (this.#input.value.trim() === '') this.#rest();
    else this.#mark(read.error ?? null, read.error ?? this.#equals(read.mm, read.more));
  }

  #commit() {
    const read = this.#read();
    this.#mark(read.error ?? null, read.error ?? this.#equals(read.mm, read.more));
    if (read.error) return;
    this.mm = read.mm;
    this.#written = this.#input.value;
    this.dispatchEvent(new CustomEvent('length', { detail: { mm: read.mm, more: read.more }, bubbles: true }));
  }

  #equals(mm, more) { return `= ${millimetres(mm)}${more === undefined ? '' : ` x ${millimetres(more)}`} mm`; }

  /** At rest the millimetres are told only where the entry does not say them already. */
  #rest() {
    const plain = this.mm === undefined || this.#input.value === millimetres(this.mm);
    this.#mark(null, this.#input.value && !plain ? this.#equals(this.mm) : this.hint ?? '');
  }

  #mark(error, text) {
    this.#input.toggleAttribute('aria-invalid', false);
    if (error) this.#input.setAttribute('aria-invalid', 'true');
    this.#note.classList.toggle('wrong', Boolean(error));
    this.#note.textContent = text;
  }
}

customElements.define('length-field', LengthField);

/** @param {object} parts see LengthField; `onlength` listens */
export function lengthField(parts) {
  return custom('length-field', parts);
}
