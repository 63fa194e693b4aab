import { shown } from '../geometry/length.js';
import { wallLetter } from '../geometry/outline.js';
import { isRightAngled, stretched, wallLengths } from '../geometry/shapes.js';
import { choicesOf, chosenValue, turnedOver } from '../state/build.js';
import { setBed } from '../state/commands.js';
import { stretchCheck } from '../state/checks.js';
import { unitsOf } from '../state/plan.js';
import { lengthField } from './length-field.js';
import { GardenElement, h } from './make.js';

/** bed-build: how the chosen bed is built: base, liner, finish, which walls are seen, and the lengths of its walls. */
export class BedBuild extends GardenElement {
  attached() {
    this.follow([this.garden.plans, this.garden.choice], () => this.render());
    this.render();
  }

  render() {
    const { bed } = this.garden;
    if (!bed) return;
    const walls = bed.size || bed.type || !isRightAngled(bed.own) ? [] : wallLengths(bed.own);
    this.rebuild(h('details', {},
      h('summary', { 'data-key': 'build' }, 'How it is built'),
      h('div.fields', {}, choicesOf(bed.whole).map(choice => this.#choice(bed, choice))),
      this.#seen(bed),
      walls.length ? h('h3', {}, 'Walls') : null,
      walls.length ? h('p.hint', {}, 'A wall that is made longer takes what lies beyond its end with it.') : null,
      walls.length ? h('div.fields', {}, walls.map((mm, side) => this.#wall(side, mm))) : null));
  }

  #choice(bed, { key, label, choices, now, usual }) {
    const id = `build-${key}`;
    const select = h('select', { id, 'data-key': id, onchange: event => {
      const raw = this.garden.plan.beds.find(one => String(one.id) === bed.id);
      this.garden.plans.run(setBed(bed.id, { [key]: chosenValue(raw, key, event.target.value) }));
    } }, choices.map(([value, text]) => h('option', { value, selected: value === now }, value === usual ? `${text} (usual)` : text)));
    return h('div.field', {}, h('label', { for: id }, label), select);
  }

  #seen(bed) {
    const walls = bed.own.map((_, side) => wallLetter(side));
    const seen = bed.whole.seen ?? walls;
    return h('fieldset', {}, h('legend', {}, 'Walls that are seen'),
      walls.map(wall => h('label.wall', {},
        h('input', { type: 'checkbox', checked: seen.includes(wall), 'data-key': `seen ${wall}`,
          onchange: () => this.garden.plans.run(setBed(bed.id, { seen: turnedOver(walls, bed.whole.seen, wall) })) }),
        wall)));
  }

  #wall(side, mm) {
    const wall = `Wall ${wallLetter(side)}`;
    const units = unitsOf(this.garden.plan);
    return lengthField({
      label: wall, units, mm: Math.round(mm * 10) / 10, key: `wall ${wallLetter(side)}`,
      check: wanted => (this.garden.bed ? stretchCheck(this.garden.bed, side, wanted) : null),
      onlength: ({ detail }) => {
        const { bed } = this.garden;
        this.garden.plans.run(setBed(bed.id, { outline: stretched(bed.own, side, detail.mm), walls: undefined }));
        this.say(`${wall} is ${shown(detail.mm, units)} long.`);
      },
    });
  }
}

customElements.define('bed-build', BedBuild);
