import { bounds } from '../../geometry/outline.js';
import { facesOf, rest, restLines } from '../../geometry/snap.js';
import { neighbours } from '../../geometry/distance.js';
import { moveBeds } from '../../state/group.js';
import { bedsOf, calledOf } from '../../state/plan.js';
import { NEAR, around } from './around.js';
import { come } from './come.js';

/** Carries the beds in hand, the pressed one among them. */
export class Carry {
  #yard; #from; #ids; #outlines; #faces; #around; #lines; #box; #move = null;

  constructor(yard, { bed: id, from, also }) {
    this.#yard = yard;
    this.#from = from;
    const { garden } = yard;
    if (!garden.choice.has(id)) also ? garden.choice.alsoTake(id) : garden.choice.takeBed(id);
    this.#ids = garden.choice.beds;
    this.#outlines = bedsOf(garden.plan).filter(bed => this.#ids.includes(bed.id)).map(bed => bed.outline);
    this.#box = bounds(...this.#outlines);
    this.#faces = facesOf(this.#outlines);
    this.#around = around(garden.plan, this.#ids);
    const { beds, paths, yard: round, gaps } = this.#around;
    this.#lines = restLines([...beds, ...paths].map(({ outline }) => ({ faces: facesOf([outline]) })), round ? facesOf([round.outline]) : null, gaps);
  }

  move(to, free) {
    const { view, grid } = this.#yard;
    let [dx, dy] = come(view, this.#from, to);
    if (free) {
      [dx, dy] = [Math.round(dx), Math.round(dy)];
    } else {
      const rested = rest(this.#faces, [dx, dy], this.#lines, { within: NEAR / view.k, grid });
      dx += rested.dx;
      dy += rested.dy;
    }
    this.#move = [dx, dy];
    const moved = this.#outlines.map(outline => outline.map(([x, y]) => [x + dx, y + dy]));
    this.#yard.carry({ ids: this.#ids, dx, dy, gaps: neighbours(moved, this.#around.beds, this.#around.yard) });
  }

  drop() { this.#yard.carry(null); }

  end() {
    const { garden } = this.#yard;
    // sent on its way before the page is laid out
    if (this.#move) garden.plans.run(moveBeds(this.#ids, ...this.#move));
    this.#yard.carry(null);
    if (!this.#move) return;
    this.#yard.render();
    const box = { left: this.#box.left + this.#move[0], front: this.#box.front + this.#move[1] };
    const called = garden.bed ? calledOf(garden.bed) : `${this.#ids.length} beds`;
    this.#yard.say(`${called}: ${this.#yard.lengthText(box.left)} along, ${this.#yard.lengthText(box.front)} away.`);
  }
}
