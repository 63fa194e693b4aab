const KEPT = 'lapyard.deleted';

/** So many deleted gardens are remembered, the latest. */
const MOST = 20;

/** The gardens that were deleted from this browser, so that they can be brought back; the store keeps their history. */
export class Deleted {
  #storage;

  /** @param {Storage} storage */
  constructor(storage) { this.#storage = storage; }

  /** @returns {{id: string, name: string, deleted: string}[]} the latest first */
  all() {
    try {
      const all = JSON.parse(this.#storage.getItem(KEPT));
      return Array.isArray(all) ? all : [];
    } catch {
      return [];
    }
  }

  /** @param {{id: string, name: string}} garden @param {string} [at] when, ISO 8601 */
  add(garden, at = new Date().toISOString()) { this.#keep([{ ...garden, deleted: at }, ...this.all().filter(one => one.id !== garden.id)].slice(0, MOST)); }

  drop(id) { this.#keep(this.all().filter(one => one.id !== id)); }

  #keep(all) {
    try {
      this.#storage.setItem(KEPT, JSON.stringify(all));
    } catch {
      this.#storage.removeItem(KEPT);
    }
  }
}
