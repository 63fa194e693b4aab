import { freePlace } from '../geometry/free-place.js';
import { rectangle, widened } from '../geometry/outline.js';
import { readCourses, sideCheck } from '../state/checks.js';
import { lastBed, standBed } from '../state/commands.js';
import { USUAL, bedsOf, unitsOf, yardOf } from '../state/plan.js';
import { countField } from './count-field.js';
import { lengthField } from './length-field.js';
import { GardenElement, h } from './make.js';

/** Room kept to the neighbours when a bed finds its own place, millimetres. */
const CLEAR = 600;

/** Walls of a new bed until another section is chosen. */
const THICKNESS = 100;

/** stand-bed: a bed in three entries. Fires `closed` when done or given up, `stood` with the new bed's code. */
export class StandBed extends GardenElement {
  attached() {
    const { plan } = this.garden;
    const units = unitsOf(plan);
    this.width = lengthField({ label: 'Width, along the house', units, many: true, hint: `2400, 2.4 m or 7' 10 1/2"`,
      check: sideCheck(plan, THICKNESS, 'width'), key: 'stand width' });
    this.depth = lengthField({ label: 'Depth, away from the house', units, hint: '1200, or 2400 x 1200 above',
      check: sideCheck(plan, THICKNESS, 'depth'), key: 'stand depth' });
    this.courses = countField({ label: 'Courses', read: readCourses, value: USUAL.courses, hint: 'rings of timber, 200 high each',
      key: 'stand courses' });
    this.listen(this.width, 'length', event => {
      if (event.detail.more !== undefined) this.depth.show(event.detail.more);
    });
    this.replaceChildren(h('form', { novalidate: true, 'aria-labelledby': 'stand-title', onsubmit: this.#stand },
      h('h2', { id: 'stand-title' }, 'Stand a bed'),
      this.width, this.depth, this.courses,
      h('p.usual', {}, 'Timber 100 x 200, turning lap, slatted base, liner and fill as usual: all can be changed later.'),
      h('div.verbs', {},
        h('button.main', { type: 'submit' }, 'Stand it'),
        h('button', { type: 'button', onclick: () => this.#close() }, 'Leave it'))));
    this.listen(this, 'keydown', event => { if (event.key === 'Escape') this.#close(); });
    this.width.input.focus();
  }

  #stand = event => {
    event.preventDefault();
    const fields = [this.width, this.depth, this.courses];
    const good = fields.map(field => field.confirm());
    const wrong = fields[good.indexOf(false)];
    if (wrong) {
      wrong.input.focus();
      this.say(wrong.querySelector('.note').textContent);
      return;
    }
    const { plans } = this.garden;
    const [width, depth, courses] = [this.width.length, this.depth.length, this.courses.entry];
    const paths = (plans.plan.paths ?? []).filter(path => path.line?.length > 1)
      .map(path => widened(path.line, path.width ?? USUAL.pathWidth));
    const taken = [...bedsOf(plans.plan).map(bed => bed.outline), ...paths];
    const at = freePlace(rectangle(width, depth), taken, yardOf(plans.plan), CLEAR);
    plans.run(standBed({ width, depth, courses, at }));
    const id = lastBed(plans.plan);
    this.garden.choice.takeBed(id);
    this.say(`Bed ${id} stands ${at[0]} along and ${at[1]} away from the house.`);
    this.dispatchEvent(new CustomEvent('stood', { detail: id, bubbles: true }));
    this.#close();
  };

  #close() { this.dispatchEvent(new CustomEvent('closed', { bubbles: true })); }
}

customElements.define('stand-bed', StandBed);
