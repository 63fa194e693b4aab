import { panned, toYard, zoomed } from '../../geometry/view.js';
import { Band } from './band.js';
import { Carry } from './carry.js';
import { Stretch } from './stretch.js';

/** Pixels a pointer may tremble before a press becomes a drag. */
const TREMBLE = 4;

/**
 * Mouse, pen and touch in the yard. A press that becomes a drag is one act: `carry` beds, `stretch` a wall, take many in
 * a `band`, or pan. An act has `move(at, event)`, `end()` and `drop()`, which leaves all as it was.
 */
export class YardPointer {
  #yard;
  #down = new Map();
  #press = null;
  #act = null;
  #frame = 0;

  /** @param {import('../lap-yard.js').LapYard} yard */
  constructor(yard) {
    this.#yard = yard;
    yard.listen(yard.svg, 'pointerdown', event => this.#begin(event));
    yard.listen(yard.svg, 'pointermove', event => this.#move(event));
    yard.listen(yard.svg, 'pointerup', event => this.#lift(event));
    yard.listen(yard.svg, 'pointercancel', event => this.#lift(event, true));
    yard.listen(yard.svg, 'pointerleave', () => yard.sketch?.lookAt(null));
    yard.listen(yard.svg, 'dblclick', () => yard.sketch?.done());
    yard.listen(yard.svg, 'wheel', event => this.#wheel(event), { passive: false });
    yard.listen(window, 'keydown', event => { if (event.key === 'Escape' && this.#act) this.#drop(); });
  }

  #at(event) {
    const box = this.#yard.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  }

  #begin(event) {
    if (event.button > 0 || this.#down.size > 1) return;
    const at = this.#at(event);
    this.#down.set(event.pointerId, at);
    this.#yard.svg.setPointerCapture(event.pointerId);
    if (this.#down.size === 2) {
      this.#drop();
      this.#press = null;
      return;
    }
    const id = event.target.closest?.('[data-bed]')?.dataset.bed ?? null;
    const wall = event.target.closest?.('[data-wall]')?.dataset.wall ?? null;
    this.#press = { id, wall, from: at, view: this.#yard.view, also: event.shiftKey || event.ctrlKey || event.metaKey || this.#yard.several };
    if (id !== null && !this.#yard.sketch) {
      event.preventDefault();
      this.#yard.focusBed(id);
    }
  }

  #move(event) {
    const at = this.#at(event);
    const before = this.#down.get(event.pointerId);
    if (!before) {
      this.#yard.sketch?.lookAt(this.#yard.restingPoint(at, event));
      return;
    }
    this.#down.set(event.pointerId, at);
    if (this.#down.size === 2) this.#pinch(event.pointerId, before, at);
    if (this.#press && Math.hypot(at[0] - this.#press.from[0], at[1] - this.#press.from[1]) > TREMBLE) {
      this.#act = this.#actOf(this.#press);
      this.#press = null;
    }
    const act = this.#act;
    if (!act) return;
    act.to = at;
    act.free = event.altKey;
    this.#frame ||= requestAnimationFrame(() => {
      this.#frame = 0;
      if (this.#act === act) act.move(act.to, act.free);
    });
  }

  #actOf(press) {
    const yard = this.#yard;
    const { choice } = yard.garden;
    const lifted = choice.course !== null || yard.sketch;
    if (press.wall !== null && !lifted) return new Stretch(yard, press);
    if (press.id !== null && !lifted) return new Carry(yard, press);
    if (press.also && !lifted) return new Band(yard, press);
    return { move: at => yard.look(panned(press.view, at[0] - press.from[0], at[1] - press.from[1])), end: () => {}, drop: () => {} };
  }

  #lift(event, cancelled = false) {
    if (!this.#down.delete(event.pointerId)) return;
    const [press, act] = [this.#press, this.#act];
    this.#press = null;
    this.#act = null;
    if (act) {
      if (cancelled) return act.drop();
      act.move(this.#at(event), event.altKey);
      return act.end();
    }
    if (press && !cancelled && !this.#down.size) this.#pressed(press, event);
    return undefined;
  }

  #pressed({ id, wall, also }, event) {
    const { choice } = this.#yard.garden;
    if (this.#yard.sketch) this.#yard.sketch.put(this.#yard.restingPoint(this.#at(event), event));
    else if (id !== null && also) choice.alsoTake(id);
    else if (id !== null) choice.takeBed(id);
    else if (wall !== null || also) return;
    else if (choice.course !== null) choice.liftCourse(null);
    else choice.takeBed(null);
  }

  /** Lets go of what is in hand: it stays where it was. */
  #drop() {
    this.#act?.drop();
    this.#act = null;
  }

  #pinch(id, before, at) {
    const [, other] = [...this.#down].find(([otherId]) => otherId !== id);
    const apart = ([x, y]) => Math.max(Math.hypot(x - other[0], y - other[1]), 1);
    const centre = [(at[0] + other[0]) / 2, (at[1] + other[1]) / 2];
    const moved = panned(this.#yard.view, (at[0] - before[0]) / 2, (at[1] - before[1]) / 2);
    this.#yard.look(zoomed(moved, apart(at) / apart(before), centre));
  }

  #wheel(event) {
    event.preventDefault();
    const lines = event.deltaMode === 1 ? 16 : 1;
    this.#yard.zoom(Math.exp(-event.deltaY * lines * (event.ctrlKey ? 0.01 : 0.0016)), this.#at(event));
  }
}

/** How far a pointer has come, yard millimetres. */
export function come(view, from, to) {
  const [x, y] = toYard(view, from);
  const [nowX, nowY] = toYard(view, to);
  return [nowX - x, nowY - y];
}
