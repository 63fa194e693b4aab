import { api } from '../api.js';
import { shown } from '../geometry/length.js';
import { unitsOf } from '../state/plan.js';
import { capital } from '../state/words.js';
import { GardenElement, h, options } from './make.js';

/** What a layer can be, with what is shown. */
const AS = [['', 'left out'], ['outline', 'outline of the yard'], ['levels', 'levels'], ['slab', 'slabs'], ['concrete', 'concrete'], ['gravel', 'gravel'], ['grass', 'grass'], ['soil', 'soil'], ['deck', 'deck'],
  ['wall', 'wall'], ['tree', 'tree'], ['cover', 'cover'], ['drain', 'drain'], ['cable', 'cable'], ['tap', 'tap'], ['door', 'door'], ['air-brick', 'air brick'], ['other', 'keep clear']];
const UNITS = [['', 'which unit?'], ['mm', 'millimetres'], ['cm', 'centimetres'], ['m', 'metres'], ['in', 'inches'], ['ft', 'feet']];

/** Larger files are no yard's. */
const MOST_BYTES = 4000000;

/** site-file: the yard's outline, surfaces, levels and what to keep clear out of a drawing or a list of coordinates, shown before it is taken. */
export class SiteFile extends GardenElement {
  #text = null;
  #seen = null;
  #take = {};
  #unit = '';

  attached() { this.render(); }

  render() {
    const seen = this.#seen;
    this.rebuild(
      h('label', {}, 'A DXF, GeoJSON or CSV file ', h('input', { type: 'file', accept: '.dxf,.json,.geojson,.csv,.txt', 'data-key': 'site file', onchange: event => this.#file(event.target) })),
      this.wrong(),
      seen?.bad.length ? h('ul.wrong', { role: 'alert' }, seen.bad.map(({ line, text, way }) => h('li', {}, `${line ? `Line ${line}: ` : ''}${text}. ${capital(way)}.`))) : null,
      seen?.findings.length ? h('ul.wrong', { role: 'alert' }, seen.findings.map(({ text }) => h('li', {}, text))) : null,
      seen && !seen.unitFromFile && (this.#unit || seen.layers.length) ? h('label', {}, 'The file does not say its unit ', h('select', { 'data-key': 'site unit', onchange: event => { this.#unit = event.target.value; this.#look(); } },
        options(UNITS, this.#unit))) : null,
      seen?.layers.length ? this.#layers(seen) : null);
  }

  #layers({ layers, unitFromFile, passedOver }) {
    const units = unitsOf(this.garden.plan);
    const size = ({ width, depth }) => (unitFromFile || this.#unit ? `${shown(width, units)} by ${shown(depth, units)}${units === 'metric' ? ' mm' : ''}` : `${width} by ${depth} units`);
    return [
      h('table.layers', {}, h('thead', {}, h('tr', {}, ['Layer', 'Holds', 'Taken as'].map(text => h('th', {}, text)))),
        h('tbody', {}, layers.map(layer => h('tr', {}, h('td', {}, layer.name || 'no name'),
          h('td', {}, [held(layer.closed, 'outline'), held(layer.open, 'open line'), held(layer.points, 'point')].filter(Boolean).join(', '), h('br'), h('small', {}, size(layer))),
          h('td', {}, h('select', { 'data-key': `site layer ${layer.name}`, 'aria-label': `Layer ${layer.name} is taken as`, onchange: event => { this.#take[layer.name] = event.target.value; } },
            options(AS, this.#take[layer.name]))))))),
      passedOver.length ? h('p.hint', {}, `Not taken: ${passedOver.map(({ what, count }) => `${count} ${what}`).join(', ')}.`) : null,
      h('button.main', { type: 'button', 'data-key': 'site take', onclick: () => this.#takeIt() }, 'Take these into the yard')];
  }

  async #file(input) {
    const [file] = input.files;
    if (!file) return;
    this.#seen = this.#text = null;
    this.#unit = '';
    if (file.size > MOST_BYTES) return this.#say(`${file.name} has ${Math.round(file.size / 1e6)} MB; 4 MB is the most. Keep the layers of the yard and save it again.`);
    this.#text = await file.text();
    if (await this.#look()) this.#take = Object.fromEntries(this.#seen.layers.map(({ name, suggested }) => [name, suggested]));
    this.render();
    return undefined;
  }

  async #look(take = {}) {
    this.problem = null;
    try {
      this.#seen = await api.siteFile({ file: this.#text, take, garden: this.garden.plan, ...(this.#unit ? { unit: this.#unit } : {}) });
    } catch (problem) {
      this.#say(`Not read: ${problem.message}`);
      return false;
    }
    this.render();
    return true;
  }

  async #takeIt() {
    const take = Object.fromEntries(Object.entries(this.#take).filter(([, as]) => as));
    if (!Object.keys(take).length) return this.#say('Say what at least one layer is.');
    if (!this.#seen.unitFromFile && !this.#unit) return this.#say('Choose the unit first: the file does not say it.');
    if (!await this.#look(take) || !this.#seen.garden) return undefined;
    const { ground } = this.#seen.garden;
    this.run(plan => ({ ...plan, ground }));
    this.#seen = this.#text = null;
    this.say('The yard is taken from the file. Undo brings the one before back.');
    this.render();
    return undefined;
  }

  #say(text) {
    this.problem = text;
    this.render();
  }
}

const held = (count, what) => (count ? `${count} ${what}${count === 1 ? '' : 's'}` : null);

customElements.define('site-file', SiteFile);
