import { givesOf, keepAlike, letBedGive, letGive } from '../state/asking.js';
import { money, moneyIn } from '../state/changes.js';
import { lengthCheck } from '../state/checks.js';
import { bedsOf, calledOf, unitsOf } from '../state/plan.js';
import { lengthField } from './length-field.js';
import { GardenElement, h, tick } from './make.js';
import { place } from './places.js';

/** What a longer look may take. */
const LONGER_SECONDS = 60;

/** lap-sizes: by how much sizes may give, which changes save, and each tried in the whole garden. */
export class LapSizes extends GardenElement {
  #picked = null;

  follows = ['plans', 'sizes', 'reckoning'];

  render() {
    const { plan, plans, sizes } = this.garden;
    if (sizes.standing !== 'none' && sizes.plan !== plans.stands) sizes.forget();
    if (sizes.standing !== 'ended' || !plans.trying) this.#picked = null;
    this.rebuild(...this.#gives(plan), ...this.#answer(sizes, this.garden.reckoning.sheet?.slip?.currency));
  }

  #gives(plan) {
    const units = unitsOf(plan);
    const gives = side => {
      const [least, most] = givesOf(plan, side);
      const field = (key, label, mm, range) => lengthField({ label, units, mm, check: lengthCheck(0, 1000, units), key: `${side} ${key}`,
        onlength: ({ detail }) => this.run(letGive(side, range(detail.mm))) });
      return [
        field('smaller', side === 'width' ? 'Narrower by at most' : 'Shallower by at most', -least, mm => [-mm, most]),
        field('larger', side === 'width' ? 'Wider by at most' : 'Deeper by at most', most, mm => [least, mm]),
      ];
    };
    return [
      h('p.hint', {}, 'By how much may the beds change? Beds of a type change together.'),
      h('div.fields', {}, ...gives('width'), ...gives('depth')),
      ...[['inLine', 'Walls in one line stay in line'], ['equalGaps', 'Equal gaps in a row stay equal']].map(([what, text]) => tick(what, text, plan.give?.[what] !== false, on => this.run(keepAlike(what, on)))),
      h('details', {}, h('summary', {}, 'Beds that stay as they are'), (plan.beds ?? []).filter(bed => bed.id).map(bed =>
        tick(`stays ${bed.id}`, calledOf(bedsOf(plan).find(one => one.id === bed.id) ?? bed), bed.give === false, on => this.run(letBedGive(bed.id, !on))))),
    ];
  }

  #answer(look, currency) {
    const asked = ['width', 'depth'].some(side => givesOf(this.garden.plan, side).some(mm => mm !== 0)) || (this.garden.plan.beds ?? []).some(bed => bed.give);
    if (look.standing === 'looking') {
      const found = look.progress[0];
      return [h('p.hint', {}, `Looking, ${Math.round(look.seconds)} s …${found ? ` ${money(String(found.best), currency)} found; not under ${money(String(found.bound), currency)}` : ''}`),
        h('button', { type: 'button', 'data-key': 'sizes stop', onclick: () => look.stop() }, 'Stop')];
    }
    const { trying } = this.garden;
    const begin = asked && !trying ? h('button.main', { type: 'button', 'data-key': 'sizes begin', onclick: () => this.#begin() }, 'Look for sizes that save') : null;
    if (look.standing === 'failed') return [begin, h('p.hint.wrong', { role: 'alert' }, look.problem)];
    if (look.standing !== 'ended' || !look.result) return [begin, trying && asked ? h('p.hint', {}, 'Keep what is tried or let it go, then look for sizes that save.') : null];
    const { front, growth, growthOpen } = look.result;
    const longer = !trying && look.asked < LONGER_SECONDS && !look.result.proven;
    return [
      h('div.verbs', {}, begin, longer ? h('button', { type: 'button', 'data-key': 'sizes longer', onclick: () => this.#begin(LONGER_SECONDS) }, 'Look longer') : null),
      h('p', {}, moneyIn(look.result.text, currency)),
      front.length ? h('p.hint', {}, 'Press one to try it in the whole garden.') : null,
      h('ol.answers', {}, front.map((one, i) => h('li', {},
        h('button', { type: 'button', 'data-key': `size ${i}`, 'aria-pressed': String(this.#picked === i), disabled: trying && this.#picked === null, onclick: () => this.#try(i) }, moneyIn(one.text, currency) + (one.proven ? ' (proved: none better)' : '')),
        this.#picked === i ? h('div.verbs', {},
          h('button.main', { type: 'button', 'data-key': 'size keep', onclick: () => this.#keep() }, 'Keep'),
          h('button', { type: 'button', 'data-key': 'size cancel', onclick: () => this.#letGo() }, 'Let it go')) : null))),
      growth.length || growthOpen.length ? h('details', {}, h('summary', {}, 'What could grow at no cost'), h('ul', {}, growth.map(one => h('li', {}, one.text)),
        growthOpen.map(side => h('li', {}, `Not known yet: ${side}`)))) : null,
    ];
  }

  async #begin(seconds) {
    const { sizes, plan } = this.garden;
    await sizes.begin(plan, seconds);
    if (this.isConnected && sizes.standing === 'ended') this.say(sizes.result ? moneyIn(sizes.result.text, sizes.result.currency) : '');
  }

  /** The garden with one answer's sizes is tried; pressed again it is let go. */
  #try(i) {
    const { plans, sizes } = this.garden;
    const again = this.#picked === i;
    const { garden } = sizes.result.front[i];
    if (plans.trying) plans.letGo();
    if (again) return;
    plans.tryOut();
    this.#picked = i;
    plans.run(() => garden);
  }

  #keep() {
    this.garden.plans.keepTried();
    this.say('The new sizes are kept. Undo brings back what stood before.');
  }

  #letGo() { this.garden.plans.letGo(); }
}

customElements.define('lap-sizes', LapSizes);
place({ key: 'sizes', title: 'Sizes that give', tag: 'lap-sizes', table: 'buy', order: 45 });
