import { bounds, middle } from '../../geometry/outline.js';
import { panned } from '../../geometry/view.js';
import { mirrorBed, nudgeBed, removeBed, turnBed } from '../../state/commands.js';
import { bedsOf, calledOf } from '../../state/plan.js';

const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

/** Steps of the arrow keys, millimetres: plain, with shift, with alt. */
const STEP = 100;
const SHIFT_STEP = 10;
const ALT_STEP = 1;

/** Pixels the yard is panned by a key, and how much nearer a key goes. */
const PAN = 60;
const NEARER = 1.25;

/** The keyboard in the yard. Single letters work only while the focus is on a bed or the yard. */
export class YardKeys {
  #yard;

  /** @param {import('../lap-yard.js').LapYard} yard */
  constructor(yard) {
    this.#yard = yard;
    yard.listen(yard.svg, 'keydown', event => this.#press(event));
    yard.listen(yard.svg, 'keyup', event => { if (ARROWS[event.key]) yard.garden.plans.seal(); });
    yard.listen(yard.svg, 'focusin', event => this.#focused(event.target.dataset?.bed));
  }

  #focused(id) {
    for (const group of this.#yard.svg.querySelectorAll('[data-bed]')) {
      group.setAttribute('tabindex', group.dataset.bed === id ? '0' : '-1');
    }
  }

  #press(event) {
    const id = event.target.dataset?.bed ?? null;
    const done = ARROWS[event.key] ? this.#arrow(event, id) : this.#key(event, id);
    if (done) event.preventDefault();
  }

  #arrow(event, id) {
    const [dx, dy] = ARROWS[event.key];
    if (event.ctrlKey || event.metaKey) {
      this.#yard.look(panned(this.#yard.view, -dx * PAN, dy * PAN));
      return true;
    }
    if (id === null) return false;
    const { choice, plans } = this.#yard.garden;
    if (choice.bed !== id) {
      this.#next(id, dx, dy);
      return true;
    }
    const step = event.altKey ? ALT_STEP : event.shiftKey ? SHIFT_STEP : STEP;
    plans.run(nudgeBed(id, dx * step, dy * step), `move ${id}`);
    this.#sayPlace();
    return true;
  }

  #sayPlace() {
    const { bed } = this.#yard.garden;
    const box = bounds(bed.outline);
    this.#yard.say(`${this.#yard.lengthText(box.left)} along, ${this.#yard.lengthText(box.front)} away.`);
  }

  /** The nearest bed that way; what lies to the side counts double. */
  #next(id, dx, dy) {
    const beds = bedsOf(this.#yard.garden.plan);
    const here = middle(bounds(beds.find(bed => bed.id === id).outline));
    let best = null;
    for (const bed of beds) {
      const there = middle(bounds(bed.outline));
      const ahead = (there[0] - here[0]) * dx + (there[1] - here[1]) * dy;
      const aside = Math.abs((there[0] - here[0]) * dy) + Math.abs((there[1] - here[1]) * dx);
      if (bed.id !== id && ahead > 1 && (!best || ahead + 2 * aside < best.far)) best = { far: ahead + 2 * aside, bed };
    }
    if (best) this.#yard.focusBed(best.bed.id);
  }

  #key(event, id) {
    if (event.ctrlKey || event.metaKey || event.altKey) return false;
    const { garden } = this.#yard;
    switch (event.key) {
      case '+': case '=': this.#yard.zoom(NEARER); return true;
      case '-': this.#yard.zoom(1 / NEARER); return true;
      case '0': this.#yard.wholeYard(); return true;
      case 'PageDown': return this.#walk(id, 1);
      case 'PageUp': return this.#walk(id, -1);
      case 'Escape':
        if (garden.choice.course !== null) garden.choice.liftCourse(null);
        else garden.choice.takeBed(null);
        return true;
      default: return id !== null && this.#bedKey(event.key, id);
    }
  }

  #walk(id, by) {
    const beds = bedsOf(this.#yard.garden.plan);
    const index = beds.findIndex(bed => bed.id === id);
    const next = beds[(index + by + beds.length) % beds.length];
    if (next) this.#yard.focusBed(next.id);
    return true;
  }

  #bedKey(key, id) {
    const { garden } = this.#yard;
    const take = () => garden.choice.takeBed(id);
    switch (key) {
      case 'Enter': case ' ':
        take();
        this.#yard.say(`You hold ${calledOf(garden.bed)}: arrow keys move it 100, with shift 10, with alt 1.`);
        return true;
      case 't': case 'T':
        take();
        garden.plans.run(turnBed(id, key === 't' ? 90 : -90));
        this.#yard.say(`Turned to ${garden.bed.placement.turn} degrees.`);
        return true;
      case 'm': case 'M':
        take();
        garden.plans.run(mirrorBed(id));
        this.#yard.say(garden.bed.placement.mirror ? 'Mirrored.' : 'As drawn again.');
        return true;
      case 'Delete': case 'Backspace': return this.#remove(id);
      default: return false;
    }
  }

  #remove(id) {
    const { garden } = this.#yard;
    const beds = bedsOf(garden.plan);
    const index = beds.findIndex(bed => bed.id === id);
    const next = beds[index + 1] ?? beds[index - 1];
    const called = calledOf(beds[index]);
    garden.plans.run(removeBed(id));
    this.#yard.render();
    if (next) this.#yard.focusBed(next.id);
    this.#yard.say(`${called} is deleted. Undo brings it back.`);
    return true;
  }
}
