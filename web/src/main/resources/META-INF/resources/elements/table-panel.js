import { TABLES, allPlaces } from './places.js';
import { custom, GardenElement, h } from './make.js';

/** table-panel: the open place in its frame, and the tabs of its table. Set `places` (see OpenPlaces) and `yard`. */
export class TablePanel extends GardenElement {
  #frame = null;

  attached() {
    this.follow([this.places, this.garden.plans, this.garden.reckoning], () => this.render());
    this.render();
  }

  render() {
    const place = allPlaces().find(one => one.key === this.places.shown);
    this.hidden = !place;
    this.classList.toggle('wide', Boolean(place?.wide));
    const opened = this.#frame?.place !== place;
    if (opened) {
      this.#frame = place ? { place, section: this.#framed(place) } : null;
      // the yard alone still shows the ring that was lifted in Courses; another place is about whole beds
      if (place && !place.lifts) this.garden.choice.liftCourse(null);
    }
    this.rebuild(place ? [this.#tabs(place), this.#frame.section] : []);
    if (opened) this.querySelector('.tabs [aria-current="true"]')?.scrollIntoView({ block: 'nearest', inline: 'center' });
  }

  #framed(place) {
    const id = `place-${place.key}`;
    return h('section.place', { 'data-place': place.key, 'data-key': `frame ${place.key}`, 'aria-labelledby': id, tabindex: -1 },
      h('header', {}, h('h2', { id }, place.title),
        h('button.quiet', { type: 'button', 'data-key': `close ${place.key}`, 'aria-label': `Close ${place.title}`, onclick: () => this.#close(place) }, 'Close')),
      custom(place.tag, { garden: this.garden, yard: this.yard }));
  }

  #close(place) {
    this.places.close();
    this.render();
    document.querySelector(`[data-key="table ${place.table}"], [data-key="open ${place.key}"]`)?.focus();
  }

  #tabs({ key, table, title }) {
    const tab = one => {
      const badge = one.badge?.(this.garden);
      return h('button.tab', { type: 'button', 'data-key': `place ${one.key}`, 'aria-current': String(one.key === key), onclick: () => this.openPlace(one.key) },
        one.title, badge ? [' ', h('span.badge', {}, badge)] : null);
    };
    return h('nav.tabs', { 'data-key': `tabs ${table}`, hidden: !table, 'aria-label': TABLES.find(([one]) => one === table)?.[1] ?? title },
      allPlaces().filter(one => table && one.table === table).map(tab));
  }
}

customElements.define('table-panel', TablePanel);
