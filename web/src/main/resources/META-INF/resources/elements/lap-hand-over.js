import { api } from '../api.js';
import { readNumber, readText } from '../state/checks.js';
import { handOverOf, setFinishYears, setTender, tenderOf } from '../state/hand-over.js';
import { bedsOf } from '../state/plan.js';
import { countField } from './count-field.js';
import { custom, GardenElement, h } from './make.js';
import { place } from './places.js';
import { bringingLink, sheetLink } from './sheet-link.js';
import './snag-list.js';

/** What whoever tends the garden next is given, by the names of the sheets. */
const SHEETS = [['hand-over', 'All of it in one file, without what goods cost'], ['bed-register', 'Bed register: what each bed is, and where'], ['as-built', 'As built against planned, with money: for you'],
  ['care', 'Care: what to do when'], ['setting-out', 'Setting-out as built'], ['base-and-liner', 'Base and liner: what is hidden in each bed'], ['provenance', 'Where the boards come from'],
  ['access', 'Access check'], ['snag-list', 'Snag list']];

/** lap-hand-over: the sheets and the file that go to whoever tends the garden from now on. */
export class LapHandOver extends GardenElement {
  #snags = null;

  follows = ['keeper', 'plans', 'reckoning'];

  shows = ['weekends'];

  render() {
    const { plan, plans, reckoning } = this.garden;
    const done = (plan.tally?.done ?? []).length;
    const tasks = reckoning.sheet?.weekends?.tasks.length ?? 0;
    const beds = bedsOf(plan);
    this.rebuild(
      this.lacking() ?? h('p', {}, tasks ? `${done} of ${tasks} tasks are marked as done in the tally.` : 'Nothing is built yet: add a bed.'),
      h('ul.links', {}, SHEETS.map(([name, text]) => h('li', {}, bringingLink(this, api, `${name}.pdf`, text, `${name}.pdf`)))),
      h('p', {}, sheetLink(this, api, 'care.ics', 'Care as a calendar file', 'care.ics')),
      h('p', {}, sheetLink(this, api, 'file', 'The garden with its history, as a file', 'garden.json')),
      h('p.hint', {}, 'How the drawing changed since a revision is told under Revisions.'),
      countField({ label: 'Years from coat to coat', key: 'finish years', value: handOverOf(plan).finishYears ?? '', hint: 'as the tin says', read: text => (text.trim() ? readNumber(1, 30)(text) : { value: undefined }),
        oncount: ({ detail }) => plans.run(setFinishYears(detail)) }),
      beds.length ? h('details', {}, h('summary', { 'data-key': 'tenders' }, 'Who tends which bed'),
        beds.map(({ id }) => countField({ label: `Bed ${id}`, mode: 'text', key: `tender ${id}`, value: tenderOf(plan, id), read: readText(100), oncount: ({ detail }) => plans.run(setTender(id, detail)) }))) : null,
      this.#snags ??= custom('snag-list', { garden: this.garden }),
      h('p.hint', {}, 'Keep the liner and the fixings in mind: what is hidden in a bed stands only on these sheets.'));
  }
}

customElements.define('lap-hand-over', LapHandOver);
place({ key: 'hand-over', title: 'Hand-over', tag: 'lap-hand-over', table: 'share', order: 50 });
