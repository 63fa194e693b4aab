import { bounds } from '../geometry/outline.js';
import { toScreen } from '../geometry/view.js';
import { turnBed } from '../state/commands.js';
import { bedsOf, calledOf, unitsOf } from '../state/plan.js';
import { bedFields, showBed } from './bed-fields.js';
import { GardenElement, h, verb } from './make.js';
import { boxOf } from '../state/group.js';

/** Room between a bed, or the distances round it, and its tag, pixels. */
const ASIDE = 64;

/** Beside its bed it is tried at so many places across and down. */
const GRID = 7;

/**
 * bed-tag: the bed in hand at a glance, beside it and never over it: size, turn, courses, stage and what is done most.
 * All else is in Beds. Set `yard`.
 */
export class BedTag extends GardenElement {
  #built = null;
  #fields = {};

  named = ['region', 'In hand'];

  follows = ['plans', 'choice'];

  attached() {
    this.listen(this.yard, 'viewed', () => this.#place());
    const resized = new ResizeObserver(() => { this.#size = this.#corner = null; this.#place(); });
    for (const one of [this, this.yard]) resized.observe(one);
    this.atEnd(() => resized.disconnect());
    for (const type of ['sketched', 'sketch-ended']) this.listen(this.yard, type, () => this.render());
    super.attached();
  }

  render() {
    const { bed, choice } = this.garden;
    this.hidden = !choice.beds.length || choice.course !== null || Boolean(this.yard.sketch);
    if (this.hidden) {
      this.#built = null;
      return this.replaceChildren();
    }
    const build = bed ? `${bed.id}|${bed.type}|${Boolean(bed.size)}|${bed.section.id}|${unitsOf(this.garden.plan)}` : `${choice.beds.length} beds`;
    if (this.#built !== build) bed ? this.#buildOne(bed) : this.#buildMany(choice.beds.length);
    this.#built = build;
    if (bed) this.#show(bed);
    this.#size = null;
    return this.#place();
  }

  #verbs(more) {
    return h('div.verbs', {}, more, verb('Duplicate', 'duplicate', () => this.ask('duplicate')), verb('Delete', 'delete', () => this.ask('delete')),
      verb('More', 'more of it', () => this.openPlace('beds'), { 'aria-label': 'All about it, in Beds' }));
  }

  #buildMany(count) {
    this.replaceChildren(h('header', {}, h('h2', {}, `${count} beds`), this.#letGo()), this.#verbs(null));
  }

  #letGo() { return h('button.quiet', { type: 'button', 'data-key': 'let go', 'aria-label': 'Let go of what is in hand', onclick: () => this.garden.choice.takeNothing() }, 'Done'); }

  #buildOne(bed) {
    this.#fields = bedFields(this, bed, 'tag');
    this.head = h('h2');
    this.replaceChildren(h('header', {}, this.head, this.#letGo()),
      h(`div.fields${unitsOf(this.garden.plan) === 'imperial' ? '.feet' : ''}`, {}, Object.values(this.#fields)),
      this.#verbs(verb('Turn 90°', 'tag turn 90', () => this.#turn())));
  }

  #turn() {
    this.run(turnBed(this.garden.bed.id, 90));
    this.say(`${calledOf(this.garden.bed)} turned to ${this.garden.bed.placement.turn} degrees.`);
  }

  #show(bed) {
    this.head.textContent = bed.name ? `${bed.id} · ${bed.name}` : `Bed ${bed.id}`;
    showBed(this.#fields, bed);
  }

  #size = null;

  /** The corner in which the yard's own buttons stand. */
  #tools() {
    const tools = this.parentNode.querySelector('yard-tools');
    this.#corner ??= [tools.offsetLeft, tools.offsetTop, tools.offsetWidth, tools.offsetHeight];
    const [left, top, width, height] = this.#corner;
    return { left, top, right: left + width, bottom: top + height };
  }

  #corner = null;

  /** Beside the bed, on the side with the most room for it; where there is none, in the corner that covers the least. */
  #place() {
    if (this.hidden) return;
    const away = Boolean(this.yard.carried) || this.yard.classList.contains('stretching');
    this.classList.toggle('away', away);
    if (away) return;
    const { view, size: [wide, high] } = this.yard;
    const onScreen = box => {
      const [left, top] = toScreen(view, [box.left, box.back]);
      const [right, bottom] = toScreen(view, [box.right, box.front]);
      return { left, top, right, bottom };
    };
    const { plan, choice } = this.garden;
    const whole = boxOf(plan, choice.beds);
    if (!whole) return;
    const own = onScreen(whole);
    // where it stands in a corner, in the one away from the bed
    this.classList.toggle('other-side', own.left + own.right > wide);
    const gaps = [...this.parentNode.querySelector('lap-gaps').boxes, this.#tools()];
    const others = bedsOf(plan).filter(bed => !choice.has(bed.id)).map(bed => onScreen(bounds(bed.outline)));
    const names = this.yard.names();
    // measuring makes the browser lay out the page: not at every frame of a look
    this.#size ??= [this.offsetWidth, this.offsetHeight];
    const [w, t] = this.#size;
    const middleY = (own.top + own.bottom - t) / 2;
    const middleX = (own.left + own.right - w) / 2;
    const tries = [[own.right + ASIDE, middleY], [own.left - ASIDE - w, middleY], [middleX, own.bottom + 44], [middleX, own.top - t - 58]];
    for (let i = 0; i < GRID * GRID; i++) tries.push([8 + (wide - w - 16) * (i % GRID) / (GRID - 1), 8 + (high - t - 16) * Math.floor(i / GRID) / (GRID - 1)]);
    let best = null;
    tries.forEach(([x, y], i) => {
      const at = { left: Math.max(8, Math.min(wide - w - 8, x)), top: Math.max(8, Math.min(high - t - 8, y)) };
      const box = { ...at, right: at.left + w, bottom: at.top + t };
      const of = boxes => boxes.reduce((sum, other) => sum + overlapOf(box, other), 0);
      const far = Math.hypot(at.left + w / 2 - (own.left + own.right) / 2, at.top + t / 2 - (own.top + own.bottom) / 2);
      const covers = overlapOf(box, grown(own, 8)) * 20 + of(names) * 30 + of(others) * 0.3 + of(gaps) * 8 + Math.min(i, 4) * 40 + far * 8;
      if (!best || covers < best.covers) best = { ...at, covers };
    });
    this.style.transform = `translate(${Math.round(best.left)}px, ${Math.round(best.top)}px)`;
  }
}

const grown = (box, by) => ({ left: box.left - by, top: box.top - by, right: box.right + by, bottom: box.bottom + by });

const overlapOf = (a, b) => Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) * Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top));

customElements.define('bed-tag', BedTag);
