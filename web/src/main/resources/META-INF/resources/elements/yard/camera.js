import { fitted, toScreen, zoomed } from '../../geometry/view.js';

/** How long a flight takes, milliseconds; none where less motion is wanted. */
const FLIGHT = 260;

/** A look that goes on, by wheel or fingers, is drawn afresh once it has rested so long, milliseconds. */
const REST = 140;

/** Room for the tapes on a sheet, pixels. */
const PAPER_EDGE = 32;

/**
 * How one looks at the yard. While a look changes from frame to frame the drawing is only moved and stretched as a whole,
 * which costs the same for two hundred beds as for one; it is drawn afresh when the look rests.
 */
export class Camera {
  /** @type {import('../../geometry/view.js').View} as looked at now */
  view = { k: 0.05, x: 0, y: 0 };

  /** True while all of the yard is to be seen, whatever the room for it. */
  whole = true;

  #drawn = this.view;
  #parts;
  #resting = 0;
  #flight = 0;

  /**
   * @param {object} parts
   * @param {SVGSVGElement[]} parts.svgs the drawing and what lies over it
   * @param {SVGGElement} parts.world what is drawn in yard millimetres
   * @param {() => object} parts.frame the part of the element that nothing covers, pixels
   * @param {() => import('../../geometry/outline.js').Bounds} parts.bounds of the yard
   * @param {() => void} parts.looked runs at every look: nothing dear may hang on it
   * @param {(view: object) => void} parts.rested runs when the drawing is to be drawn afresh
   */
  constructor(parts) { this.#parts = parts; }

  /** Looks, and draws afresh at once. */
  look(view, whole = false) {
    cancelAnimationFrame(this.#flight);
    this.#set(view, whole);
    this.#rest();
  }

  /** Looks as one of many looks in a row. */
  follow(view) {
    cancelAnimationFrame(this.#flight);
    this.#passing(view);
  }

  zoom(factor, point = this.#middle()) { this.follow(zoomed(this.view, factor, point)); }

  wholeYard(fly = true) {
    const view = fitted(this.#parts.bounds(), this.#parts.frame());
    if (fly) this.fly(view, true);
    else this.look(view, true);
  }

  /** The room has another size. */
  resized() {
    if (this.whole) this.wholeYard(false);
    else this.look(this.view);
  }

  fly(to, whole) {
    cancelAnimationFrame(this.#flight);
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) return this.look(to, whole);
    const from = this.view;
    const began = performance.now();
    const step = now => {
      const share = Math.min(1, (now - began) / FLIGHT);
      const eased = share * share * (3 - 2 * share);
      const mix = key => from[key] + (to[key] - from[key]) * eased;
      if (share === 1) return this.look(to, whole);
      this.#passing({ k: mix('k'), x: mix('x'), y: mix('y') });
      this.#flight = requestAnimationFrame(step);
      return undefined;
    };
    this.#flight = requestAnimationFrame(step);
    return undefined;
  }

  end() {
    clearTimeout(this.#resting);
    cancelAnimationFrame(this.#flight);
  }

  /** A sheet holds the yard and no room round it. */
  onPaper() {
    this.#rest();
    const box = this.#parts.bounds();
    const [left, top] = toScreen(this.view, [box.left, box.back]);
    const [right, bottom] = toScreen(this.view, [box.right, box.front]);
    return `${left - PAPER_EDGE} ${top - 8} ${right - left + PAPER_EDGE + 8} ${bottom - top + PAPER_EDGE}`;
  }

  #set(view, whole) {
    this.view = view;
    this.whole = whole;
  }

  #passing(view) {
    this.#set(view, false);
    const scale = view.k / this.#drawn.k;
    const moved = `translate(${view.x - scale * this.#drawn.x}px, ${view.y - scale * this.#drawn.y}px) scale(${scale})`;
    for (const svg of this.#parts.svgs) svg.style.transform = moved;
    clearTimeout(this.#resting);
    this.#resting = setTimeout(() => this.#rest(), REST);
    this.#parts.looked();
  }

  #rest() {
    clearTimeout(this.#resting);
    const { view } = this;
    this.#drawn = view;
    for (const svg of this.#parts.svgs) svg.style.transform = '';
    this.#parts.world.setAttribute('transform', `translate(${view.x} ${view.y}) scale(${view.k})`);
    this.#parts.rested(view);
    this.#parts.looked();
  }

  #middle() {
    const { left, top, width, height } = this.#parts.frame();
    return [left + width / 2, top + height / 2];
  }
}
