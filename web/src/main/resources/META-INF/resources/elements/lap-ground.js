import { shown } from '../geometry/length.js';
import { measured } from '../geometry/measure.js';
import { put, saidBy, WAYS, wayOf } from '../state/ground.js';
import { LISTS, OBJECTS } from '../state/ground-forms.js';
import { beginWith } from '../state/new-garden.js';
import { unitsOf } from '../state/plan.js';
import { readPlaces, writtenPlaces } from '../geometry/places-text.js';
import { countField } from './count-field.js';
import './ground-form.js';
import './shelf-piece.js';
import './site-file.js';
import './site-picture.js';
import { custom, GardenElement, h, options, row, table } from './make.js';
import { patch } from './patch.js';
import { place } from './places.js';

/** lap-ground: all about the yard: how it was taped, what it is made of, its levels, what to keep clear and access. */
export class LapGround extends GardenElement {
  #built = null;
  #outline = null;
  #told = {};

  follows = ['plans', 'reckoning'];

  attached() {
    this.#built = null;
    this.yard.corners = true;
    this.atEnd(() => { this.yard.corners = false; });
    super.attached();
  }

  render() {
    const way = wayOf(this.garden.plan);
    if (this.#built !== way) this.#build(way);
    this.#built = way;
    this.querySelector('[data-key="ground way"]').value = way;
    this.#outline?.show(writtenPlaces(this.garden.plan.ground?.outline, unitsOf(this.garden.plan)));
    const sheet = this.garden.reckoning.sheet?.ground;
    for (const [name, told] of Object.entries(this.#told)) patch(told, sheet ? this.#news(name, sheet) : []);
  }

  #form(form) { return custom('ground-form', { garden: this.garden, yard: this.yard, form }); }

  #section(key, title, ...children) {
    const open = this.querySelector(`details[data-section="${key}"]`)?.open ?? key === 'outline';
    return h('details', { 'data-section': key, open },
      h('summary', { 'data-key': `section ${key}` }, title), ...children, this.#told[key] = h('div.told'));
  }

  #build(way) {
    const list = key => this.#section(key, LISTS[key].title, this.#form(key));
    this.#told = {};
    const forms = [
      this.#section('outline', 'Outline', this.#ways(), ...this.#wayForms(way), this.#form('north')),
      this.#section('file', 'From a drawing or a list of coordinates', custom('site-file', { garden: this.garden })),
      this.#section('picture', 'Picture of the site', custom('site-picture', { garden: this.garden, yard: this.yard })),
      list('surfaces'), list('levels'), list('keepClear'),
      this.#section('preparation', OBJECTS.preparation.title, this.#form('preparation')),
      list('rims'),
      this.#section('access', OBJECTS.access.title, this.#form('access'), custom('shelf-piece', { garden: this.garden, kind: 'access', contentOf: plan => plan.ground?.access ?? null })),
    ];
    this.replaceChildren(...forms);
  }

  #ways() {
    return h('div.field', {}, h('label', { for: 'ground-way' }, 'How the yard is given'),
      h('select', { id: 'ground-way', 'data-key': 'ground way', onchange: event => {
        this.run(saidBy(event.target.value));
        this.render();
        this.querySelector('[data-key="ground way"]').focus();
      } }, options(WAYS, '')));
  }

  #wayForms(way) {
    this.#outline = null;
    if (way === 'drawn') {
      const units = unitsOf(this.garden.plan);
      const { yard } = beginWith(units);
      this.#outline = countField({ label: 'Corners', mode: 'text', key: 'ground outline', hint: writtenPlaces([[0, 0], [yard.width, 0], [yard.width, yard.depth]], units), read: text => readPlaces(text, 3, undefined, units) });
      this.#outline.addEventListener('count', event => this.run(put(['ground', 'outline'], event.detail)));
      return [this.#outline, h('button', { type: 'button', 'data-key': 'draw outline', onclick: () => this.#drawOutline() }, 'Draw the outline'),
        h('p.hint', {}, 'Press corner by corner, or type each length and its way. While this place is open the corners can be dragged.')];
    }
    const sub = (key, title) => [h('h3', {}, title), this.#form(key)];
    return [...sub('base', OBJECTS.base.title), ...sub(way === 'walk' ? 'walk' : 'corners', LISTS[way === 'walk' ? 'walk' : 'corners'].title), ...sub('checks', LISTS.checks.title)];
  }

  async #drawOutline() {
    const points = await this.yard.draw({ as: 'outline', name: 'The yard' });
    if (!points) return;
    this.run(put(['ground', 'outline'], points));
    this.yard.wholeYard();
    this.say('The yard is drawn.');
  }

