import { aboutItsMiddle, bounds, middle, placed } from '../../geometry/outline.js';
import { toScreen } from '../../geometry/view.js';
import { placeBed } from '../../state/commands.js';

/** Degrees on which a turned bed rests, and how near a right angle draws it. */
const STEP = 5;
const NEAR = 4;

/** Turns the bed in hand by its handle, about its middle. */
export class Turn {
  #yard; #bed; #from; #next = null;

  constructor(yard, { from }) {
    this.#yard = yard;
    this.#bed = yard.garden.bed;
    this.#from = this.#angle(from);
  }

  #angle(at) {
    const [x, y] = toScreen(this.#yard.view, middle(bounds(this.#bed.outline)));
    return Math.atan2(y - at[1], at[0] - x) * 180 / Math.PI;
  }

  move(to, free) {
    const { own, placement } = this.#bed;
    let turn = placement.turn + this.#angle(to) - this.#from;
    const square = Math.round(turn / 90) * 90;
    if (!free) turn = Math.abs(turn - square) < NEAR ? square : Math.round(turn / STEP) * STEP;
    turn = ((Math.round(turn * 10) / 10) % 360 + 360) % 360;
    this.#next = aboutItsMiddle(own, placement, { turn });
    this.#yard.showShape({ own, outline: placed(own, this.#next), side: 0, said: `${turn}°` });
  }

  drop() { this.#yard.showShape(null); }

  end() {
    this.#yard.showShape(null);
    if (!this.#next) return;
    this.#yard.garden.plans.run(placeBed(this.#bed.id, this.#next));
    this.#yard.render();
    this.#yard.say(`Turned to ${this.#next.turn} degrees.`);
  }
}
