import { TABLES, allPlaces } from './places.js';
import { GardenElement, h, s } from './make.js';

/** Each table's picture: a bed on its place, a paper strip, boards on the saw, a sheet that is handed on. */
const PICTURES = {
  yard: 'M3 20H21M5 20V9L12 4L19 9V20M9 20V14H15V20',
  'lay-out': 'M3 4H21V20H3ZM6 7H13V12H6ZM15 14H18V17H15Z',
  buy: 'M6 3H18V21L15.6 19L13.2 21L10.8 19L8.4 21L6 19ZM9 8H15M9 12H15',
  build: 'M3 8H21V12H3ZM5 14H15V18H5ZM14 8V12M10 14V18',
  share: 'M5 3H15L19 7V21H5ZM15 3V7H19M9 16L12 12L15 16M12 12V18',
};

/** table-rail: the four tables; each opens the place that was open at it last. Set `places`. */
export class TableRail extends GardenElement {
  named = ['navigation', 'Tables'];

  attached() {
    this.id = 'tables';
    this.tabIndex = -1;
    this.follow([this.places, this.garden.plans, this.garden.reckoning], () => this.render());
    this.render();
  }

  render() {
    const badge = table => allPlaces().filter(place => place.table === table).map(place => place.badge?.(this.garden)).find(Boolean);
    const one = (key, title, on, act, told) => h('button.table', { type: 'button', 'data-key': `table ${key}`, 'aria-expanded': key === 'yard' ? null : String(on), 'aria-current': key === 'yard' && on ? 'true' : null, onclick: act },
      s('svg', { viewBox: '0 0 24 24', 'aria-hidden': 'true', focusable: 'false' }, s('path', { d: PICTURES[key] })), h('span', {}, title), told ? h('span.badge', {}, told) : null);
    this.rebuild(one('yard', 'Yard', this.places.shown === null, () => this.places.close()),
      TABLES.map(([key, title]) => one(key, title, this.places.table === key, () => this.#press(key), badge(key))));
  }

  #press(table) {
    this.places.openTable(table);
    if (this.places.shown) this.openPlace(this.places.shown);
  }
}

customElements.define('table-rail', TableRail);
