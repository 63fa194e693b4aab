import { bounds } from '../geometry/outline.js';
import { shown } from '../geometry/length.js';
import { nextPoint } from '../geometry/drawing.js';
import { isRightAngled } from '../geometry/shapes.js';
import { fitted, toScreen, toYard, zoomed } from '../geometry/view.js';
import { Drawing } from '../state/drawing.js';
import { bedsOf, boundsOf, unitsOf, yardOf } from '../state/plan.js';
import { GardenElement, s } from './make.js';
import { drawnBed, drawnRing, looksOf, standsUpright, toldBed } from './yard/bed.js';
import { drawnGround, drawnKeepClear } from './yard/ground.js';
import { YardKeys } from './yard/keys.js';
import { patterns, scalePatterns } from './yard/patterns.js';
import { YardPointer } from './yard/pointer.js';
import { drawnBand, drawnGaps, drawnShape, drawnSketch, gripHandles, wallGrips } from './yard/overlay.js';
import { drawnTapes } from './yard/tapes.js';

/** How long a flight to a bed takes, milliseconds; none where less motion is wanted. */
const FLIGHT = 260;

/** Room round a bed whose course is lifted out, millimetres. */
const ROUND_BED = 350;

/** Timber thinner than this on the screen cannot carry its length, pixels. */
const THIN = 16;

/** Room for the tapes on a sheet, pixels. */
const PAPER_EDGE = 32;

/** What beds and points rest on where no face is near, millimetres, until another is chosen. */
const GRID = 50;

/** Pixels within which a corner draws a point to it. */
const NEAR = 9;

/**
 * lap-yard: the yard as seen with one's back to the house, and the beds in it. Its padding is the room the other
 * places take. Fires `viewed` when the view changes or a bed is carried, `sketched` and `sketch-ended` round drawing.
 */
export class LapYard extends GardenElement {
  /** @type {import('../geometry/view.js').View} */
  view = { k: 0.05, x: 0, y: 0 };

  /** The beds being carried: `{ids, dx, dy, gaps}` yard millimetres, else null. */
  carried = null;

  /** What is being drawn, else null: see `draw`. @type {Drawing | null} */
  sketch = null;

  /** True where a press takes one more bed instead of another. */
  several = false;

  /** What beds and points rest on, millimetres. */
  grid = GRID;

  drawsWhilePressed = true;

  #drawn = new Map();
  #world; #ground; #beds; #over; #grips; #screen; #gaps; #house;
  #groundOf = null;
  #clearancesKnown = false;
  #whole = true;
  #before = null;
  #flight = 0;

