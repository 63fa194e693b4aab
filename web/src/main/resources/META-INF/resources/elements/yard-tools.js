import { shown } from '../geometry/length.js';
import { unitsOf } from '../state/plan.js';
import { GardenElement, h, verb } from './make.js';

/** What beds rest on where no face is near, millimetres; in feet it is half an inch to a foot. */
const GRIDS = { metric: [1, 10, 50, 100, 250, 500], imperial: [12.7, 25.4, 50.8, 152.4, 304.8] };

/** One step nearer, the same as one notch of a wheel. */
const NEARER = 1.2;

/** yard-tools: what lies on the yard itself: nearer, further, all of it, the snap, measuring, taking several. Set `yard`. */
export class YardTools extends GardenElement {
  #units = null;

  follows = ['plans'];

  named = ['group', 'Looking and measuring'];

  attached() {
    const button = (text, key, act, name) => verb(text, key, act, { 'aria-label': name, title: name });
    this.several = button('Several', 'several', () => this.#takeSeveral(), 'Take several: each press takes one more bed');
    this.several.setAttribute('aria-pressed', 'false');
    this.replaceChildren(
      button('+', 'nearer', () => this.yard.zoom(NEARER), 'Nearer, +'),
      button('−', 'further', () => this.yard.zoom(1 / NEARER), 'Further, −'),
      button('Whole yard', 'whole', () => this.yard.wholeYard(), 'Whole yard, 0'),
      this.grids = h('select', { 'data-key': 'grid', 'aria-label': 'Snap', title: 'What beds and points rest on where no face is near', onchange: event => { this.yard.grid = Number(event.target.value); } }),
      button('Measure', 'measure', () => this.ask('measure'), 'Measure from point to point'),
      this.several,
      button('Keys', 'keys', () => this.ask('keys'), 'All keys, ?'));
    super.attached();
  }

  /** The snaps are those of the garden's measures; the nearest to the one that was chosen goes on. */
  render() {
    const units = unitsOf(this.garden.plan);
    if (units === this.#units) return;
    this.#units = units;
    const off = grid => Math.abs(Math.log(grid / this.yard.grid));
    this.yard.grid = GRIDS[units].toSorted((one, other) => off(one) - off(other))[0];
    this.grids.replaceChildren(...GRIDS[units].map(grid => h('option', { value: grid, selected: grid === this.yard.grid }, `snap ${shown(grid, units)}`)));
  }

  /** For fingers, which have no Shift key: each press takes one more bed, a drag on the ground takes all in a frame. */
  #takeSeveral() {
    this.yard.several = !this.yard.several;
    this.several.setAttribute('aria-pressed', String(this.yard.several));
    this.say(this.yard.several ? 'Each press takes one more bed.' : 'A press takes one bed.');
  }
}

customElements.define('yard-tools', YardTools);
