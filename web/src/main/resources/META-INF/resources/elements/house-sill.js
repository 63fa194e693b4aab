import { showIn } from '../state/commands.js';
import { unitsOf } from '../state/plan.js';
import { GardenElement, h } from './make.js';

/** What beds rest on where no face is near, millimetres. */
const GRIDS = [1, 10, 50, 100, 250, 500];

/**
 * house-sill: what lies to hand at the house wall: standing a bed, the steps back and forth, looking nearer.
 * Set `yard` and `keys`. Fires `stand`.
 */
export class HouseSill extends GardenElement {
  attached() {
    this.setAttribute('role', 'group');
    this.setAttribute('aria-label', 'To hand');
    const button = (text, key, onclick, name) => h('button', { type: 'button', 'data-key': key, onclick, 'aria-label': name ?? null, title: name ?? null }, text);
    this.undo = button('Undo', 'undo', () => this.step('undo'));
    this.redo = button('Redo', 'redo', () => this.step('redo'));
    this.units = h('select', { 'data-key': 'units', 'aria-label': 'Lengths are shown in', title: 'Lengths are shown in', onchange: event => this.garden.plans.run(showIn(event.target.value)) },
      h('option', { value: 'metric' }, 'mm'), h('option', { value: 'imperial' }, 'ft, in'));
    this.several = button('Take several', 'several', () => this.#takeSeveral());
    this.several.setAttribute('aria-pressed', 'false');
    this.replaceChildren(
      h('button.main', { type: 'button', 'data-key': 'stand', onclick: () => this.dispatchEvent(new CustomEvent('stand', { bubbles: true })) }, 'Stand a bed'),
      this.undo, this.redo,
      this.several,
      this.#grid(),
      this.units,
      h('span.look', {},
        button('+', 'nearer', () => this.yard.zoom(1.25), 'Nearer'),
        button('−', 'further', () => this.yard.zoom(0.8), 'Further'),
        button('Whole yard', 'whole', () => this.yard.wholeYard())),
      button('Keys', 'keys', () => this.keys.show()));
    this.follow([this.garden.plans], () => this.render());
    this.listen(window, 'keydown', event => this.#key(event));
    this.render();
  }

  render() {
    const { past, future, plan } = this.garden.plans;
    this.units.value = unitsOf(plan);
    this.undo.setAttribute('aria-disabled', String(!past.length));
    this.redo.setAttribute('aria-disabled', String(!future.length));
  }

  /** For fingers, which have no Shift key: each press takes one more bed, a drag on the ground takes all in a frame. */
  #takeSeveral() {
    this.yard.several = !this.yard.several;
    this.several.setAttribute('aria-pressed', String(this.yard.several));
    this.say(this.yard.several ? 'Each press takes one more bed.' : 'A press takes one bed.');
  }

  #grid() {
    return h('select', { 'data-key': 'grid', 'aria-label': 'Beds rest on every', title: 'What beds rest on where no face is near', onchange: event => { this.yard.grid = Number(event.target.value); } },
      GRIDS.map(grid => h('option', { value: grid, selected: grid === this.yard.grid }, `on ${grid}s`)));
  }

  step(way) {
    const { plans } = this.garden;
    const there = way === 'undo' ? plans.past.length : plans.future.length;
    if (!there) {
      this.say(way === 'undo' ? 'Nothing to undo.' : 'Nothing to redo.');
      return;
    }
    plans[way]();
    this.say(way === 'undo' ? 'Undone.' : 'Redone.');
  }

  #key(event) {
    const typing = event.target.matches?.('input, textarea, select');
    if ((event.ctrlKey || event.metaKey) && !event.altKey && !typing) {
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      this.step(key === 'y' || event.shiftKey ? 'redo' : 'undo');
    } else if (event.key === '?' && event.target.closest?.('lap-yard')) {
      event.preventDefault();
      this.keys.show();
    }
  }
}

customElements.define('house-sill', HouseSill);
