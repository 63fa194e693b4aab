import { money, moneyIn, savedOf } from '../state/changes.js';
import { counted } from '../state/words.js';
import { custom, firstLook, GardenElement, h, verb } from './make.js';
import { openMenu } from './menu.js';
import { patch } from './patch.js';

/** What can be added to the ground besides beds: the kinds of the document with everyday names. */
const THINGS = [['gate', 'Gate'], ['door', 'Door'], ['tap', 'Tap'], ['tree', 'Tree'], ['cover', 'Cover'], ['drain', 'Drain'], ['cable', 'Cable']];

/** page-head: which garden and how it is kept, the steps back and forth, add, what is in the way, and the order's total. */
export class PageHead extends GardenElement {
  attached() {
    this.setAttribute('role', 'banner');
    this.undo = verb('Undo', 'undo', () => this.#step('undo'), { title: 'Undo, Ctrl Z' });
    this.redo = verb('Redo', 'redo', () => this.#step('redo'), { title: 'Redo, Ctrl Shift Z' });
    this.adds = verb('Add', 'add', () => this.#add(), { 'aria-haspopup': 'menu', 'aria-expanded': 'false', class: 'main' });
    this.tries = verb('Try', 'try', () => this.ask('try out'), { title: 'Try changes without saving them' });
    this.snags = verb('', 'open snags', () => this.openPlace('snags'), { class: 'snags' });
    this.total = verb('', 'open slip', () => this.openPlace('slip'), { class: 'total' });
    this.replaceChildren(custom('garden-title', { garden: this.garden, gardens: this.gardens }),
      h('div.steps', { role: 'group', 'aria-label': 'Steps' }, this.undo, this.redo, this.adds, this.tries), this.snags, this.total);
    this.follow([this.garden.plans, this.garden.reckoning, this.garden.keeper], () => this.render());
    this.listen(window, 'keydown', event => this.#key(event));
    this.render();
  }

  render() {
    const { past, future } = this.garden.plans;
    this.undo.setAttribute('aria-disabled', String(!past.length));
    this.redo.setAttribute('aria-disabled', String(!future.length));
    this.tries.setAttribute('aria-pressed', String(this.garden.trying));
    this.#renderSnags();
    this.#renderTotal();
  }

  #renderSnags() {
    const all = this.garden.snags.filter(snag => snag.weight !== 'NOTE');
    const notes = this.garden.snags.length - all.length;
    const heaviest = all.find(snag => snag.weight === 'STOP') ?? all[0];
    const about = heaviest ? heaviest.where.startsWith('bed') || heaviest.text.includes(heaviest.where) ? heaviest.text : `${heaviest.where}: ${heaviest.text}`
      : notes ? counted(notes, 'note') : null;
    this.snags.classList.toggle('none', !all.length);
    patch(this.snags, [h('span.count', {}, all.length ? counted(all.length, 'snag') : 'No snags'),
      about && h('span.heaviest', {}, moneyIn(about, this.garden.reckoning.sheet?.slip?.currency))].filter(Boolean));
  }

  #renderTotal() {
    const { reckoning, keeper } = this.garden;
    const slip = reckoning.sheet?.slip;
    this.total.hidden = !slip;
    if (!slip) return;
    const saved = savedOf(slip);
    this.total.classList.toggle('behind', !reckoning.isOrdered || keeper.standing !== 'kept');
    const examples = slip.examplePrices && slip.lines?.length ? 'example prices' : null;
    patch(this.total, [
      h('span.sum', {}, slip.atLeast ? 'At least ' : '', h('strong', { id: 'order-total' }, money(slip.total, slip.currency))),
      h('span.about', {}, reckoning.mayImprove ? [firstLook(), examples && ` · ${examples}`] : [Number(saved) > 0 ? `${money(saved, slip.currency)} saved by buying once` : null, examples].filter(Boolean).join(' · '))]);
  }

  #add() {
    openMenu([
      { text: 'Bed …', key: 'add bed', act: () => this.ask('add bed form') },
      { text: 'Bed, at once', key: 'add bed at once', hint: 'B', act: () => this.ask('add bed') },
      { text: 'Path', key: 'add path', act: () => this.ask('add path') },
      null,
      ...THINGS.map(([kind, text]) => ({ text, key: `add ${kind}`, act: () => this.ask('add thing', { kind, text }) })),
      null,
      { text: 'Picture of the site', key: 'add picture', act: () => this.openPlace('ground') },
    ], { button: this.adds, label: 'Add' });
  }

  #step(way) {
    const { plans } = this.garden;
    const there = way === 'undo' ? plans.past.length : plans.future.length;
    if (!there) {
      this.say(way === 'undo' ? 'Nothing to undo.' : 'Nothing to redo.');
      return;
    }
    plans[way]();
    this.say(way === 'undo' ? 'Undone.' : 'Redone.');
  }

  #key(event) {
    const typing = event.target.matches?.('input:not([type="checkbox"]), textarea, select');
    if (!(event.ctrlKey || event.metaKey) || event.altKey || typing) return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    event.preventDefault();
    this.#step(key === 'y' || event.shiftKey ? 'redo' : 'undo');
  }
}

customElements.define('page-head', PageHead);
