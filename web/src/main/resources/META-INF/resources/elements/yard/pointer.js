import { panned, zoomed } from '../../geometry/view.js';
import { HELD } from '../long-press.js';
import { yardMenu } from '../yard-menu.js';
import { actOf } from './acts.js';

/** Pixels a pointer may tremble before a press becomes a drag. */
const TREMBLE = 4;
const FINGER_TREMBLE = 9;

/** One notch of a wheel, and how many pixels a browser says for it. */
const NOTCH = 1.2;
const NOTCH_PX = 100;

const MIDDLE = 1;

/** Mouse, pen and touch in the yard: a press takes hold, a drag is one act (see acts.js), two fingers and the wheel come nearer. */
export class YardPointer {
  #yard;
  #down = new Map();
  #press = null;
  #act = null;
  #frame = 0;
  #holding = 0;

  /** Where the pointer was last over the yard, pixels; null where it is not. */
  over = null;

  /** @param {import('../lap-yard.js').LapYard} yard */
  constructor(yard) {
    this.#yard = yard;
    const on = (type, handler, options) => yard.listen(yard.svg, type, handler, options);
    on('pointerdown', event => this.#begin(event));
    on('pointermove', event => this.#move(event));
    on('pointerup', event => this.#lift(event));
    on('pointercancel', event => this.#lift(event, true));
    on('pointerleave', () => {
      this.over = null;
      yard.sketch?.lookAt(null);
    });
    on('dblclick', () => yard.sketch?.done());
    on('wheel', event => this.#wheel(event), { passive: false });
    on('contextmenu', event => {
      clearTimeout(this.#holding);
      yardMenu(yard, event);
    });
    yard.listen(window, 'keydown', event => { if (event.key === 'Escape' && this.#act) this.#drop(); });
  }

  at(event) {
    const box = this.#yard.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  }

  #begin(event) {
    if (event.button > MIDDLE || this.#down.size > 1) return;
    const at = this.at(event);
    this.#down.set(event.pointerId, at);
    this.#yard.svg.setPointerCapture(event.pointerId);
    clearTimeout(this.#holding);
    if (this.#down.size === 2) {
      this.#drop();
      this.#press = null;
      return;
    }
    const of = name => event.target.closest?.(`[data-${name}]`)?.dataset[name] ?? null;
    const path = text => (text === null ? null : text.split(' ').map(part => (/^\d+$/.test(part) ? Number(part) : part)));
    this.#press = {
      bed: of('bed'), wall: of('wall'), turn: of('turn'), thing: path(of('thing')), point: path(of('point')),
      from: at, view: this.#yard.view, pans: event.button === MIDDLE, touch: event.pointerType === 'touch',
      also: event.shiftKey || event.ctrlKey || event.metaKey || this.#yard.several,
    };
    if (this.#press.touch) this.#holding = setTimeout(() => this.#held(event), HELD);
    if (event.button === MIDDLE) event.preventDefault();
    else if (this.#press.bed !== null && !this.#yard.sketch) {
      event.preventDefault();
      this.#yard.focusBed(this.#press.bed);
    }
  }

  #move(event) {
    const at = this.at(event);
    this.over = at;
    const before = this.#down.get(event.pointerId);
    if (!before) {
      this.#yard.sketch?.lookAt(this.#yard.restingPoint(at, event));
      return;
    }
    this.#down.set(event.pointerId, at);
    if (this.#down.size === 2) this.#pinch(event.pointerId, before, at);
    const tremble = this.#press?.touch ? FINGER_TREMBLE : TREMBLE;
    if (this.#press && Math.hypot(at[0] - this.#press.from[0], at[1] - this.#press.from[1]) > tremble) {
      this.#act = actOf(this.#yard, this.#press);
      this.#press = null;
      clearTimeout(this.#holding);
    }
    const act = this.#act;
    if (!act) return;
    act.to = [at, event.altKey, event];
    this.#frame ||= requestAnimationFrame(() => {
      this.#frame = 0;
      if (this.#act === act) act.move(...act.to);
    });
  }

  #lift(event, cancelled = false) {
    if (!this.#down.delete(event.pointerId)) return;
    clearTimeout(this.#holding);
    const [press, act] = [this.#press, this.#act];
    this.#press = null;
    this.#act = null;
    if (act) {
      if (cancelled) return act.drop();
      act.move(this.at(event), event.altKey, event);
      return act.end();
    }
    if (press && !press.pans && !cancelled && !this.#down.size) this.#pressed(press, event);
    return undefined;
  }

  /** Not every browser tells of a held finger as of a right button. */
  #held({ target, clientX, clientY, pointerType }) {
    if (!this.#press || this.#yard.sketch) return;
    this.#press = null;
    navigator.vibrate?.(40);
    yardMenu(this.#yard, { target, clientX, clientY, pointerType, preventDefault() {} });
  }

  #pressed({ bed, wall, turn, thing, point, also }, event) {
    const { choice } = this.#yard.garden;
    if (this.#yard.sketch) this.#yard.sketch.put(this.#yard.restingPoint(this.at(event), event));
    else if (bed !== null && also) choice.alsoTake(bed);
    else if (bed !== null) choice.takeBed(bed);
    else if (wall !== null || turn !== null || point || also) return;
    else if (choice.course !== null) choice.liftCourse(null);
    else if (thing) choice.takeThing(thing);
    else choice.takeNothing();
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
    this.#yard.camera.follow(zoomed(moved, apart(at) / apart(before), centre));
  }

  /** One notch is one step, however many pixels a browser makes of it; a touchpad's small moves are parts of one. */
  #wheel(event) {
    event.preventDefault();
    const pixels = event.deltaY * (event.deltaMode === 1 ? NOTCH_PX / 3 : event.deltaMode === 2 ? NOTCH_PX : 1);
    const notches = Math.max(-1, Math.min(1, pixels / (event.ctrlKey && Math.abs(pixels) < NOTCH_PX / 2 ? 12 : NOTCH_PX)));
    this.#yard.zoom(NOTCH ** -notches, this.at(event));
  }
}
