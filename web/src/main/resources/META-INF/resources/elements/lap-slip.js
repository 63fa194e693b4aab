import { api } from '../api.js';
import { compareSlips, money, packsText, savedOf } from '../state/changes.js';
import { roundedWithUnit } from '../state/working.js';
import { GardenElement, h } from './make.js';
import { place } from './places.js';
import { shownNumber } from './shown-number.js';

/** lap-slip: the one order as a paper strip, lines with the largest saving first, changed lines before and after. */
export class LapSlip extends GardenElement {
  attached() {
    this.id = 'slip';
    this.follow([this.garden.reckoning, this.garden.keeper], () => this.render());
    this.render();
  }

  render() {
    const { reckoning } = this.garden;
    const slip = reckoning.sheet?.slip ?? null;
    this.classList.toggle('behind', this.#isBehind());
    this.rebuild(
      h('p.standing', {}, this.#standing()),
      slip ? this.#strip(slip) : null,
      h('div.foot', {}, slip ? this.#total(slip) : null, this.#downloads()));
    if (slip && reckoning.standing === 'fresh') this.#sayTotal(slip);
  }

  #said = null;

  #sayTotal(slip) {
    const text = this.#totalText(slip);
    if (this.#said !== null && this.#said !== text) this.say(`Slip: ${text}.`);
    this.#said = text;
  }

  #isBehind() {
    return this.garden.reckoning.standing !== 'fresh' || this.garden.keeper.standing !== 'kept';
  }

  #standing() {
    const { reckoning, keeper } = this.garden;
    if (keeper.standing === 'refused') return 'Stands as before the last change, which cannot be kept.';
    if (keeper.standing === 'away' || reckoning.standing === 'away') return 'Stands as it was: the server is away.';
    if (keeper.standing === 'clash') return 'Stands as it was, until you choose.';
    if (reckoning.standing === 'reckoning' || keeper.standing === 'saving') return 'Reckoning …';
    const sheet = reckoning.sheet;
    return sheet?.slip?.lines?.length ? 'One order for the whole garden.' : 'Nothing to buy yet: stand a bed.';
  }

  #strip(slip) {
    const compared = compareSlips(this.garden.reckoning.before, slip);
    return h('ol.lines', {}, compared.map(part => this.#line(part, slip.currency)));
  }

  #line({ line, was, state }, currency) {
    const name = line.label ?? line.item;
    return h(`li.${state}`, {},
      h('div.what', {},
        h('span.item', {}, name),
        state === 'new' ? h('span.mark', {}, 'new') : null,
        state === 'gone' ? h('span.mark', {}, 'gone') : null),
      h('div.cost', {},
        was && was.cost !== line.cost ? h('s', {}, h('span.unseen', {}, 'was '), money(was.cost, currency)) : null,
        h('span.sum', {}, state === 'gone' ? money('0.00', currency) : money(line.cost, currency))),
      state === 'gone' ? null : h('div.packs', {}, this.#packs(line, was, currency)),
      state === 'gone' ? null : h('div.need', {}, this.#need(line, was)),
      state === 'gone' || !saves(line) ? null : h('div.saved', {}, this.#saved(line, was, currency)));
  }

  #packs(line, was, currency) {
    const packs = (line.packs ?? []).filter(pack => pack.count > 0);
    if (!packs.length) return ['no price: ask the merchant'];
    const before = was && packsText(was) !== packsText(line) ? h('s', {}, packsText(was)) : null;
    return [before, ...packs.map(pack => h('span.pack', {},
      `${pack.count} × ${pack.pack}`,
      pack.price === null || pack.price === undefined ? ' (no price)' : ` at ${money(pack.price, currency)}`))];
  }

  #need(line, was) {
    const { choice } = this.garden;
    const changed = was && was.need !== line.need ? h('s', {}, roundedWithUnit(was.need, was.unit)) : null;
    const over = line.leftOver > 0 ? h('span', {}, `· ${roundedWithUnit(line.leftOver, line.unit)} over`) : null;
    return [h('span', {}, 'needs'), changed,
      shownNumber(choice, `slip ${line.item}`, { value: line.need, unit: line.unit, working: line.working, name: line.label ?? line.item }),
      over];
  }

  #saved(line, was, currency) {
    const before = was && was.saved !== line.saved && saves(was) ? h('s', {}, money(was.saved, currency)) : null;
    return [h('span.star', { 'aria-hidden': 'true' }, '✂ '), 'saves ', before, before ? ' ' : null,
      h('strong', {}, money(line.saved, currency)), ` against ${money(line.bedByBed, currency)} bed by bed`];
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
          h('strong', { id: 'slip-total' }, money(slip.total, slip.currency)))),
      slip.atLeast ? h('p.why', {}, 'A line has no price, or something cannot be made: the true sum is higher.') : null,
      Number(saved) > 0 ? h('p.saved', {}, 'Bought as one: ', h('strong', {}, money(saved, slip.currency)), ' saved') : null);
  }

  #downloads() {
    const behind = this.garden.keeper.standing !== 'kept';
    const link = (name, text) => h('a', {
      href: api.address(this.garden.id, name), download: name, 'data-key': name, 'aria-disabled': behind ? 'true' : null,
      onclick: event => {
        if (behind) {
          event.preventDefault();
          this.say('Not saved yet: the sheet would be an old one. Wait for “Saved”.');
        } else if (api.needsToken()) {
          event.preventDefault();
          this.#bring(name);
        }
      },
    }, text);
    return h('nav', { 'aria-label': 'Sheets to take along' },
      link('plan.svg', 'Plan, SVG'), link('plan.pdf', 'Plan, PDF'), link('slip.csv', 'Slip, CSV'));
  }

  async #bring(name) {
    try {
      const address = URL.createObjectURL(await api.sheet(this.garden.id, name));
      h('a', { href: address, download: name }).click();
      setTimeout(() => URL.revokeObjectURL(address), 10000);
    } catch (problem) {
      this.say(`${name} does not come: ${problem.message}`);
    }
  }
}

const saves = line => line.saved !== null && line.saved !== undefined && Number(line.saved) > 0;

customElements.define('lap-slip', LapSlip);
place({ key: 'slip', title: 'Slip', tag: 'lap-slip', side: 'strip', order: 80, first: true });
