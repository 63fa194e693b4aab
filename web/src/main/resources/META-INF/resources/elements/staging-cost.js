import { api } from '../api.js';
import { money } from '../state/changes.js';
import { GardenElement, h, row, table } from './make.js';

/** staging-cost: what buying by the weekend costs against buying once, in boards and deliveries. Worked out when asked for. */
export class StagingCost extends GardenElement {
  #ways = null;
  #of = null;
  #busy = false;

  follows = ['reckoning'];

  render() {
    const { sheet } = this.garden.reckoning;
    if (this.#of !== sheet) this.#ways = null;
    const currency = sheet?.slip?.currency;
    this.rebuild(
      h('button', { type: 'button', 'data-key': 'staging cost', 'aria-disabled': this.#busy ? 'true' : null, onclick: () => this.#ask() },
        this.#busy ? 'Working out …' : 'What do several deliveries cost?'),
      this.#ways ? h('div.across', { 'data-key': 'staging ways', tabindex: '0', role: 'group', 'aria-label': 'Ways to buy' }, this.#table(currency)) : null);
  }

  async #ask() {
    if (this.#busy) return;
    const { sheet } = this.garden.reckoning;
    this.#busy = true;
    this.render();
    await this.try('What staging costs is not worked out', async () => {
      this.#ways = (await this.garden.part('weekends')).cost;
      this.#of = sheet;
      this.say(this.#told(sheet?.slip?.currency));
    });
    this.#busy = false;
    if (this.isConnected) this.render();
  }

  #told(currency) {
    const [once, , carried] = this.#ways;
    if (carried.more === null) return 'No sum: a board has no price.';
    return `${money(carried.more, currency)} more by the weekend: ${carried.drops} deliveries for ${once.drops}.`;
  }

  #table(currency) {
    const sum = amount => (amount === null ? 'no price' : money(amount, currency));
    return table(['Way', 'Boards', 'cost', 'Deliveries', 'cost', 'More'], this.#ways.map(way =>
      row(way.way, [String(way.boards), sum(way.boardsCost), String(way.drops), money(way.delivery, currency), sum(way.more)])));
  }
}

customElements.define('staging-cost', StagingCost);
