import { layOutWith, pin, rankFirst, wish, wishOf } from '../state/asking.js';
import { moneyIn } from '../state/changes.js';
import { lengthCheck } from '../state/checks.js';
import { bedsOf, calledOf, unitsOf } from '../state/plan.js';
import { lengthField } from './length-field.js';
import { GardenElement, h, options, row, table, tick } from './make.js';
import { place } from './places.js';

const COUNTS = { beds: 'number of beds', area: 'room to plant', sun: 'sun on food beds', paths: 'little path', barrow: 'short ways with the barrow', hose: 'short hose', cost: 'low cost' };

/** lap-laid-out: what the yard is to be laid out for, proposals as ghosts in the yard, and one of them made the garden. */
export class LapLaidOut extends GardenElement {
  follows = ['plans', 'layOut'];

  render() {
    const { plan, layOut } = this.garden;
    if (layOut.standing !== 'none' && layOut.plan !== plan) layOut.forget();
    this.rebuild(...this.#wishes(plan), ...this.#answer(layOut));
  }

  #wishes(plan) {
    const types = plan.types ?? [];
    const number = (key, label, value, act) => h('label', {}, h('span.unseen', {}, label), h('input', { type: 'number', min: 0, max: 1000, 'data-key': key, value: value ?? '',
      onchange: event => this.run(act(event.target.value === '' ? null : Math.max(0, Math.round(Number(event.target.value))))) }));
    const units = unitsOf(plan);
    const length = (key, label, field, most) => lengthField({ label, units, mm: plan.layOut?.[field] ?? 0, check: lengthCheck(0, most, units), key, onlength: ({ detail }) => this.run(layOutWith(field, detail.mm)) });
    return [
      types.length ? table(['Type', 'At least', 'At most'], types.map(type => {
        const wanted = wishOf(plan, type.id);
        return row(type.name || type.id, [
          number(`least ${type.id}`, `${type.name || type.id}, at least`, wanted?.least ?? (wanted ? 0 : null), least => wish(type.id, least, wanted?.most ?? null)),
          number(`most ${type.id}`, `${type.name || type.id}, at most`, wanted?.most ?? null, most => wish(type.id, wanted?.least ?? (most === null ? null : 0), most))]);
      })) : null,
      h('p.hint', {}, plan.layOut?.beds?.length ? 'Without "at most", as many as fit.' : 'No type is asked for: the beds that are drawn are laid out anew.'),
      h('div.fields', {},
        h('label', {}, 'What counts most ', h('select', { 'data-key': 'rank', onchange: event => this.run(rankFirst(event.target.value)) },
          options(Object.entries(COUNTS), plan.layOut?.rank?.[0] ?? 'beds'))),
        length('path width', 'Paths (0: the standard\'s)', 'path', 5000), length('margin', 'Free along the edge', 'margin', 20000)),
      bedsOf(plan).length ? h('details', {}, h('summary', {}, `Beds that stay where they are: ${plan.layOut?.pinned?.length ?? 0}`),
        bedsOf(plan).map(bed => tick(`pin ${bed.id}`, calledOf(bed), (plan.layOut?.pinned ?? []).includes(bed.id), on => this.run(pin(bed.id, on))))) : null,
    ];
  }

  #answer(look) {
    if (look.standing === 'looking') {
      const found = look.progress[0];
      return [h('p.hint', {}, `Laying the yard out, ${Math.round(look.seconds)} s …${found ? ` ${found.best} beds so far; more than ${found.bound} cannot fit` : ''}`),
        h('button', { type: 'button', 'data-key': 'lay-out stop', onclick: () => look.stop() }, 'Stop')];
    }
    const begin = h('button.main', { type: 'button', 'data-key': 'lay-out begin', onclick: () => this.#begin() }, look.standing === 'ended' ? 'Lay out again' : 'Lay out the yard');
    if (look.standing === 'failed') return [begin, h('p.hint.wrong', { role: 'alert' }, look.problem)];
    if (look.standing !== 'ended' || !look.result) return [begin];
    const { proposals, text, currency } = look.result;
    const { shown } = look;
    return [
      begin,
      h('p', {}, text),
      h('ol.proposals', {}, proposals.map((one, i) => h('li', {},
        h('button', { type: 'button', 'data-key': `proposal ${i}`, 'aria-pressed': String(shown === i), onclick: () => look.show(shown === i ? null : i) }, moneyIn(one.text, currency)),
        one.ground.length ? h('p.hint', {}, `The ground: ${one.ground.join('; ')}`) : null,
        shown === i ? h('p.hint', {}, 'It lies over the yard in dashed lines.') : null,
        shown === i ? h('div.verbs', {},
          h('button.main', { type: 'button', 'data-key': 'proposal keep', onclick: () => this.#keep(one) }, 'Keep this'),
          h('button', { type: 'button', 'data-key': 'proposal cancel', onclick: () => look.show(null) }, 'Cancel')) : null))),
    ];
  }

  async #begin() {
    const { layOut, plan } = this.garden;
    await layOut.begin(plan);
    if (this.isConnected && layOut.standing === 'ended') this.say(layOut.result?.text ?? '');
  }

  #keep(proposal) {
    this.garden.layOut.forget();
    this.run(() => proposal.garden);
    this.say('The proposal is kept. Undo brings back what stood before.');
  }
}

customElements.define('lap-laid-out', LapLaidOut);
place({ key: 'laid-out', title: 'Laid out for you', tag: 'lap-laid-out', table: 'lay-out', order: 40 });
