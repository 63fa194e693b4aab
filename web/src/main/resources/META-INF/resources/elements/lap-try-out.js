import { api } from '../api.js';
import { removeBed, setBed } from '../state/commands.js';
import { bedsOf, calledOf } from '../state/plan.js';
import { GardenElement, h } from './make.js';
import { place } from './places.js';
import { sideBySide } from './side-by-side.js';

/** lap-try-out: changes to a bed on a copy, side by side with the garden as it stands; kept or let go. */
export class LapTryOut extends GardenElement {
  #bed = '';
  #what = 'courses';
  #value = '';
  #changes = [];
  #tried = null;

  attached() {
    this.follow([this.garden.plans, this.garden.reckoning], () => this.render());
    this.render();
  }

  render() {
    const beds = bedsOf(this.garden.plan);
    if (!beds.length) return this.rebuild(h('p.hint', {}, 'Nothing to try yet: add a bed.'));
    if (!beds.some(bed => bed.id === this.#bed)) this.#bed = beds[0].id;
    const sections = [...new Set((this.garden.reckoning.sheet?.beds ?? []).map(bed => bed.section).concat((this.garden.plan.catalogue?.sections ?? []).map(one => one.id)))];
    const pick = (key, label, options, value, act) => h('label', {}, `${label} `, h('select', { 'data-key': key, onchange: event => { act(event.target.value); this.render(); } },
      options.map(([id, text]) => h('option', { value: id, selected: id === value }, text))));
    return this.rebuild(
      h('div.fields', {},
        pick('try bed', 'Bed', beds.map(bed => [bed.id, calledOf(bed)]), this.#bed, id => { this.#bed = id; }),
        pick('try what', 'What', [['courses', 'courses'], ['section', 'section'], ['width', 'width, mm'], ['depth', 'depth, mm'], ['at', 'place, x and y in mm'], ['drop', 'leave it out']], this.#what, what => { this.#what = what; this.#value = ''; }),
        this.#what === 'drop' ? null : this.#what === 'section'
          ? pick('try value', 'Section', [['', 'choose'], ...sections.map(id => [id, id])], this.#value, id => { this.#value = id; })
          : h('label', {}, 'To ', h('input', { type: 'text', 'data-key': 'try value', inputmode: 'decimal', value: this.#value, oninput: event => { this.#value = event.target.value; } })),
        h('button', { type: 'button', 'data-key': 'try add', onclick: () => this.#add() }, 'Put on the list')),
      h('ul.changes', {}, this.#changes.map((change, i) => h('li', {}, `${change.said} `,
        h('button.quiet', { type: 'button', 'data-key': `try off ${i}`, 'aria-label': `Take off: ${change.said}`, onclick: () => { this.#changes.splice(i, 1); this.#tried = null; this.render(); } }, 'Delete')))),
      this.#changes.length ? h('div.verbs', {},
        h('button.main', { type: 'button', 'data-key': 'try', onclick: () => this.#try() }, 'Try'),
        this.#tried && !this.#tried.problem ? h('button', { type: 'button', 'data-key': 'try keep', onclick: () => this.#keep() }, 'Keep') : null,
        h('button', { type: 'button', 'data-key': 'try let go', onclick: () => { this.#changes = []; this.#tried = null; this.render(); } }, 'Cancel')) : null,
      this.#tried ? sideBySide(this.#tried, this.garden.reckoning.sheet?.slip?.currency) : null);
  }

  #add() {
    const bed = this.#bed;
    if (this.#what === 'drop') this.#changes.push({ said: `Leave out bed ${bed}`, ask: { drop: bed }, command: removeBed(bed) });
    else {
      const value = this.#read();
      if (value === null) {
        this.#tried = { problem: this.#what === 'at' ? 'Write x and y, as in 800, 1500.' : 'Write a number, as in 2.' };
        return this.render();
      }
      const set = { [this.#what]: value };
      this.#changes.push({ said: `Bed ${bed}: ${this.#what} ${[value].flat().join(', ')}`, ask: { bed, set }, command: setBed(bed, set) });
    }
    this.#value = '';
    this.#tried = null;
    return this.render();
  }

  #read() {
    if (this.#what === 'section') return this.#value || null;
    const numbers = this.#value.split(/[,;\s]+/).filter(Boolean).map(Number);
    if (numbers.some(number => !Number.isFinite(number))) return null;
    return this.#what === 'at' ? (numbers.length === 2 ? numbers : null) : numbers.length === 1 ? numbers[0] : null;
  }

  async #try() {
    try {
      this.#tried = await api.tryOut({ garden: this.garden.plan, changes: this.#changes.map(change => change.ask) });
    } catch (problem) {
      this.#tried = { problem: problem.snags?.[0] ? `${problem.snags[0].where}: ${problem.snags[0].text}` : problem.message };
    }
    if (this.isConnected) this.render();
  }

  #keep() {
    const changes = this.#changes;
    this.#changes = [];
    this.#tried = null;
    this.garden.plans.run(plan => changes.reduce((next, change) => change.command(next), plan));
    this.say('The try-out is kept. Undo brings back what stood before.');
  }
}

customElements.define('lap-try-out', LapTryOut);
place({ key: 'try-out', title: 'Try-out', tag: 'lap-try-out', table: 'lay-out', order: 60 });
