import { shown } from '../geometry/length.js';
import { api } from '../api.js';
import { bedsOf, calledOf, unitsOf } from '../state/plan.js';
import { GardenElement, h, row, table } from './make.js';
import { place } from './places.js';
import { sheetLink } from './sheet-link.js';

const ENDS = { start: 'at its start', end: 'at its end', both: 'at both ends', none: 'at no end' };

/** lap-course-stack: the courses of the bed in hand as a stack, drawn large. Pressing one lifts that ring out in the yard and lists its pieces. */
export class LapCourseStack extends GardenElement {
  follows = ['choice', 'plans', 'reckoning'];

  shows = ['beds'];

  render() {
    const { bed, choice, reckoning, plan } = this.garden;
    const beds = bedsOf(plan);
    const pick = h('label.pick', {}, 'Bed ', h('select', { 'data-key': 'courses bed', onchange: event => choice.takeBed(event.target.value || null) },
      h('option', { value: '', selected: !bed }, 'choose'), beds.map(one => h('option', { value: one.id, selected: one.id === bed?.id }, calledOf(one)))));
    const part = bed && reckoning.bed(bed.id);
    if (!beds.length) return this.rebuild(h('p.hint', {}, 'No courses yet: add a bed.'));
    if (!part?.pieces?.length) return this.rebuild(pick, h('p.hint', {}, bed ? 'Its courses are not worked out yet.' : 'Take a bed in hand: its courses are stacked here.'));
    const top = Math.max(...part.pieces.map(piece => piece.course));
    return this.rebuild(pick,
      h('div.stack', { role: 'group', 'aria-label': `Courses of ${calledOf(bed)}` }, Array.from({ length: top }, (_, i) => this.#course(top - i, part, choice.course === top - i))),
      choice.course ? this.#pieces(part, choice.course) : h('p.hint', {}, 'Press a course: its ring is lifted out in the yard and its pieces are listed here.'),
      h('nav', { 'aria-label': 'Course cards' }, sheetLink(this, api, 'course-cards.pdf', 'Course cards, PDF')));
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
    }, h('span', {}, `Course ${course}`), h('span.sum', {}, `${pieces.length} pieces, ${total}`));
  }

  #pieces(part, course) {
    const units = unitsOf(this.garden.plan);
    const rows = part.pieces.filter(piece => piece.course === course)
      .map(piece => row(piece.mark, [shown(piece.length, units), ENDS[piece.runsPast] ?? ''], { 'data-key': `piece ${piece.mark}` }));
    const pieces = table(['Piece', 'Length', 'Runs through'], rows, 'table.course-pieces', { 'data-key': 'course pieces' });
    pieces.prepend(h('caption', {}, `Course ${course}`));
    return pieces;
  }
}

customElements.define('lap-course-stack', LapCourseStack);
place({ key: 'courses', title: 'Courses', tag: 'lap-course-stack', table: 'build', order: 30, lifts: true });
