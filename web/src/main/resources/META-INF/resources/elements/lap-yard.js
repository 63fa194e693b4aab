import { shown } from '../geometry/length.js';
import { nextPoint } from '../geometry/drawing.js';
import { bounds } from '../geometry/outline.js';
import { isRightAngled } from '../geometry/shapes.js';
import { fitted, toScreen, toYard } from '../geometry/view.js';
import { Drawing } from '../state/drawing.js';
import { bedsOf, boundsOf, unitsOf, yardOf } from '../state/plan.js';
import { pointsOf } from '../state/things.js';
import { GardenElement, s } from './make.js';
import { Camera } from './yard/camera.js';
import { DrawnBeds } from './yard/drawn-beds.js';
import { drawnGround, drawnKeepClear } from './yard/ground.js';
import { YardKeys } from './yard/keys.js';
import { layLabels } from './yard/labels.js';
import { patterns, scalePatterns } from './yard/patterns.js';
import { YardPointer } from './yard/pointer.js';
import { drawnBand, drawnGaps, drawnGhosts, drawnLine, drawnShape, drawnSketch, gripHandles, pointGrips, turnGrip, wallGrips } from './yard/overlay.js';
import { drawnPicture } from './yard/picture.js';
import { drawnScale, drawnTapes } from './yard/tapes.js';

/** Room round a bed whose course is lifted out, millimetres. */
const ROUND_BED = 350;

/** Timber thinner than this on the screen cannot carry its length, pixels. */
const THIN = 16;

/** What beds and points rest on where no face is near, millimetres, until another is chosen. */
const GRID = 50;

/** Half of the room that a bed's name and size take, pixels. */
const NAME = [66, 22];

/** Pixels within which a corner draws a point to it. */
const NEAR = 9;

/**
 * lap-yard: the yard as seen with one's back to the house, and the beds in it. Its padding is room for the tapes. Fires
 * `viewed` when the view changes or a bed is carried, `sketched` and `sketch-ended` round drawing.
 */
export class LapYard extends GardenElement {
  /** The beds being carried: `{ids, dx, dy, gaps}` yard millimetres, else null. */
  carried = null;

  /** What is being drawn, else null: see `draw`. @type {Drawing | null} */
  sketch = null;

  /** True where a press takes one more bed instead of another. */
  several = false;

  /** What beds and points rest on, millimetres. */
  grid = GRID;

  drawsWhilePressed = true;

  #world; #under; #ground; #over; #grips; #screen; #gaps; #house; #beds;
  #groundOf = null;
  #pathsOf = null;
  #clearancesKnown = false;
  #before = null;
  #held = null;
  #corners = false;

