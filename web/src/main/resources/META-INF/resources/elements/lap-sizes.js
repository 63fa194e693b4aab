import { api } from '../api.js';
import { givesOf, keepInLine, letBedGive, letGive } from '../state/asking.js';
import { money } from '../state/changes.js';
import { bedsOf, calledOf } from '../state/plan.js';
import { GardenElement, h } from './make.js';
import { place } from './places.js';
import { sideBySide } from './side-by-side.js';

/** lap-sizes: by how much sizes may give, which changes save, and each tried beside the garden as it stands. */
export class LapSizes extends GardenElement {
  #picked = null;
  #tried = null;

  attached() {
    this.follow([this.garden.plans, this.garden.sizes, this.garden.reckoning], () => this.render());
    this.render();
  }

  render() {
    const { plan, sizes } = this.garden;
    if (sizes.standing !== 'none' && sizes.plan !== plan) sizes.forget();
    if (sizes.standing !== 'ended') this.#picked = this.#tried = null;
    this.rebuild(...this.#gives(plan), ...this.#answer(sizes, this.garden.reckoning.sheet?.slip?.currency));
  }

  #gives(plan) {
    const gives = side => {
      const [least, most] = givesOf(plan, side);
      const field = (key, label, value, range) => h('label', {}, `${label} `, h('input', { type: 'number', min: 0, max: 1000, 'data-key': `${side} ${key}`, value,
        onchange: event => this.garden.plans.run(letGive(side, range(Math.min(1000, Math.max(0, Number(event.target.value) || 0))))) }));
      return [
        field('smaller', side === 'width' ? 'Narrower by at most, mm' : 'Shallower by at most, mm', -least, mm => [-mm, most]),
        field('larger', side === 'width' ? 'Wider by at most, mm' : 'Deeper by at most, mm', most, mm => [least, mm]),
      ];
    };
    return [
      h('p.hint', {}, 'By how much may the beds change? Beds of a type change together.'),
      h('div.fields', {}, ...gives('width'), ...gives('depth')),
      h('label.tick', {}, h('input', { type: 'checkbox', 'data-key': 'in line', checked: plan.give?.inLine !== false, onchange: event => this.garden.plans.run(keepInLine(event.target.checked)) }),
        ' Walls in one line stay in line'),
      h('details', {}, h('summary', {}, 'Beds that stay as they are'), (plan.beds ?? []).filter(bed => bed.id).map(bed => h('label.tick', {},
        h('input', { type: 'checkbox', 'data-key': `stays ${bed.id}`, checked: bed.give === false, onchange: event => this.garden.plans.run(letBedGive(bed.id, !event.target.checked)) }),
        ` ${calledOf(bedsOf(plan).find(one => one.id === bed.id) ?? bed)}`))),
    ];
  }

  #answer(look, currency) {
    const asked = ['width', 'depth'].some(side => givesOf(this.garden.plan, side).some(mm => mm !== 0)) || (this.garden.plan.beds ?? []).some(bed => bed.give);
    if (look.standing === 'looking') {
      const found = look.progress[0];
      return [h('p.hint', {}, `Looking, ${Math.round(look.seconds)} s …${found ? ` ${money(String(found.best), currency)} found; not under ${money(String(found.bound), currency)}` : ''}`),
        h('button', { type: 'button', 'data-key': 'sizes stop', onclick: () => look.stop() }, 'Stop')];
    }
    const begin = asked ? h('button.main', { type: 'button', 'data-key': 'sizes begin', onclick: () => this.#begin() }, 'Look for sizes that save') : null;
    if (look.standing === 'failed') return [begin, h('p.hint.wrong', { role: 'alert' }, look.problem)];
    if (look.standing !== 'ended' || !look.result) return [begin];
    const { front, growth, text } = look.result;
    return [
      begin,
      h('p', {}, text),
      h('ol.answers', {}, front.map((one, i) => h('li', {},
        h('button', { type: 'button', 'data-key': `size ${i}`, 'aria-pressed': String(this.#picked === i), onclick: () => this.#try(i) }, one.text + (one.proven ? ' (proved: none better)' : '')),
        this.#picked === i ? h('div', {}, this.#tried ? sideBySide(this.#tried, currency) : h('p.hint', {}, 'Working it out …'),
          h('div.verbs', {}, h('button.main', { type: 'button', 'data-key': 'size keep', onclick: () => this.#keep(one) }, 'Keep'),
            h('button', { type: 'button', 'data-key': 'size cancel', onclick: () => { this.#picked = null; this.render(); } }, 'Cancel'))) : null))),
      growth.length ? h('details', {}, h('summary', {}, 'What could grow at no cost'), h('ul', {}, growth.map(one => h('li', {}, one.text)))) : null,
    ];
  }

  async #begin() {
    const { sizes, plan } = this.garden;
    await sizes.begin(plan);
    if (this.isConnected && sizes.standing === 'ended') this.say(sizes.result?.text ?? '');
  }

  async #try(i) {
    this.#picked = i;
    this.#tried = null;
    this.render();
    const { plan, sizes } = this.garden;
    const instead = sizes.result.front[i].garden;
    let tried;
    try {
      tried = await api.tryOut({ garden: plan, instead });
    } catch (problem) {
      tried = { problem: problem.snags?.[0] ? `${problem.snags[0].where}: ${problem.snags[0].text}` : problem.message };
    }
    if (this.#picked !== i || !this.isConnected) return;
    this.#tried = tried;
    this.render();
  }

  #keep(answer) {
    this.#picked = null;
    this.garden.sizes.forget();
    this.garden.plans.run(() => answer.garden);
    this.say('The new sizes are kept. Undo brings back what stood before.');
  }
}

customElements.define('lap-sizes', LapSizes);
place({ key: 'sizes', title: 'Sizes that give', tag: 'lap-sizes', table: 'buy', order: 45 });
