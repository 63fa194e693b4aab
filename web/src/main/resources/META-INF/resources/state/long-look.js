/** Which plans of a job sheet might be cheaper: nothing is proved of them. @returns {{of: string, best: string, bound: string}[]} */
export const unproved = sheet => (sheet?.searches ?? [])
  .filter(({ proven }) => !proven)
  .map(({ of, cost, lowerBound }) => ({ of, best: String(cost), bound: String(lowerBound) }));

/** What a plan's amounts count where it has no price: `boards` or `m`. @returns {string | null} */
export const countedIn = (sheet, of) => sheet?.searches?.find(one => one.of === of)?.unit ?? null;

const PAUSE_MS = 400;
const SECONDS = 60;

/**
 * A look at a garden as it stands; nothing is kept: a longer one for cheaper plans, or a question about its sizes or its
 * yard. `result` is what the server answered; `standing` is `none`, `looking`, `ended` or
 * `failed`. Fires `change`.
 */
export class LongLook extends EventTarget {
  #api;
  #pause;
  #kind;
  #seconds;
  #id = null;
  #turn = 0;

  /** @param {'garden'|'sizes'|'lay-out'} [kind] what is looked for */
  constructor(api, pause = ms => new Promise(resolve => { setTimeout(resolve, ms); }), kind = 'garden', seconds = SECONDS) {
    super();
    this.#api = api;
    this.#pause = pause;
    this.#kind = kind;
    this.#seconds = seconds;
    this.#clear();
  }

  #clear() {
    this.standing = 'none';
    this.plan = null;
    this.progress = [];
    this.asked = 0;
    this.seconds = 0;
    this.result = null;
    this.stopped = false;
    this.problem = null;
    this.shown = null;
  }

  /** Which entry of the result is looked at, null for none. */
  show(shown) {
    this.shown = shown;
    this.#stand(this.standing);
  }

  /** @param {object} plan the garden to look at; of another begun meanwhile this one is forgotten; @param {number} [seconds] other than usual */
  async begin(plan, seconds = this.#seconds) {
    this.forget();
    const turn = ++this.#turn;
    this.plan = plan;
    this.asked = seconds;
    this.#stand('looking');
    try {
      let told = await this.#api.beginSolve(this.#kind, this.#kind === 'garden' ? { ...plan, search: 'long' } : plan, seconds);
      // let go before it had begun
      if (turn !== this.#turn) return await this.#api.stopSolve(told.id);
      this.#id = told.id;
      while (turn === this.#turn && (told.state === 'waiting' || told.state === 'running')) {
        this.progress = told.progress;
        this.seconds = told.seconds;
        this.#stand('looking');
        await this.#pause(PAUSE_MS);
        told = await this.#api.solve(told.id);
      }
      if (turn !== this.#turn) return;
      this.progress = told.progress;
      this.seconds = told.seconds;
      this.stopped = told.state === 'stopped';
      this.result = told.result ?? null;
      this.problem = told.problem?.detail ?? told.problem?.title ?? null;
      this.#stand(told.problem ? 'failed' : 'ended');
    } catch (problem) {
      if (turn !== this.#turn) return;
      this.problem = problem.message;
      this.#stand('failed');
    }
  }

  /** What was found by then is told. */
  async stop() {
    if (this.standing !== 'looking' || !this.#id) return;
    await this.#api.stopSolve(this.#id).catch(() => {});
  }

  /** Stops it where it still looks, and what it found is let go. */
  forget() {
    if (this.standing === 'none') return;
    this.stop();
    this.#turn++;
    this.#id = null;
    this.#clear();
    this.#stand('none');
  }

  #stand(standing) {
    this.standing = standing;
    this.dispatchEvent(new Event('change'));
  }
}
