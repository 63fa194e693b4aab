import { moveThing, movePoint, calledThing, pointsOf } from '../../state/things.js';
import { valueAt } from '../../state/ground.js';
import { onGrid } from '../../geometry/snap.js';
import { come } from './come.js';

/** Carries a thing of the ground that is in hand: a path, a gate, a tap, a tree. */
export class Shift {
  #yard; #thing; #from; #by = [0, 0];

  constructor(yard, { thing, from }) {
    this.#yard = yard;
    this.#thing = thing;
    this.#from = from;
  }

  move(to, free) {
    const grid = free ? 1 : this.#yard.grid;
    const first = pointsOf(this.#yard.garden.plan, this.#thing).list[0];
    const [dx, dy] = come(this.#yard.view, this.#from, to);
    const on = (value, by) => onGrid(value + by, grid) - value;
    this.#by = [on(first[0], dx), on(first[1], dy)];
    const { list, closed } = pointsOf(moveThing(this.#thing, ...this.#by)(this.#yard.garden.plan), this.#thing);
    this.#yard.showLine(list, closed);
  }

  drop() { this.#yard.showLine(null); }

  end() {
    this.#yard.showLine(null);
    const { garden } = this.#yard;
    garden.plans.run(moveThing(this.#thing, ...this.#by));
    this.#yard.say(`${calledThing(garden.plan, this.#thing)} is moved.`);
  }
}

/** Drags one corner of the yard, or one point of a path that is in hand. */
export class PointShift {
  #yard; #path; #point = null;

  constructor(yard, { point }) {
    this.#yard = yard;
    this.#path = point;
  }

  move(to, free, event) {
    this.#point = this.#yard.restingPoint(to, { altKey: free, shiftKey: event?.shiftKey });
    const list = valueAt(this.#yard.garden.plan, this.#path.slice(0, -1)).with(this.#path.at(-1), this.#point);
    this.#yard.showLine(list, this.#path.at(-2) === 'outline');
  }

  drop() { this.#yard.showLine(null); }

  end() {
    this.#yard.showLine(null);
    if (!this.#point) return;
    this.#yard.garden.plans.run(movePoint(this.#path, this.#point));
    this.#yard.say(`Put at ${this.#point.map(mm => this.#yard.lengthText(mm)).join(', ')}.`);
  }
}
