import { Choice } from './choice.js';
import { hasManyBeds, Keeper } from './keeper.js';
import { LongLook } from './long-look.js';
import { equal, merged } from './merge.js';
import { bedOf, named } from './plan.js';
import { PlanStore } from './plan-store.js';
import { Reckoning } from './reckoning.js';

/** Earlier steps are kept over a reload up to so many characters, the oldest are dropped first. */
const MOST_STEPS_TEXT = 2000000;

/**
 * One open garden and all that hangs on it: the plan with its steps, its keeper, its reckoning and what is chosen.
 * Elements are given this and nothing else.
 */
export class Garden {
  #steps;
  #last;

  /**
   * @param {object} api see api.js
   * @param {string} id
   * @param {{local: Storage, session: Storage, last?: import('./last-garden.js').LastGardens, later?: Function}} keep where waiting plans,
   *     earlier steps and the gardens that were open last are kept
   */
  static async open(api, id, keep) {
    const waiting = Keeper.waiting(keep.local, id);
    let stored;
    let last = null;
    try {
      stored = await api.open(id);
    } catch (problem) {
      if (problem.status) throw problem;
      last = await keep.last?.of(id) ?? null;
      if (!waiting && !last) throw problem;
      stored = waiting ? { plan: waiting.base, revision: waiting.revision } : last;
    }
    const garden = new Garden(api, id, keep, stored, waiting);
    if (last) garden.reckoning.standsAt(last.sheet);
    return garden;
  }

  constructor(api, id, keep, stored, waiting) {
    this.api = api;
    this.id = id;
    this.choice = new Choice();
    this.reckoning = new Reckoning(api, id, () => hasManyBeds(this.plan));
    this.look = new LongLook(api);
    this.sizes = new LongLook(api, undefined, 'sizes', 5);
    this.layOut = new LongLook(api, undefined, 'lay-out', 30);
    const began = waiting ? { plan: waiting.base, revision: waiting.revision, tabs: waiting.tabs } : stored;
    this.keeper = new Keeper({ api, storage: keep.local, id, later: keep.later, asked: plan => this.reckoning.shown.askedOf(plan), ...began });
    this.#last = keep.last;
    this.#steps = new Steps(keep.session, id);
    const plan = waiting?.plan ?? stored.plan;
    const { past, future, tried } = this.#steps.of(plan);
    this.plans = new PlanStore(named(plan, null), past, future);
    if (tried) this.plans.tryOut(tried);
    this.#join();
    if (waiting) this.keeper.put(plan);
  }

  get plan() { return this.plans.plan; }

  /** The chosen bed as it lies, null where none is chosen or it is gone. */
  get bed() { return this.choice.bed === null ? null : bedOf(this.plan, this.choice.bed); }

  /** Whether what is shown is only tried, and nothing of it is saved. */
  get trying() { return this.plans.trying; }

  /** What is in the way, why it cannot be saved or reckoned first. */
  get snags() {
    const refused = this.trying ? this.reckoning.refused : this.keeper.standing === 'refused' ? this.keeper.snags : [];
    return [...refused, ...(this.reckoning.sheet?.snags ?? [])];
  }

  /** A part of the job sheet that is worked out only when asked for, of what is shown. */
  part(name) { return this.trying ? this.api.partOf(this.plan, name) : this.api.part(this.id, name); }

  /** Takes a piece of the shelf as one step, which undo takes back. @param {boolean} anyway also where the garden keeps its prices */
  async takePiece(piece, anyway) {
    const before = this.plan;
    await this.api.takePiece(this.id, piece, this.keeper.revision, anyway);
    await this.keeper.lookForNews();
    this.plans.stepFrom(before);
  }

  /** All beds in hand, as they lie. */
  get beds() { return this.choice.beds.map(id => bedOf(this.plan, id)).filter(Boolean); }

