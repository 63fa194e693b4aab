import { word } from './fields.js';

/** How far a job has come, as the document says it, with what is shown. */
export const STATES = [['pencilled', 'Pencilled'], ['quoted', 'Quoted'], ['ordered', 'Ordered'], ['building', 'Building'], ['done', 'Done']];

/** @param {object} plan */
export const stateOf = plan => plan.state ?? STATES[0][0];

/** @type {(state: string) => (plan: object) => object} a state of {@link STATES} */
export const setState = word('state', STATES[0][0]);

/**
 * The gardens of the store as far as they were asked for: a page of those that are found, and more on request. Without
 * signal those that were open last. Fires `change`.
 */
export class Gardens extends EventTarget {
  #api;
  #last;
  #next = null;
  #asking = null;

  /** True until what was asked for is there. */
  get looking() { return this.#asking !== null; }

  /**
   * @param {{gardens: Function, pageAfter: Function}} api
   * @param {import('./last-garden.js').LastGardens} last
   */
  constructor(api, last) {
    super();
    this.#api = api;
    this.#last = last;
    /** Words of name or client; a state, `archived`, `deleted` or empty for all at work; the order. */
    this.asked = { find: '', which: '', order: 'changed' };
    /** @type {{id: string, name: string, client?: string, state?: string, changed?: string}[]} */
    this.rows = [];
    this.total = 0;
    this.wrong = null;
  }

  /** Asks for other gardens; of several askings the last one counts. */
  async ask(asked = {}) {
    this.asked = { ...this.asked, ...asked };
    await this.#take(() => this.#api.gardens(this.asked), page => page.gardens);
  }

  /** The page after. */
  async more() {
    if (this.#next) await this.#take(() => this.#api.pageAfter(this.#next), page => [...this.rows, ...page.gardens]);
  }

  async #take(fetch, rowsOf) {
    const asking = fetch();
    this.#asking = asking;
    this.wrong = null;
    try {
      const page = await asking;
      if (asking !== this.#asking) return;
      this.rows = rowsOf(page);
      this.total = page.total;
      this.#next = page.next ?? null;
    } catch (problem) {
      if (asking !== this.#asking) return;
      const kept = problem.status ? [] : await this.#last.list();
      this.rows = kept;
      this.total = kept.length;
      this.#next = null;
      this.wrong = problem;
    }
    this.#asking = null;
    this.dispatchEvent(new Event('change'));
  }
}
