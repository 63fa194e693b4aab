/**
 * What the gardener has before them: the beds taken hold of, the course lifted out, the snag whose thread is drawn,
 * the workings that lie open. None of it is saved. Fires `change`.
 */
export class Choice extends EventTarget {
  #beds = [];
  #course = null;
  #thing = null;
  #snag = null;
  #open = new Set();

  /** The bed in hand; null where none is, or several are. */
  get bed() { return this.#beds.length === 1 ? this.#beds[0] : null; }

  /** All beds in hand, in the order they were taken. */
  get beds() { return this.#beds; }

  get course() { return this.#course; }
  get snag() { return this.#snag; }

  /** What of the ground is in hand, as its path in the document: a path, a gate, a tap, a tree. @type {(string|number)[] | null} */
  get thing() { return this.#thing; }

  /** Takes hold of something in the ground, and lets go of all beds. */
  takeThing(thing) {
    if (JSON.stringify(thing) === JSON.stringify(this.#thing)) return;
    this.#thing = thing;
    if (thing) {
      this.#beds = [];
      this.#course = null;
    }
    this.#fire();
  }

  has(id) { return this.#beds.includes(id); }

  takeBed(id) { this.takeBeds(id === null ? [] : [id]); }

  takeBeds(ids) {
    const beds = [...new Set(ids)];
    if (beds.length === this.#beds.length && beds.every((id, i) => id === this.#beds[i])) return;
    this.#beds = beds;
    if (beds.length) this.#thing = null;
    this.#course = null;
    this.#fire();
  }

  takeNothing() {
    this.takeThing(null);
    this.takeBeds([]);
  }

  /** Takes one more, or lets go of it. */
  alsoTake(id) { this.takeBeds(this.has(id) ? this.#beds.filter(one => one !== id) : [...this.#beds, id]); }

  /** One ring alone, or null for the whole bed. */
  liftCourse(number) {
    if (this.#course === number) return;
    this.#course = number;
    this.#fire();
  }

  /** @param {object | null} snag as the job sheet gives it */
  pointAt(snag) {
    if (this.#snag === snag) return;
    this.#snag = snag;
    this.#fire();
  }

  isOpen(key) { return this.#open.has(key); }

  unfold(key, open) {
    if (open) this.#open.add(key);
    else this.#open.delete(key);
  }

  #fire() { this.dispatchEvent(new Event('change')); }
}
