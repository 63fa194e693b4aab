/**
 * The job sheet of the stored plan, and the slip as it stood before. `standing` is `none`, `reckoning`, `ordered`
 * (slip and snags are those of the stored plan, all else comes), `fresh` or `away`. Fires `change`.
 */
export class Reckoning extends EventTarget {
  #api;
  #id;
  #turn = 0;

  constructor(api, id) {
    super();
    this.#api = api;
    this.#id = id;
    this.sheet = null;
    this.before = null;
    this.standing = 'none';
    /** The sheet of the garden as it stands while something else is tried, else null. */
    this.stands = null;
    /** Why what is tried has no sheet. */
    this.refused = [];
  }

  /** Fetches the sheet; of several at once only the last counts. */
  async fetch() {
    if (this.stands) return;
    const before = this.sheet ? this.sheet.slip ?? null : this.before;
    await this.#bring('reckoning', () => this.#api.jobSheet(this.#id), () => before);
  }

  /** Slip and snags came with what was saved: they are shown, then the rest is fetched. @param {{slip: object, snags: object[], caution?: string}} order */
  async ordered({ slip, snags, caution }) {
    if (this.stands) {
      this.stands = { ...this.stands, slip, snags, caution };
      return;
    }
    const before = this.sheet?.slip ?? null;
    this.before = before;
    this.sheet = { ...this.sheet, slip, snags, caution };
    await this.#bring('ordered', () => this.#api.jobSheet(this.#id), () => before);
  }

  /** Whether slip and snags are those of the stored plan. */
  get isOrdered() { return this.standing === 'fresh' || this.standing === 'ordered'; }

  async #bring(meanwhile, ask, before) {
    const turn = ++this.#turn;
    this.#stand(meanwhile);
    try {
      const sheet = await ask();
      if (turn !== this.#turn) return;
      this.before = before();
      this.sheet = sheet;
      this.refused = [];
      this.#stand('fresh');
    } catch (problem) {
      if (turn !== this.#turn) return;
      this.refused = this.stands && problem.status ? problem.snags : [];
      this.#stand('away');
    }
  }

  /** The sheet of a plan that is only tried; `before` is the slip as the garden stands. */
  async tryOut(plan) {
    this.stands ??= this.sheet;
    await this.#bring('reckoning', () => this.#api.jobSheetOf(plan), () => this.stands?.slip ?? null);
  }

  /** Nothing is tried any more: the garden's own sheet stands, until another comes. */
  letGo() {
    this.#turn++;
    this.sheet = this.stands;
    this.before = null;
    this.stands = null;
    this.refused = [];
    this.#stand('fresh');
  }

  /** The sheet came with what was saved. */
  fresh(sheet) {
    if (this.stands) {
      this.stands = sheet;
      return;
    }
    this.#turn++;
    if (this.sheet) this.before = this.sheet.slip ?? null;
    this.sheet = sheet;
    this.#stand('fresh');
  }

  /** The sheet as it was kept when there was a signal. */
  standsAt(sheet) {
    this.sheet = sheet;
    this.#stand('away');
  }

  /** The bed's part of the sheet. */
  bed(id) { return this.sheet?.beds?.find(bed => String(bed.id) === id) ?? null; }

  #stand(standing) {
    this.standing = standing;
    this.dispatchEvent(new Event('change'));
  }
}
