import { api } from '../api.js';
import { readScale, sheetAddress } from '../state/sheets.js';
import { countField } from './count-field.js';
import { GardenElement, h, options, tick } from './make.js';
import { place } from './places.js';
import { bringingLink } from './sheet-link.js';

/** lap-sheets: all that can be printed, alone and as one set, and how it is to be drawn. */
export class LapSheets extends GardenElement {
  #kinds = null;
  #asked = { paper: undefined, mono: false, scale: undefined, layers: undefined, split: false };

  follows = ['keeper', 'plans'];

  attached() {
    super.attached();
    this.try('The list of sheets could not be fetched', async () => { this.#kinds = await api.sheets(); });
  }

  render() {
    if (!this.#kinds) return this.rebuild(h('p.hint', {}, this.problem ?? 'Fetching the list of sheets …'));
    const { sheets, papers, layers } = this.#kinds;
    return this.rebuild(
      h('p.whole', {}, this.#link('sheets', 'pdf', 'All sheets as one set, PDF')),
      h('details', {}, h('summary', { 'data-key': 'sheets how' }, 'Paper, scale, layers'),
        h('label', {}, 'Paper ', h('select', { 'data-key': 'sheets paper', onchange: event => this.#ask({ paper: event.target.value || undefined }) },
          options([['', 'usual'], ...papers.map(name => [name, name])], this.#asked.paper ?? ''))),
        tick('sheets mono', 'for a printer without colours', this.#asked.mono, mono => this.#ask({ mono })),
        h('h3', {}, 'The plan'),
        countField({ label: 'Scale, 1 to', key: 'sheets scale', value: this.#asked.scale ?? '', hint: 'empty: the largest that fits', read: readScale, oncount: ({ detail }) => this.#ask({ scale: detail ?? undefined }) }),
        tick('sheets split', 'on several sheets where it does not fit one', this.#asked.split, split => this.#ask({ split })),
        h('fieldset', {}, h('legend', {}, 'Layers'), layers.map(({ name, usual }) => tick(`layer ${name}`, name.replaceAll('-', ' '),
          this.#asked.layers ? this.#asked.layers.includes(name) : usual, on => this.#layer(name, on))))),
      h('dl.sheets', {}, sheets.map(({ name, title }) => h('div', {}, h('dt', {}, title), h('dd', {},
        this.#link(name, 'pdf', 'PDF', title), name === 'plan' ? [' ', this.#link(name, 'svg', 'SVG', title), ' ', this.#link(name, 'png', 'PNG', title), ' ', this.#link(name, 'dxf', 'DXF', title)] : null)))),
      h('p', {}, this.#link('slip', 'csv', 'The order, CSV'), ' ', this.#link('weekends', 'ics', 'Weekends for a calendar'), ' ', this.#link('weekends', 'csv', 'What is needed when, CSV'), ' ', this.#link('garden', 'xlsx', 'Slip, cut list, register and weekends as tables, XLSX')),
      h('p.hint', {}, 'Copies change size: trust the written sizes. Sheets say which revision they show.'));
  }

  #ask(some) {
    Object.assign(this.#asked, some);
    this.render();
  }

  #layer(name, on) {
    const { layers } = this.#kinds;
    const shown = new Set(this.#asked.layers ?? layers.filter(one => one.usual).map(one => one.name));
    if (on) shown.add(name);
    else shown.delete(name);
    this.#ask({ layers: layers.map(one => one.name).filter(one => shown.has(one)) });
  }

  #link(name, ending, text, title) {
    const drawn = ['pdf', 'svg', 'png'].includes(ending);
    return bringingLink(this, api, drawn ? sheetAddress(name, ending, this.#asked) : `${name}.${ending}`, text, `${name}.${ending}`, title && `${title}, ${text}`);
  }
}

customElements.define('lap-sheets', LapSheets);
place({ key: 'sheets', title: 'Sheets', tag: 'lap-sheets', table: 'share', order: 10 });
