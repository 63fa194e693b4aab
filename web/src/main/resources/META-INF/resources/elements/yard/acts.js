import { panned } from '../../geometry/view.js';
import { Band } from './band.js';
import { Carry } from './carry.js';
import { PointShift, Shift } from './shift.js';
import { Stretch } from './stretch.js';
import { Turn } from './turn.js';

/**
 * What a press becomes once it is dragged. An act has `move(at, free, event)`, `end()` and `drop()`, which leaves all as it
 * was. Nothing is moved that was not taken hold of: a finger that slides over a bed looks along the yard.
 *
 * @param {object} press `{bed, wall, turn, thing, point, from, view, also, touch}`
 */
export function actOf(yard, press) {
  const { choice } = yard.garden;
  if (press.pans || choice.course !== null || yard.sketch) return new Pan(yard, press);
  if (press.turn) return new Turn(yard, press);
  if (press.wall !== null) return new Stretch(yard, press);
  if (press.point) return new PointShift(yard, press);
  if (press.bed !== null && (!press.touch || choice.has(press.bed))) return new Carry(yard, press);
  if (press.thing && JSON.stringify(press.thing) === JSON.stringify(choice.thing)) return new Shift(yard, press);
  if (press.also) return new Band(yard, press);
  return new Pan(yard, press);
}

class Pan {
  #yard; #press;

  constructor(yard, press) {
    this.#yard = yard;
    this.#press = press;
  }

  move(at) {
    const { view, from } = this.#press;
    this.#yard.camera.follow(panned(view, at[0] - from[0], at[1] - from[1]));
  }

  end() {}

  drop() {}
}
