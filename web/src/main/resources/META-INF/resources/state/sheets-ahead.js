/** What is wanted on paper or screen where there is no signal: days, course cards, the boards to saw, pegs, what the lorry brings. */
const WANTED = ['weekends.pdf', 'course-cards.pdf', 'saw-day.pdf', 'setting-out.pdf', 'load-in.pdf'];

/** Parts of the job sheet that their places ask for when they are opened. */
const PARTS = ['pegs', 'loads'];

/** Fetched once nobody has changed anything for a while, milliseconds. */
const QUIET = 4000;

/** Sheets and parts of more beds take the server long: they are fetched when they are asked for. */
const MOST_BEDS = 60;

/**
 * Fetches the whole job sheet and the sheets of the open garden ahead, one after the other and once a revision, so that the worker has them when the
 * signal is gone. Without a worker nothing is fetched.
 */
export class SheetsAhead {
  #api;
  #worker;
  #later;
  #waits = null;
  #done = null;

  /**
   * @param {{keepJobSheet: Function, keepSheet: Function, sheets: Function, part: Function}} api
   * @param {() => boolean} worker whether what is fetched is kept
   * @param {(run: () => void, ms: number) => any} [later]
   */
  constructor(api, worker, later = (run, ms) => setTimeout(run, ms)) {
    this.#api = api;
    this.#worker = worker;
    this.#later = later;
  }

  /** Looks after a garden until another is opened. @param {import('./garden.js').Garden} garden */
  follow(garden) {
    this.#garden = garden;
    garden.reckoning.addEventListener('change', () => this.#soon(garden));
    this.#soon(garden);
  }

  #garden = null;

  #isAtRest(garden) {
    return garden === this.#garden && garden.reckoning.standing === 'fresh' && garden.keeper.standing === 'kept' && !garden.trying;
  }

  #soon(garden) {
    if (!this.#isAtRest(garden)) return;
    const turn = this.#waits = {};
    this.#later(() => { if (this.#waits === turn) this.#bring(garden); }, QUIET);
  }

  async #bring(garden) {
    const what = `${garden.id} ${garden.keeper.revision}`;
    if (!this.#isAtRest(garden) || this.#done === what || !this.#worker()) return;
    this.#done = what;
    try {
      await this.#api.keepJobSheet(garden.id);
      if ((garden.plan.beds ?? []).length > MOST_BEDS) return;
      await this.#api.sheets();
      for (const bring of [...PARTS.map(name => () => this.#api.part(garden.id, name)), ...WANTED.map(name => () => this.#api.keepSheet(garden.id, name))]) {
        if (!this.#isAtRest(garden)) return;
        // a sheet for which the garden has too little is no reason to leave out the next
        await bring().catch(problem => { if (!problem.status) throw problem; });
      }
    } catch {
      this.#done = null;
    }
  }
}