  /** First sheet, first drawing. */
  async begin() {
    if (this.keeper.standing === 'kept') await this.reckoning.fetch();
    if (this.trying) this.reckoning.tryOut(this.plan);
  }

  /** The net is back: what waits is sent, what was missed is fetched. */
  again() {
    this.keeper.again();
    if (this.keeper.standing === 'kept' && this.reckoning.why !== null) this.reckoning.fetch();
  }

  close() {
    for (const look of [this.look, this.sizes, this.layOut]) look.forget();
    this.rememberSteps();
    this.keeper.close();
    this.reckoning.close();
  }

  rememberSteps() { this.#steps.keep(this.plans); }

  /** Ends a clash with one of the two plans. */
  settle(whose) {
    const plan = this.keeper.settle(whose);
    this.#adopt(plan);
    if (whose === 'theirs') this.reckoning.fetch();
  }

  #adopting = false;

  /** The plan that the keeper has. */
  #known;

  #adopt(plan) {
    this.#adopting = true;
    this.#known = named(plan, this.reckoning.sheet);
    if (this.trying) this.plans.standBeside(this.#known, (tried, stood) => merged(stood, tried, this.#known).plan);
    else this.plans.replace(this.#known);
    this.#adopting = false;
  }

  #join() {
    this.choice.addEventListener('change', () => this.reckoning.shown.take(this.choice.bed, this.choice.course !== null));
    this.reckoning.addEventListener('change', () => {
      if (this.reckoning.standing !== 'fresh' || this.keeper.standing !== 'kept' || this.trying) return;
      this.#last?.soon({ id: this.id, plan: this.plan, revision: this.keeper.revision, sheet: this.reckoning.sheet });
    });
    this.#known = this.plans.stands;
    let saved = this.keeper.revision;
    this.plans.addEventListener('change', () => {
      this.choice.takeBeds(this.choice.beds.filter(id => bedOf(this.plan, id)));
      if (this.trying) this.reckoning.tryOut(this.plan);
      else if (this.reckoning.stands) this.reckoning.letGo();
      if (this.#adopting || this.trying || this.plan === this.#known) return;
      this.#known = this.plan;
      this.keeper.put(this.plan);
    });
    this.keeper.addEventListener('merged', event => {
      this.#adopt(event.detail);
      if (this.keeper.standing === 'kept') this.reckoning.fetch();
    });
    this.keeper.addEventListener('change', () => {
      if (this.keeper.standing !== 'kept' || this.keeper.revision === saved) return;
      saved = this.keeper.revision;
      if (this.keeper.sheet) this.reckoning.fresh(this.keeper.sheet);
      else if (this.keeper.order) this.reckoning.ordered(this.keeper.order);
      else this.reckoning.fetch();
    });
  }
}

/** The steps one can still take back, kept over a reload. */
class Steps {
  #storage;
  #key;

  constructor(storage, id) {
    this.#storage = storage;
    this.#key = `lapyard.steps.${id}`;
  }

  /** @returns {{past: object[], future: object[], tried?: object}} steps of this very plan and what was tried beside it, else none */
  of(plan) {
    try {
      const kept = JSON.parse(this.#storage.getItem(this.#key));
      if (kept && equal(kept.plan, plan)) return kept;
    } catch {
      // what cannot be read is as if it were not there
    }
    return { past: [], future: [] };
  }

  keep({ trying, stands, past, plan, future }) {
    if (trying) return this.#put({ plan: stands, past: [], future: [], tried: { plan, past: [], future: [] } });
    let kept = past.length;
    for (let size = JSON.stringify(future).length; kept > 0; kept--) {
      size += JSON.stringify(past[kept - 1]).length;
      if (size > MOST_STEPS_TEXT) break;
    }
    return this.#put({ plan, past: past.slice(kept), future });
  }

  #put(steps) {
    try {
      this.#storage.setItem(this.#key, JSON.stringify(steps));
    } catch {
      this.#storage.removeItem(this.#key);
    }
  }
}
