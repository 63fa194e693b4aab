import { api } from '../api.js';
import { shown } from '../geometry/length.js';
import { money } from '../state/changes.js';
import { sectionName } from '../state/build.js';
import { alike, bedOfMark, keepOf, kerfOf, marksIn, nestOf, runs, segments, stagesOf, standing, waiting } from '../state/saw-day.js';
import { unitsOf } from '../state/plan.js';
import { GardenElement, h, s } from './make.js';
import { place } from './places.js';
import { sheetLink } from './sheet-link.js';

/** lap-saw-day: every board to saw, drawn to scale, and the stop settings of each stage, as the job sheet has them. */
export class LapSawDay extends GardenElement {
  #stage = null;
  #view = 'boards';

  follows = ['reckoning', 'keeper', 'choice', 'plans'];

  shows = ['cutting', 'strips'];

  get parts() {
    const { sheet } = this.garden.reckoning;
    return [...(sheet?.cutting ?? []), ...(sheet?.strips ?? [])].filter(part => part.boards?.length);
  }

  render() {
    const { parts } = this;
    if (!parts.length) return this.rebuild(this.lacking() ?? h('p.hint', {}, 'Nothing to saw yet: add a bed.'));
    const stages = stagesOf(parts);
    if (!stages.includes(this.#stage)) this.#stage = null;
    const toggle = (text, key, pressed, act) => h('button', { type: 'button', 'data-key': key, 'aria-pressed': String(pressed), onclick: () => { act(); this.render(); } }, text);
    return this.rebuild(
      this.lacking(),
      h('div.bar', {},
        h('div.verbs', { role: 'group', 'aria-label': 'Shown' },
          toggle('Boards', 'saw boards', this.#view === 'boards', () => { this.#view = 'boards'; }),
          toggle('Stop settings', 'saw settings', this.#view === 'settings', () => { this.#view = 'settings'; })),
        h('div.verbs', { role: 'group', 'aria-label': 'Stage' },
          toggle('All', 'saw all', this.#stage === null, () => { this.#stage = null; }),
          stages.map(stage => toggle(`Stage ${stage}`, `saw stage ${stage}`, this.#stage === stage, () => { this.#stage = stage; }))),
        h('nav', { 'aria-label': 'Sheets for the bench' }, sheetLink(this, api, 'saw-day.pdf', 'Bench sheets, PDF'))),
      parts.map(part => this.#part(part)));
  }

  #part(part) {
    const currency = this.garden.reckoning.sheet.slip?.currency;
    return h('section', { 'data-key': `saw ${part.section}` },
      h('h3', {}, standing(part, amount => money(amount, currency), sectionName(part.section, unitsOf(this.garden.plan)))),
      this.#view === 'boards' ? this.#boards(part) : this.#settings(part));
  }

  #boards(part) {
    const boards = alike(part, this.#stage);
    const longest = Math.max(...boards.map(board => board.length));
    return h('ol.saw-boards', {}, boards.map(board => this.#board(board, longest, part)));
  }

  #board(board, longest, part) {
    const { plan } = this.garden;
    const units = unitsOf(plan);
    const bar = h('div.bar-board');
    bar.style.width = `${board.length / longest * 100}%`;
    const laid = segments(board, sawOf(plan));
    for (const { kind, from, to, cut } of laid) {
      const shape = kind === 'cut' ? this.#cut(board.cuts[cut], board.marks[cut], nestOf(part, board.cuts[cut].mark))
        : h(`span.${kind}`, { title: SAID[kind](shown(to - from, units)) }, ['kept', 'lost'].includes(kind) ? shown(to - from, units) : '');
      shape.dataset.mm = String(Math.round((to - from) * 1000) / 1000);
      shape.style.left = `${from / board.length * 100}%`;
      shape.style.width = `${(to - from) / board.length * 100}%`;
      bar.append(shape);
    }
    const kept = laid.at(-1).kind === 'kept';
    const waits = waiting(part, board.numbers[0]);
    return h('li', { 'data-key': `board ${board.numbers.join()}` },
      h('p', {}, h('strong', {}, runs(board.numbers)), board.numbers.length > 1 ? ` · ${board.numbers.length} alike` : '', ` · ${/^\d/.test(board.stock) ? shown(board.length, units) : `${board.stock}, ${shown(board.length, units)}`}`,
        h('span.left', {}, ` · ${shown(board.rest, units)} ${kept ? 'kept' : 'over'}`,
          waits.map(one => `; ${shown(one.length, units)} waits after stage ${one.madeIn} for stage ${one.usedIn}`))),
      bar);
  }

  #cut(cut, marks, nest) {
    const units = unitsOf(this.garden.plan);
    const held = marks.flatMap(marksIn).some(mark => this.garden.choice.has(bedOfMark(mark)));
    return h(`button.cut${held ? '.held' : ''}${this.#stage !== null && cut.stage !== this.#stage ? '.other' : ''}${nest ? '.nest' : ''}`, {
      type: 'button', 'data-key': `cut ${marks[0]}`, title: marks.join(', '), 'aria-label': `${shown(cut.length, units)}: ${marks.join(', ')}. Take hold of its bed`,
      onclick: () => this.garden.choice.takeBed(bedOfMark(marks[0])),
    }, nest ? slants(nest) : null, h('span.len', {}, shown(cut.length, units)), h('span.mark', {}, marks.length > 1 ? `${marks[0]} …` : marks[0]));
  }

  #settings(part) {
    const units = unitsOf(this.garden.plan);
    const stages = (part.batches?.stages ?? []).filter(({ stage }) => this.#stage === null || stage === this.#stage);
    return stages.map(({ stage, boards, pieces, minutes, settings, boardByBoard }) => h('div.stage', { 'data-key': `stage ${stage}` },
      h('p', {}, h('strong', {}, `Stage ${stage}`), `: ${settings.length} settings, ${pieces} pieces out of ${boards} boards, ${minutes} minutes; board by board ${boardByBoard?.minutes ?? '?'}.`),
      h('ol.settings', {}, settings.map(setting => h('li', { 'data-key': `setting ${stage} ${setting.stop}` },
        h('span.stop', {}, shown(setting.stop, units)), h('span.times', {}, `${setting.pieces} ×`),
        h('span.out', {}, setting.from.map(({ board, pieces: marks }) => `${board}: ${marks.join(', ')}`).join(' · ')))))));
  }
}

/** What the parts of a board that are no pieces are called. */
const SAID = {
  trim: mm => `${mm} trimmed off`, kerf: mm => `${mm} saw cut`, lost: mm => `${mm} lost`, kept: mm => `${mm} is kept`, over: mm => `${mm} over`,
};

const sawOf = plan => ({ kerf: kerfOf(plan), retrim: plan.saw?.retrim ?? 0, keep: keepOf(plan) });

/** The slanted cuts of a nest, the face of the board below and its back above. */
const slants = nest => s('svg.slants', { viewBox: `0 0 ${nest.length} 100`, preserveAspectRatio: 'none', 'aria-hidden': 'true' },
  s('path', { d: nest.cuts.map(cut => `M${cut.face} 100L${cut.back} 0`).join('') }));

customElements.define('lap-saw-day', LapSawDay);
place({ key: 'saw-day', title: 'Saw Day', tag: 'lap-saw-day', table: 'build', order: 20, wide: true });
