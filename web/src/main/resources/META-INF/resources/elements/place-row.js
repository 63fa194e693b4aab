import { allPlaces } from './places.js';
import { GardenElement, h } from './make.js';

const NARROW = matchMedia('(max-width: 820px)');

/** place-row: a button for each place. One that is shown is put away, any other is opened. Set `places`. */
export class PlaceRow extends GardenElement {
  attached() {
    this.id = 'places';
    this.tabIndex = -1;
    this.setAttribute('role', 'group');
    this.setAttribute('aria-label', 'Places');
    this.follow([this.places, this.garden.choice, this.garden.plans, this.garden.reckoning], () => this.render());
    this.listen(NARROW, 'change', () => this.render());
    this.render();
  }

  render() {
    this.rebuild(allPlaces().map(place => {
      const badge = place.badge?.(this.garden) ?? null;
      return h('button.to-place', {
        type: 'button', 'data-key': `place ${place.key}`, 'aria-expanded': String(this.#isShown(place)), onclick: () => this.#press(place),
      }, place.title, badge ? h('span.badge', {}, ` ${badge}`) : null);
    }));
  }

  /** A narrow screen shows the latest alone. */
  #isShown(place) {
    if (NARROW.matches) return this.places.latest === place.key;
    return this.places.shown(place.side, this.garden.choice.beds.length > 0).some(({ key }) => key === place.key);
  }

  #press(place) {
    if (this.#isShown(place)) {
      this.places.putAway(place.key);
      this.say(`${place.title} is put away.`);
    } else {
      this.openPlace(place.key);
    }
  }
}

customElements.define('place-row', PlaceRow);
