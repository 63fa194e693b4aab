import { placed, wallLetter } from '../../geometry/outline.js';
import { facesOf, restWall } from '../../geometry/snap.js';
import { wallLengths, wallMoved, wallRoom } from '../../geometry/shapes.js';
import { shapeBed } from '../../state/commands.js';
import { NEAR, around } from './around.js';
import { come } from './come.js';

/** Drags one wall of the chosen bed in or out: the walls beside it grow or shrink. */
export class Stretch {
  #yard; #from; #bed; #side; #out; #targets; #around; #by = 0;

  constructor(yard, { wall, from }) {
    this.#yard = yard;
    this.#from = from;
    this.#bed = yard.garden.bed;
    this.#side = Number(wall);
    const [a, b] = this.#wall(this.#bed.outline);
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const turn = this.#bed.placement.mirror ? -1 : 1;
    this.#out = [turn * (b[1] - a[1]) / length, -turn * (b[0] - a[0]) / length];
    this.#around = around(yard.garden.plan, [this.#bed.id]);
    this.#targets = [...this.#around.beds, ...this.#around.paths].map(({ outline, box }) => ({ faces: facesOf([outline]), box }));
  }

  #wall(outline) { return [outline[this.#side], outline[(this.#side + 1) % outline.length]]; }

  move(to, free) {
    const { view, grid } = this.#yard;
    const [dx, dy] = come(view, this.#from, to);
    let by = dx * this.#out[0] + dy * this.#out[1];
    const { least, most } = wallRoom(this.#bed.own, this.#side, this.#bed.section.thickness);
    if (free) by = Math.round(by);
    else by = restWall(this.#wall(this.#bed.outline), this.#out, by, this.#targets, this.#around.yard ? facesOf([this.#around.yard.outline]) : null,
      { within: NEAR / view.k, grid, gaps: this.#around.gaps });
    this.#by = Math.max(least, Math.min(most, by));
    const own = wallMoved(this.#bed.own, this.#side, this.#by);
    this.#yard.showShape({ own, outline: placed(own, this.#bed.placement), side: this.#side });
  }

  drop() { this.#yard.showShape(null); }

  end() {
    this.#yard.showShape(null);
    if (!this.#by) return;
    const own = wallMoved(this.#bed.own, this.#side, this.#by);
    this.#yard.garden.plans.run(shapeBed(this.#bed.id, own));
    this.#yard.render();
    const lengths = wallLengths(own);
    const beside = [(this.#side + own.length - 1) % own.length, (this.#side + 1) % own.length];
    this.#yard.say(beside.map(side => `Wall ${wallLetter(side)} ${this.#yard.lengthText(lengths[side])}`).join(', '));
  }
}
