import { EntryField } from './entry-field.js';
import { custom } from './make.js';

/**
 * count-field: a whole number, a turn or a short text. Set also: `read` (text => {value} or {error}), optionally `value` and
 * `mode` of a phone's keys. Fires `count` (detail: value) when a good entry is left.
 */
export class CountField extends EntryField {
  get holds() { return 'value'; }

  get traits() { return { inputmode: this.mode ?? 'numeric' }; }

  get entry() {
    const read = this.look();
    return read.error ? null : read.value;
  }

  written(value) { return String(value); }

  look() { return this.read(this.input.value); }

  said() { return this.hint ?? ''; }

  typed() { this.confirm(); }

  rest() { this.mark(null, this.said()); }

  handOn({ value }) { this.dispatchEvent(new CustomEvent('count', { detail: value, bubbles: true })); }
}

customElements.define('count-field', CountField);

/** @param {object} parts see CountField; `oncount` listens */
export const countField = parts => custom('count-field', parts);
