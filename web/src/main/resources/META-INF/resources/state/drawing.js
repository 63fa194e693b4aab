import { cleaned } from '../geometry/drawing.js';

/** Points each kind takes at least and at most. */
const COUNTS = { point: [1, 1], line: [2, 200], outline: [3, 200] };

const same = (a, b) => a && Math.hypot(a[0] - b[0], a[1] - b[1]) < 1;

/**
 * Points being put in the yard one after the other. `next` is where the next one would lie, null while the pointer is
 * elsewhere. Fires `change`; `promise` holds the points in the end, or null where it was given up.
 */
export class Drawing extends EventTarget {
  #end;

  /**
   * @param {object} parts
   * @param {'point'|'line'|'outline'} parts.as
   * @param {string} parts.name what is drawn, as `Path`
   * @param {number} [parts.width] of a line, millimetres: it is shown to scale
   */
  constructor({ as, name, width = 0 }) {
    super();
    this.as = as;
    this.name = name;
    this.width = width;
    this.points = [];
    this.next = null;
    this.ended = false;
    this.promise = new Promise(end => { this.#end = end; });
  }

  get least() { return COUNTS[this.as][0]; }

  get isEnough() { return cleaned(this.points, this.as === 'outline').length >= this.least; }

  /** The points put, and the one that would come next where that is elsewhere than the last. */
  get shown() { return this.next && !this.#isLast(this.next) ? [...this.points, this.next] : this.points; }

  #isLast(point) { return same(this.points.at(-1), point); }

  /** Puts a point; one on the first closes an outline, one on the last ends a line. */
  put(point) {
    if (this.ended) return;
    if (this.isEnough && same(this.as === 'outline' ? this.points[0] : this.points.at(-1), point)) {
      this.done();
      return;
    }
    if (this.#isLast(point)) return;
    this.points = [...this.points, point];
    if (this.points.length >= COUNTS[this.as][1]) this.done();
    else this.#fire();
  }

  /** @param {import('../geometry/outline.js').Point | null} next */
  lookAt(next) {
    this.next = next;
    this.#fire();
  }

  takeBack() {
    this.points = this.points.slice(0, -1);
    this.#fire();
  }

  /** @returns {boolean} false where points are missing */
  done() {
    if (!this.isEnough || this.ended) return this.ended;
    this.#finish(cleaned(this.points, this.as === 'outline'));
    return true;
  }

  leave() { this.#finish(null); }

  #finish(points) {
    if (this.ended) return;
    this.ended = true;
    this.#end(points);
    this.#fire();
  }

  #fire() { this.dispatchEvent(new Event('change')); }
}
