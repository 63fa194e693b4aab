import { api } from '../api.js';
import { readPrice, writtenPrice } from '../state/catalogue.js';
import { money, moneySign } from '../state/changes.js';
import { setPaid } from '../state/tally.js';
import { countField } from './count-field.js';
import { h } from './make.js';
import { PartPlace } from './part-place.js';
import { bringingLink, sheetLink } from './sheet-link.js';

/** order-money: what must be paid when, and what was bought against the plan; worked out once it is opened. */
export class OrderMoney extends PartPlace {
  #open = false;

  render() {
    if (this.#open) this.bring('payments', 'Payments cannot be shown');
    this.rebuild(h('details', { open: this.#open, ontoggle: event => { if (this.#open !== event.target.open) { this.#open = event.target.open; this.render(); } } },
      h('summary', { 'data-key': 'money' }, 'What to pay when, and what is bought'),
      this.wrong(),
      this.part ? this.#shown(this.part) : null));
  }

  #shown({ currency, total, atLeast, paid, open, delivery, dues, bought }) {
    return [
      h('p', {}, h('strong', {}, `${atLeast ? 'At least ' : ''}${money(total, currency)} to pay`), `: ${Number(paid) ? `bought for ${money(paid, currency)}, ` : ''}goods still to buy for ${money(open, currency)}, delivery ${money(delivery, currency)}.`),
      h('dl', {}, dues.map(due => h('div', { 'data-key': `due ${due.supplier} ${due.what}` },
        h('dt', {}, `${when(due)}: ${due.name}, ${due.what}`), h('dd', {}, money(due.amount, currency))))),
      h('p.hint', {}, 'Deposit and days to pay are said with each supplier under Merchants.'),
      h('h3', {}, 'Bought'),
      h('ul.paid', {}, bought.filter(line => line.bought).map(line => h('li', { 'data-key': `paid ${line.item}` },
        countField({ label: `${line.label}: ${line.bought}, paid ${moneySign(currency)}`, mode: 'decimal', key: `paid field ${line.item}`, value: line.told ? writtenPrice(line.paid) : '', hint: against(line, currency),
          read: readPrice, oncount: ({ detail }) => this.run(setPaid(line.item, detail ?? undefined)) })))),
      bought.some(line => line.bought) ? null : h('p.hint', {}, 'Nothing is tallied as bought yet.'),
      h('nav', { 'aria-label': 'Money' }, bringingLink(this, api, 'payments.pdf', 'Payments, PDF', 'payments.pdf'), ' ', sheetLink(this, api, 'tables/payments.xlsx', 'Payments, XLSX', 'payments.xlsx'))];
  }
}

const when = ({ date, day }) => date ?? (day === null ? 'now' : day < 0 ? `${-day} ${day === -1 ? 'day' : 'days'} before work begins` : `day ${day + 1}`);

const against = ({ planned, told, paid, atLeast, over }, currency) => [planned ? `planned ${money(planned, currency)}` : 'not planned', told || !paid ? '' : `${atLeast ? 'at least ' : ''}${money(paid, currency)} as listed`,
  over && Number(over) ? `${money(over.replace('-', ''), currency)} ${Number(over) > 0 ? 'over' : 'under'} the plan` : ''].filter(Boolean).join(', ');

customElements.define('order-money', OrderMoney);
