import { overlap } from '../../geometry/distance.js';
import { toYard } from '../../geometry/view.js';
import { bedsOf } from '../../state/plan.js';

/** Takes all beds that a frame touches, beside those in hand. */
export class Band {
  #yard; #from; #before; #inside = [];

  constructor(yard, { from }) {
    this.#yard = yard;
    this.#from = from;
    this.#before = yard.garden.choice.beds;
  }

  move(to) {
    const [[x1, y1], [x2, y2]] = [toYard(this.#yard.view, this.#from), toYard(this.#yard.view, to)];
    const frame = [[Math.min(x1, x2), Math.min(y1, y2)], [Math.max(x1, x2), Math.min(y1, y2)], [Math.max(x1, x2), Math.max(y1, y2)], [Math.min(x1, x2), Math.max(y1, y2)]];
    this.#inside = bedsOf(this.#yard.garden.plan).filter(bed => overlap(frame, bed.outline)).map(bed => bed.id);
    this.#yard.showBand({ from: this.#from, to });
  }

  drop() { this.#yard.showBand(null); }

  end() {
    this.#yard.showBand(null);
    this.#yard.garden.choice.takeBeds([...this.#before, ...this.#inside]);
    const { beds } = this.#yard.garden.choice;
    if (beds.length) this.#yard.focusBed(beds[0]);
    this.#yard.say(`${beds.length} beds in hand.`);
  }
}
