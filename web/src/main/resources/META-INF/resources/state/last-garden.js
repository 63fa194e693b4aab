const CACHE = 'lapyard-gardens';

/** A large garden takes its time to be written: not while somebody is at it. Milliseconds. */
const QUIET = 600;

/** So many gardens are kept, those that were open last. */
const MOST = 5;

const addressOf = id => `kept/${encodeURIComponent(id)}`;

/**
 * The gardens that were open last, each as the store last gave it, with its job sheet: so that they open where there is no
 * signal. Where the browser keeps nothing, as on a plain address that is not its own machine, nothing is kept.
 */
export class LastGardens {
  #caches;

  /** @param {CacheStorage | undefined} caches */
  constructor(caches) { this.#caches = caches; }

  /** Keeps it once nothing newer of it came for a while. */
  soon(garden) {
    if (this.#waits) {
      clearTimeout(this.#waits.timer);
      if (this.#waits.id !== garden.id) this.keep(this.#waits.garden);
    }
    this.#waits = { id: garden.id, garden, timer: setTimeout(() => { this.#waits = null; this.keep(garden); }, QUIET) };
  }

  #waits = null;

  /** @param {{id: string, plan: object, revision: string, sheet: object}} garden */
  async keep(garden) {
    if (!this.#caches) return;
    try {
      const cache = await this.#caches.open(CACHE);
      await cache.delete(addressOf(garden.id));
      await cache.put(addressOf(garden.id), new Response(JSON.stringify(garden), { headers: { 'content-type': 'application/json' } }));
      const all = await cache.keys();
      for (const one of all.slice(0, Math.max(0, all.length - MOST))) await cache.delete(one);
    } catch {
      // a browser without room keeps less, and says so where it matters: at what waits to be saved
    }
  }

  /** @returns {Promise<{id: string, plan: object, revision: string, sheet: object} | null>} */
  async of(id) {
    const kept = await this.#all();
    return kept.find(garden => garden.id === id) ?? null;
  }

  /** @returns {Promise<{id: string, name: string}[]>} the latest first */
  async list() { return (await this.#all()).reverse().map(({ id, plan }) => ({ id, name: plan.name ?? '' })); }

  async #all() {
    if (!this.#caches) return [];
    try {
      const cache = await this.#caches.open(CACHE);
      const answers = await Promise.all((await cache.keys()).map(request => cache.match(request)));
      return await Promise.all(answers.filter(Boolean).map(answer => answer.json()));
    } catch {
      return [];
    }
  }
}
