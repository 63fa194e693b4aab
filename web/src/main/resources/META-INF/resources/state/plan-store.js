import { merged } from './merge.js';

/**
 * Holds the garden document being edited. A command is plan => newPlan and never changes its argument,
 * so undo is the plan before. Fires `change` whenever another plan stands.
 */
export class PlanStore extends EventTarget {
  #past = [];
  #plan;
  #future = [];
  #together = null;
  #stands = null;

  constructor(plan, past = [], future = []) {
    super();
    this.#plan = plan;
    this.#past = [...past];
    this.#future = [...future];
  }

  get plan() { return this.#plan; }
  get past() { return this.#past; }
  get future() { return this.#future; }

  /** Whether what stands is only tried: see {@link tryOut}. */
  get trying() { return this.#stands !== null; }

  /** The plan beside which something is tried; the plan itself where nothing is. */
  get stands() { return this.#stands?.plan ?? this.#plan; }

  /** From here on the plan is tried, with steps of its own, until `keepTried` or `letGo`. @param {{plan: object, past: object[], future: object[]}} [tried] from before a reload */
  tryOut(tried) {
    if (this.trying) return;
    this.#stands = { plan: this.#plan, past: this.#past, future: this.#future };
    this.#take(tried ?? { plan: this.#plan, past: [], future: [] });
  }

  /** What was tried stands from now on: one step, however many it was. */
  keepTried() {
    if (!this.trying) return;
    const { plan, past, future } = this.#stands;
    const same = plan === this.#plan;
    this.#stands = null;
    this.#take({ plan: this.#plan, past: same ? past : [...past, plan], future: same ? future : [] });
  }

  /** The plan beside which something was tried stands again, with its steps. */
  letGo() {
    if (!this.trying) return;
    const stood = this.#stands;
    this.#stands = null;
    this.#take(stood);
  }

  /** Somebody else changed the plan beside which something is tried. @param {(tried: object, stood: object) => object} both */
  standBeside(plan, both) {
    const { plan: stood, past, future } = this.#stands;
    this.#stands = { plan, past: carried(past, stood, plan), future: carried(future, stood, plan) };
    this.replace(both(this.#plan, stood));
  }

  /**
   * @param {(plan: object) => object} command
   * @param {string} [together] commands in a row with the same word are one step back, until `seal`
   */
  run(command, together = null) {
    const next = command(this.#plan);
    if (next === this.#plan) return;
    if (together === null || together !== this.#together) this.#past.push(this.#plan);
    this.#together = together;
    this.#future = [];
    this.#show(next);
  }

  /** The next command is a step of its own. */
  seal() { this.#together = null; }

  undo() { this.#step(this.#past, this.#future); }

  redo() { this.#step(this.#future, this.#past); }

  /** The document as someone else left it: what they changed stays when a step of ours is taken back, unless it is the same part. */
  replace(plan) {
    this.seal();
    this.#past = carried(this.#past, this.#plan, plan);
    this.#future = carried(this.#future, this.#plan, plan);
    this.#show(plan);
  }

  /** What stands came otherwise than by a command, and is one step from what stood before. */
  stepFrom(before) {
    if (before === this.#plan) return;
    this.#past = [...carried(this.#past, this.#plan, before), before];
    this.#future = [];
    this.#show(this.#plan);
  }

  #take({ plan, past, future }) {
    this.seal();
    this.#past = [...past];
    this.#future = [...future];
    this.#show(plan);
  }

  #step(from, to) {
    if (!from.length) return;
    this.seal();
    to.push(this.#plan);
    this.#show(from.pop());
  }

  #show(plan) {
    this.#plan = plan;
    this.dispatchEvent(new Event('change'));
  }
}

/** Plans of other steps with what changed from one document to another. */
const carried = (steps, from, to) => steps.map(step => merged(from, step, to).plan);
