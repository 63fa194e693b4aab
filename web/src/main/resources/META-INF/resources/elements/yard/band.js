import { bounds } from '../../geometry/outline.js';
import { toYard } from '../../geometry/view.js';
import { bedsOf } from '../../state/plan.js';

/** Takes all beds that lie wholly in a frame, beside those in hand. */
export class Band {
  #yard; #from; #before; #inside = [];

  constructor(yard, { from }) {
    this.#yard = yard;
    this.#from = from;
    this.#before = yard.garden.choice.beds;
  }

  move(to) {
    const [[x1, y1], [x2, y2]] = [toYard(this.#yard.view, this.#from), toYard(this.#yard.view, to)];
    const box = { left: Math.min(x1, x2), right: Math.max(x1, x2), front: Math.min(y1, y2), back: Math.max(y1, y2) };
    this.#inside = bedsOf(this.#yard.garden.plan).filter(bed => {
      const own = bounds(bed.outline);
      return own.left >= box.left && own.right <= box.right && own.front >= box.front && own.back <= box.back;
    }).map(bed => bed.id);
    this.#yard.showBand({ from: this.#from, to });
  }

  drop() { this.#yard.showBand(null); }

  end() {
    this.#yard.showBand(null);
    this.#yard.garden.choice.takeBeds([...this.#before, ...this.#inside]);
    this.#yard.say(`${this.#yard.garden.choice.beds.length} beds in hand.`);
  }
}
