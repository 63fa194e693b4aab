import { api } from '../api.js';
import { unitIn, valueIn } from '../geometry/measure.js';
import { bare } from '../state/paths.js';
import { aboutOrder, compareSlips, money, packsText, savedBeside, savedOf } from '../state/changes.js';
import { unproved } from '../state/long-look.js';
import { unitsOf } from '../state/plan.js';
import { withoutServer } from '../state/words.js';
import { roundedWithUnit } from '../state/working.js';
import './look-longer.js';
import './order-money.js';
import { custom, firstLook, GardenElement, h } from './make.js';
import { place } from './places.js';
import { sheetLink } from './sheet-link.js';
import { shownNumber } from './shown-number.js';

/** lap-slip: the one order as a paper strip, lines with the largest saving first, changed lines before and after. */
export class LapSlip extends GardenElement {
  follows = ['reckoning', 'keeper', 'look'];

  render() {
    const { reckoning } = this.garden;
    const slip = reckoning.sheet?.slip ?? null;
    this.classList.toggle('behind', this.#isBehind());
    this.rebuild(
      h('p.standing', {}, this.#standing()),
      slip?.examplePrices && slip.lines.length ? h('p.examples', {}, 'Prices are examples of ours, not your merchant’s. ', h('button.quiet', { type: 'button', 'data-key': 'to merchants', onclick: () => this.#toPrices() }, 'Give your own')) : null,
      slip ? bare(this.garden.plan).map(called => h('p.examples', {}, `${called} has no layers, so nothing is bought for it. `, h('button.quiet', { type: 'button', 'data-key': `to path ${called}`, onclick: () => this.openPlace('paths') }, 'Give it some'))) : null,
      slip ? this.#strip(slip) : null,
      slip ? this.#more(slip) : null,
      h('div.foot', {}, slip ? this.#total(slip) : null, this.#downloads()));
    if (slip && reckoning.isOrdered && !reckoning.mayImprove) this.#sayTotal(slip);
  }

  /** The list of prices stands below the suppliers. */
  #toPrices() {
    this.openPlace('catalogue');
    this.dispatchEvent(new CustomEvent('show-field', { detail: 'prices', bubbles: true }));
  }

  #said = null;

  #sayTotal(slip) {
    const text = this.#totalText(slip);
    if (this.#said !== null && this.#said !== text) this.say(`Slip: ${text}.`);
    this.#said = text;
  }

  #isBehind() {
    return !this.garden.reckoning.isOrdered || this.garden.keeper.standing !== 'kept';
  }

  #standing() {
    const { reckoning, keeper, trying } = this.garden;
    if (trying && reckoning.standing === 'fresh') return 'Only tried: the order as it would be, beside the order as it stands.';
    if (keeper.standing === 'refused') return 'Stands as before the last change, which cannot be kept.';
    if (keeper.standing === 'away') return `${withoutServer('Stands as it was', keeper.why)}.`;
    if (reckoning.why !== null) return `${withoutServer(reckoning.standing === 'first' ? 'Only a first look' : 'Stands as it was', reckoning.why)}.`;
    if (keeper.standing === 'clash') return 'Stands as it was, until you choose.';
    if (reckoning.standing === 'reckoning' || keeper.standing === 'saving') return 'Reckoning …';
    const sheet = reckoning.sheet;
    return sheet?.slip?.lines?.length ? 'One order for the whole garden.' : 'Nothing to buy yet: add a bed.';
  }

  #strip(slip) {
    const compared = compareSlips(this.garden.reckoning.before, slip);
    return h('ol.lines', {}, compared.map(part => this.#line(part, slip.currency)));
  }

  #line({ line, was, state }, currency) {
    const name = line.label ?? line.item;
    return h(`li.${state}`, { 'data-key': `line ${line.item}` },
      h('div.what', {},
        h('span.item', {}, name),
        state === 'new' ? h('span.mark', {}, 'new') : null,
        state === 'gone' ? h('span.mark', {}, 'gone') : null),
      h('div.cost', {},
        was && was.cost !== line.cost ? h('s', {}, h('span.unseen', {}, 'was '), money(was.cost, currency)) : null,
        h('span.sum', {}, state === 'gone' ? money('0.00', currency) : money(line.cost, currency))),
      state === 'gone' ? null : h('div.packs', {}, this.#packs(line, was, currency)),
      state === 'gone' ? null : h('div.need', {}, this.#need(line, was)),
      state === 'gone' ? null : saves(line) ? h('div.saved', {}, this.#saved(line, was, currency)) : this.#keepsPlace(line) ? h('div.saved', {}, '\u00a0') : null);
  }

  #packs(line, was, currency) {
    const packs = (line.packs ?? []).filter(pack => pack.count > 0);
    if (!packs.length) return ['no price: ask the merchant'];
    const before = was && packsText(was) !== packsText(line) ? h('s', {}, packsText(was)) : null;
    return [before, ...packs.map(pack => h('span.pack', {},
      `${pack.count} × ${pack.called}`,
      pack.supplier ? ` from ${nameOf(this.garden.reckoning.sheet.slip, pack.supplier)}` : '',
      pack.price === null || pack.price === undefined ? ' (no price)' : ` at ${money(pack.price, currency)}`))];
  }

  #need(line, was) {
    const { choice, plan } = this.garden;
    const units = unitsOf(plan);
    const changed = was && was.need !== line.need ? h('s', {}, roundedWithUnit(was.need, was.unit, units)) : null;
    const over = line.leftOver > 0 ? h('span', {}, `· ${roundedWithUnit(line.leftOver, line.unit, units)} over`) : null;
    return [h('span', {}, 'needs'), changed,
      shownNumber(choice, `slip ${line.item}`, { value: line.need, unit: line.unit, units, working: line.working, name: line.label ?? line.item }),
      over];
  }

  /** A first look says nothing of what a line saves; where the whole before it did, nothing moves. */
  #keepsPlace({ item }) {
    const { mayImprove, before } = this.garden.reckoning;
    return mayImprove && before?.lines?.some(line => line.item === item && saves(line));
  }

  #saved(line, was, currency) {
    const before = was && was.saved !== line.saved && saves(was) ? h('s', {}, money(was.saved, currency)) : null;
    return [h('span.star', { 'aria-hidden': 'true' }, '✂ '), 'saves ', before, before ? ' ' : null,
      h('strong', {}, money(line.saved, currency)), ` against ${money(line.bedByBed, currency)} bed by bed`];
  }

  #money = null;

  /** Who brings what, what each bed costs of it, and what is to pay when: folded, as the lines stand above. */
  #more(slip) {
    const { currency } = slip;
    const orders = slip.orders ?? [];
    return h('div.more', {},
      this.#mightBeLess() ? custom('look-longer', { garden: this.garden }) : null,
      // one merchant without a name is the whole slip, as it stands above
      orders.some(order => order.supplier) ? orders.map(order => this.#order(order, currency)) : null,
      slip.shares?.length ? h('details', {},
        h('summary', { 'data-key': 'slip shares' }, 'What each bed costs'),
        h('p.hint', {}, 'A line that several share is split by what each uses of it, delivery by the goods.'),
        h('dl', {}, slip.shares.map(share => h('div', { 'data-key': `share ${share.owner}` },
          h('dt', {}, share.owner), h('dd', {}, money(share.cost, currency), share.perM2 ? this.#perArea(share, currency) : ''))))) : null,
      slip.lines.length ? (this.#money ??= custom('order-money', { garden: this.garden })) : null);
  }

  #perArea(share, currency) {
    const units = unitsOf(this.garden.plan);
    const decimals = (String(share.perM2).split('.')[1] ?? '').length;
    return ` · ${money((Number(share.perM2) / valueIn(1, 'm2', units)).toFixed(decimals), currency)} a ${unitIn('m2', units)} inside`;
  }

  #unproved = false;

  #mightBeLess() {
    const { look, plan, reckoning } = this.garden;
    // a first look proves little, and the whole is on its way
    if (!reckoning.mayImprove) this.#unproved = unproved(reckoning.sheet).length > 0;
    return plan.search === 'long' || look.standing !== 'none' || this.#unproved;
  }

  #order(order, currency) {
    const sum = `${order.atLeast ? 'at least ' : ''}${money(order.total, currency)}`;
    return h('details', {},
      h('summary', { 'data-key': `order ${order.supplier}` }, h('strong', {}, order.name), ` ${sum}`),
      h('p.hint', {}, aboutOrder(order, currency)),
      h('dl', {},
        order.lines.flatMap(line => (line.packs.length ? line.packs : [null]).map((pack, i) => h('div', { 'data-key': `order ${order.supplier} ${line.item} ${i}` },
          h('dt', {}, pack ? `${pack.count} × ${pack.called}, ${line.label}` : `${line.label}: ask the merchant`),
          h('dd', {}, money(pack ? pack.cost : line.cost, currency))))),
        h('div', {}, h('dt', {}, 'Delivery'), h('dd', {}, money(order.delivery, currency)))),
      order.supplier ? h('nav', { 'aria-label': `Sheets for ${order.name}` }, sheetLink(this, api, `slip.csv?supplier=${encodeURIComponent(order.supplier)}`, 'Order, CSV', `slip-${order.supplier}.csv`)) : null);
  }

  #totalText(slip) {
    return `${slip.atLeast ? 'at least ' : 'total '}${money(slip.total, slip.currency)}`;
  }

  #total(slip) {
    const before = this.garden.reckoning.before;
    const changed = before && before.total !== slip.total;
    const saved = savedOf(slip);
    return h('footer', {},
      h('div.total', {},
        h('span', {}, slip.atLeast ? 'At least' : 'Total'),
        h('span', {},
          changed ? h('s', {}, h('span.unseen', {}, 'was '), money(before.total, slip.currency)) : null,
          h('strong.sum', {}, money(slip.total, slip.currency)))),
      slip.toPay ? h('p.why', {}, h('strong', {}, money(slip.toPay, slip.currency)), ' is to pay, as goods were bought at other prices or beyond the order: ', h('em', {}, 'What to pay when'), ' adds it up.') : null,
      slip.atLeast ? h('p.why', {}, 'A line has no price, or something cannot be made: the true sum is higher.') : null,
      this.garden.reckoning.mayImprove ? h('p.saved', {}, firstLook()) : Number(saved) > 0 ? h('p.saved', {}, 'Bought as one: ', h('strong', {}, money(saved, slip.currency)), ' saved. ', savedBeside(slip, sum => money(sum, slip.currency))) : null);
  }

  #downloads() {
    return h('nav', { 'aria-label': 'Sheets to take along' },
      sheetLink(this, api, 'plan.svg', 'Plan, SVG'), sheetLink(this, api, 'plan.pdf', 'Plan, PDF'),
      sheetLink(this, api, 'slip.csv', 'Slip, CSV'), sheetLink(this, api, 'slip.pdf', 'Slip, PDF'), sheetLink(this, api, 'garden.xlsx', 'Tables, XLSX'),
      this.garden.plan.quote ? sheetLink(this, api, 'quote.pdf', 'Quote, PDF') : null);
  }
}

const nameOf = (slip, supplier) => slip.orders?.find(order => order.supplier === supplier)?.name ?? supplier;

const saves = line => line.saved !== null && line.saved !== undefined && Number(line.saved) > 0;

customElements.define('lap-slip', LapSlip);
place({ key: 'slip', title: 'Slip', tag: 'lap-slip', table: 'buy', order: 10 });
