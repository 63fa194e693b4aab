import { api } from '../api.js';
import { bought, isDone, loseOf, pieceState, planFrom, setBought, setPiece, tickTask } from '../state/tally.js';
import { dayName } from '../state/weekends.js';
import { GardenElement, h } from './make.js';
import { place } from './places.js';
import { sideBySide } from './side-by-side.js';

const NEXT = { wanted: 'cut', cut: 'spoiled', spoiled: 'wanted' };

/** lap-tally: what is done, cut, bought and here. What it changes is shown before it is kept. */
export class LapTally extends GardenElement {
  #draft = [];
  #tried = null;
  #open = 'beds';

  attached() {
    this.follow([this.garden.reckoning, this.garden.plans], () => this.render());
    this.render();
  }

  /** The plan with what was ticked and not yet kept. */
  get drafted() { return this.#draft.reduce((plan, command) => command(plan), this.garden.plan); }

  get parts() { return (this.garden.reckoning.sheet?.cutting ?? []).filter(part => part.boards?.length); }

  render() {
    const { weekends } = this.garden.reckoning.sheet ?? {};
    if (!weekends?.tasks.length) return this.rebuild(h('p.hint', {}, 'Nothing to tick yet: stand a bed.'));
    const tab = (key, text) => h('button', { type: 'button', 'data-key': `tally ${key}`, 'aria-pressed': String(this.#open === key), onclick: () => { this.#open = key; this.render(); } }, text);
    return this.rebuild(
      h('div.verbs', { role: 'group', 'aria-label': 'What to tick' }, tab('beds', 'Beds'), tab('boards', 'Boards'), tab('bought', 'Bought')),
      this.#open === 'beds' ? this.#beds(weekends) : this.#open === 'boards' ? this.#boards() : this.#bought(),
      this.#keep(weekends));
  }

  #change(command) {
    this.#draft.push(command);
    this.#tried = null;
    this.render();
  }

  #beds(weekends) {
    const plan = this.drafted;
    const places = new Map();
    for (const task of weekends.tasks) places.set(task.place, [...(places.get(task.place) ?? []), task]);
    return h('ul.places', {}, [...places].map(([where, tasks]) => h('li', { 'data-key': `place ${where}` }, h('details', {},
      h('summary', { 'data-key': `place ${where} open` }, h('strong', {}, where), ` ${tasks.filter(task => isDone(plan, task.id)).length} of ${tasks.length} done`),
      h('ul.ticks', {}, tasks.map(task => h('li', {}, h('button.tick', {
        type: 'button', 'data-key': `tick ${task.id}`, 'aria-pressed': String(isDone(plan, task.id)),
        onclick: () => this.#change(tickTask(task.id, task.firstDay)),
      }, task.label))))))));
  }

  #boards() {
    const plan = this.drafted;
    return h('div', {}, h('p.hint', {}, 'Press a piece: cut, then spoiled, then wanted again.'), this.parts.map(part => h('ol.boards', { 'aria-label': part.section },
      part.boards.map(board => h('li', { 'data-key': `board ${board.number}` },
        h('strong', {}, `#${board.number}`), h('span', {}, ` ${board.stock}`),
        h('span.cuts', {}, board.cuts.map(cut => {
          const state = pieceState(plan, cut.mark);
          return h(`button.piece.${state}`, {
            type: 'button', 'data-key': `piece ${cut.mark}`, 'aria-label': `${cut.mark}, ${cut.length}: ${state}`,
            onclick: () => this.#change(setPiece(this.parts, board.number, cut.mark, NEXT[state])),
          }, cut.mark, h('span.state', {}, state === 'wanted' ? '' : ` ${state}`));
        })),
        h('label.lost', {}, 'lost mm ', h('input', {
          type: 'number', min: '0', max: '30000', inputmode: 'numeric', 'data-key': `lost ${board.number}`,
          value: String((plan.tally?.boards ?? []).find(one => one.board === `#${board.number}`)?.lost ?? ''),
          onchange: event => this.#change(loseOf(this.parts, board.number, Math.max(0, Number(event.target.value) || 0))),
        })))))));
  }

  #bought() {
    const plan = this.drafted;
    const lines = this.garden.reckoning.sheet.slip?.lines ?? [];
    return h('ul.ticks', {}, lines.flatMap(line => line.packs.map(pack => {
      const has = bought(plan, line.item, pack.pack);
      const state = has.arrived ? 'arrived' : has.count ? 'bought' : 'no';
      const next = { no: 'bought', bought: 'arrived', arrived: 'no' }[state];
      return h('li', {}, h(`button.tick.${state}`, {
        type: 'button', 'data-key': `bought ${line.item} ${pack.pack}`, 'aria-pressed': String(state !== 'no'),
        onclick: () => this.#change(setBought(line.item, pack.pack, pack.count, next)),
      }, `${line.label}: ${pack.count} × ${pack.pack}`, h('span.state', {}, state === 'no' ? '' : ` ${state}`)));
    })));
  }

  #keep(weekends) {
    const day = this.drafted.tally?.day ?? 0;
    const rest = this.garden.reckoning.sheet.tally?.sections ?? [];
    return h('div.keep', {},
      h('label', {}, 'Plan the rest from ', h('select', { 'data-key': 'plan from', onchange: event => this.#change(planFrom(Number(event.target.value))) },
        weekends.days.map(one => h('option', { value: String(one.number), selected: one.number === day }, `${dayName(one)}, weekend ${one.weekend}`)))),
      rest.map(part => h('p.rest', {}, h('strong', {}, `${part.fit} of ${part.wanted} pieces fit`), ` what is there of ${part.section}. `,
        Object.keys(part.buy).length ? `Buy ${Object.entries(part.buy).map(([stock, count]) => `${count} of ${stock}`).join(', ')}${part.extra ? ` for ${part.extra}` : ''}.` : 'Nothing more to buy.')),
      this.#draft.length ? h('div.verbs', {},
        h('button', { type: 'button', 'data-key': 'tally show', onclick: () => this.#show() }, 'Show what changes'),
        this.#tried ? h('button.main', { type: 'button', 'data-key': 'tally keep', onclick: () => this.#done() }, 'Keep') : null,
        h('button', { type: 'button', 'data-key': 'tally let go', onclick: () => { this.#draft = []; this.#tried = null; this.render(); } }, 'Let go')) : null,
      this.#tried ? sideBySide(this.#tried, this.garden.reckoning.sheet.slip?.currency) : null);
  }

  async #show() {
    try {
      this.#tried = await api.tryOut({ garden: this.garden.plan, instead: this.drafted });
    } catch (problem) {
      this.#tried = { problem: problem.snags?.[0]?.text ?? problem.message };
    }
    if (this.isConnected) this.render();
  }

  #done() {
    const drafted = this.drafted;
    this.#draft = [];
    this.#tried = null;
    this.garden.plans.run(() => drafted);
    this.say('The tally is kept. Undo brings back what stood before.');
    this.render();
  }
}

customElements.define('lap-tally', LapTally);
place({ key: 'tally', title: 'Tally', tag: 'lap-tally', side: 'lee', order: 120 });
