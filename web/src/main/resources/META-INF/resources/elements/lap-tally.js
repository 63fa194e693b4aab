import { shown } from '../geometry/length.js';
import { sectionName } from '../state/build.js';
import { money } from '../state/changes.js';
import { lengthCheck } from '../state/checks.js';
import { bought, boughtRows, dayToDo, isDone, loseOf, lostOf, pieceState, piecesOf, planFrom, sawnBefore, sawnOff, setBought, setPiece, stageOf, tickTask, uncutOf } from '../state/tally.js';
import { unitsOf } from '../state/plan.js';
import { dayName } from '../state/weekends.js';
import { lengthField } from './length-field.js';
import { GardenElement, h } from './make.js';
import './long-press.js';
import { place } from './places.js';

/** Of a stage so many pieces are listed until all are asked for: thousands take a browser more than a second. */
const FEW_PIECES = 300;

/** lap-tally: the day's work, and what is done, cut, bought and here. Every tap is kept at once, and can be undone. */
export class LapTally extends GardenElement {
  #open = 'day';
  #day = null;
  /** The day that something was marked on: it stays as it was until the person goes on, whatever the plan of the rest says by now. */
  #held = null;
  #seen = null;

  follows = ['reckoning', 'keeper', 'plans'];

  shows = ['cutting', 'tally', 'weekends'];

  attached() {
    this.#held = null;
    super.attached();
  }

  get parts() { return (this.garden.reckoning.sheet?.cutting ?? []).filter(part => part.boards?.length); }

  /** Whether the boards on show are those of the tally as it stands: then what was spoiled on a board and is there again is to be sawn anew. */
  get #isOfNow() { return this.garden.reckoning.standing === 'fresh' && this.garden.keeper.standing === 'kept'; }

