import { shown } from '../geometry/length.js';
import { api } from '../api.js';
import { houseWall, put } from '../state/ground.js';
import { unitsOf, yardOf } from '../state/plan.js';
import './ground-form.js';
import { custom, h, row, table } from './make.js';
import { PartPlace } from './part-place.js';
import { place } from './places.js';
import { sheetLink } from './sheet-link.js';

/** lap-pegs: the baseline, and each bed from it: along, off, tapes, levels, diagonals. */
export class LapPegs extends PartPlace {
  #form = null;

  render() {
    const has = Boolean(this.garden.plan.ground?.baseline);
    if (has) this.bring('pegs', 'The pegs are not worked out');
    this.rebuild(
      has ? this.#form ??= custom('ground-form', { garden: this.garden, yard: this.yard, form: 'baseline' })
        : [h('p.hint', {}, 'Beds are pegged out from a baseline: two marks that stay, as far apart as you can.'),
          h('button.main', { type: 'button', 'data-key': 'house wall', onclick: () => this.#houseWall() }, 'Take the house wall')],
      has ? this.standing() : null,
      h('div.pegs', {}, has && this.part ? [h('p', {}, sheetLink(this, api, 'setting-out.pdf', 'Setting-out sheet to print')), this.#beds()] : null));
  }

  #houseWall() {
    const [from, to] = houseWall(yardOf(this.garden.plan)) ?? [[0, 0], [6000, 0]];
    this.run(put(['ground', 'baseline'], { from, to }));
    this.render();
    this.querySelector('input')?.focus();
    this.say('The house wall is the baseline.');
  }

  #beds() {
    const units = unitsOf(this.garden.plan);
    const mm = value => shown(value, units);
    return this.part.beds.map(bed => {
      const low = Math.max(...bed.pegs.map(peg => peg.drop ?? -Infinity));
      const levels = Number.isFinite(low);
      const heads = ['Peg', 'Along', 'Off', 'From start', 'From end', ...(levels ? ['Level'] : [])];
      return h('section', { 'data-pegs': bed.bed },
        h('h3', {}, `Bed ${bed.bed}`),
        h('div.across', { tabindex: '0', role: 'group', 'aria-label': `Pegs of bed ${bed.bed}` }, table(heads, bed.pegs.map(peg => row(`P${peg.peg}`,
          [mm(peg.along), mm(peg.off), mm(peg.first) + (peg.flat ? '*' : ''), mm(peg.second) + (peg.flat ? '*' : ''), ...(levels ? [`+${mm(Math.round((low - peg.drop) * 10) / 10)}`] : [])])))),
        h('p.hint', {}, bed.diagonals.map(one => `P${one.from}–P${one.to} ${mm(one.length)}`).join(', ')),
        bed.square ? h('p.hint', {}, `Square at P${bed.square.peg}: ${mm(bed.square.along)}, ${mm(bed.square.other)}, ${mm(bed.square.across)} across.`) : null);
    });
  }
}

customElements.define('lap-pegs', LapPegs);
place({ key: 'pegs', title: 'Setting out', tag: 'lap-pegs', table: 'build', order: 40 });
