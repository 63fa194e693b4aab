import { neighbours } from '../geometry/distance.js';
import { bounds } from '../geometry/outline.js';
import { toScreen } from '../geometry/view.js';
import { boxOf, moveBeds } from '../state/group.js';
import { unitsOf } from '../state/plan.js';
import { lengthField } from './length-field.js';
import { GardenElement, h, s } from './make.js';
import { around } from './yard/around.js';

/** Which way a bed goes when the room on a side grows. */
const WAY = { left: [1, 0], right: [-1, 0], front: [0, 1], back: [0, -1] };

const SIDES = { left: 'to the left', right: 'to the right', front: 'towards the house', back: 'away from the house' };

/** Room that a distance takes on the screen, pixels: one in feet, inches and sixteenths is read whole too. */
const WIDTHS = { metric: 54, imperial: 92 };
const HIGH = 26;

/** Where it is tried along the side that it belongs to, in its own breadths. */
const ASIDE = [0, 1.2, -1.2, 2.4, -2.4, 3.6, -3.6];

/** lap-gaps: round the beds in hand, the distance to each neighbour, which can be typed over. Set `yard`. */
export class LapGaps extends GardenElement {
  #gaps = [];

  /** Where the fields stand, as boxes in the yard's pixels. */
  boxes = [];

  named = ['group', 'Distances round what is in hand'];

  follows = ['plans', 'choice'];

  attached() {
    this.listen(this.yard, 'viewed', () => this.#place());
    for (const type of ['sketched', 'sketch-ended']) this.listen(this.yard, type, () => this.render());
    super.attached();
  }

  render() {
    const { plan, beds, choice } = this.garden;
    this.hidden = !beds.length || choice.course !== null || Boolean(this.yard.sketch);
    if (this.hidden) {
      this.#gaps = [];
      this.boxes = [];
      this.rebuild();
      return;
    }
    const { beds: others, yard } = around(plan, choice.beds);
    this.#gaps = neighbours(beds.map(bed => bed.outline), others, yard);
    this.rebuild(s('svg.lines', { 'aria-hidden': 'true', focusable: 'false' }), this.#gaps.map(gap => this.#field(gap)));
    this.#place();
  }

  #field({ side, mm, id }) {
    const what = id === null ? 'the edge of the yard' : `bed ${id}`;
    return h(`div.gap-field`, { 'data-key': `gap field ${side}` }, lengthField({
      label: `${SIDES[side]}, to ${what}`, units: unitsOf(this.garden.plan), mm: Math.round(mm * 10) / 10, key: `gap ${side}`,
      check: wanted => (wanted < 0 ? `${wanted} is no distance. Write 0 or more.` : wanted > 1000000 ? 'Further than a kilometre. Write less.' : null),
      onlength: ({ detail }) => this.#move(side, detail.mm),
    }));
  }

  #move(side, wanted) {
    const { garden } = this;
    const gap = this.#gaps.find(one => one.side === side);
    const by = wanted - gap.mm;
    const [dx, dy] = WAY[side];
    garden.plans.run(moveBeds(garden.choice.beds, dx * by, dy * by));
    const box = boxOf(garden.plan, garden.choice.beds);
    this.say(`${this.yard.lengthText(wanted)} ${SIDES[side]}. Now ${this.yard.lengthText(box.left)} along, ${this.yard.lengthText(box.front)} away.`);
  }

  /** Each stands in the middle of its gap where there is room for it, else close beside the bed. */
  #place() {
    if (this.hidden) return;
    this.classList.toggle('away', Boolean(this.yard.carried));
    if (this.yard.carried) return;
    const { view } = this.yard;
    const across = WIDTHS[unitsOf(this.garden.plan)];
    this.style.setProperty('--across', `${across}px`);
    const box = boxOf(this.garden.plan, this.garden.choice.beds) ?? bounds([[0, 0]]);
    const [wide, high] = this.yard.size;
    const drawn = [];
    this.boxes = [];
    const taken = this.yard.names();
    for (const { side, from, to } of this.#gaps) {
      const field = this.querySelector(`[data-key="gap field ${side}"]`);
      if (!field) continue;
      const [dx, dy] = WAY[side];
      const [fromX, fromY] = toScreen(view, side === 'left' || side === 'right' ? [side === 'left' ? box.left : box.right, from[1]] : [from[0], side === 'front' ? box.front : box.back]);
      const [toX, toY] = toScreen(view, to);
      drawn.push(s('path', { d: `M${fromX} ${fromY}L${toX} ${toY}${dx ? `M${fromX} ${fromY - 5}v10M${toX} ${toY - 5}v10` : `M${fromX - 5} ${fromY}h10M${toX - 5} ${toY}h10`}` }));
      let [x, y] = [(fromX + toX) / 2, (fromY + toY) / 2];
      if (dx && Math.abs(toX - fromX) < across + 8) x = fromX - dx * (across / 2 + 4);
      if (dy && Math.abs(toY - fromY) < HIGH + 8) y = fromY + dy * (HIGH / 2 + 4);
      // along the bed's side until it covers no name
      let spot = null;
      for (const [i, step] of ASIDE.entries()) {
        const at = [Math.max(across / 2, Math.min(wide - across / 2, x + (dx ? 0 : step * across))), Math.max(HIGH / 2, Math.min(high - HIGH / 2, y + (dx ? step * HIGH : 0)))];
        const tried = { at, left: at[0] - across / 2, right: at[0] + across / 2, top: at[1] - HIGH / 2, bottom: at[1] + HIGH / 2 };
        if (i === 0) spot = tried;
        if (taken.some(other => tried.left < other.right && tried.right > other.left && tried.top < other.bottom && tried.bottom > other.top)) continue;
        spot = tried;
        break;
      }
      [x, y] = spot.at;
      drawn.push(s('text', { x, y, text: field.querySelector('input').value }));
      this.boxes.push(spot);
      taken.push(spot);
      field.style.transform = `translate(${Math.round(x - across / 2)}px, ${Math.round(y - HIGH / 2)}px)`;
    }
    this.querySelector('svg.lines').replaceChildren(...drawn);
  }
}

customElements.define('lap-gaps', LapGaps);
