import { MOST_BEDS, blockCheck, readBlock, readCourses, readStage } from '../state/checks.js';
import { setBed, stageBed } from '../state/commands.js';
import { alignBeds, arrayBeds, blockOf, boxOf, lastBeds, moveBeds, setBeds, spreadBeds, turnBeds } from '../state/group.js';
import { beginWith } from '../state/new-garden.js';
import { bedsOf, unitsOf } from '../state/plan.js';
import { countField } from './count-field.js';
import { lengthField } from './length-field.js';
import { form, GardenElement, h, verb } from './make.js';
import { patch } from './patch.js';

const EDGES = [['left', 'Left faces'], ['centre', 'Middles along'], ['right', 'Right faces'], ['front', 'Front faces'], ['level', 'Middles away'], ['back', 'Back faces']];

/** beds-card: what may be done with several beds in hand, and with one: many copies of it in columns and rows. */
export class BedsCard extends GardenElement {
  follows = ['plans', 'choice'];

  named = ['region', 'The beds in hand'];

  get ids() { return this.garden.choice.beds; }

  render() {
    const { ids } = this;
    this.hidden = !ids.length;
    if (this.hidden) return this.rebuild();
    const many = ids.length > 1;
    return this.rebuild(many ? this.#head(ids) : null, many ? this.#verbs() : null, many ? this.#lines() : null, many ? this.#figures() : null, this.#block());
  }

  #head(ids) {
    const box = boxOf(this.garden.plan, ids);
    const say = mm => this.yard.lengthText(mm);
    return [h('header', {}, h('h2', {}, `${ids.length} beds`), h('button.quiet', { type: 'button', 'data-key': 'let go all', onclick: () => this.garden.choice.takeBed(null) }, 'Done')),
      h('p.kind', {}, `${ids.slice(0, 12).join(', ')}${ids.length > 12 ? ` and ${ids.length - 12} more` : ''}: ${say(box.right - box.left)} by ${say(box.back - box.front)} together, `
        + `${say(box.left)} along, ${say(box.front)} away.`)];
  }

