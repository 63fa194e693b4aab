import { money } from '../state/changes.js';
import { unitsOf } from '../state/plan.js';
import { changesOf, dearer, shortly } from '../state/trial.js';
import { GardenElement, h, verb } from './make.js';
import { sideBySide } from './side-by-side.js';

/** try-bar: while something is tried, what it is, what it costs beside the garden as it stands, and the two ways to end it. */
export class TryBar extends GardenElement {
  #beside = null;
  #of = null;

  follows = ['plans', 'reckoning'];

  named = ['region', 'What is tried'];

  render() {
    const { plans, reckoning, trying } = this.garden;
    this.hidden = !trying;
    if (this.#of !== plans.plan) this.#beside = null;
    if (!trying) return this.rebuild();
    const told = changesOf(plans.stands, plans.plan);
    const price = reckoning.standing === 'fresh' && !reckoning.stands?.look ? dearer(reckoning.stands?.slip, reckoning.sheet?.slip, money) : reckoning.refused.length ? `cannot be built: ${reckoning.refused[0].text}` : 'working it out …';
    return this.rebuild(
      h('p', {}, h('strong', {}, 'Trying: '), h('span', { title: told.join('; ') }, shortly(told)), price && told.length ? `, ${price}` : '', '.'),
      h('div.verbs', {},
        verb('Keep', 'try keep', () => this.#keep(), { class: 'main', 'aria-disabled': reckoning.refused.length ? 'true' : null }),
        verb('Let go', 'try let go', () => this.#letGo()),
        told.length ? verb('Side by side', 'try beside', () => this.#compare(), { 'aria-expanded': String(Boolean(this.#beside)) }) : null),
      this.#beside ? sideBySide(this.#beside, reckoning.sheet?.slip?.currency, unitsOf(this.garden.plan)) : null);
  }

  #keep() {
    if (this.garden.reckoning.refused.length) return this.say('It cannot be kept as it is: see the snags.');
    this.garden.plans.keepTried();
    return this.#end('It is kept. Undo brings back what stood before.');
  }

  #letGo() {
    this.garden.plans.letGo();
    this.#end('Let go: the garden is as it was.');
  }

  #end(said) {
    document.querySelector('[data-key=try]')?.focus();
    this.say(said);
  }

  async #compare() {
    if (this.#beside) {
      this.#beside = null;
      return this.render();
    }
    const { plan, stands } = this.garden.plans;
    this.#of = plan;
    let beside;
    try {
      beside = await this.garden.api.tryOut({ garden: stands, instead: plan });
    } catch (problem) {
      beside = { problem: problem.snags?.[0] ? `${problem.snags[0].where}: ${problem.message}` : problem.message };
    }
    if (this.#of === this.garden.plan) this.#beside = beside;
    return this.isConnected && this.render();
  }
}

customElements.define('try-bar', TryBar);
