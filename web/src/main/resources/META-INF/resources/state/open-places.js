/** How many places each side of the yard holds: four at once, and the yard between them. */
export const ROOM = { lee: 2, strip: 1, foot: 1 };

const KEPT = 'lapyard.places';

/**
 * Which places lie open. Each belongs to one side of the yard; where a side is full, the place that was opened longest
 * ago makes room. A bed in hand takes one of the lee's rooms for its tag. Kept in the browser. Fires `change`.
 */
export class OpenPlaces extends EventTarget {
  #places;
  #storage;
  #open;

  /** @param {{key: string, side: string, first?: boolean}[]} places in their order @param {Storage} storage */
  constructor(places, storage) {
    super();
    this.#places = places;
    this.#storage = storage;
    this.#open = this.#remembered() ?? places.filter(place => place.first).map(place => place.key);
  }

  #remembered() {
    try {
      const keys = JSON.parse(this.#storage.getItem(KEPT));
      return Array.isArray(keys) ? keys.filter(key => this.#place(key)) : null;
    } catch {
      return null;
    }
  }

  #place(key) { return this.#places.find(place => place.key === key); }

  isOpen(key) { return this.#open.includes(key); }

  /** The place that was opened last; a narrow screen shows this one alone. */
  get latest() { return this.#open.at(-1) ?? null; }

  /** The places of a side that are shown, in their order. @param {boolean} inHand whether a bed is in hand */
  shown(side, inHand = false) {
    const room = ROOM[side] - (side === 'lee' && inHand ? 1 : 0);
    const ours = this.#open.filter(key => this.#place(key).side === side).slice(-room);
    return this.#places.filter(place => ours.includes(place.key));
  }

  /** Opens a place, or brings one that is open to the fore. */
  open(key) {
    const place = this.#place(key);
    if (!place || this.latest === key) return;
    const others = this.#open.filter(other => other !== key);
    const ours = others.filter(other => this.#place(other).side === place.side);
    const over = new Set(ours.slice(0, Math.max(0, ours.length + 1 - ROOM[place.side])));
    this.#now([...others.filter(other => !over.has(other)), key]);
  }

  putAway(key) {
    if (this.isOpen(key)) this.#now(this.#open.filter(other => other !== key));
  }

  #now(open) {
    this.#open = open;
    try {
      this.#storage.setItem(KEPT, JSON.stringify(open));
    } catch {
      this.#storage.removeItem(KEPT);
    }
    this.dispatchEvent(new Event('change'));
  }
}
