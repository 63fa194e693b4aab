import { equal, merged } from './merge.js';

/** Waits between tries while the server is away, milliseconds; the last one is repeated. */
export const WAITS = [1000, 2000, 4000, 8000, 15000];
const UNDO = 'Undo the last change, or copy the garden';

const MANY_BEDS = 60;

/** Whether the order is fetched before the rest of the job sheet, which takes its time to come and to be read. */
export const hasManyBeds = plan => (plan.beds ?? []).length > MANY_BEDS;

/**
 * Keeps a garden: sends every plan to the store at once, one at a time and only the latest, and holds what the store
 * has not acknowledged in the browser's own storage, so that neither a reload nor a stopped server loses it.
 *
 * `standing` is `kept`, `saving`, `away`, `refused` or `clash`. Fires `change` when it changes, and `merged` (detail:
 * the plan) when someone else's changes were taken in.
 */
export class Keeper extends EventTarget {
  #api;
  #storage;
  #later;
  #base;
  #pending = null;
  #sending = false;
  #tries = 0;
  #retry = null;
  #closed = false;
  #heard = 0;
  #asked;
  /** Names this tab among those that hold something of the garden back. */
  #tab = String(Math.random());
  #takes;

  /**
   * @param {object} parts
   * @param {{save: Function, open: Function}} parts.api
   * @param {Storage} parts.storage
   * @param {string} parts.id the garden
   * @param {object} parts.plan as the store holds it
   * @param {string} parts.revision its entity tag
   * @param {string[]} [parts.tabs] whose waiting plans the first one that is put here holds
   * @param {(run: () => void, ms: number) => any} [parts.later]
   * @param {(plan: object) => object} [parts.asked] what of the job sheet is wanted with what was saved, see api.js
   */
  constructor({ api, storage, id, plan, revision, tabs = [], later = (run, ms) => setTimeout(run, ms), asked = () => ({}) }) {
    super();
    this.#api = api;
    this.#storage = storage;
    this.#later = later;
    this.#asked = asked;
    this.#takes = tabs;
    this.id = id;
    this.revision = revision;
    /** The job sheet that came with the last revision of ours, null where none did. */
    this.sheet = null;
    /** Its slip and snags, where they were asked for alone. */
    this.order = null;
    this.#base = plan;
    this.standing = 'kept';
    this.snags = [];
    /** Why it was refused, with the way out. */
    this.why = '';
    this.clash = null;
    this.storageFull = false;
  }

  /**
   * What waits in the browser for a garden, from before a reload or in other tabs, put together; where two tabs changed the same the
   * earlier stands.
   *
   * @returns {{plan: object, base: object, revision: string, tabs: string[]} | null}
   */
  static waiting(storage, id) {
    const all = waitingOf(storage, id);
    const [first, ...others] = Object.values(all);
    return first ? { ...first, plan: others.reduce((plan, other) => merged(other.base, plan, other.plan).plan, first.plan), tabs: Object.keys(all) } : null;
  }

  /** Saves a plan; a plan that comes while another is on its way waits for it. */
  put(plan) {
    this.#pending = plan;
    this.#remember();
    if (this.standing !== 'clash') this.#send();
  }

