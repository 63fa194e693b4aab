import { api } from '../api.js';
import { shown } from '../geometry/length.js';
import { money } from '../state/changes.js';
import { alike, bedOfMark, marksIn, nestOf, runs, stagesOf, standing } from '../state/saw-day.js';
import { unitsOf } from '../state/plan.js';
import { GardenElement, h, s } from './make.js';
import { place } from './places.js';
import { sheetLink } from './sheet-link.js';

/** lap-saw-day: every board to saw, drawn to scale, and the stop settings of each weekend, as the job sheet has them. */
export class LapSawDay extends GardenElement {
  #stage = null;
  #view = 'boards';

  attached() {
    this.follow([this.garden.reckoning, this.garden.keeper, this.garden.choice, this.garden.plans], () => this.render());
    this.render();
  }

  get parts() {
    const { sheet } = this.garden.reckoning;
    return [...(sheet?.cutting ?? []), ...(sheet?.strips ?? [])].filter(part => part.boards?.length);
  }

  render() {
    const { parts } = this;
    if (!parts.length) return this.rebuild(h('p.hint', {}, 'Nothing to saw yet: stand a bed.'));
    const stages = stagesOf(parts);
    if (!stages.includes(this.#stage)) this.#stage = null;
    const toggle = (text, key, pressed, act) => h('button', { type: 'button', 'data-key': key, 'aria-pressed': String(pressed), onclick: () => { act(); this.render(); } }, text);
    return this.rebuild(
      h('div.bar', {},
        h('div.verbs', { role: 'group', 'aria-label': 'Shown' },
          toggle('Boards', 'saw boards', this.#view === 'boards', () => { this.#view = 'boards'; }),
          toggle('Stop settings', 'saw settings', this.#view === 'settings', () => { this.#view = 'settings'; })),
        h('div.verbs', { role: 'group', 'aria-label': 'Weekend' },
          toggle('All', 'saw all', this.#stage === null, () => { this.#stage = null; }),
          stages.map(stage => toggle(`Weekend ${stage}`, `saw weekend ${stage}`, this.#stage === stage, () => { this.#stage = stage; }))),
        h('nav', { 'aria-label': 'Sheets for the bench' }, sheetLink(this, api, 'saw-day.pdf', 'Bench sheets, PDF'))),
      parts.map(part => this.#part(part)));
  }

  #part(part) {
    const currency = this.garden.reckoning.sheet.slip?.currency;
    return h('section', { 'data-key': `saw ${part.section}` },
      h('h3', {}, standing(part, amount => money(amount, currency))),
      this.#view === 'boards' ? this.#boards(part) : this.#settings(part));
  }

  #boards(part) {
    const boards = alike(part, this.#stage);
    const longest = Math.max(...boards.map(board => board.length));
    const ledger = part.ledger?.offcuts ?? [];
    return h('ol.saw-boards', {}, boards.map(board => this.#board(board, longest, ledger, part)));
  }

  #board(board, longest, ledger, part) {
    const units = unitsOf(this.garden.plan);
    const offcut = ledger.find(one => one.board === board.numbers[0] && one.fate !== 'scrap');
    const share = mm => `${Math.round(mm / longest * 10000) / 100}%`;
    const bar = h('div.bar-board');
    bar.style.width = share(board.length);
    board.cuts.forEach((cut, i) => bar.append(this.#cut(cut, board.marks[i], board, nestOf(part, cut.mark))));
    if (offcut) {
      const rest = h('span.offcut', { title: `${shown(offcut.length, units)} is kept` }, shown(offcut.length, units));
      rest.style.width = `${offcut.length / board.length * 100}%`;
      bar.append(rest);
    }
    return h('li', { 'data-key': `board ${board.numbers.join()}` },
      h('p', {}, h('strong', {}, runs(board.numbers)), board.numbers.length > 1 ? ` · ${board.numbers.length} alike` : '', ` · ${/^\d/.test(board.stock) ? shown(board.length, units) : `${board.stock}, ${shown(board.length, units)}`}`,
        h('span.left', {}, offcut ? ` · ${shown(offcut.length, units)} kept` : ` · ${shown(board.rest, units)} over`)),
      bar);
  }

  #cut(cut, marks, board, nest) {
    const units = unitsOf(this.garden.plan);
    const held = marks.flatMap(marksIn).some(mark => this.garden.choice.has(bedOfMark(mark)));
    const piece = h(`button.cut${held ? '.held' : ''}${this.#stage !== null && cut.stage !== this.#stage ? '.other' : ''}${nest ? '.nest' : ''}`, {
      type: 'button', 'data-key': `cut ${marks[0]}`, title: marks.join(', '), 'aria-label': `${shown(cut.length, units)}: ${marks.join(', ')}. Take hold of its bed`,
      onclick: () => this.garden.choice.takeBed(bedOfMark(marks[0])),
    }, nest ? slants(nest) : null, h('span.len', {}, shown(cut.length, units)), h('span.mark', {}, marks.length > 1 ? `${marks[0]} …` : marks[0]));
    piece.style.width = `${cut.length / board.length * 100}%`;
    return piece;
  }

  #settings(part) {
    const units = unitsOf(this.garden.plan);
    const stages = (part.batches?.stages ?? []).filter(({ stage }) => this.#stage === null || stage === this.#stage);
    return stages.map(({ stage, boards, pieces, minutes, settings, boardByBoard }) => h('div.stage', { 'data-key': `stage ${stage}` },
      h('p', {}, h('strong', {}, `Weekend ${stage}`), `: ${settings.length} settings, ${pieces} pieces out of ${boards} boards, ${minutes} minutes; board by board ${boardByBoard?.minutes ?? '?'}.`),
      h('ol.settings', {}, settings.map(setting => h('li', { 'data-key': `setting ${stage} ${setting.stop}` },
        h('span.stop', {}, shown(setting.stop, units)), h('span.times', {}, `${setting.pieces} ×`),
        h('span.out', {}, setting.from.map(({ board, pieces: marks }) => `${board}: ${marks.join(', ')}`).join(' · ')))))));
  }
}

/** The slanted cuts of a nest, the face of the board below and its back above. */
const slants = nest => s('svg.slants', { viewBox: `0 0 ${nest.length} 100`, preserveAspectRatio: 'none', 'aria-hidden': 'true' },
  s('path', { d: nest.cuts.map(cut => `M${cut.face} 100L${cut.back} 0`).join('') }));

customElements.define('lap-saw-day', LapSawDay);
place({ key: 'saw-day', title: 'Saw Day', tag: 'lap-saw-day', side: 'foot', order: 60 });
