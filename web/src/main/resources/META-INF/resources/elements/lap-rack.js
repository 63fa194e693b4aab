import { shown } from '../geometry/length.js';
import { readPrice, writtenPrice } from '../state/catalogue.js';
import { lengthCheck, readNumber, readText } from '../state/checks.js';
import { badText, chalked, goodRuns, rackBoard, readBad, readRack, setBoard, takeOffRack } from '../state/rack.js';
import { sectionChoices, sectionName } from '../state/build.js';
import { USUAL, unitsOf } from '../state/plan.js';
import { countField } from './count-field.js';
import { lengthField } from './length-field.js';
import { choiceField, form, GardenElement, h, s, tick } from './make.js';
import { place } from './places.js';

/** Pixels of the drawing between boards of the stack, as stickers keep them apart, and its whole width. */
const STICKER = 12;
const WIDE = 1000;

/** So many boards of one kind are drawn; the words count them all. */
const MOST_DRAWN = 12;

/** Shortest and longest board that can be racked, millimetres. */
const LEAST = 100;
const MOST = 30000;

/**
 * lap-rack: the boards on hand as a stack, lengths and heights to one scale, bad spans hatched, with the pieces that the
 * saw is to take out of them; each can be changed, and more racked.
 */
export class LapRack extends GardenElement {
  #next = { length: 2400, count: 1, section: null };

  follows = ['plans', 'reckoning'];

  shows = ['cutting', 'strips'];

