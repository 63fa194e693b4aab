import { WAITS } from './keeper.js';
import { ShownParts } from './shown-parts.js';
import { NOT_YET, withoutServer } from './words.js';

/**
 * The job sheet of the stored plan as far as it is on show, and the slip as it stood before. `standing` is `none`, `reckoning`, `ordered`
 * (slip and snags are those of the stored plan, all else comes), `first` (a first look: it may still improve, and the
 * whole comes), `fresh` or `away`. What did not come is asked for again. Fires `change`.
 */
export class Reckoning extends EventTarget {
  #api;
  #id;
  #wholeAtOnce;
  #later;
  #turn = 0;
  #tries = 0;
  /** Asks for parts of the sheet that stands. */
  #ask;

  /**
   * @param {() => boolean} [wholeAtOnce] whether a sheet is too long to be sent twice
   * @param {(run: () => void, ms: number) => any} [later]
   */
  constructor(api, id, wholeAtOnce = () => false, later = (run, ms) => setTimeout(run, ms)) {
    super();
    this.#api = api;
    this.#id = id;
    this.#wholeAtOnce = wholeAtOnce;
    this.#later = later;
    this.#ask = this.#askStored;
    this.sheet = null;
    this.shown = new ShownParts();
    this.shown.addEventListener('change', () => this.#complete());
    /** Of a whole sheet, never of a first look. */
    this.before = null;
    this.standing = 'none';
    /** Why the sheet, or the whole behind a first look, did not come; empty where the server cannot be reached, null where nothing failed. */
    this.why = null;
    /** The sheet of the garden as it stands while something else is tried, else null. */
    this.stands = null;
    /** Why what is tried has no sheet. */
    this.refused = [];
  }

  /** Whether slip and snags are those of the stored plan. */
  get isOrdered() { return ['fresh', 'first', 'ordered'].includes(this.standing); }

  /** Whether what is shown is a first look, of which nothing is made. */
  get mayImprove() { return Boolean(this.sheet?.look); }

  /** Fetches the sheet; of several at once only the last counts. */
  async fetch() {
    if (!this.stands) await this.#bring('reckoning', this.#askStored, this.#stood());
  }

  /** Slip and snags came with what was saved: they are shown, then the rest is fetched. @param {{look?: string, slip: object, snags: object[], caution?: string}} order */
  async ordered({ look, slip, snags, caution }) {
    if (this.stands) {
      this.stands = { ...this.stands, look, slip, snags, caution };
      this.#wholeBeside();
      return;
    }
    this.before = this.#stood();
    this.sheet = { ...this.sheet, look, slip, snags, caution };
    this.#ask = this.#askStored;
    await this.#bring('ordered', this.#askStored, this.before);
  }

  /** The sheet of a plan that is only tried; `before` is the slip as the garden stands. */
  async tryOut(plan) {
    this.stands ??= this.sheet;
    this.#wholeBeside();
    await this.#bring('reckoning', asked => this.#api.jobSheetOf(plan, asked), this.stands?.slip ?? null);
  }

  /** Nothing is tried any more: the garden's own sheet stands, until another comes. */
  letGo() {
    const turn = ++this.#turn;
    this.before = null;
    const { stands } = this;
    this.stands = null;
    if (stands) this.#take(turn, stands, this.#askStored);
    else this.fetch();
  }

  /** The sheet came with what was saved. */
  fresh(sheet) {
    if (this.stands) {
      this.stands = sheet;
      this.#wholeBeside();
      return;
    }
    const turn = ++this.#turn;
    this.before = this.#stood();
    this.#take(turn, sheet, this.#askStored);
  }

  /** Another garden is opened: nothing is asked for again. */
  close() { this.#turn++; }

  /** The sheet as it was kept when there was a signal. */
  standsAt(sheet) {
    this.sheet = sheet;
    this.#stand('away', '');
  }

  /** All that is known of a bed, null where it did not come. */
  bed(id) { return this.sheet?.beds?.find(bed => String(bed.id) === id) ?? null; }

  #top = new Map();
  #topOf;

  /** The timbers of a bed's top course, for the yard. @returns {number[][][]} */
  top(id) {
    if (this.#topOf !== this.sheet?.yard) {
      this.#topOf = this.sheet?.yard;
      this.#top = new Map((this.#topOf ?? []).map(({ bed, timbers }) => [String(bed), timbers]));
    }
    return this.#top.get(id) ?? [];
  }

  /** Of which sheet and with what a part was asked for by itself, so that what fails is asked for once. */
  #completing = { sheet: null, asked: '' };

  /** Why what a place shows did not come. */
  problem = null;

  /** Brings what is shown and did not come with the sheet: what was opened meanwhile, another bed. */
  async #complete() {
    const { sheet } = this;
    if (!sheet || this.standing === 'reckoning' || this.standing === 'ordered') return;
    const asked = this.shown.lackedBy(sheet);
    const key = JSON.stringify(asked);
    if (!asked.parts.length || this.#completing.sheet === sheet && this.#completing.asked === key) return;
    this.#completing = { sheet, asked: key };
    this.problem = null;
    const ask = this.#ask;
    const turn = this.#turn;
    let more = null;
    try {
      more = await ask(sheet.look ? { ...asked, look: 'first' } : asked).catch(problem => {
        if (problem.status || problem.told || ask !== this.#askStored) throw problem;
        return this.#api.jobSheet(this.#id);
      });
    } catch (problem) {
      this.problem = problem.told ? `${withoutServer(NOT_YET, problem.told)}.` : problem.message;
      if (!problem.status && this.standing === 'fresh') this.#later(() => {
        if (turn !== this.#turn || this.#completing.asked !== key) return;
        this.#completing.sheet = null;
        this.#complete();
      }, WAITS.at(-1));
    }
    if (this.sheet !== sheet) return;
    if (more) {
      for (const part of asked.parts) if (part in more) sheet[part] = part === 'beds' ? [...sheet.beds ?? [], ...more.beds.filter(bed => String(bed.id) === asked.bed)] : more[part];
    }
    this.dispatchEvent(new Event('change'));
    this.#complete();
  }

  /** @param {string[]} names of parts @returns {boolean} whether one of them did not come yet */
  lacks(names) { return !this.sheet || this.shown.lackedBy(this.sheet, names).parts.length > 0; }

  #stood() { return this.sheet && !this.mayImprove ? this.sheet.slip ?? null : this.before; }

  #askStored = asked => this.#api.jobSheet(this.#id, asked);

  async #bring(meanwhile, ask, before) {
    const turn = ++this.#turn;
    this.#stand(meanwhile);
    await this.#asking(turn, ask, before);
  }

  async #asking(turn, ask, before) {
    try {
      const sheet = await ask(this.#wholeAtOnce() ? this.shown.asked : { ...this.shown.asked, look: 'first' });
      if (turn !== this.#turn) return;
      this.before = before;
      await this.#take(turn, sheet, ask);
    } catch (problem) {
      this.#fail(turn, problem, 'away', () => this.#asking(turn, ask, before));
    }
  }

  /** Shows a sheet; a first look until the whole is there. */
  async #take(turn, sheet, ask) {
    this.sheet = sheet;
    this.#ask = ask;
    this.refused = [];
    this.#tries = 0;
    this.#stand(sheet.look ? 'first' : 'fresh');
    if (sheet.look) await this.#whole(turn, ask);
  }

  async #whole(turn, ask) {
    try {
      const whole = await ask(this.shown.asked);
      if (turn !== this.#turn) return;
      this.sheet = whole;
      this.#tries = 0;
      this.#stand('fresh');
    } catch (problem) {
      this.#fail(turn, problem, 'first', () => this.#whole(turn, ask));
    }
  }

  /** What was refused is not asked for again. */
  #fail(turn, problem, standing, again) {
    if (turn !== this.#turn) return;
    const why = problem.status ? problem.message.replace(/\.$/, '') : problem.told ? `${problem.told}; it is asked again` : '';
    const news = this.standing !== standing || this.why !== why;
    this.refused = this.stands && problem.status ? problem.snags : [];
    if (!problem.status) this.#later(() => { if (turn === this.#turn) again(); }, WAITS[Math.min(this.#tries++, WAITS.length - 1)]);
    if (news) this.#stand(standing, why);
  }

  /** What is tried is held against the whole sheet of the garden as it stands. */
  async #wholeBeside() {
    const { stands } = this;
    if (!stands?.look) return;
    const whole = await this.#api.jobSheet(this.#id, this.shown.asked).catch(() => null);
    if (!whole || this.stands !== stands) return;
    this.stands = whole;
    this.before = whole.slip ?? null;
    this.#stand(this.standing, this.why);
  }

  #stand(standing, why = null) {
    this.standing = standing;
    this.why = why;
    this.dispatchEvent(new Event('change'));
    this.#complete();
  }
}
