import { shown } from '../geometry/length.js';
import { USUAL, unitsOf } from '../state/plan.js';
import { GardenElement, h, s } from './make.js';
import { place } from './places.js';

/** Pixels between boards of the stack, as stickers keep them apart. */
const STICKER = 3;

/** lap-rack: the boards on hand as a stack, lengths and heights to one scale, bad spans hatched. */
export class LapRack extends GardenElement {
  attached() {
    this.follow([this.garden.plans], () => this.render());
    this.render();
  }

  render() {
    const rack = this.garden.plan.rack ?? [];
    if (!rack.length) return this.rebuild(h('p.hint', {}, 'No boards on hand: all timber is bought.'));
    const usual = this.garden.plan.defaults?.section ?? USUAL.section;
    const boards = rack.map(board => ({ section: usual, ...board })).sort((a, b) => b.length - a.length);
    return this.rebuild(this.#stack(boards), this.#list(boards));
  }

  /** Longest at the bottom, as a stack is built. */
  #stack(boards) {
    const longest = boards[0].length;
    const width = 1000;
    const k = width / longest;
    const rows = [...boards].reverse().flatMap(board => Array.from({ length: Math.min(board.count ?? 1, 20) }, () => board));
    let y = 0;
    const drawn = rows.map(board => {
      const high = Math.max(heightOf(board) * k, 14);
      const row = s('g', {},
        s('rect.board', { x: 0, y, width: board.length * k, height: high }),
        ...(board.bad ?? []).map(([from, to]) => s('rect.bad', { x: from * k, y, width: (to - from) * k, height: high })));
      y += high + STICKER * width / 260;
      return row;
    });
    return s('svg.stack', { viewBox: `0 0 ${width} ${y}`, 'aria-hidden': 'true', focusable: 'false' }, ...drawn);
  }

  #list(boards) {
    const units = unitsOf(this.garden.plan);
    return h('ul', {}, boards.map(board => h('li', {},
      h('span.code', {}, board.id), ` ${board.count > 1 ? `${board.count} × ` : ''}${shown(board.length, units)} of ${board.section}`,
      ...(board.bad ?? []).map(([from, to]) => h('span.badspan', {}, `, bad ${shown(from, units)} to ${shown(to, units)}`)))));
  }
}

function heightOf(board) {
  const [, height] = String(board.section ?? '').split('x').map(Number);
  return height || 200;
}

customElements.define('lap-rack', LapRack);
place({ key: 'rack', title: 'Rack', tag: 'lap-rack', side: 'lee', order: 40 });
