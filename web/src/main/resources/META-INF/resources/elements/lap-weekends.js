import { bedsOf, calledOf } from '../state/plan.js';
import { stageBed } from '../state/commands.js';
import { GardenElement, h } from './make.js';

/** More codes than this in one cell are counted instead of listed. */
const MANY = 12;

/** lap-weekends: the ribbon of stages, each with the beds that are built with it. Pressing one moves the chosen bed there. */
export class LapWeekends extends GardenElement {
  attached() {
    this.setAttribute('role', 'region');
    this.tabIndex = 0;
    this.setAttribute('aria-label', 'Ribbon of stages');
    this.follow([this.garden.plans, this.garden.choice], () => this.render());
    this.render();
  }

  render() {
    const beds = bedsOf(this.garden.plan);
    const chosen = this.garden.bed;
    const last = Math.max(1, ...beds.map(bed => bed.stage)) + (chosen ? 1 : 0);
    const cells = Array.from({ length: last }, (_, i) => this.#cell(i + 1, beds.filter(bed => bed.stage === i + 1), chosen));
    this.rebuild(h('ol', {}, cells));
  }

  #cell(stage, beds, chosen) {
    const here = chosen?.stage === stage;
    const codes = beds.slice(0, MANY).map(bed =>
      h(`span.bed${bed.id === chosen?.id ? '.chosen' : ''}`, { 'aria-hidden': 'true' }, bed.id));
    const content = [
      h('span.name', {}, `Stage ${stage}`),
      h('span.codes', {}, ...codes,
        beds.length > MANY ? h('span.rest', { 'aria-hidden': 'true' }, `+${beds.length - MANY}`) : null,
        beds.length ? null : h('span.none', { 'aria-hidden': 'true' }, chosen ? 'put here' : 'nothing')),
    ];
    const told = `${beds.length} ${beds.length === 1 ? 'bed' : 'beds'}`;
    if (!chosen) return h('li', {}, h('div.cell', {}, ...content, h('span.unseen', {}, `, ${told}`)));
    return h('li', {}, h('button.cell', {
      type: 'button', 'data-key': `stage ${stage}`, 'aria-pressed': String(here),
      'aria-label': `Stage ${stage}, ${told}: build ${calledOf(chosen)} then`,
      onclick: () => {
        this.garden.plans.run(stageBed(chosen.id, stage));
        this.say(`${calledOf(chosen)} is built with stage ${stage}.`);
      },
    }, ...content));
  }
}

customElements.define('lap-weekends', LapWeekends);
