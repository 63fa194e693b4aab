import { api } from '../api.js';
import { shown } from '../geometry/length.js';
import { measured } from '../geometry/measure.js';
import { money } from '../state/changes.js';
import { unitsOf } from '../state/plan.js';
import { GardenElement, h, s } from './make.js';
import { place } from './places.js';
import { sheetLink } from './sheet-link.js';

/** Type sizes of a piece's name, millimetres on the roll: no name is better than one that runs over its piece. */
const LARGEST = 300;
const SMALLEST = 150;

/** What stays free beside it, and the breadth of a letter by its size. */
const EDGE = 120;
const LETTER = 0.62;

/** lap-rolls: every roll unrolled to the right, its pieces drawn to scale, and what it saves. */
export class LapRolls extends GardenElement {
  follows = ['reckoning', 'keeper', 'plans'];

  shows = ['rolls'];

  render() {
    const parts = (this.garden.reckoning.sheet?.rolls ?? []).filter(part => part.result.rolls.length);
    if (!parts.length) return this.rebuild(this.lacking() ?? h('p.hint', {}, 'No rolls yet: no bed is lined and no path has a membrane.'));
    const longest = Math.max(...parts.flatMap(part => part.result.rolls.map(roll => roll.bought)));
    return this.rebuild(
      h('div.bar', {}, h('nav', { 'aria-label': 'Sheets for the rolls' }, sheetLink(this, api, 'rolls.pdf', 'Roll sheets, PDF'))),
      parts.map(part => this.#part(part, longest)));
  }

  #part({ material, metresBedByBed, costBedByBed, result }, longest) {
    const currency = this.garden.reckoning.sheet.slip?.currency;
    const best = result.proven ? 'proven least' : `none can cost less than ${money(result.lowerBound, currency)}`;
    const units = unitsOf(this.garden.plan);
    const alone = this.garden.reckoning.mayImprove ? '' : `; bed by bed ${measured(metresBedByBed, 'm', units, 2)}, ${money(costBedByBed, currency)}`;
    const bought = result.rolls.reduce((sum, roll) => sum + roll.bought, 0) / 1000;
    return h('section', { 'data-key': `rolls ${material}` },
      h('h3', {}, `${material}: ${measured(bought, 'm', units, 2)}, ${money(result.cost, currency)}, ${best}${alone}.`),
      result.rolls.map((roll, i) => this.#roll(roll, longest, `${material} ${i}`)));
  }

  #roll({ roll, used, bought, placed }, longest, key) {
    const units = unitsOf(this.garden.plan);
    const width = Math.max(...placed.map(piece => piece.x + piece.width), widthOf(roll, placed));
    const told = placed.map(piece => `${piece.id} ${shown(piece.width, units)} by ${shown(piece.height, units)}${piece.turned ? ', turned' : ''}`).join('; ');
    const drawing = s('svg.roll', { viewBox: `0 0 ${bought} ${width}`, role: 'img', 'aria-label': `${roll}, ${placed.length} pieces: ${told}` },
      s('rect.sheet', { width: bought, height: width }),
      s('rect.unused', { x: used, width: Math.max(bought - used, 0), height: width }),
      ...placed.flatMap(piece => this.#piece(piece)));
    drawing.style.width = `${bought / longest * 100}%`;
    return h('figure', { 'data-key': `roll ${key}` },
      h('figcaption', {}, `${roll}: ${shown(used, units)} used of ${shown(bought, units)}, ${placed.length} ${placed.length === 1 ? 'piece' : 'pieces'}`), drawing);
  }

  /** The roll's length runs to the right: its `y` is the drawing's x. */
  #piece({ id, x, y, width, height }) {
    const held = this.garden.choice.has(id.replace(/-R\d+$/, ''));
    const drawn = [s(`rect.piece${held ? '.held' : ''}`, { x: y, y: x, width: height, height: width }, s('title', { text: id }))];
    // a name as large as its piece lets it be, none where it could not be read
    const size = Math.min(LARGEST, (height - EDGE) / (id.length * LETTER), width - EDGE);
    if (size >= SMALLEST) {
      const name = s('text', { x: y + height / 2, y: x + width / 2, text: id });
      name.style.fontSize = `${size}px`;
      drawn.push(name);
    }
    return drawn;
  }
}

/** The width in a roll's name, `liner-4000`, else as wide as its pieces. */
function widthOf(name, placed) {
  const named = Number(/(\d{3,5})$/.exec(name)?.[1]);
  return named || Math.max(...placed.map(piece => piece.x + piece.width));
}

customElements.define('lap-rolls', LapRolls);
place({ key: 'rolls', title: 'Rolls', tag: 'lap-rolls', table: 'buy', order: 40, wide: true });
