import { bounds } from '../../geometry/outline.js';
import { insideRoom } from '../../geometry/inside.js';
import { s } from '../make.js';
import { drawnBed, drawnRing, looksOf, standsUpright, toldBed } from './bed.js';

/** The beds as they are drawn: each a group that stays the same while its bed does, so that the focus is not lost. */
export class DrawnBeds {
  #drawn = new Map();
  #layer; #svg;

  /** @param {SVGGElement} layer @param {SVGSVGElement} svg */
  constructor(layer, svg) {
    this.#layer = layer;
    this.#svg = svg;
  }

  /** @param {import('../../state/plan.js').LaidBed[]} beds @param {object} how what is chosen, lifted and known of them */
  render(beds, { choice, topOf, partOf, units, tab }) {
    const seen = new Set();
    beds.forEach((bed, i) => {
      seen.add(bed.id);
      this.#one(bed, i, { choice, top: topOf(bed.id), part: partOf(bed.id), units, tab });
    });
    for (const [id, { group }] of this.#drawn) {
      if (seen.has(id)) continue;
      group.remove();
      this.#drawn.delete(id);
    }
  }

  #one(bed, i, { choice, top, part, units, tab }) {
    const chosen = choice.has(bed.id);
    const course = choice.bed === bed.id ? choice.course : null;
    const looks = looksOf(bed, top, part, course, units);
    let drawn = this.#drawn.get(bed.id);
    if (!drawn) {
      drawn = { group: s('g.bed', { role: 'button', 'data-bed': bed.id }), looks: null };
      this.#drawn.set(bed.id, drawn);
    }
    if (this.#layer.children[i] !== drawn.group && !this.#svg.contains(document.activeElement)) {
      this.#layer.insertBefore(drawn.group, this.#layer.children[i] ?? null);
    } else if (!drawn.group.isConnected) {
      this.#layer.append(drawn.group);
    }
    if (drawn.looks !== looks) {
      drawn.group.replaceChildren(...(course === null ? drawnBed(bed, top, units) : drawnRing(bed, part, course, units)));
      drawn.looks = looks;
      drawn.laid = null;
      drawn.box = bounds(bed.outline);
      drawn.room = insideRoom(bed.outline);
      drawn.at = drawn.room.at;
      drawn.upright = standsUpright(bed);
    }
    const told = toldBed(bed, units);
    if (drawn.told !== told) drawn.group.setAttribute('aria-label', drawn.told = told);
    const held = `${chosen} ${tab === bed.id}`;
    if (drawn.held === held) return;
    drawn.held = held;
    drawn.group.setAttribute('aria-pressed', String(chosen));
    drawn.group.setAttribute('tabindex', tab === bed.id ? '0' : '-1');
    drawn.group.classList.toggle('chosen', chosen);
  }

  /** @returns {Iterable<{group: SVGGElement, box: object, upright: boolean}>} */
  all() { return this.#drawn.values(); }

  /** Where the others have their names, yard millimetres. @param {string[]} ids those left out @returns {[number, number][]} */
  namesBut(ids) { return [...this.#drawn].filter(([id, { at }]) => at && !ids.includes(id)).map(([, { at }]) => at); }

  focus(id) { this.#drawn.get(id)?.group.focus({ preventScroll: true }); }

  /** Draws some of them so far from their places, none with null. */
  shift(ids, by) {
    for (const id of ids) {
      const group = this.#drawn.get(id)?.group;
      if (by) group?.setAttribute('transform', `translate(${by[0]} ${-by[1]})`);
      else group?.removeAttribute('transform');
    }
  }
}