  attached() {
    this.#ground = s('g');
    this.#beds = s('g');
    this.#over = s('g.over', { 'aria-hidden': 'true' });
    this.#grips = s('g.grips', { 'aria-hidden': 'true' });
    this.#world = s('g.world', {}, this.#ground, this.#beds, this.#over, this.#grips);
    this.#house = s('rect.house', { fill: 'url(#hatch-house)' });
    this.#screen = s('g.screen', { 'aria-hidden': 'true' });
    this.#gaps = s('g.gaps', { 'aria-hidden': 'true' });
    this.svg = s('svg', { role: 'application', 'aria-roledescription': 'yard', 'aria-label': 'The yard, the house behind you. Arrow keys go from bed to bed, Enter takes hold, then arrow keys move it.' },
      patterns(), this.#house, this.#world, this.#screen, this.#gaps);
    this.replaceChildren(this.svg);
    this.follow([this.garden.plans, this.garden.choice, this.garden.reckoning], () => this.render());
    const resized = new ResizeObserver(() => this.#resized());
    resized.observe(this);
    this.atEnd(() => resized.disconnect());
    this.atEnd(() => cancelAnimationFrame(this.#flight));
    this.listen(this.garden.choice, 'change', () => this.#followCourse());
    this.listen(window, 'beforeprint', () => this.#onPaper());
    this.listen(window, 'afterprint', () => this.#resized());
    this.pointer = new YardPointer(this);
    this.keys = new YardKeys(this);
    this.#resized();
    this.render();
  }

  /** The part of the element that nothing covers, in its own pixels. */
  get frame() {
    const style = getComputedStyle(this);
    const [left, top] = [parseFloat(style.paddingLeft), parseFloat(style.paddingTop)];
    return {
      left, top,
      width: Math.max(this.clientWidth - left - parseFloat(style.paddingRight), 50),
      height: Math.max(this.clientHeight - top - parseFloat(style.paddingBottom), 50),
    };
  }

  get units() { return unitsOf(this.garden.plan); }

  render() {
    const { plan, choice, reckoning } = this.garden;
    const clearances = reckoning.sheet?.ground?.usual?.clearances;
    if (this.#groundOf !== plan.ground || this.pathsOf !== plan.paths || this.#clearancesKnown !== Boolean(clearances)) {
      this.#ground.replaceChildren(...drawnGround(plan));
      this.#over.replaceChildren(...drawnKeepClear(plan, clearances));
      this.#clearancesKnown = Boolean(clearances);
      this.#groundOf = plan.ground;
      this.pathsOf = plan.paths;
    }
    const beds = bedsOf(plan);
    const inHand = choice.beds[0];
    const tab = beds.some(bed => bed.id === inHand) ? inHand : this.#focused() ?? beds[0]?.id;
    const seen = new Set();
    beds.forEach((bed, i) => {
      seen.add(bed.id);
      this.#renderBed(bed, reckoning.bed(bed.id), tab, i);
    });
    for (const [id, { group }] of this.#drawn) {
      if (seen.has(id)) continue;
      group.remove();
      this.#drawn.delete(id);
    }
    this.classList.toggle('lifted', choice.course !== null);
    this.#showGrips();
    if (this.#whole) this.wholeYard(false);
    else this.#decorate();
  }

  #focused() { return this.svg.contains(document.activeElement) ? document.activeElement.dataset.bed : null; }

  #showGrips() {
    const { bed, choice } = this.garden;
    const grips = bed && choice.course === null && !this.sketch && isRightAngled(bed.own) ? bed : null;
    if (this.#gripsOf === grips) return;
    this.#gripsOf = grips;
    this.#grips.replaceChildren(...(grips ? wallGrips(grips) : []));
  }

  #gripsOf = null;

  #renderBed(bed, part, tab, i) {
    const { choice } = this.garden;
    const chosen = choice.has(bed.id);
    const course = choice.bed === bed.id ? choice.course : null;
    const looks = looksOf(bed, part, course, this.units);
    let drawn = this.#drawn.get(bed.id);
    if (!drawn) {
      drawn = { group: s('g.bed', { role: 'button', 'data-bed': bed.id }), looks: null };
      this.#drawn.set(bed.id, drawn);
    }
    if (this.#beds.children[i] !== drawn.group && !this.svg.contains(document.activeElement)) {
      this.#beds.insertBefore(drawn.group, this.#beds.children[i] ?? null);
    } else if (!drawn.group.isConnected) {
      this.#beds.append(drawn.group);
    }
    if (drawn.looks !== looks) {
      const shapes = course === null ? drawnBed(bed, part, this.units) : drawnRing(bed, part, course, this.units);
      drawn.group.replaceChildren(...shapes);
      drawn.looks = looks;
      drawn.box = bounds(bed.outline);
      drawn.upright = standsUpright(bed);
    }
    drawn.group.setAttribute('aria-label', toldBed(bed, this.units));
    drawn.group.setAttribute('aria-pressed', String(chosen));
    drawn.group.setAttribute('tabindex', tab === bed.id ? '0' : '-1');
    drawn.group.classList.toggle('chosen', chosen);
    this.#fitLabels(drawn);
  }

  /** Labels that would not fit their bed are left out. */
  #fitLabels({ group, box, upright }) {
    if (!box) return;
    const [width, depth] = [(box.right - box.left) * this.view.k, (box.back - box.front) * this.view.k];
    const [wide, high] = upright ? [depth, width] : [width, depth];
    group.classList.toggle('tight', wide < 108 || high < 46);
    group.classList.toggle('small', wide < 40);
    group.classList.toggle('tiny', wide < 17 || high < 13);
  }

  focusBed(id) { this.#drawn.get(id)?.group.focus(); }

  /** Draws beds away from their places while they are in hand. @param {{ids, dx, dy, gaps}|null} carried */
  carry(carried) {
    for (const id of this.carried?.ids ?? []) if (!carried) this.#drawn.get(id)?.group.removeAttribute('transform');
    this.carried = carried;
    this.classList.toggle('carrying', Boolean(carried));
    for (const id of carried?.ids ?? []) this.#drawn.get(id)?.group.setAttribute('transform', `translate(${carried.dx} ${-carried.dy})`);
    this.#gaps.replaceChildren(...(carried ? drawnGaps(this.view, carried.gaps, mm => this.lengthText(mm)) : this.#atRest()));
    this.dispatchEvent(new Event('viewed'));
  }

  /** The bed's new shape while a wall is dragged, null when it is let go. */
  showShape(shape) {
    this.classList.toggle('stretching', Boolean(shape));
    this.#gaps.replaceChildren(...(shape ? drawnShape(this.view, shape, mm => this.lengthText(mm)) : this.#atRest()));
  }

  /** The frame in which beds are taken, null when it is closed. */
  showBand(band) { this.#gaps.replaceChildren(...(band ? drawnBand(band) : this.#atRest())); }

  /** What lies over the yard while nothing is dragged. */
  #atRest() {
    if (this.sketch) return drawnSketch(this.view, this.sketch, mm => this.lengthText(mm));
    return this.#gripsOf ? gripHandles(this.view, this.#gripsOf) : [];
  }

  /**
   * Lets the gardener draw in the yard, by pointer or by typing in the bar that opens (draw-bar). One drawing at a time:
   * one that is under way is given up.
   *
   *     const points = await this.yard.draw({ as: 'outline', name: 'Surface' });
   *     if (points) this.garden.plans.run(...);
   *
   * @param {{as: 'point'|'line'|'outline', name: string, width?: number}} what see Drawing
   * @returns {Promise<import('../geometry/outline.js').Point[] | null>} yard millimetres, as put, not turned round; null
   *     where it was given up
   */
  async draw(what) {
    this.sketch?.leave();
    const sketch = new Drawing(what);
    this.sketch = sketch;
    sketch.addEventListener('change', () => this.showBand(null));
    this.classList.add('sketching');
    this.render();
    this.dispatchEvent(new CustomEvent('sketched', { detail: sketch, bubbles: true }));
    const points = await sketch.promise;
    if (this.sketch === sketch) {
      this.sketch = null;
      this.classList.remove('sketching');
      this.render();
      this.dispatchEvent(new CustomEvent('sketch-ended'));
    }
    return points;
  }

  /** Where a point put at a pixel comes to rest: Shift keeps the leg square, Alt keeps it to the millimetre. */
  restingPoint(at, { shiftKey = false, altKey = false } = {}) {
    const { plan } = this.garden;
    const corners = [...(this.sketch?.points ?? []), ...(yardOf(plan) ?? []), ...bedsOf(plan).flatMap(bed => bed.outline),
      ...(plan.paths ?? []).flatMap(path => path.line ?? []), ...(plan.ground?.surfaces ?? []).flatMap(surface => surface.outline ?? [])];
    return nextPoint(this.sketch?.points ?? [], toYard(this.view, at),
      { within: NEAR / this.view.k, grid: this.grid, corners, square: shiftKey, free: altKey });
  }

  /** @param {import('../geometry/view.js').View} view */
  look(view, whole = false) {
    this.view = view;
    this.#whole = whole;
    this.#world.setAttribute('transform', `translate(${view.x} ${view.y}) scale(${view.k})`);
    this.svg.style.setProperty('--px', String(1 / view.k));
    scalePatterns(this.svg, view.k);
    this.classList.toggle('thin', (this.garden.bed?.section.thickness ?? 100) * view.k < THIN);
    for (const drawn of this.#drawn.values()) this.#fitLabels(drawn);
    this.#decorate();
    this.dispatchEvent(new Event('viewed'));
  }

  zoom(factor, point = this.#middle()) { this.look(zoomed(this.view, factor, point)); }

  #middle() {
    const { left, top, width, height } = this.frame;
    return [left + width / 2, top + height / 2];
  }

  wholeYard(fly = true) {
    const view = fitted(boundsOf(this.garden.plan), this.frame, 'foot');
    if (fly) this.#fly(view, true);
    else this.look(view, true);
  }

  #resized() {
    this.svg.setAttribute('viewBox', `0 0 ${this.clientWidth} ${this.clientHeight}`);
    if (this.#whole) this.wholeYard(false);
    else this.look(this.view);
  }

  /** A sheet holds the yard and no room for the places round it. */
  #onPaper() {
    const box = boundsOf(this.garden.plan);
    const [left, top] = toScreen(this.view, [box.left, box.back]);
    const [right, bottom] = toScreen(this.view, [box.right, box.front]);
    this.svg.setAttribute('viewBox', `${left - PAPER_EDGE} ${top - 8} ${right - left + PAPER_EDGE + 8} ${bottom - top + PAPER_EDGE}`);
  }

  #followCourse() {
    const { choice, bed } = this.garden;
    if (choice.course !== null && bed) {
      this.#before ??= { view: this.view, whole: this.#whole };
      const box = bounds(bed.outline);
      this.#fly(fitted({
        left: box.left - ROUND_BED, right: box.right + ROUND_BED, front: box.front - ROUND_BED, back: box.back + ROUND_BED,
      }, this.frame), false);
    } else if (this.#before) {
      const { view, whole } = this.#before;
      this.#before = null;
      if (whole) this.wholeYard();
      else this.#fly(view, false);
    }
  }

  #fly(to, whole) {
    cancelAnimationFrame(this.#flight);
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) {
      this.look(to, whole);
      return;
    }
    const from = this.view;
    const began = performance.now();
    const step = now => {
      const share = Math.min(1, (now - began) / FLIGHT);
      const eased = share * share * (3 - 2 * share);
      const mix = key => from[key] + (to[key] - from[key]) * eased;
      this.look(share < 1 ? { k: mix('k'), x: mix('x'), y: mix('y') } : to, share < 1 ? false : whole);
      if (share < 1) this.#flight = requestAnimationFrame(step);
    };
    this.#flight = requestAnimationFrame(step);
  }

  #decorate() {
    const { view, frame } = this;
    const [wide, high] = [this.clientWidth, this.clientHeight];
    const house = Math.max(0, Math.min(view.y, high + 40));
    for (const [name, value] of Object.entries({ x: 0, y: house, width: wide, height: Math.max(high - house, 0) })) {
      this.#house.setAttribute(name, value);
    }
    this.#screen.replaceChildren(...drawnTapes(view, frame, boundsOf(this.garden.plan), this.units), this.#north(frame));
    if (!this.carried) this.#gaps.replaceChildren(...this.#atRest());
  }

  lengthText(mm) { return shown(Math.round(mm), this.units); }

  #north(frame) {
    const degrees = this.garden.plan.ground?.north;
    if (typeof degrees !== 'number') return s('g');
    return s('g.north', { transform: `translate(${frame.left + frame.width - 18} ${frame.top + 20}) rotate(${-degrees})` },
      s('path', { d: 'M0 -18L6 6L0 2L-6 6Z' }), s('text', { x: 0, y: 20, text: 'N' }));
  }
}

customElements.define('lap-yard', LapYard);
