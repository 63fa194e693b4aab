import { bounds } from '../geometry/outline.js';
import { toScreen } from '../geometry/view.js';
import { shown } from '../geometry/length.js';
import { calledOf, unitsOf } from '../state/plan.js';
import { GardenElement, h } from './make.js';

/** lap-courses: the chosen bed's courses as a small stack over it. Pressing one lifts that ring out. Set `yard`. */
export class LapCourses extends GardenElement {
  attached() {
    this.setAttribute('role', 'group');
    this.follow([this.garden.choice, this.garden.plans, this.garden.reckoning], () => this.render());
    this.listen(this.yard, 'viewed', () => this.#place());
    for (const type of ['sketched', 'sketch-ended']) this.listen(this.yard, type, () => this.render());
    this.render();
  }

  render() {
    const { bed, choice, reckoning } = this.garden;
    const part = bed && reckoning.bed(bed.id);
    const there = bed && !this.yard.sketch && part?.pieces?.length;
    this.hidden = !there;
    if (!there) return this.replaceChildren();
    this.setAttribute('aria-label', `Courses of ${calledOf(bed)}`);
    const top = Math.max(...part.pieces.map(piece => piece.course));
    const courses = Array.from({ length: top }, (_, i) => top - i);
    this.rebuild(courses.map(course => this.#course(course, part, choice.course === course)));
    return this.#place();
  }

  #course(course, part, lifted) {
    const pieces = part.pieces.filter(piece => piece.course === course);
    const units = unitsOf(this.garden.plan);
    const total = shown(pieces.reduce((sum, piece) => sum + piece.length, 0), units);
    return h(`button.course${course % 2 ? '.odd' : '.even'}`, {
      type: 'button', 'aria-pressed': String(lifted), 'data-key': `course ${course}`,
      'aria-label': `Course ${course}: ${pieces.length} pieces, ${total} together`,
      onclick: () => {
        this.garden.choice.liftCourse(lifted ? null : course);
        this.say(lifted ? 'Put back.' : `Course ${course}: ${pieces.map(piece => `${piece.mark} ${shown(piece.length, units)}`).join(', ')}.`);
      },
    }, h('span', {}, String(course)), h('span.sum', {}, `${pieces.length} pieces`));
  }

  #place() {
    const { bed } = this.garden;
    if (!bed || this.hidden || this.yard.carried) return;
    const { view, frame } = this.yard;
    const box = bounds(bed.outline);
    const [left, back] = toScreen(view, [box.left, box.back]);
    const [right, front] = toScreen(view, [box.right, box.front]);
    const wide = Math.max(this.offsetWidth, 90);
    const high = this.offsetHeight;
    let x = (left + right) / 2 - wide / 2;
    let y = back - high - 12;
    if (y < frame.top) {
      y = Math.max(frame.top, Math.min(back, front));
      x = right + 12 + wide < frame.left + frame.width ? right + 12 : left - wide - 12;
    }
    x = Math.max(frame.left, Math.min(frame.left + frame.width - wide, x));
    y = Math.max(frame.top, Math.min(frame.top + frame.height - high, y));
    this.style.transform = `translate(${Math.round(x)}px, ${Math.round(y)}px)`;
  }
}

customElements.define('lap-courses', LapCourses);
