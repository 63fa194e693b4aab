import { money, sumOf } from '../state/changes.js';
import { lookFor } from '../state/commands.js';
import { countedIn, unproved } from '../state/long-look.js';
import { GardenElement, h } from './make.js';

/** look-longer: plans of which nobody knows that they are the cheapest, and a longer look for cheaper ones that can be stopped. */
export class LookLonger extends GardenElement {
  follows = ['reckoning', 'plans', 'look'];

  render() {
    const { look, plan, reckoning } = this.garden;
    if (look.standing !== 'none' && look.plan !== plan) look.forget();
    const currency = reckoning.sheet?.slip?.currency;
    if (look.standing === 'looking') return this.rebuild(...this.#looking(look, currency));
    if (look.standing === 'ended') return this.rebuild(...this.#ended(look, currency));
    return this.rebuild(...this.#idle(look, currency));
  }

  #idle(look, currency) {
    const { plan, reckoning } = this.garden;
    const open = unproved(reckoning.sheet);
    if (plan.search === 'long') {
      return [h('p.hint', {}, 'The cheapest plans are looked for longer at each change: an answer can take some seconds.'),
        h('button', { type: 'button', 'data-key': 'look short', onclick: () => this.run(lookFor('short')) }, 'Look only shortly again')];
    }
    if (!open.length) return [];
    return [
      look.standing === 'failed' ? h('p.hint.wrong', { role: 'alert' }, `It was not looked further: ${look.problem}`) : null,
      h('p.hint', {}, 'Not proved to be the cheapest:'),
      ...this.#lines(open, currency),
      h('button', { type: 'button', 'data-key': 'look longer', onclick: () => this.#begin() }, 'Look longer'),
    ];
  }

  async #begin() {
    const { garden } = this;
    this.say('Looking for cheaper plans.');
    await garden.look.begin(garden.plan);
    if (this.isConnected && garden.look.standing === 'ended') this.say(this.#told(garden.look, garden.reckoning.sheet?.slip?.currency));
  }

  #looking(look, currency) {
    return [
      h('p.hint', {}, `Looking for cheaper plans, ${Math.round(look.seconds)} s …`),
      ...this.#lines(look.progress, currency),
      h('button', { type: 'button', 'data-key': 'look stop', onclick: () => look.stop() }, 'Stop'),
    ];
  }

  #lines(lines, currency) {
    const { plan, reckoning } = this.garden;
    const amount = (of, number) => {
      const unit = countedIn(reckoning.sheet, of);
      return unit ? `${Number(number)} ${unit}` : money(String(number), currency);
    };
    return [
      h('ul.bounds', {}, lines.map(({ of, best, bound }) => h('li', { 'data-key': `bound ${of}` },
        `${of}: ${amount(of, best)}, ${Number(best) > Number(bound) ? `none can be under ${amount(of, bound)}` : 'none takes less'}`))),
      plan.rack?.length ? h('p.hint', {}, 'Boards on hand count with their worth.') : null,
    ];
  }

  #less(look) {
    const now = this.garden.reckoning.sheet?.slip?.total;
    return now && look.result ? sumOf([now, `-${look.result.total}`]) : null;
  }

  #told(look, currency) {
    const less = this.#less(look);
    const began = look.stopped ? `Stopped after ${Math.round(look.seconds)} s. ` : '';
    return Number(less) > 0
      ? `${began}${money(less, currency)} less: ${money(look.result.total, currency)} in all.`
      : `${began}Nothing cheaper was found.`;
  }

  #ended(look, currency) {
    const cheaper = Number(this.#less(look)) > 0;
    return [
      h('p', {}, this.#told(look, currency)),
      ...this.#lines(look.progress, currency),
      h('div.verbs', {},
        cheaper ? h('button', { type: 'button', 'data-key': 'look keep', onclick: () => this.#keep() }, 'Keep it') : null,
        h('button', { type: 'button', 'data-key': 'look let go', onclick: () => look.forget() }, cheaper ? 'Let it go' : 'Put away')),
    ];
  }

  #keep() {
    this.garden.look.forget();
    this.run(lookFor('long'));
  }
}

customElements.define('look-longer', LookLonger);
