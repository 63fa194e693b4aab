import { TABLES, allPlaces } from './places.js';
import { custom, GardenElement, h } from './make.js';

/** table-panel: the open place in its frame, and the tabs of its table. Set `places` (see OpenPlaces) and `yard`. */
export class TablePanel extends GardenElement {
  #frame = null;

  attached() {
    this.follow([this.places], () => this.render());
    this.follow([this.garden.plans, this.garden.reckoning], () => this.#tabs());
    this.render();
  }

  render() {
    const place = allPlaces().find(one => one.key === this.places.shown);
    this.hidden = !place;
    this.classList.toggle('wide', Boolean(place?.wide));
    if (this.#frame?.place !== place) {
      this.#frame = place ? this.#framed(place) : null;
      this.replaceChildren(...(place ? [this.#frame.tabs, this.#frame.section] : []));
    }
    this.#tabs();
  }

  #framed(place) {
    const id = `place-${place.key}`;
    const section = h('section.place', { 'data-place': place.key, 'aria-labelledby': id, tabindex: -1 },
      h('header', {}, h('h2', { id }, place.title),
        h('button.quiet', { type: 'button', 'data-key': `close ${place.key}`, 'aria-label': `Close ${place.title}`, onclick: () => this.#close(place) }, 'Close')),
      custom(place.tag, { garden: this.garden, yard: this.yard }));
    const tabs = h('nav.tabs', { 'aria-label': TABLES.find(([key]) => key === place.table)?.[1] ?? place.title });
    return { place, section, tabs };
  }

  #close(place) {
    this.places.close();
    this.render();
    document.querySelector(`[data-key="table ${place.table}"], [data-key="open ${place.key}"]`)?.focus();
  }

  #tabs() {
    if (!this.#frame) return;
    const { place: open, tabs } = this.#frame;
    tabs.hidden = !open.table;
    const wanted = allPlaces().filter(place => place.table && place.table === open.table);
    wanted.forEach((place, i) => {
      let tab = tabs.children[i];
      if (!tab) tabs.append(tab = h('button.tab', { type: 'button', 'data-key': `place ${place.key}`, onclick: () => this.openPlace(place.key) }));
      tab.setAttribute('aria-current', String(place === open));
      const badge = place.badge?.(this.garden) ?? '';
      const text = badge ? `${place.title} ${badge}` : place.title;
      if (tab.textContent !== text) tab.replaceChildren(place.title, ...(badge ? [' ', h('span.badge', {}, badge)] : []));
    });
    if (this.#frame.seen !== open) tabs.querySelector('[aria-current="true"]')?.scrollIntoView({ block: 'nearest', inline: 'center' });
    this.#frame.seen = open;
  }
}

customElements.define('table-panel', TablePanel);
