import { custom, GardenElement, h } from './make.js';

/** lap-side: the open places of one side of the yard, each in its frame. Set `side`, `places` (see OpenPlaces), `yard`. */
export class LapSide extends GardenElement {
  #frames = new Map();

  attached() {
    this.follow([this.places, this.garden.choice], () => this.render());
    this.follow([this.garden.plans, this.garden.reckoning], () => this.#badges());
    this.render();
  }

  render() {
    const shown = this.places.shown(this.side, this.garden.choice.beds.length > 0);
    for (const [key, { frame }] of this.#frames) {
      if (shown.some(place => place.key === key)) continue;
      frame.remove();
      this.#frames.delete(key);
    }
    shown.forEach((place, i) => {
      if (!this.#frames.has(place.key)) this.#frames.set(place.key, this.#frame(place));
      const { frame } = this.#frames.get(place.key);
      if (this.children[i] !== frame) this.insertBefore(frame, this.children[i] ?? null);
      frame.classList.toggle('latest', this.places.latest === place.key);
    });
    this.#badges();
  }

  #frame(place) {
    const id = `place-${place.key}`;
    const badge = h('span.badge');
    const frame = h('section.place', { 'data-place': place.key, 'aria-labelledby': id, tabindex: -1 },
      h('header', {}, h('h2', { id }, place.title, ' ', badge),
        h('button.quiet', { type: 'button', 'data-key': `put away ${place.key}`, 'aria-label': `Put away ${place.title}`, onclick: () => this.#putAway(place) }, 'Put away')),
      custom(place.tag, { garden: this.garden, yard: this.yard }));
    return { frame, badge, place };
  }

  #putAway(place) {
    this.places.putAway(place.key);
    this.render();
    document.querySelector(`[data-key="place ${place.key}"]`)?.focus();
  }

  #badges() {
    for (const { badge, place } of this.#frames.values()) badge.textContent = place.badge?.(this.garden) ?? '';
  }
}

customElements.define('lap-side', LapSide);
