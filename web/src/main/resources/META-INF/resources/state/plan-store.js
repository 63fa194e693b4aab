/**
 * Holds the garden document being edited. A command is plan => newPlan and never changes its argument,
 * so undo is the plan before. Fires `change` whenever another plan stands.
 */
export class PlanStore extends EventTarget {
  #past = [];
  #plan;
  #future = [];
  #together = null;

  constructor(plan, past = [], future = []) {
    super();
    this.#plan = plan;
    this.#past = [...past];
    this.#future = [...future];
  }

  get plan() { return this.#plan; }
  get past() { return this.#past; }
  get future() { return this.#future; }

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

  /** Another document altogether, or the same one as someone else left it; earlier steps stay. */
  replace(plan) {
    this.seal();
    this.#future = [];
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