  #verbs() {
    const said = (command, words) => () => {
      const count = this.ids.length;
      this.run(command(this.ids));
      this.say(`${count} beds ${words}`);
    };
    return h('div.verbs', {},
      verb('Turn 90°', 'all turn', said(ids => turnBeds(ids, { turn: 90 }), 'turned.')),
      verb('Mirror', 'all mirror', said(ids => turnBeds(ids, { mirror: true }), 'mirrored.')),
      verb('Duplicate', 'all copy', () => this.yard.ask('duplicate')),
      verb('Delete', 'all delete', () => this.yard.ask('delete')));
  }

  #lines() {
    const units = unitsOf(this.garden.plan);
    const away = mm => (mm < -100000 || mm > 100000 ? 'Further than a hundred metres. Write less.' : null);
    return [
      h('h3', {}, 'In line'),
      h('div.verbs.lines', {}, EDGES.map(([edge, text]) => verb(text, `align ${edge}`, () => {
        this.run(alignBeds(this.ids, edge));
        this.say(`${text} of ${this.ids.length} beds are in line.`);
      }))),
      h('h3', {}, 'Room between'),
      h('div.verbs.lines', {}, verb('Even, along', 'spread along', () => this.#spread(0)), verb('Even, away', 'spread away', () => this.#spread(1))),
      h('div.fields', {},
        lengthField({ label: 'Each along', units, check: away, key: 'room along', hint: 'room from one to the next', onlength: ({ detail }) => this.#spread(0, detail.mm) }),
        lengthField({ label: 'Each away', units, check: away, key: 'room away', onlength: ({ detail }) => this.#spread(1, detail.mm) })),
      h('h3', {}, 'Move by'),
      h('div.fields', {},
        lengthField({ label: 'To the right', units, check: away, key: 'by along', hint: 'below 0: to the left', onlength: ({ detail }) => this.run(moveBeds(this.ids, detail.mm, 0)) }),
        lengthField({ label: 'Away from the house', units, check: away, key: 'by away', onlength: ({ detail }) => this.run(moveBeds(this.ids, 0, detail.mm)) })),
    ];
  }

  #spread(axis, room) {
    this.run(spreadBeds(this.ids, axis, room));
    this.say(`${this.ids.length} beds are spread ${axis ? 'away from the house' : 'along the house'}${room === undefined ? '' : `, ${this.yard.lengthText(room)} between`}.`);
  }

  /** What can be said of all of them at once; a figure is shown where all have the same. */
  #figures() {
    const beds = this.garden.beds;
    const same = pick => (beds.every(bed => pick(bed) === pick(beds[0])) ? pick(beds[0]) : undefined);
    const all = (label, key, pick, read) => countField({ label, read, key: `all ${key}`, value: same(pick), hint: same(pick) === undefined ? 'they differ' : undefined,
      oncount: ({ detail }) => this.run(setBeds(this.ids, id => (key === 'stage' ? stageBed(id, detail) : setBed(id, { [key]: detail })))) });
    return [h('h3', {}, 'All of them'),
      h('div.fields', {}, all('Courses', 'courses', bed => bed.courses, readCourses), all('Stage', 'stage', bed => bed.stage, readStage))];
  }

  #form = null;
  #formUnits = null;

  /** Made once, so that what is typed stays. */
  #block() {
    const units = unitsOf(this.garden.plan);
    if (this.#formUnits !== units) this.#form = this.#blockForm();
    this.#formUnits = units;
    this.#told?.();
    return this.#form;
  }

  #told = null;

  #blockForm() {
    const units = unitsOf(this.garden.plan);
    const count = (label, key, value) => countField({ label, key: `block ${key}`, value, read: readBlock, oninput: () => tell() });
    const room = (label, key) => lengthField({ label, units, key: `block ${key}`, mm: beginWith(units).path, oninput: () => tell(),
      check: mm => (mm < 0 ? `A path cannot be ${mm} mm wide. Write 0 or more.` : mm > 20000 ? `${mm - 20000} mm over the widest path, 20000 mm. Write less.` : null) });
    const fields = { columns: count('Columns', 'columns', 2), rows: count('Rows', 'rows', 1), across: room('Path between columns', 'across'), away: room('Path between rows', 'away') };
    const paths = h('input', { type: 'checkbox', 'data-key': 'block paths' });
    const note = h('p.hint', { role: 'status' });
    const read = () => {
      const block = { columns: fields.columns.entry, rows: fields.rows.entry, across: fields.across.length, away: fields.away.length };
      return Object.values(block).includes(null) ? null : block;
    };
    const tell = () => {
      const block = fields.columns.input && read();
      const box = boxOf(this.garden.plan, this.ids);
      if (!block || !box) return patch(note, []);
      const { box: whole } = blockOf(box, block);
      const wrong = blockCheck(this.garden.plan, this.ids.length, block, whole);
      note.classList.toggle('wrong', Boolean(wrong));
      return patch(note, [wrong ?? `${block.columns * block.rows * this.ids.length} beds, ${this.yard.lengthText(whole.right - whole.left)} by ${this.yard.lengthText(whole.back - whole.front)}.`]);
    };
    this.#told = tell;
    const submit = () => {
      const block = read();
      const more = (block.columns * block.rows - 1) * this.ids.length;
      if (more + bedsOf(this.garden.plan).length > MOST_BEDS || more < 1) return tell();
      this.run(arrayBeds(this.ids, block, { paths: paths.checked }));
      this.garden.choice.takeBeds([...this.ids, ...lastBeds(this.garden.plan, more)]);
      this.say(`${more} more beds are added.`);
      return undefined;
    };
    return h('details.block', { 'data-key': 'block form', ontoggle: () => tell() }, h('summary', { 'data-key': 'block' }, 'Columns and rows of it'),
      form('form', { novalidate: true }, submit,
        h('div.fields', {}, Object.values(fields)),
        h('label.wall', {}, paths, 'lay the paths between'), note,
        h('div.verbs', {}, h('button', { type: 'submit', 'data-key': 'block stand' }, 'Add them'))));
  }
}

customElements.define('beds-card', BedsCard);
