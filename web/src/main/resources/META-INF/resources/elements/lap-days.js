import { api } from '../api.js';
import { clock, dayName, fullness, hours, tasksById, waitsOver, weekendsOf } from '../state/weekends.js';
import { CREW_LISTS, CREW_OBJECTS } from '../state/crew-forms.js';
import './ground-form.js';
import { custom, GardenElement, h } from './make.js';
import './shelf-piece.js';
import { place } from './places.js';
import { sheetLink } from './sheet-link.js';
import './staging-cost.js';

/** lap-days: the weekends as a ribbon of days that fill like buckets; what dries or cures is hatched across them. */
export class LapDays extends GardenElement {
  #open = null;
  #crew = null;

  follows = ['reckoning', 'keeper'];

  shows = ['weekends'];

  get weekends() { return this.garden.reckoning.sheet?.weekends ?? null; }

  render() {
    const { weekends } = this;
    if (!weekends?.days.some(day => day.parts.length)) return this.rebuild(this.lacking() ?? h('p.hint', {}, 'Nothing to do yet: add a bed.'), this.#who());
    const groups = weekendsOf(weekends);
    const days = weekends.days;
    if (!days.some(day => day.number === this.#open)) this.#open = days.find(day => day.parts.length)?.number ?? null;
    const last = days.find(day => day.number === weekends.lastDay);
    return this.rebuild(
      h('p', {}, h('strong', {}, `${hours(weekends.load)} of work`), `, planted by ${last ? this.#said(last) : 'then'}. `, this.#ended(weekends),
        weekends.described ? '' : 'Who comes, and when, is our guess: say it below.'),
      h('ol.ribbon', {}, groups.map(group => h('li', { 'data-key': `weekend ${group.weekend}` },
        h('span.name', {}, `Weekend ${group.weekend}`),
        h('span.days', {}, group.days.map(day => this.#day(day, weekends)))))),
      this.#sheet(days.find(day => day.number === this.#open), weekends),
      h('nav', { 'aria-label': 'Weekends to take along' },
        sheetLink(this, api, 'weekends.pdf', 'Day sheets, PDF'), sheetLink(this, api, 'weekends.ics', 'Calendar file'),
        sheetLink(this, api, 'weekends.csv', 'What is needed when, CSV')),
      custom('staging-cost', { garden: this.garden }),
      this.#who());
  }

  /** Made once: the forms follow the garden themselves. */
  #who() {
    return this.#crew ??= h('div.crew', { 'data-key': 'crew' }, ['crew', 'people', 'waits', 'rates'].map(form => h('details', { 'data-key': `crew part ${form}` },
      h('summary', { 'data-key': `crew open ${form}` }, (CREW_LISTS[form] ?? CREW_OBJECTS[form]).title),
      custom('ground-form', { garden: this.garden, form }))),
    custom('shelf-piece', { garden: this.garden, kind: 'crew', contentOf: plan => plan.crew ?? null }));
  }

  #said(day) { return day.date ? dayName(day) : `${dayName(day)} of weekend ${day.weekend}`; }

  #day(day, weekends) {
    const waits = waitsOver(weekends, day.number);
    const fill = h('span.fill', { 'aria-hidden': 'true' });
    fill.style.height = `${Math.round(fullness(day) * 100)}%`;
    return h(`button.day${waits.length ? '.waits' : ''}.${day.state}`, {
      type: 'button', 'data-key': `day ${day.number}`, 'aria-pressed': String(day.number === this.#open),
      'aria-label': `${this.#said(day)}: ${day.state === 'over' ? 'over' : `${hours(day.used)} of ${hours(day.there)}`}${day.state === 'wet' ? ', wet' : ''}${waits.length ? `, ${waits.length} drying` : ''}`,
      onclick: () => { this.#open = day.number; this.render(); },
    }, fill, h('span.when', {}, dayName(day)), h('span.left', {}, day.state === 'open' ? `${hours(day.left)} left` : day.state));
  }

  #sheet(day, weekends) {
    if (!day) return null;
    const tasks = tasksById(weekends);
    const waits = waitsOver(weekends, day.number);
    return h('section', { 'aria-label': this.#said(day), 'data-key': 'day open' },
      h('h3', {}, `${this.#said(day)}: ${day.people.join(', ') || 'nobody'}`),
      day.parts.length ? h('ul.parts', {}, day.parts.map(part => this.#part(part, tasks.get(part.task), weekends))) : h('p.hint', {}, 'Nothing is done.'),
      waits.length ? h('p.waiting', {}, h('strong', {}, 'Waiting: '),
        waits.map(wait => `${tasks.get(wait.task).place}, ${tasks.get(wait.task).label}: ${wait.why}`).join('; ')) : null);
  }

  /** The last top-up beside the day that it is proved not to beat. */
  #ended({ days, endDay, leastDay }) {
    const end = days.find(day => day.number === endDay);
    const least = days.find(day => day.number >= leastDay);
    if (!end || !least) return '';
    return `Topped up by ${this.#said(end)}: ${least.number < endDay ? `no order of work ends before ${this.#said(least)}` : 'no order of work ends earlier'}. `;
  }

  #part(part, task, weekends) {
    return h('li', { 'data-key': `part ${part.task} ${part.part}` },
      h('span.when', {}, `${clock(weekends.from, part.from)} to ${clock(weekends.from, part.to)}`),
      task.bed
        ? h('button.quiet', { type: 'button', 'data-key': `take ${part.task}`, onclick: () => this.garden.choice.takeBed(task.bed) }, task.place)
        : h('span.where', {}, task.place),
      h('span.what', {}, `${task.label}${part.of > 1 ? `, part ${part.part} of ${part.of}` : ''}${part.people > 1 ? `, ${part.people} people${part.together < part.to - part.from ? ` for ${part.together} min` : ''}` : ''}`),
      task.loads.length ? h('span.loads', {}, task.loads.join('; ')) : null);
  }
}

customElements.define('lap-days', LapDays);
place({ key: 'weekends', title: 'Weekends', tag: 'lap-days', table: 'build', order: 50, wide: true });
