import { bounds, middle } from '../../geometry/outline.js';
import { panned } from '../../geometry/view.js';
import { mirrorBed, removeBed, turnBed } from '../../state/commands.js';
import { boxOf, moveBeds, removeBeds, turnBeds } from '../../state/group.js';
import { calledThing, moveThing } from '../../state/things.js';
import { bedsOf, calledOf } from '../../state/plan.js';

const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

/** Steps of the arrow keys, millimetres: plain, with shift, with alt. */
const STEP = 100;
const SHIFT_STEP = 10;
const ALT_STEP = 1;

/** Pixels the yard is panned by a key, and how much nearer a key goes. */
const PAN = 60;
const NEARER = 1.2;

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
    const { choice, plans } = this.#yard.garden;
    const step = event.altKey ? ALT_STEP : event.shiftKey ? SHIFT_STEP : STEP;
    if (choice.thing) {
      plans.run(moveThing(choice.thing, dx * step, dy * step), `move ${choice.thing.join()}`);
      this.#yard.say(`${calledThing(plans.plan, choice.thing)} is moved.`);
      return true;
    }
    if (id !== null && !choice.has(id)) {
      this.#next(id, dx, dy);
      return true;
    }
    if (!choice.beds.length) return this.#first();
    plans.run(moveBeds(choice.beds, dx * step, dy * step), `move ${choice.beds.join()}`);
    this.#sayPlace();
    return true;
  }

  #sayPlace() {
    const { plan, choice } = this.#yard.garden;
    const box = boxOf(plan, choice.beds);
    this.#yard.say(`${this.#yard.lengthText(box.left)} along, ${this.#yard.lengthText(box.front)} away.`);
  }

  /** From the yard itself the arrows lead to its first bed. */
  #first() {
    const [bed] = bedsOf(this.#yard.garden.plan);
    if (bed) this.#yard.focusBed(bed.id);
    return Boolean(bed);
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
    const { garden, sketch } = this.#yard;
    if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'a') {
      garden.choice.takeBeds(bedsOf(garden.plan).map(bed => bed.id));
      this.#yard.say(`${garden.choice.beds.length} beds in hand.`);
      return true;
    }
    if (event.ctrlKey || event.metaKey || event.altKey) return false;
    if (sketch && this.#sketchKey(event.key, sketch)) return true;
    switch (event.key) {
      case '+': case '=': this.#yard.zoom(NEARER); return true;
      case '-': this.#yard.zoom(1 / NEARER); return true;
      case '0': this.#yard.wholeYard(); return true;
      case 'PageDown': return this.#walk(id, 1);
      case 'PageUp': return this.#walk(id, -1);
      case 'b': case 'B': this.#yard.ask('add bed'); return true;
      case 'd': case 'D': this.#yard.ask('duplicate'); return true;
      case '?': this.#yard.ask('keys'); return true;
      case 'Delete': case 'Backspace': return this.#remove(id);
      case 'Escape':
        if (garden.choice.course !== null) garden.choice.liftCourse(null);
        else garden.choice.takeNothing();
        return true;
      default: return id !== null && this.#bedKey(event, id);
    }
  }

  #sketchKey(key, sketch) {
    switch (key) {
      case 'Enter': sketch.done(); return true;
      case 'Escape': sketch.leave(); return true;
      case 'Backspace': case 'Delete': sketch.takeBack(); return true;
      default: return false;
    }
  }

  #walk(id, by) {
    const beds = bedsOf(this.#yard.garden.plan);
    const index = beds.findIndex(bed => bed.id === id);
    const next = beds[(index + by + beds.length) % beds.length];
    if (next) this.#yard.focusBed(next.id);
    return true;
  }

  #bedKey({ key, shiftKey }, id) {
    const { garden } = this.#yard;
    const { choice } = garden;
    if (/^[tm]$/i.test(key) && !choice.has(id)) return this.#notInHand(id);
    switch (key) {
      case 'Enter': case ' ':
        if (shiftKey) choice.alsoTake(id);
        else choice.takeBed(id);
        this.#yard.say(choice.beds.length === 1
          ? `You hold ${calledOf(garden.bed)}: arrow keys move it 100, with shift 10, with alt 1.` : `${choice.beds.length} beds in hand.`);
        return true;
      case 't': case 'T':
        this.#turn(key === 't' ? 90 : -90);
        return true;
      case 'm': case 'M':
        this.#mirror();
        return true;
      default: return false;
    }
  }

  /** Nothing is changed that was not taken hold of: the focus alone is no hold. */
  #notInHand(id) {
    const bed = bedsOf(this.#yard.garden.plan).find(one => one.id === id);
    this.#yard.say(bed ? `${calledOf(bed)} is not in hand. Enter takes hold of it.` : 'Nothing is in hand.');
    return true;
  }

  #turn(degrees) {
    const { garden } = this.#yard;
    const { beds } = garden.choice;
    garden.plans.run(beds.length > 1 ? turnBeds(beds, { turn: degrees }) : turnBed(beds[0], degrees));
    this.#yard.say(beds.length > 1 ? `${beds.length} beds turned by ${degrees} degrees.` : `Turned to ${garden.bed.placement.turn} degrees.`);
  }

  #mirror() {
    const { garden } = this.#yard;
    const { beds } = garden.choice;
    garden.plans.run(beds.length > 1 ? turnBeds(beds, { mirror: true }) : mirrorBed(beds[0]));
    this.#yard.say(beds.length > 1 ? `${beds.length} beds mirrored.` : garden.bed.placement.mirror ? 'Mirrored.' : 'As drawn again.');
  }

  #remove(id) {
    const { garden } = this.#yard;
    const { thing } = garden.choice;
    if (thing) {
      this.#yard.ask('delete thing', { thing });
      return true;
    }
    const beds = bedsOf(garden.plan);
    const gone = garden.choice.beds;
    if (!gone.length || (id !== null && !gone.includes(id))) return this.#notInHand(id);
    const index = beds.findIndex(bed => bed.id === gone[0]);
    const next = [...beds.slice(index), ...beds.slice(0, index).reverse()].find(bed => !gone.includes(bed.id));
    garden.plans.run(gone.length > 1 ? removeBeds(gone) : removeBed(gone[0]));
    this.#yard.render();
    if (next) this.#yard.focusBed(next.id);
    this.#yard.say(`${gone.length > 1 ? `${gone.length} beds are` : `${calledOf(beds[index])} is`} deleted. Undo brings ${gone.length > 1 ? 'them' : 'it'} back.`);
    return true;
  }
}
