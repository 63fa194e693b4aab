import { lengthCheck, readName } from '../state/checks.js';
import { addPath, readPaths, removePath, setPath } from '../state/paths.js';
import { beginWith } from '../state/new-garden.js';
import { unitsOf } from '../state/plan.js';
import { countField } from './count-field.js';
import { lengthField } from './length-field.js';
import './ground-form.js';
import { custom, GardenElement, h } from './make.js';
import { place } from './places.js';
import { shownQuantity } from './shown-number.js';

const LEAST = 100;
const MOST = 20000;

const widthCheck = units => lengthCheck(LEAST, MOST, units, ['too narrow', 'too wide']);

/** lap-paths: the paths, drawn by their middle line, with width, what each is made of and what it takes. */
export class LapPaths extends GardenElement {
  #width = null;

  follows = ['plans', 'reckoning'];

  shows = ['paths'];

  render() {
    const { plan } = this.garden;
    const units = unitsOf(plan);
    const paths = readPaths(plan);
    this.rebuild(
      h('div.new', {},
        lengthField({ label: 'Width of the next path', units, mm: this.#width ??= beginWith(units).path, check: widthCheck(units), key: 'path width', onlength: ({ detail }) => { this.#width = detail.mm; } }),
        h('button.main', { type: 'button', 'data-key': 'path draw', onclick: () => this.#draw() }, 'Draw a path')),
      paths.length ? null : h('p.hint', {}, 'No paths yet. Draw one by its middle line, press by press, or type its places.'),
      h('ul.paths', {}, paths.map(path => this.#path(path, units))));
  }

  #path({ index, called, width, length, path }, units) {
    const say = mm => this.yard.lengthText(mm);
    const part = this.garden.reckoning.sheet?.paths?.[index];
    return h('li', { 'data-key': `path ${index}` }, h('details', {},
      h('summary', { 'data-key': `path ${index} open` }, h('strong', {}, called), ` ${say(length)} long, ${say(width)} wide`),
      h('div.fields', {},
        countField({ label: 'Name', mode: 'text', key: `path ${index} name`, value: path.name ?? '', oncount: ({ detail }) => this.#set(index, { name: detail || undefined }), read: readName }),
        lengthField({ label: 'Width', units, mm: width, check: widthCheck(units), key: `path ${index} width`, onlength: ({ detail }) => this.#set(index, { width: detail.mm }) })),
      custom('ground-form', { garden: this.garden, form: 'paths', index }),
      h('div.verbs', {},
        h('button', { type: 'button', 'data-key': `path ${index} again`, onclick: () => this.#again(index) }, 'Draw it anew'),
        h('button', { type: 'button', 'data-key': `path ${index} delete`, onclick: () => this.#delete(index, called) }, 'Delete')),
      part?.quantities?.length ? h('dl', {}, part.quantities.map((quantity, i) => shownQuantity(this.garden.choice, `path ${index} ${quantity.key} ${i}`, quantity, units))) : null));
  }

  #set(index, fields) { this.run(setPath(index, fields)); }

  async #draw() {
    const line = await this.yard.draw({ as: 'line', name: 'Path', width: this.#width });
    if (!line) return;
    this.run(addPath(line, this.#width));
    this.say('The path is laid.');
  }

  async #again(index) {
    const { called, width } = readPaths(this.garden.plan)[index];
    const line = await this.yard.draw({ as: 'line', name: called, width });
    if (line) this.#set(index, { line });
  }

  #delete(index, called) {
    this.run(removePath(index));
    this.say(`${called} is deleted. Undo brings it back.`);
  }
}

customElements.define('lap-paths', LapPaths);
place({ key: 'paths', title: 'Paths', tag: 'lap-paths', table: 'lay-out', order: 30 });