  attached() {
    this.#under = s('g', { 'aria-hidden': 'true' });
    this.#ground = s('g');
    const beds = s('g');
    this.#over = s('g.over', { 'aria-hidden': 'true' });
    this.#grips = s('g.grips', { 'aria-hidden': 'true' });
    this.#world = s('g.world', {}, this.#under, this.#ground, beds, this.#over, this.#grips);
    this.#house = s('rect.house', { fill: 'url(#hatch-house)' });
    this.#screen = s('g.screen');
    this.#gaps = s('g.gaps');
    this.svg = s('svg.plan', { role: 'application', 'aria-roledescription': 'yard', tabindex: 0, 'aria-label': 'The yard, the house behind you. Arrow keys go from bed to bed, Enter takes hold, then arrow keys move it. B adds a bed. Question mark lists all keys.' },
      patterns(), this.#house, this.#world);
    this.replaceChildren(this.svg, s('svg.tapes', { 'aria-hidden': 'true', focusable: 'false' }, this.#screen, this.#gaps));
    this.#beds = new DrawnBeds(beds, this.svg);
    this.camera = new Camera({ svgs: [...this.children], world: this.#world, frame: () => this.frame, bounds: () => boundsOf(this.garden.plan),
      looked: () => this.dispatchEvent(new Event('viewed')), rested: view => this.#rested(view) });
    this.follow([this.garden.plans, this.garden.choice, this.garden.reckoning, this.garden.layOut], () => this.render());
    const resized = new ResizeObserver(() => this.#resized());
    resized.observe(this);
    this.atEnd(() => resized.disconnect());
    this.atEnd(() => this.camera.end());
    this.listen(this.garden.choice, 'change', () => this.#followCourse());
    this.listen(window, 'beforeprint', () => this.#onPaper());
    // the page has the size of the screen again only in the frame after it
    this.listen(window, 'afterprint', () => requestAnimationFrame(() => this.#resized()));
    this.pointer = new YardPointer(this);
    this.keys = new YardKeys(this);
    this.#resized();
    this.render();
  }

  /** @type {import('../geometry/view.js').View} */
  get view() { return this.camera.view; }

  /** The part of the element that is for the drawing, and the whole of it, in its own pixels; measured when they change. */
  frame = { left: 0, top: 0, width: 50, height: 50 };
  size = [50, 50];

  #measure() {
    const style = getComputedStyle(this);
    const [left, top] = [parseFloat(style.paddingLeft), parseFloat(style.paddingTop)];
    this.size = [this.clientWidth, this.clientHeight];
    this.frame = {
      left, top,
      width: Math.max(this.size[0] - left - parseFloat(style.paddingRight), 50),
      height: Math.max(this.size[1] - top - parseFloat(style.paddingBottom), 50),
    };
  }

  get units() { return unitsOf(this.garden.plan); }

  /** True while the corners of the yard can be dragged. */
  set corners(shown) {
    this.#corners = shown;
    this.render();
  }

  render() {
    const { plan, choice, reckoning } = this.garden;
    this.#renderGround(plan, reckoning.sheet?.ground?.usual?.clearances);
    const beds = bedsOf(plan);
    const inHand = choice.beds[0];
    const tab = beds.some(bed => bed.id === inHand) ? inHand : this.#focused() ?? beds[0]?.id;
    this.#beds.render(beds, { choice, topOf: id => reckoning.top(id), partOf: id => reckoning.bed(id), units: this.units, tab });
    this.classList.toggle('lifted', choice.course !== null);
    this.classList.toggle('empty', !beds.length);
    const { ghosts } = this;
    this.classList.toggle('ghosted', Boolean(ghosts));
    const stay = new Set(ghosts?.beds.filter(({ pinned }) => pinned).map(({ id }) => id));
    for (const bed of this.svg.querySelectorAll('[data-bed]')) bed.classList.toggle('leaving', Boolean(ghosts) && !stay.has(bed.dataset.bed));
    for (const thing of this.svg.querySelectorAll('[data-thing]')) thing.classList.toggle('held', thing.dataset.thing === choice.thing?.join(' '));
    this.#showGrips();
    if (this.camera.whole) this.camera.wholeYard(false);
    else this.#rested(this.view);
  }

  #renderGround(plan, clearances) {
    if (this.#groundOf === plan.ground && this.#pathsOf === plan.paths && this.#clearancesKnown === Boolean(clearances)) return;
    this.#under.replaceChildren(...drawnPicture(plan.ground?.picture));
    this.#ground.replaceChildren(...drawnGround(plan));
    this.#over.replaceChildren(...drawnKeepClear(plan, clearances));
    this.#clearancesKnown = Boolean(clearances);
    this.#groundOf = plan.ground;
    this.#pathsOf = plan.paths;
  }

  #focused() { return this.svg.contains(document.activeElement) ? document.activeElement.dataset.bed : null; }

  #showGrips() {
    const { bed, choice, plan } = this.garden;
    const held = choice.course === null && !this.sketch ? bed : null;
    const points = !this.sketch && [
      choice.thing && pointsOf(plan, choice.thing),
      this.#corners && plan.ground?.outline ? { list: plan.ground.outline, at: ['ground', 'outline'], closed: true } : null,
    ].filter(Boolean);
    this.#held = held;
    this.#grips.replaceChildren(...(held && isRightAngled(held.own) ? wallGrips(held) : []), ...(held ? turnGrip(held, this.view) : []),
      ...(points || []).filter(({ single }) => !single).flatMap(({ list, at }) => pointGrips(list, at, this.view)));
  }

  /** Boxes round the names of the beds that are not in hand, in its own pixels. */
  names() {
    return this.#beds.namesBut(this.garden.choice.beds).map(at => toScreen(this.view, at)).map(([x, y]) => ({ left: x - NAME[0], right: x + NAME[0], top: y - NAME[1], bottom: y + NAME[1] }));
  }

  focusBed(id) { this.#beds.focus(id); }

  /** Draws beds away from their places while they are in hand. @param {{ids, dx, dy, gaps}|null} carried */
  carry(carried) {
    if (!carried) this.#beds.shift(this.carried?.ids ?? [], null);
    this.carried = carried;
    this.classList.toggle('carrying', Boolean(carried));
    if (carried) this.#beds.shift(carried.ids, [carried.dx, carried.dy]);
    this.#gaps.replaceChildren(...(carried ? drawnGaps(this.view, carried.gaps, mm => this.lengthText(mm)) : this.#atRest()));
    this.dispatchEvent(new Event('viewed'));
  }

  /** The bed's new shape while a wall or its handle is dragged, null when it is let go. */
  showShape(shape) {
    this.classList.toggle('stretching', Boolean(shape));
    this.#gaps.replaceChildren(...(shape ? drawnShape(this.view, shape, mm => this.lengthText(mm)) : this.#atRest()));
  }

  /** The frame in which beds are taken, null when it is closed. */
  showBand(band) { this.#gaps.replaceChildren(...(band ? drawnBand(band) : this.#atRest())); }

  /** Where a line or outline of the ground would lie, null when it is let go. */
  showLine(list, closed = false) {
    this.#gaps.replaceChildren(...(list ? drawnLine(this.view, list, closed, mm => this.lengthText(mm)) : this.#atRest()));
  }

  /** The proposal that lies over the yard while the garden is as it was laid out for. */
  get ghosts() {
    const { layOut, plan } = this.garden;
    return layOut.standing === 'ended' && layOut.shown !== null && layOut.plan === plan ? layOut.result.proposals[layOut.shown] : null;
  }

  /** What lies over the yard while nothing is dragged. */
  #atRest() {
    if (this.ghosts) return drawnGhosts(this.view, this.ghosts);
    if (this.sketch) return drawnSketch(this.view, this.sketch, mm => this.lengthText(mm));
    return this.#held && isRightAngled(this.#held.own) ? gripHandles(this.view, this.#held) : [];
  }

  /**
   * Lets the gardener draw in the yard, by pointer or by typing in the bar that opens (draw-bar). One drawing at a time:
   * one that is under way is given up.
   *
   *     const points = await this.yard.draw({ as: 'outline', name: 'Surface' });
   *     if (points) this.run(...);
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
      this.dispatchEvent(new CustomEvent('sketch-ended', { bubbles: true }));
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
  look(view, whole = false) { this.camera.look(view, whole); }

  zoom(factor, point) { this.camera.zoom(factor, point); }

  wholeYard(fly = true) { this.camera.wholeYard(fly); }

  #resized() {
    this.#measure();
    for (const svg of this.children) svg.setAttribute('viewBox', `0 0 ${this.size.join(' ')}`);
    this.camera.resized();
  }

  #onPaper() {
    this.#measure();
    const box = this.camera.onPaper();
    for (const svg of this.children) svg.setAttribute('viewBox', box);
  }

  #followCourse() {
    const { choice, bed } = this.garden;
    if (choice.course !== null && bed) {
      this.#before ??= { view: this.view, whole: this.camera.whole };
      const box = bounds(bed.outline);
      this.camera.fly(fitted({
        left: box.left - ROUND_BED, right: box.right + ROUND_BED, front: box.front - ROUND_BED, back: box.back + ROUND_BED,
      }, this.frame), false);
    } else if (this.#before) {
      const { view, whole } = this.#before;
      this.#before = null;
      if (whole) this.wholeYard();
      else this.camera.fly(view, false);
    }
  }

  /** The drawing was made afresh for a view. */
  #rested(view) {
    this.svg.style.setProperty('--px', String(1 / view.k));
    scalePatterns(this.svg, view.k);
    this.classList.toggle('thin', (this.garden.bed?.section.thickness ?? 100) * view.k < THIN);
    this.#showGrips();
    const [wide, high] = this.size;
    const house = Math.max(0, Math.min(view.y, high + 40));
    for (const [name, value] of Object.entries({ x: -wide, y: house, width: 3 * wide, height: Math.max(2 * high - house, 0) })) {
      this.#house.setAttribute(name, value);
    }
    const { frame } = this;
    const tapes = drawnTapes(view, frame, boundsOf(this.garden.plan), this.units);
    const boxes = tapes.map(tape => ['x', 'y', 'width', 'height'].map(side => Number(tape.firstChild.getAttribute(side)))).map(([x, y, across, down]) => [x, y, x + across, y + down]);
    layLabels(this.#beds.all(), this.svg.querySelectorAll('.over .label, .world > g > .label, .surface .label'), view, this.size, frame, boxes);
    this.#screen.replaceChildren(...tapes, this.#north(frame), drawnScale(view, frame, this.units));
    if (!this.carried) this.#gaps.replaceChildren(...this.#atRest());
  }

  lengthText(mm) { return shown(Math.round(mm), this.units); }

  #north(frame) {
    const degrees = this.garden.plan.ground?.north;
    if (typeof degrees !== 'number') return s('g');
    return s('g.north', { transform: `translate(${frame.left + frame.width - 14} ${frame.top + 20}) rotate(${-degrees})` },
      s('path', { d: 'M0 -18L6 6L0 2L-6 6Z' }), s('text', { x: 0, y: 20, text: 'N' }));
  }
}

customElements.define('lap-yard', LapYard);
