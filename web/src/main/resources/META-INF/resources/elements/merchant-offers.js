import { api } from '../api.js';
import { money } from '../state/changes.js';
import { GardenElement, h, row, table } from './make.js';
import { bringingLink, sheetLink } from './sheet-link.js';

/** merchant-offers: what merchants are asked, and what the garden costs from each of them and from all together. */
export class MerchantOffers extends GardenElement {
  #offers = null;
  #of = null;

  follows = ['reckoning', 'keeper', 'plans'];

  render() {
    if (this.#of !== this.garden.reckoning.sheet) this.#offers = null;
    this.rebuild(
      h('h3', {}, 'Ask merchants for prices'),
      h('p.hint', {}, 'What, how much and by when, without prices. The table comes back filled in: take it as the list of its merchant, below.'),
      h('nav', { 'aria-label': 'Request for prices' }, bringingLink(this, api, 'price-request.pdf', 'Request, PDF', 'price-request.pdf'), ' ',
        sheetLink(this, api, 'tables/price-request.xlsx', 'Table, XLSX', 'price-request.xlsx'), ' ', sheetLink(this, api, 'tables/price-request.csv', 'Table, CSV', 'price-request.csv')),
      h('div.verbs', {}, h('button', { type: 'button', 'data-key': 'offers show', onclick: () => this.#show() }, 'Merchants side by side')),
      this.wrong(),
      this.#offers ? this.#table(this.#offers) : null);
  }

  async #show() {
    const of = this.garden.reckoning.sheet;
    await this.try('Merchants cannot be shown side by side now', async () => {
      this.#offers = await this.garden.part('offers');
      this.#of = of;
      this.say(`${this.#offers.merchants.length} merchants side by side.`);
    });
  }

  #table({ currency, merchants, lines, total, atLeast, proven }) {
    const nameOf = one => (one.id ? one.name : 'No supplier named');
    const names = new Map(merchants.map(one => [one.id, nameOf(one)]));
    const line = (head, cells, best, from, key) => row(head, [...cells, h('strong', {}, best), from], { 'data-key': key });
    const all = field => merchants.map(one => (field === 'total' && !one.whole ? `${money(one.total, currency)}, not all` : money(one[field], currency)));
    if (merchants.length < 2) return h('p.hint', {}, 'Fewer than two merchants have prices: add suppliers, and take each one’s list.');
    return h('div.wide-table', { tabindex: 0, role: 'region', 'aria-label': 'Merchants side by side' },
      table(['Goods', ...merchants.map(nameOf), 'Best split', 'From'], [
        ...lines.map(one => line(one.label, merchants.map(({ id }) => (one.costs[id] ? money(one.costs[id], currency) : '–')), one.cost ? money(one.cost, currency) : '–',
          one.from.map(id => names.get(id) ?? 'no price').join(' + '), `offer ${one.item}`)),
        line('Delivery', all('delivery'), '', '', 'offer delivery'),
        line('Total', all('total'), `${atLeast ? 'at least ' : ''}${money(total, currency)}`, proven ? 'no other split costs less' : 'best split found', 'offer total')]),
      merchants.filter(one => one.missing.length).map(one => h('p.hint', {}, `${nameOf(one)}: no price for ${one.missing.join(', ')}.`)),
      h('nav', { 'aria-label': 'Offers' }, bringingLink(this, api, 'offers.pdf', 'Offers, PDF', 'offers.pdf'), ' ', sheetLink(this, api, 'tables/offers.xlsx', 'Offers, XLSX', 'offers.xlsx')));
  }
}

customElements.define('merchant-offers', MerchantOffers);
