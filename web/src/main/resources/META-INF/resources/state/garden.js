import { Choice } from './choice.js';
import { Keeper } from './keeper.js';
import { LongLook } from './long-look.js';
import { equal } from './merge.js';
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
    this.reckoning = new Reckoning(api, id);
    this.look = new LongLook(api);
    this.sizes = new LongLook(api, undefined, 'sizes', 5);
    this.layOut = new LongLook(api, undefined, 'lay-out', 30);
    const began = waiting ? { plan: waiting.base, revision: waiting.revision } : stored;
    this.keeper = new Keeper({ api, storage: keep.local, id, later: keep.later, ...began });
    this.#last = keep.last;
    this.#steps = new Steps(keep.session, id);
    const plan = waiting?.plan ?? stored.plan;
    this.plans = new PlanStore(named(plan, null), ...this.#steps.of(plan));
    this.#join();
    if (waiting) this.keeper.put(plan);
  }

  get plan() { return this.plans.plan; }

  /** The chosen bed as it lies, null where none is chosen or it is gone. */
  get bed() { return this.choice.bed === null ? null : bedOf(this.plan, this.choice.bed); }

  /** All beds in hand, as they lie. */
  get beds() { return this.choice.beds.map(id => bedOf(this.plan, id)).filter(Boolean); }

  /** First sheet, first drawing. */
  begin() {
    if (this.keeper.standing === 'kept') this.reckoning.fetch();
  }

  /** The net is back: what waits is sent, what was missed is fetched. */
  again() {
    this.keeper.again();
    if (this.keeper.standing === 'kept' && this.reckoning.standing === 'away') this.reckoning.fetch();
  }

  close() {
    for (const look of [this.look, this.sizes, this.layOut]) look.forget();
    this.rememberSteps();
    this.keeper.close();
  }

  rememberSteps() { this.#steps.keep(this.plans); }

  /** Ends a clash with one of the two plans. */
  settle(whose) {
    const plan = this.keeper.settle(whose);
    this.#adopt(plan);
    if (whose === 'theirs') this.reckoning.fetch();
  }

  #adopting = false;

  #adopt(plan) {
    this.#adopting = true;
    this.plans.replace(named(plan, this.reckoning.sheet));
    this.#adopting = false;
  }

  #join() {
    this.reckoning.addEventListener('change', () => {
      if (this.reckoning.standing !== 'fresh' || this.keeper.standing !== 'kept') return;
      this.#last?.keep({ id: this.id, plan: this.plan, revision: this.keeper.revision, sheet: this.reckoning.sheet });
    });
    let saved = this.keeper.revision;
    this.plans.addEventListener('change', () => {
      this.choice.takeBeds(this.choice.beds.filter(id => bedOf(this.plan, id)));
      if (!this.#adopting) this.keeper.put(this.plan);
    });
    this.keeper.addEventListener('merged', event => {
      this.#adopt(event.detail);
      if (this.keeper.standing === 'kept') this.reckoning.fetch();
    });
    this.keeper.addEventListener('change', () => {
      if (this.keeper.standing !== 'kept' || this.keeper.revision === saved) return;
      saved = this.keeper.revision;
      if (this.keeper.sheet) this.reckoning.fresh(this.keeper.sheet);
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

  /** @returns {[object[], object[]]} past and future of this very plan, else none */
  of(plan) {
    try {
      const kept = JSON.parse(this.#storage.getItem(this.#key));
      return kept && equal(kept.plan, plan) ? [kept.past, kept.future] : [[], []];
    } catch {
      return [[], []];
    }
  }

  keep({ past, plan, future }) {
    let kept = past.length;
    for (let size = JSON.stringify(future).length; kept > 0; kept--) {
      size += JSON.stringify(past[kept - 1]).length;
      if (size > MOST_STEPS_TEXT) break;
    }
    try {
      this.#storage.setItem(this.#key, JSON.stringify({ plan, past: past.slice(kept), future }));
    } catch {
      this.#storage.removeItem(this.#key);
    }
  }
}
