import { stageBed } from '../state/commands.js';
import { setBeds } from '../state/group.js';
import { bedsOf, calledOf } from '../state/plan.js';
import { weekendsOfStage } from '../state/weekends.js';
import { GardenElement, h } from './make.js';
import { place } from './places.js';

/** lap-stages: the groups of beds that are built together, one after another. What is in hand can be put into another. */
export class LapStages extends GardenElement {
  follows = ['plans', 'choice', 'reckoning'];

  shows = ['weekends'];

  render() {
    const beds = bedsOf(this.garden.plan);
    const { choice } = this.garden;
    const held = this.garden.beds;
    const last = Math.max(1, ...beds.map(bed => bed.stage)) + (held.length ? 1 : 0);
    this.rebuild(
      h('p.hint', {}, 'Beds of one stage are bought, cut and built together. A stage is no date: Weekends says when it is done. ',
        held.length ? `Press a stage to put ${held.length > 1 ? `the ${held.length} beds` : calledOf(held[0])} into it.` : 'Take a bed in hand to put it into another stage.'),
      h('ol.ribbon', {}, Array.from({ length: last }, (_, i) => this.#stage(i + 1, beds.filter(bed => bed.stage === i + 1), held))),
      h('p.legend', {}, h('span.bed', {}, 'A'), ' a bed ', h('span.bed.chosen', {}, 'A'), ' in hand'));
    this.classList.toggle('several', choice.beds.length > 1);
  }

  #stage(stage, beds, held) {
    const days = weekendsOfStage(this.garden.reckoning.sheet?.weekends, beds.map(bed => bed.id));
    return h('li', { 'data-key': `stage ${stage}` },
      h('div.head', {}, h('h3', {}, `Stage ${stage}`), h('span.when', {}, beds.length ? days : 'empty'),
        held.length ? h('button', { type: 'button', 'data-key': `put stage ${stage}`, 'aria-pressed': String(held.every(bed => bed.stage === stage)), onclick: () => this.#put(stage, held) }, 'Put it here') : null),
      h('div.codes', {}, beds.map(bed => h(`button.code`, { type: 'button', 'data-key': `take stage ${bed.id}`, 'aria-pressed': String(this.garden.choice.has(bed.id)), 'aria-label': `Take hold of ${calledOf(bed)}`,
        onclick: () => this.garden.choice.takeBed(bed.id) }, bed.id))));
  }

  #put(stage, held) {
    this.run(setBeds(held.map(bed => bed.id), id => stageBed(id, stage)));
    this.say(`${held.length > 1 ? `${held.length} beds are` : `${calledOf(held[0])} is`} built in stage ${stage}.`);
  }
}

customElements.define('lap-stages', LapStages);
place({ key: 'stages', title: 'Stages', tag: 'lap-stages', table: 'build', order: 10 });