  /** Tries again at once: the browser says the network is back, or the gardener asked. */
  again() {
    if (this.#pending && this.standing === 'away') this.#send();
  }

  /** Another garden is opened; what waits stays in the browser. */
  close() { this.#closed = true; }

  /** Nothing waits any more: the store's own plan stands. */
  letGo() {
    this.#pending = null;
    this.#hold(null);
  }

  /** Ends a clash. @param {'mine'|'theirs'} whose @returns {object} the plan that now stands */
  settle(whose) {
    const { theirs, revision, mine } = this.clash;
    this.clash = null;
    this.revision = revision;
    this.#base = theirs;
    if (whose === 'theirs') {
      this.letGo();
      this.#stand('kept');
      return theirs;
    }
    this.#pending ??= mine;
    this.#remember();
    this.#stand('saving');
    this.#send();
    return this.#pending;
  }

  /**
   * Someone else's newer plan is taken in when nothing of ours waits; what is heard while something does is looked for
   * once it is kept.
   *
   * @param {number} [heard] the revision that was told of; without it the store is asked
   * @returns {Promise<boolean>} whether there was a newer plan
   */
  async lookForNews(heard) {
    if (heard) this.#heard = Math.max(this.#heard, heard);
    if (this.#closed || this.#pending || this.#sending || this.standing !== 'kept') return false;
    if (heard && !this.#behind()) return false;
    const news = await this.#api.newer(this.id, this.revision);
    if (!news || this.#pending || this.#sending || news.revision === this.revision) return false;
    const { plan, revision } = news;
    this.revision = revision;
    this.#base = plan;
    this.#tell('merged', plan);
    return true;
  }

  async #send() {
    if (this.#sending || this.#closed) return;
    this.#sending = true;
    this.#stand('saving');
    try {
      while (this.#pending && !this.#closed) {
        const plan = this.#pending;
        try {
          const saved = await this.#api.save(this.id, plan, this.revision, hasManyBeds(plan) ? 'order' : 'job-sheet', this.#asked(plan));
          this.revision = saved.revision;
          this.sheet = saved.sheet;
          this.order = saved.order ?? null;
        } catch (problem) {
          if (problem.status !== 412) throw problem;
          if (!await this.#join(plan)) return;
          continue;
        }
        this.#tries = 0;
        this.#base = plan;
        if (this.#pending === plan) this.letGo();
        else this.#remember();
      }
      this.snags = [];
      this.#stand('kept');
    } catch (problem) {
      this.#stumble(problem);
    } finally {
      this.#sending = false;
    }
    if (this.#behind()) this.lookForNews().catch(() => {});
  }

  /** Whether a newer revision was told of than the one held. */
  #behind() { return this.#heard > Number(this.revision.replace(/\D/g, '')); }

  /** The store has moved on. @returns {Promise<boolean>} true where both go together */
  async #join(plan) {
    const { plan: theirs, revision } = await this.#api.open(this.id);
    const mine = this.#pending ?? plan;
    const both = merged(this.#base, mine, theirs);
    if (both.clashes.length) {
      this.clash = { mine, theirs, revision, clashes: both.clashes };
      this.#stand('clash');
      return false;
    }
    this.revision = revision;
    this.#base = theirs;
    this.#pending = both.plan;
    this.#remember();
    if (!equal(both.plan, mine)) this.#tell('merged', both.plan);
    return true;
  }

  #stumble(problem) {
    if (problem.status) {
      const named = problem.snags?.length;
      this.snags = named ? problem.snags : [{ weight: 'STOP', where: 'garden', text: problem.message, ways: [UNDO] }];
      this.why = named ? problem.message : `${problem.message} ${UNDO}.`;
      this.#stand('refused');
      return;
    }
    this.why = problem.told ?? '';
    this.#stand('away');
    if (this.#retry) return;
    const wait = WAITS[Math.min(this.#tries++, WAITS.length - 1)];
    this.#retry = this.#later(() => {
      this.#retry = null;
      if (this.#pending) this.#send();
    }, wait) ?? true;
  }

  #remember() {
    try {
      this.#hold({ plan: this.#pending, base: this.#base, revision: this.revision });
      this.storageFull = false;
    } catch {
      this.storageFull = true;
    }
  }

  /** What other tabs hold back stays, unless it was taken in here. */
  #hold(own) {
    const all = waitingOf(this.#storage, this.id);
    for (const tab of [this.#tab, ...this.#takes]) delete all[tab];
    this.#takes = [];
    if (own) all[this.#tab] = own;
    if (Object.keys(all).length) this.#storage.setItem(keyOf(this.id), JSON.stringify(all));
    else this.#storage.removeItem(keyOf(this.id));
  }

  #stand(standing) {
    this.standing = standing;
    this.dispatchEvent(new Event('change'));
  }

  #tell(type, detail) { this.dispatchEvent(new CustomEvent(type, { detail })); }
}

const keyOf = id => `lapyard.waiting.${id}`;

/** By tab, in the order in which they began to hold something; before tabs were told apart there was one plan. */
function waitingOf(storage, id) {
  try {
    const all = JSON.parse(storage.getItem(keyOf(id))) ?? {};
    return 'base' in all ? { one: all } : all;
  } catch {
    return {};
  }
}
