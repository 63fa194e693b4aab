/**
 * What the gardener has before them: the bed taken hold of, the course lifted out, the snag whose thread is drawn,
 * the workings that lie open. None of it is saved. Fires `change`.
 */
export class Choice extends EventTarget {
  #bed = null;
  #course = null;
  #snag = null;
  #open = new Set();

  get bed() { return this.#bed; }
  get course() { return this.#course; }
  get snag() { return this.#snag; }

  takeBed(id) {
    if (this.#bed === id) return;
    this.#bed = id;
    this.#course = null;
    this.#fire();
  }

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
