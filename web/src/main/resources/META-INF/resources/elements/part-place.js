import { GardenElement, h } from './make.js';

/**
 * A place that shows a part of the job sheet which is worked out where it is shown: asked for once with each job sheet;
 * without signal it is the one that was kept. `render` calls `bring` and shows `part`, and `problem` where it did not come.
 */
export class PartPlace extends GardenElement {
  #of = null;

  /** Null until it came. */
  part = null;

  follows = ['reckoning', 'keeper', 'plans'];

  /**
   * @param {string} name of the part
   * @param {string} failed what is said where it does not come, without the reason
   * @param {(part: object) => any} [came] runs before it is drawn; what it waits for belongs to it
   */
  async bring(name, failed, came = () => {}) {
    const { reckoning, trying } = this.garden;
    const { sheet, standing, why } = reckoning;
    if (standing !== 'fresh' && (why === null || trying) || this.#of === sheet) return;
    this.#of = sheet;
    try {
      const part = await this.garden.part(name);
      await came(part);
      if (this.#of !== reckoning.sheet) return;
      this.part = part;
      this.problem = null;
    } catch (problem) {
      this.part = null;
      this.problem = `${failed}: ${problem.message}`;
    }
    if (this.isConnected) this.render();
  }

  /** What is said above it. */
  standing() {
    return this.wrong() ?? (this.part && this.garden.reckoning.why !== null ? h('p.hint', {}, 'As it was when the server was reached last.') : null);
  }
}