  render() {
    const { weekends } = this.garden.reckoning.sheet ?? {};
    if (!weekends?.tasks.length) return this.rebuild(this.lacking() ?? h('p.hint', {}, 'Nothing to do yet: add a bed.'));
    const tab = (key, text) => h('button', { type: 'button', 'data-key': `tally ${key}`, 'aria-pressed': String(this.#open === key), onclick: () => { this.#open = key; this.#held = null; this.render(); } }, text);
    const views = { day: () => this.#today(weekends), beds: () => this.#beds(weekends), boards: () => this.#boards(), bought: () => this.#bought() };
    return this.rebuild(
      this.lacking(),
      this.garden.trying ? h('p.hint', {}, 'This is the work as you try it. Keep it or let it go before you mark what is done.') : null,
      h('div.verbs.tabs', { role: 'group', 'aria-label': 'What to mark' }, tab('day', 'The day'), tab('beds', 'Beds'), tab('boards', 'Boards'), tab('bought', 'Bought')),
      this.#short(), views[this.#open](), this.#open === 'beds' ? this.#from(weekends) : null);
  }

  #change(command, said) {
    if (this.garden.trying) return this.say('Nothing is marked while you try something. Keep it or let it go first.');
    if (this.garden.reckoning.mayImprove) return this.say('This is a first look, which may still improve. Mark it once the whole plan is here.');
    if (this.#open === 'day') this.#held ??= this.#seen;
    this.run(command);
    return this.say(`${said} Undo takes it back.`);
  }

  /** What has to be bought since something went wrong. */
  #short() {
    const rest = (this.garden.reckoning.sheet.tally?.sections ?? []).filter(part => Object.keys(part.buy).length);
    return rest.map(part => h('p.short', { 'data-key': `short ${part.section}` },
      h('strong', {}, `Buy ${Object.entries(part.buy).map(([stock, count]) => `${count} board${count > 1 ? 's' : ''} of ${this.#stock({ stock, length: Number(stock) })}`).join(', ')}`),
      ` of ${sectionName(part.section, unitsOf(this.garden.plan))}${part.extra ? ` for ${money(part.extra, this.garden.reckoning.sheet.slip?.currency)}` : ''}: ${part.wanted - part.fit} of ${part.wanted} pieces still to cut do not fit what is there. They are on the slip.`));
  }

  #today(weekends) {
    const days = weekends.days.filter(day => day.parts.length);
    if (!days.some(day => day.number === this.#day)) this.#day = null;
    const tasks = new Map(weekends.tasks.map(task => [task.id, task]));
    const number = this.#day ?? dayToDo({ days }, id => this.#isDone(tasks.get(id)));
    const day = this.#seen = this.#held ?? days.find(one => one.number === number);
    const step = (by, text, key) => {
      const next = by < 0 ? days.findLast(one => one.number < day.number) : days.find(one => one.number > day.number);
      return h('button', { type: 'button', 'data-key': key, 'aria-label': text, 'aria-disabled': next ? null : 'true',
        onclick: () => { if (next) { this.#day = next.number; this.#held = null; this.render(); } } }, by < 0 ? '‹' : '›');
    };
    return h('div.day', {},
      h('div.day-head', {}, step(-1, 'The day before', 'day before'), h('h3', {}, `${dayName(day)}, weekend ${day.weekend}`), step(1, 'The next day', 'day after')),
      h('ul.ticks', {}, [...new Set(day.parts.map(part => part.task))].filter(id => tasks.has(id)).map(id => this.#task(tasks.get(id)))));
  }

  #task(task) {
    const { plan } = this.garden;
    const stage = stageOf(task);
    return h('li', { 'data-key': `task ${task.id}` }, this.#tick(task, `${task.place === 'saw' ? '' : `${task.place}: `}${task.label}`),
      task.cautions?.length ? h('p.hint', {}, task.cautions.join('; ')) : null,
      stage ? this.#pieces(stage, plan) : null);
  }

  /** Stages of which every piece is listed. */
  #whole = new Set();

  #pieces(stage, plan) {
    const all = piecesOf(this.parts, stage);
    const listed = this.#whole.has(stage) ? all : all.slice(0, FEW_PIECES);
    return [h('ul.pieces', { 'aria-label': `Pieces of stage ${stage}` }, listed.map(piece => this.#piece(piece, plan))),
      listed.length < all.length ? h('button.quiet', { type: 'button', 'data-key': `all pieces ${stage}`, onclick: () => { this.#whole.add(stage); this.render(); } }, `Show all ${all.length} pieces`) : null];
  }

  /** A day at the saw that is ticked is to do again where its pieces are to be sawn anew. */
  #isDone(task) { return isDone(this.garden.plan, task.id) && !(this.#isOfNow && stageOf(task) && !task.done); }

  #tick(task, text) {
    const done = this.#isDone(task);
    const tick = () => {
      const pieces = done ? [] : uncutOf(this.garden.plan, this.parts, task, this.#isOfNow);
      const said = pieces.length ? `, and ${pieces.length === 1 ? `piece ${pieces[0].cut.mark} is` : `its ${pieces.length} pieces are`} cut` : '';
      this.#change(tickTask(task.id, task.firstDay, this.parts, pieces, this.#isOfNow), done ? `${text} is not done. Pieces stay as they are marked.` : `${text} is done${said}.`);
    };
    return h('button.tick', { type: 'button', 'data-key': `tick ${task.id}`, 'aria-pressed': String(done), onclick: tick }, text);
  }

  /** A tap: cut, or not yet. A long press, or S: spoiled. */
  #piece({ board, cut, section }, plan) {
    const state = pieceState(plan, { section, number: board.number, length: cut.length, isOfNow: this.#isOfNow }, cut.mark);
    const before = sawnBefore(plan, cut.mark, cut.length).filter(one => state === 'wanted' || one.board !== `#${board.number}`);
    const units = unitsOf(plan);
    const to = next => this.#change(setPiece(this.parts, section, board.number, cut.mark, next, this.#isOfNow),
      { cut: `${cut.mark} is cut.`, spoiled: `${cut.mark} is spoiled: the rest is planned anew.`, wanted: `${cut.mark} is still to cut.` }[next]);
    return h('li', { 'data-key': `row ${section} ${board.number} ${cut.mark}` }, h(`button.piece.${state}`, {
      type: 'button', 'data-key': `piece ${cut.mark}`, 'aria-label': `${shown(cut.length, units)}, ${cut.mark}, board ${board.number}: ${state === 'wanted' ? 'to cut' : state}`,
      'data-hold': true, onclick: () => to(state === 'wanted' ? 'cut' : 'wanted'), onheld: () => to('spoiled'),
      onkeydown: event => { if (event.key.toLowerCase() === 's' && !event.ctrlKey && !event.metaKey) to(state === 'spoiled' ? 'wanted' : 'spoiled'); },
    }, h('span.len', {}, shown(cut.length, units)), h('span.mark', {}, `${cut.mark} `, h('small', {}, `board ${board.number} of ${this.#stock(board)}`),
      before.length ? h('small.anew', {}, ` ${before.map(one => `${one.older ? 'cut for an older size' : 'spoiled'} on ${one.board}`).join(', ')}: saw it anew from board ${board.number}`) : null),
    h('span.state', {}, state === 'wanted' ? '' : state)));
  }

  #beds(weekends) {
    const { plan } = this.garden;
    const places = new Map();
    for (const task of weekends.tasks) places.set(task.place, [...(places.get(task.place) ?? []), task]);
    return h('ul.places', {}, [...places].map(([where, tasks]) => h('li', { 'data-key': `place ${where}` }, h('details', {},
      h('summary', { 'data-key': `place ${where} open` }, h('strong', {}, where), ` ${tasks.filter(task => this.#isDone(task)).length} of ${tasks.length} done`),
      h('ul.ticks', {}, tasks.map(task => h('li', {}, this.#tick(task, task.label))))))));
  }

  #boards() {
    const { plan } = this.garden;
    return h('div', {}, h('p.hint', {}, 'Press a piece when it is cut. Hold it, or press S, when it is spoiled.'), this.parts.map(part => h('ol.boards', { 'aria-label': sectionName(part.section, unitsOf(plan)) },
      part.boards.map(board => h('li', { 'data-key': `board ${part.section} ${board.number}` },
        h('strong', {}, `#${board.number}`), h('span', {}, ` ${this.#stock(board)}`),
        h('ul.pieces', {}, board.cuts.map(cut => this.#piece({ board, cut, section: part.section }, plan)), this.#sawnOff(part.section, board, plan)),
        lengthField({ label: 'Lost', units: unitsOf(plan), check: lengthCheck(0, 30000, unitsOf(plan)), key: `lost ${part.section} ${board.number}`, mm: lostOf(plan, part.section, board.number),
          onlength: ({ detail }) => this.#change(loseOf(this.parts, part.section, board.number, detail.mm), `Board ${board.number}: ${shown(detail.mm, unitsOf(plan))} lost.`) }))))));
  }

  /** A stock length in the garden's measure; a board on hand by its code. */
  #stock({ stock, length }) {
    return /^\d/.test(stock) ? shown(length, unitsOf(this.garden.plan)) : stock;
  }

  /** What was sawn here and is now on another board, or on none. */
  #sawnOff(section, board, plan) {
    const units = unitsOf(plan);
    return sawnOff(plan, section, board, this.#isOfNow).map(({ mark, sawn, spoiled }) => {
      const other = this.parts.flatMap(part => part.boards).find(one => one.cuts.some(cut => cut.mark === mark));
      const length = other?.cuts.find(cut => cut.mark === mark).length;
      const older = sawnBefore(plan, mark, length).some(one => one.older && one.board === `#${board.number}`);
      const was = spoiled && !older ? 'spoiled' : `cut${sawn ? ` ${shown(sawn, units)}` : ''}${older ? ' for an older size' : ''}${older && !spoiled ? ', it can lie on the rack' : ''}`;
      return h('li', { 'data-key': `spoiled ${section} ${board.number} ${mark}` }, h('button.piece.spoiled', { type: 'button', 'data-key': `not spoiled ${section} ${board.number} ${mark}`,
        onclick: () => this.#change(setPiece(this.parts, section, board.number, mark, 'wanted'), `${mark} is not ${spoiled ? 'spoiled' : 'cut'}.`) },
      h('span.mark', {}, mark), h('span.state', {}, other ? `${was}: saw it anew from board ${other.number}` : `${was}${spoiled ? '' : ', no longer wanted'}`)));
    });
  }

  #bought() {
    const { plan } = this.garden;
    const { slip, tally } = this.garden.reckoning.sheet;
    const lines = slip?.lines ?? [];
    const is = one => other => other.item === one.item && other.pack === one.pack;
    const asked = lines.flatMap(line => line.packs.map(pack => ({ ...pack, item: line.item, label: line.label })));
    const ordered = asked.flatMap(pack => boughtRows(plan, pack.item, pack.pack, pack.supplier));
    const over = (plan.tally?.bought ?? []).filter(one => !ordered.includes(one))
      .map(one => ({ ...one, label: lines.find(line => line.item === one.item)?.label ?? one.item, called: tally?.bought.find(is(one))?.called ?? one.pack, over: true }));
    const seller = id => (plan.catalogue?.suppliers ?? []).find(one => one.id === id)?.name ?? id;
    return h('ul.ticks', {}, [...asked, ...over].map(pack => {
      const has = bought(plan, pack.item, pack.pack, pack.supplier);
      const part = has.count > 0 && has.count < pack.count;
      const state = part || !has.count ? 'no' : has.arrived ? 'arrived' : 'bought';
      const next = pack.over ? 'no' : { no: 'bought', bought: 'arrived', arrived: 'no' }[state];
      const count = Math.max(pack.count, has.count);
      const words = pack.over ? `${has.arrived ? 'here' : 'bought'}${pack.supplier ? ` from ${seller(pack.supplier)}` : ''}, no longer in the order` : part ? `${has.count} of them bought` : has.count > pack.count ? `${has.count} ${has.arrived ? 'here' : 'bought'}` : { no: '', bought: 'bought', arrived: 'here' }[state];
      return h('li', {}, h(`button.tick.${state}`, {
        type: 'button', 'data-key': `bought ${pack.item} ${pack.pack}${pack.over && ordered.some(is(pack)) ? ` ${pack.supplier}` : ''}`, 'aria-pressed': String(state !== 'no'),
        onclick: () => this.#change(setBought(pack.item, pack.pack, count, next, pack), `${pack.label}: ${{ no: 'not bought', bought: 'bought', arrived: 'here' }[next]}.`),
      }, `${pack.label}: ${pack.count} × ${pack.called}`, h('span.state', {}, words ? ` ${words}` : '')));
    }));
  }

  #from(weekends) {
    const { day = 0, asOf } = this.garden.plan.tally ?? {};
    return h('label.from', {}, 'Plan the rest from ', h('select', { 'data-key': 'plan from', onchange: event => this.#change(planFrom(Number(event.target.value)), 'The rest is planned from that day.') },
      weekends.days.map(one => h('option', { value: String(one.number), selected: asOf ? one.date === asOf : one.number === day }, `${dayName(one)}, weekend ${one.weekend}`))));
  }
}

customElements.define('lap-tally', LapTally);
place({ key: 'tally', title: 'Tally', tag: 'lap-tally', table: 'build', order: 60 });
