import { bedOf } from './plan.js';

/** What is on show whichever places are open: the yard, the slip and what is in the way. */
const ALWAYS = ['ground', 'searches', 'slip', 'snags', 'yard'];

/** Which parts of the job sheet are on show: nothing else is asked for. Fires `change`. */
export class ShownParts extends EventTarget {
  #wanted = [];
  #bed = null;
  #lifted = false;

  /** A place that is open shows these; `beds` is the one in hand. @param {string[]} names @returns {() => void} ends it */
  want(names) {
    this.#wanted.push(names);
    this.#tell();
    return () => { this.#wanted.splice(this.#wanted.indexOf(names), 1); };
  }

  /** @param {string | null} bed in hand @param {boolean} [lifted] whether one of its courses is lifted out in the yard */
  take(bed, lifted = false) {
    if (bed === this.#bed && lifted === this.#lifted) return;
    this.#bed = bed;
    this.#lifted = lifted;
    this.#tell();
  }

  /** @returns {{parts: string[], bed?: string}} */
  get asked() { return this.#ask(this.#bed); }

  /** With what is saved: a bed that is only tried is not in it, and would have it refused. @returns {{parts: string[], bed?: string}} */
  askedOf(plan) { return this.#ask(this.#bed !== null && bedOf(plan, this.#bed) ? this.#bed : null); }

  #ask(bed) { return asking(new Set([...ALWAYS, ...this.#wanted.flat(), ...this.#lifted ? ['beds'] : []]), bed); }

  /** What of these a sheet does not have. @param {string[]} names @returns {{parts: string[], bed?: string}} */
  lackedBy(sheet, names = this.asked.parts) {
    return asking(new Set(names.filter(name => (name === 'beds' ? !sheet.beds?.some(bed => String(bed.id) === this.#bed) : !(name in sheet)))), this.#bed);
  }

  #tell() { this.dispatchEvent(new Event('change')); }
}

/** Of the beds only the one in hand is asked for. */
function asking(names, bed) {
  if (bed === null) names.delete('beds');
  return { parts: [...names].sort(), ...(names.has('beds') ? { bed } : {}) };
}