  /** What the engine says to a section. */
  #news(name, sheet) {
    const units = unitsOf(this.garden.plan);
    const line = text => h('p.hint', {}, text);
    const quantity = (quantities, key) => quantities?.find(one => one.key === key)?.value;
    if (name === 'outline' && sheet.survey) {
      const area = quantity(sheet.survey.quantities, 'survey.area');
      return [line(`${measured(area ?? 0, 'm2', units, 1)} taped${sheet.survey.closingError ? `, closing error ${shown(sheet.survey.closingError, units)} spread over the sides` : ''}.`)];
    }
    if (name === 'surfaces') return (sheet.quantities ?? []).filter(one => one.key.startsWith('surface.')).map(one => line(`${measured(one.value, 'm2', units, 1)} ${one.key === 'surface.rest' ? 'without a surface' : one.key.slice(8)}`));
    if (name === 'levels' && sheet.fall) {
      const most = Math.max(...sheet.fall.readings.map(reading => Math.abs(reading.residual)));
      return [line(sheet.fall.oneIn ? `1:${sheet.fall.oneIn.toFixed(0)}, the furthest reading ${shown(Math.round(most * 10) / 10, units)} off the plane.` : 'Level.')];
    }
    if (name === 'keepClear') return sheet.keepClear.filter(one => one.beds.length).map(one => line(`${one.kind} ${one.number}: bed ${one.beds[0].bed} ${shown(one.beds[0].distance, units)} away`));
    if (name === 'rims') return sheet.rims.map(rim => line(`Bed ${rim.bed}: ${packing(quantity(rim.quantities, 'rim.packing'), units)}`));
    if (name === 'preparation') return sheet.beds.filter(bed => bed.way).map(bed => line(`Bed ${bed.bed} on ${bed.surface || 'the ground'}: ${WAY_WORDS[bed.way]}`));
    if (name === 'access') return accessTable(sheet.access, units);
    return [];
  }
}

const WAY_WORDS = {
  scribe: 'the bottom course is cut to the ground', level: 'a level trench', strip: 'a strip of concrete', pads: 'pads of concrete', none: 'nothing is designed here',
};

function packing(mm, units) {
  if (mm === undefined) return 'not known';
  if (Math.abs(mm) < 0.5) return 'as it stands';
  return mm > 0 ? `pack ${shown(Math.round(mm * 10) / 10, units)}` : `let in ${shown(Math.round(-mm * 10) / 10, units)}`;
}

/** Failing rows first; what passes is counted. */
function accessTable(access, units) {
  const failing = access.rows.filter(row => !row.pass);
  const told = (row, value) => (value === null ? 'none' : row.unit === '1:n' ? `1:${value}` : shown(value, units));
  const passed = h('p.hint', {}, `${access.rows.length - failing.length} of ${access.rows.length} pass.`);
  if (!failing.length) return [passed];
  return [passed, table(['Where', 'What', 'Is', 'Limit'], failing.map(one => row(one.where, [one.what, told(one, one.measured), told(one, one.limit)])))];
}

customElements.define('lap-ground', LapGround);
place({ key: 'ground', title: 'Ground', tag: 'lap-ground', table: 'lay-out', order: 10 });
