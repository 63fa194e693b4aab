import { shown } from '../geometry/length.js';
import { wallLetter } from '../geometry/outline.js';
import { isRightAngled, stretched, wallLengths } from '../geometry/shapes.js';
import { turnedOver } from '../state/build.js';
import { setBed } from '../state/commands.js';
import { stretchCheck } from '../state/checks.js';
import { unitsOf } from '../state/plan.js';
import { typeOf } from '../state/types.js';
import { buildFields } from './build-fields.js';
import { lengthField } from './length-field.js';
import { GardenElement, h } from './make.js';

/** bed-build: how the chosen bed is built: timber, lap, base, liner, fill, finish, which walls are seen, and their lengths. */
export class BedBuild extends GardenElement {
  follows = ['plans', 'choice'];

  render() {
    const { bed, plan } = this.garden;
    if (!bed) return;
    const own = plan.beds.find(one => String(one.id) === bed.id);
    const walls = bed.size || bed.type || !isRightAngled(bed.own) ? [] : wallLengths(bed.own);
    this.rebuild(h('details', {},
      h('summary', { 'data-key': 'build' }, 'How it is built'),
      h('div.fields', {}, buildFields({
        plan, key: 'build', without: bed.type ? [] : ['courses'], layers: { own, type: typeOf(plan, bed.type) ?? undefined, garden: plan.defaults },
        set: fields => this.run(setBed(bed.id, fields)),
      })),
      this.#seen(bed),
      walls.length ? h('h3', {}, 'Walls') : null,
      walls.length ? h('p.hint', {}, 'A wall that is made longer takes what lies beyond its end with it.') : null,
      walls.length ? h('div.fields', {}, walls.map((mm, side) => this.#wall(side, mm))) : null));
  }

  #seen(bed) {
    const walls = bed.own.map((_, side) => wallLetter(side));
    const seen = bed.whole.seen ?? walls;
    return h('fieldset', {}, h('legend', {}, 'Walls that are seen'),
      walls.map(wall => h('label.wall', {},
        h('input', { type: 'checkbox', checked: seen.includes(wall), 'data-key': `seen ${wall}`,
          onchange: () => this.run(setBed(bed.id, { seen: turnedOver(walls, this.garden.bed.whole.seen, wall) })) }),
        wall)));
  }

  #wall(side, mm) {
    const wall = `Wall ${wallLetter(side)}`;
    const units = unitsOf(this.garden.plan);
    return lengthField({
      label: wall, units, mm: Math.round(mm * 10) / 10, key: `wall ${wallLetter(side)}`,
      check: wanted => (this.garden.bed ? stretchCheck(this.garden.bed, side, wanted, units) : null),
      onlength: ({ detail }) => {
        const { bed } = this.garden;
        this.run(setBed(bed.id, { outline: stretched(bed.own, side, detail.mm), walls: undefined }));
        this.say(`${wall} is ${shown(detail.mm, units)} long.`);
      },
    });
  }
}

customElements.define('bed-build', BedBuild);
