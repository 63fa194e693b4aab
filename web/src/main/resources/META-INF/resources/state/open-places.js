const KEPT = 'lapyard.open';

/**
 * Which place lies open. Every table remembers the place that was open at it last. Kept in the browser. Fires `change`.
 */
export class OpenPlaces extends EventTarget {
  #places;
  #storage;
  #shown;
  #last;

  /**
   * @param {{key: string, table?: string}[]} places in their order
   * @param {Storage} storage
   * @param {string | null} first the place that is open until somebody decides otherwise
   * @param {Object<string, string>} begins the place with which a table begins, where that is not its first
   */
  constructor(places, storage, first = null, begins = {}) {
    super();
    this.#places = places;
    this.#storage = storage;
    const { shown = first, last = begins } = this.#remembered();
    this.#shown = this.#place(shown) ? shown : null;
    this.#last = last;
  }

  #remembered() {
    try {
      return JSON.parse(this.#storage.getItem(KEPT)) ?? {};
    } catch {
      return {};
    }
  }

  #place(key) { return this.#places.find(place => place.key === key) ?? null; }

  /** All places, in their order. */
  get all() { return this.#places; }

  /** The key of the place that lies open, null where the yard has all the room. */
  get shown() { return this.#shown; }

  /** The table whose place lies open. */
  get table() { return this.#place(this.#shown)?.table ?? null; }

  open(key) {
    const place = this.#place(key);
    if (!place || this.#shown === key) return;
    if (place.table) this.#last = { ...this.#last, [place.table]: key };
    this.#now(key);
  }

  /** Opens the place that was open last at a table, its first one before that; closes it where it is open. */
  openTable(table) {
    if (this.table === table) return this.close();
    const last = this.#place(this.#last[table]);
    return this.open(last?.table === table ? last.key : this.#places.find(place => place.table === table)?.key);
  }

  close() { if (this.#shown !== null) this.#now(null); }

  #now(shown) {
    this.#shown = shown;
    try {
      this.#storage.setItem(KEPT, JSON.stringify({ shown, last: this.#last }));
    } catch {
      this.#storage.removeItem(KEPT);
    }
    this.dispatchEvent(new Event('change'));
  }
}
