import { api } from '../api.js';
import { GardenElement, h } from './make.js';
import { place } from './places.js';
import { bringingLink, sheetLink } from './sheet-link.js';

/** What whoever tends the garden next is given, by the names of the sheets. */
const SHEETS = [['bed-register', 'Bed register: what each bed is, and where'], ['setting-out', 'Setting-out as built'], ['base-and-liner', 'Base and liner: what is hidden in each bed'],
  ['provenance', 'Where the boards come from'], ['access', 'Access check']];

/** lap-hand-over: the sheets and the file that go to whoever tends the garden from now on. */
export class LapHandOver extends GardenElement {
  follows = ['keeper', 'plans'];

  render() {
    const done = (this.garden.plan.tally?.done ?? []).length;
    const tasks = this.garden.reckoning.sheet?.weekends?.tasks.length ?? 0;
    this.rebuild(
      h('p', {}, tasks ? `${done} of ${tasks} tasks are marked as done in the tally.` : 'Nothing is built yet: add a bed.'),
      h('ul.links', {}, SHEETS.map(([name, text]) => h('li', {}, bringingLink(this, api, `${name}.pdf`, text, `${name}.pdf`)))),
      h('p', {}, sheetLink(this, api, 'file', 'The garden with its history, as a file', 'garden.json')),
      h('p.hint', {}, 'Keep the liner and the fixings in mind: what is hidden in a bed stands only on these sheets.'));
  }
}

customElements.define('lap-hand-over', LapHandOver);
place({ key: 'hand-over', title: 'Hand-over', tag: 'lap-hand-over', table: 'share', order: 50 });
