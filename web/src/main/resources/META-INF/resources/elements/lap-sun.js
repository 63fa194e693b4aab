import { api } from '../api.js';
import './ground-form.js';
import { custom, GardenElement, h, row, table } from './make.js';
import { patch } from './patch.js';
import { place } from './places.js';
import { sheetLink } from './sheet-link.js';

/** lap-sun: where on earth the yard is, what is tall round it, and the hours of sun of each bed. */
export class LapSun extends GardenElement {
  #hours = null;
  #told = null;

  attached() {
    const form = key => custom('ground-form', { garden: this.garden, yard: this.yard, form: key });
    this.#told = h('div.told');
    this.replaceChildren(form('sun'), form('tall'), h('button', { type: 'button', 'data-key': 'follow sun', onclick: () => this.#follow() }, 'Work out the hours'), this.#told);
    this.render();
  }

  render() { patch(this.#told, this.#sunTable()); }

  async #follow() {
    this.#hours = null;
    await this.try('The hours are not worked out', async () => {
      this.#hours = await this.garden.part('sun');
      this.say(this.#hours.day ? `Hours for ${this.#hours.day} are worked out.` : 'Give latitude and longitude first.');
    });
  }

  #sunTable() {
    const hours = this.#hours;
    if (!hours) return [];
    if (!hours.day) return [h('p.hint', {}, 'Give latitude and longitude first.')];
    return [h('p', {}, sheetLink(this, api, 'shade.pdf', 'Shade drawing to print')), h('p.hint', {}, `${hours.day}: rises ${clock(hours.rise)}, sets ${clock(hours.set)}.`),
      table(['Bed', 'Hours', 'Light'], hours.beds.map(bed => row(bed.bed, [bed.quantities.find(one => one.key === 'sun.mean').value.toFixed(1), bed.light])))];
  }
}

const clock = at => (at ? at.slice(11, 16) : 'not');

customElements.define('lap-sun', LapSun);
place({ key: 'sun', title: 'Sun', tag: 'lap-sun', table: 'lay-out', order: 50 });
