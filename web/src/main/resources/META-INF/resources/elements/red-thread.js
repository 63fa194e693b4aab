import { toScreen } from '../geometry/view.js';
import { GardenElement, s } from './make.js';

/** red-thread: runs from the snag being read to its place in the yard. Set `yard` to the yard's element. */
export class RedThread extends GardenElement {
  attached() {
    this.setAttribute('aria-hidden', 'true');
    this.follow([this.garden.choice, this.garden.plans], () => this.render());
    this.listen(this.yard, 'viewed', () => this.render());
    this.listen(document, 'scroll', () => this.render(), { capture: true, passive: true });
    this.listen(window, 'resize', () => this.render());
  }

  render() {
    const snag = this.garden.choice.snag;
    const from = snag && document.querySelector(`[data-snag="${CSS.escape(snag.key)}"]`)?.getBoundingClientRect();
    if (!from) {
      this.replaceChildren();
      return;
    }
    const ground = this.yard.getBoundingClientRect();
    const [x, y] = toScreen(this.yard.view, snag.point).map((value, i) => value + (i ? ground.top : ground.left));
    const start = [Math.min(from.right, innerWidth) - 6, Math.max(8, Math.min(from.top + from.height / 2, innerHeight - 8))];
    const sag = Math.min(90, Math.hypot(x - start[0], y - start[1]) / 4);
    const bend = `${(start[0] + x) / 2} ${Math.max(start[1], y) + sag}`;
    this.replaceChildren(s('svg', { width: innerWidth, height: innerHeight, viewBox: `0 0 ${innerWidth} ${innerHeight}` },
      s('path.thread', { d: `M ${start[0]} ${start[1]} Q ${bend} ${x} ${y}` }),
      s('circle.knot', { cx: x, cy: y, r: 7 }),
      s('circle.eye', { cx: start[0], cy: start[1], r: 3 })));
  }
}

customElements.define('red-thread', RedThread);