  render() {
    const boards = readRack(this.garden.plan);
    this.rebuild(
      boards.length ? this.#stack([...boards].sort((a, b) => a.length - b.length)) : h('p.hint', {}, 'No boards on hand: all timber is bought. Add the boards you have: each is used where that costs less than a new one.'),
      h('ul.boards', {}, boards.map(board => this.#board(board))),
      this.#new());
  }

  /** Longest at the bottom, as a stack is built. */
  #stack(boards) {
    const k = WIDE / Math.max(...boards.map(board => board.length));
    const pieces = chalked(this.garden.reckoning.sheet);
    let y = 0;
    const rows = boards.flatMap(board => Array.from({ length: Math.min(board.count, MOST_DRAWN) }, (_, i) => {
      const high = Math.max(heightOf(board) * k, 34);
      const row = this.#drawn(board, k, y, high, pieces.get(board.id)?.[i] ?? []);
      y += high + STICKER;
      return row;
    }));
    return s('svg.stack', { viewBox: `0 0 ${WIDE} ${y}`, 'aria-hidden': 'true', focusable: 'false' }, ...rows);
  }

  #drawn(board, k, y, high, cuts) {
    return s('g', {},
      s('rect.board', { x: 0, y, width: board.length * k, height: high }),
      ...cuts.map(({ mark, from, to }) => s('g', {},
        s('rect.chalked', { x: from * k, y, width: (to - from) * k, height: high }),
        s('text.chalk', { x: (from + to) * k / 2, y: y + high / 2 + 10, text: (to - from) * k > mark.length * 17 ? mark : '' }))),
      ...board.bad.flatMap(([from, to]) => [
        s('rect.bad', { x: from * k, y, width: (to - from) * k, height: high }),
        s('path.bad-cross', { d: `M${from * k} ${y}L${to * k} ${y + high}M${to * k} ${y}L${from * k} ${y + high}` })]),
      cuts.length ? null : s('text.chalk', { x: 14, y: y + high / 2 + 10, text: board.bad.some(([from]) => from * k < 90) ? '' : board.id }));
  }

  #board(board) {
    const { plan } = this.garden;
    const units = unitsOf(plan);
    const { index } = board;
    const key = `board ${index}`;
    const set = fields => this.run(setBoard(index, fields));
    const runs = goodRuns(plan, board).map(([from, to]) => shown(to - from, units));
    return h('li', { 'data-key': key }, h('details', {},
      h('summary', { 'data-key': `${key} open` }, h('strong', {}, board.id || `Board ${index + 1}`), ` ${board.count > 1 ? `${board.count} × ` : ''}${shown(board.length, units)} of ${sectionName(board.section, units)}`,
        board.bad.length ? h('span.badspan', {}, runs.length ? `, sound ${runs.join(' and ')}` : ', nothing sound') : null,
        board.coated ? ', coated' : null),
      h('div.fields', {},
        lengthField({ label: 'Length', units, mm: board.length, key: `${key} length`, onlength: ({ detail }) => set({ length: detail.mm }),
          check: mm => lengthCheck(LEAST, MOST, units)(mm) ?? (board.bad.some(([, to]) => to > mm) ? `A bad span reaches ${shown(Math.max(...board.bad.map(([, to]) => to)) - mm, units)} beyond that. Write it shorter first.` : null) }),
        countField({ label: 'How many', value: board.count, key: `${key} count`, read: readNumber(1, 10000), oncount: ({ detail }) => set({ count: detail > 1 ? detail : undefined }) }),
        choiceField('Timber', `${key} section`, board.section, sectionChoices(plan, board.section), value => set({ section: value })),
        choiceField('Good faces', `${key} faces`, String(board.goodFaces), [['2', 'both'], ['1', 'one'], ['0', 'none: hidden walls only']], value => set({ goodFaces: Number(value) })),
        h('div.wide', {}, countField({ label: 'Bad from the marked end', mode: 'text', key: `${key} bad`, value: badText(board.bad, units), hint: `such as ${badText([[0, 150], [1180, 1260]], units)}`,
          read: text => {
            const read = readBad(text, board.length, units);
            return read.error ? read : { value: badText(read.value, units) };
          }, oncount: ({ detail }) => set({ bad: detail ? readBad(detail, board.length, units).value : undefined }) })),
        countField({ label: 'Worth kept, each', mode: 'decimal', key: `${key} salvage`, value: writtenPrice(board.salvage), hint: 'empty: a part of a new one', read: readPrice, oncount: ({ detail }) => set({ salvage: detail ?? undefined }) }),
        h('div.wide', {}, countField({ label: 'Where it comes from', mode: 'text', key: `${key} origin`, value: board.origin, hint: board.origin ? '' : 'unknown: not for beds of food',
          read: readText(200), oncount: ({ detail }) => set({ origin: detail || undefined }) }))),
      tick(`${key} coated`, 'painted or coated', board.coated, on => set({ coated: on || undefined }), 'wall'),
      h('div.verbs', {}, h('button', { type: 'button', 'data-key': `${key} off`, onclick: () => {
        this.run(takeOffRack(index));
        this.say(`${board.id || 'The board'} is off the rack. Undo brings it back.`);
      } }, 'Delete'))));
  }

  #new() {
    const { plan } = this.garden;
    const section = this.#next.section ?? plan.defaults?.section ?? USUAL.section;
    return form('form', { novalidate: true, 'aria-label': 'Rack more boards' }, () => {
      const { length, count } = this.#next;
      this.run(rackBoard({ length, section, count }));
      this.say(`${count} ${count === 1 ? 'board' : 'boards'} racked.`);
    },
    h('h3', {}, 'Rack more'),
    h('div.fields', {},
      lengthField({ label: 'Length', units: unitsOf(plan), mm: this.#next.length, check: lengthCheck(LEAST, MOST, unitsOf(plan)), key: 'rack length', onlength: ({ detail }) => { this.#next.length = detail.mm; } }),
      countField({ label: 'How many', value: this.#next.count, read: readNumber(1, 10000), key: 'rack count', oncount: ({ detail }) => { this.#next.count = detail; } }),
      choiceField('Timber', 'rack section', section, sectionChoices(plan, section), value => { this.#next.section = value; }),
      h('button.main', { type: 'submit', 'data-key': 'rack it' }, 'Rack it')));
  }
}

function heightOf(board) {
  const [, height] = String(board.section ?? '').split('x').map(Number);
  return height || 200;
}

customElements.define('lap-rack', LapRack);
place({ key: 'rack', title: 'Rack', tag: 'lap-rack', table: 'buy', order: 20 });
