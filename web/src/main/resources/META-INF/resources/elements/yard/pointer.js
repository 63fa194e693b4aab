import { bounds } from '../../geometry/outline.js';
import { neighbours } from '../../geometry/distance.js';
import { rest } from '../../geometry/snap.js';
import { panned, zoomed } from '../../geometry/view.js';
import { moveBed } from '../../state/commands.js';
import { USUAL, bedsOf, calledOf, yardOf } from '../../state/plan.js';

/** Pixels a pointer may tremble before a press becomes a drag. */
const TREMBLE = 4;

/** Pixels within which a face draws a bed to it. */
const NEAR = 9;

/** Without a face nearby a bed comes to rest on this grid, millimetres. */
const GRID = 50;

/** Mouse, pen and touch in the yard: carry a bed, pan, pinch, wheel. */
export class YardPointer {
  #yard;
  #down = new Map();
  #act = null;
  #frame = 0;

  /** @param {import('../lap-yard.js').LapYard} yard */
  constructor(yard) {
    this.#yard = yard;
    yard.listen(yard.svg, 'pointerdown', event => this.#press(event));
    yard.listen(yard.svg, 'pointermove', event => this.#move(event));
    yard.listen(yard.svg, 'pointerup', event => this.#lift(event));
    yard.listen(yard.svg, 'pointercancel', event => this.#lift(event, true));
    yard.listen(yard.svg, 'wheel', event => this.#wheel(event), { passive: false });
    yard.listen(window, 'keydown', event => { if (event.key === 'Escape' && this.#act?.kind === 'carry') this.#drop(); });
  }

  #at(event) {
    const box = this.#yard.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  }

  #press(event) {
    if (event.button > 0 || this.#down.size > 1) return;
    const at = this.#at(event);
    this.#down.set(event.pointerId, at);
    this.#yard.svg.setPointerCapture(event.pointerId);
    if (this.#down.size === 2) {
      if (this.#act?.kind === 'carry') this.#drop();
      this.#act = { kind: 'pinch' };
      return;
    }
    const id = event.target.closest?.('[data-bed]')?.dataset.bed ?? null;
    this.#act = { kind: 'press', id, from: at, view: this.#yard.view };
    if (id !== null) {
      event.preventDefault();
      this.#yard.focusBed(id);
    }
  }

  #move(event) {
    const before = this.#down.get(event.pointerId);
    if (!before) return;
    const at = this.#at(event);
    this.#down.set(event.pointerId, at);
    const act = this.#act;
    if (act?.kind === 'pinch' && this.#down.size === 2) this.#pinch(event.pointerId, before, at);
    if (act?.kind === 'press' && Math.hypot(at[0] - act.from[0], at[1] - act.from[1]) > TREMBLE) this.#begin(act);
    if (act?.kind === 'pan') this.#yard.look(panned(act.view, at[0] - act.from[0], at[1] - act.from[1]));
    if (act?.kind === 'carry') {
      act.to = at;
      act.free = event.altKey;
      this.#frame ||= requestAnimationFrame(() => {
        this.#frame = 0;
        if (this.#act === act) this.#carry(act);
      });
    }
  }

  #begin(act) {
    const { garden } = this.#yard;
    if (act.id === null || garden.choice.course !== null) {
      act.kind = 'pan';
      return;
    }
    act.kind = 'carry';
    garden.choice.takeBed(act.id);
    act.bed = garden.bed;
    act.box = bounds(act.bed.outline);
    act.others = bedsOf(garden.plan).filter(bed => bed.id !== act.id).map(bed => bounds(bed.outline));
    const yard = yardOf(garden.plan);
    act.yard = yard ? bounds(yard) : null;
    act.gaps = [...new Set([USUAL.pathWidth, ...(garden.plan.paths ?? []).map(path => path.width).filter(Boolean)])];
    act.to = act.from;
  }

  #carry(act) {
    const { k } = this.#yard.view;
    let [dx, dy] = [(act.to[0] - act.from[0]) / k, -(act.to[1] - act.from[1]) / k];
    if (act.free) {
      [dx, dy] = [Math.round(dx), Math.round(dy)];
    } else {
      const rested = rest(shifted(act.box, dx, dy), act.others, act.yard, { within: NEAR / k, grid: GRID, gaps: act.gaps });
      dx += rested.dx;
      dy += rested.dy;
    }
    act.move = [dx, dy];
    this.#yard.carry({ id: act.id, dx, dy, gaps: neighbours(shifted(act.box, dx, dy), act.others, act.yard) });
  }

  #lift(event, cancelled = false) {
    if (!this.#down.delete(event.pointerId)) return;
    const act = this.#act;
    if (this.#down.size) {
      this.#act = null;
      return;
    }
    this.#act = null;
    if (act?.kind === 'press' && !cancelled) this.#pressed(act);
    if (act?.kind === 'carry') {
      if (!cancelled) this.#carry(act);
      this.#put(act, cancelled);
    }
  }

  #pressed({ id }) {
    const { choice } = this.#yard.garden;
    if (id === null && choice.course !== null) choice.liftCourse(null);
    else if (id !== choice.bed) choice.takeBed(id);
  }

  #put(act, cancelled) {
    const { garden } = this.#yard;
    this.#yard.carry(null);
    if (cancelled || !act.move) return;
    const [dx, dy] = act.move;
    const [x, y] = act.bed.placement.at;
    garden.plans.run(moveBed(act.id, [x + dx, y + dy]));
    this.#yard.render();
    const box = bounds(garden.bed.outline);
    this.#yard.say(`${calledOf(garden.bed)}: ${this.#yard.lengthText(box.left)} along, ${this.#yard.lengthText(box.front)} away.`);
  }

  /** Lets go of what is in hand: it stays where it was. */
  #drop() {
    this.#act = null;
    this.#yard.carry(null);
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

function shifted(box, dx, dy) {
  return { left: box.left + dx, right: box.right + dx, front: box.front + dy, back: box.back + dy };
}
