import { millimetres, readLengths, shown } from '../geometry/length.js';
import { EntryField } from './entry-field.js';
import { custom } from './make.js';

/**
 * length-field: a length as a notebook holds it. Set also: `units`, `check` (mm => sentence or null), optionally `mm`, `many`
 * (takes `2400 x 1200` and hands on the second). Shows the millimetres while typing. Fires `length` (detail: `{mm, more}`)
 * when a good length is left or entered.
 */
export class LengthField extends EntryField {
  get holds() { return 'mm'; }

  get traits() { return { inputmode: 'text', spellcheck: 'false', maxlength: 60 }; }

  /** The good length that stands in the field, else null. */
  get length() {
    const read = this.look();
    return read.error ? null : read.mm;
  }

  written(mm) { return shown(mm, this.units); }

  look() {
    const read = readLengths(this.input.value, this.units);
    if (read.error) return read;
    if (read.mm.length > (this.many ? 2 : 1)) {
      return { error: `${read.mm.length} lengths are written here, and ${this.many ? '2 at most are' : 'one is'} wanted: write ${this.written(read.mm[0])}.` };
    }
    const wrong = this.check?.(read.mm[0]) ?? null;
    return wrong ? { error: wrong } : { mm: read.mm[0], more: read.mm[1] };
  }

  said({ mm, more }) { return `= ${millimetres(mm)}${more === undefined ? '' : ` x ${millimetres(more)}`} mm`; }

  typed() { this.input.value.trim() === '' ? this.rest() : this.confirm(); }

  /** At rest the millimetres are told only where the entry does not say them already. */
  rest() {
    const plain = this.mm === undefined || this.input.value === millimetres(this.mm);
    this.mark(null, this.input.value && !plain ? this.said({ mm: this.mm }) : this.hint ?? '');
  }

  handOn({ mm, more }) {
    this.mm = mm;
    this.dispatchEvent(new CustomEvent('length', { detail: { mm, more }, bubbles: true }));
  }
}

customElements.define('length-field', LengthField);

/** @param {object} parts see LengthField; `onlength` listens */
export const lengthField = parts => custom('length-field', parts);
