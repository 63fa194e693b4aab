import { capital } from '../state/words.js';
import { api } from '../api.js';
import { sectionChoices } from '../state/build.js';
import { addSupplier, currencyOf, payIn, priceRows, readCurrency, readPrice, setPrice, setSupplier, setTimber, supplierCode, suppliersOf, takeCatalogue, timberRows, writtenPrice } from '../state/catalogue.js';
import { money } from '../state/changes.js';
import { unitsOf } from '../state/plan.js';
import { percent } from '../state/quote.js';
import { readName, readNumber } from '../state/checks.js';
import { base64 } from '../state/base64.js';
import { usualLeadDays } from '../state/crew-forms.js';
import { asRead, COLUMNS, codesOf, headOf, readied, rowsOf, template, without } from '../state/merchant-list.js';
import { countField } from './count-field.js';
import { choiceField, custom, form, GardenElement, h, options, tick } from './make.js';
import './merchant-offers.js';
import './shelf-piece.js';
import { place } from './places.js';

/** Lines of a list that are shown before it is taken. */
const SHOWN = 12;

/** EN 338, as the document names them. */
const STRENGTHS = ['ungraded', 'C14', 'C16', 'C18', 'C20', 'C22', 'C24', 'C27', 'C30', 'D18', 'D24', 'D30', 'D35', 'D40', 'D50', 'D60', 'D70'];

const days = readNumber(0, 365);

/** lap-catalogue: who sells and for what; prices by hand, or from a merchant's list that is shown before it is taken. */
export class LapCatalogue extends GardenElement {
  #examples = null;
  #preview = null;
  #text = '';
  #named = {};
  #turn = 0;
  #supplier = '';

  follows = ['plans', 'reckoning'];

  attached() {
    super.attached();
    this.try('Our examples could not be fetched', async () => { this.#examples = await api.examples(); });
  }

  #shelf = null;
  #offers = null;

  render() {
    this.rebuild(this.#suppliers(), this.#offers ??= custom('merchant-offers', { garden: this.garden }), this.#list(), this.#timber(), this.#prices(), this.#shelf ??= custom('shelf-piece', { garden: this.garden, kind: 'catalogue', contentOf: plan => plan.catalogue ?? null }));
  }

  #suppliers() {
    const suppliers = suppliersOf(this.garden.plan);
    return h('section', {},
      h('h3', {}, 'Suppliers'),
      suppliers.length ? null : h('p.hint', {}, 'One merchant sells everything and charges nothing to bring it. Add those you really buy from.'),
      suppliers.map(one => this.#one(one)),
      form('form.new', { 'data-key': 'supplier form' }, () => this.#add(),
        h('label', { for: 'supplier-name' }, 'Another supplier'),
        h('input', { id: 'supplier-name', maxlength: 100, autocomplete: 'off', required: true, 'data-key': 'supplier name' }),
        h('button', { type: 'submit', 'data-key': 'supplier add' }, 'Add')));
  }

  #add() {
    const input = this.querySelector('#supplier-name');
    const name = input.value.trim();
    if (!name) return;
    const id = supplierCode(name, suppliersOf(this.garden.plan).map(one => one.id));
    input.value = '';
    this.run(addSupplier({ id, name }));
    this.say(`${name} is on the list of suppliers.`);
  }

  #one(supplier) {
    const { id } = supplier;
    const set = fields => this.run(setSupplier(id, fields));
    const number = (label, field, hint, value, read) => countField({
      label, mode: 'decimal', key: `supplier ${id} ${field}`, value, hint, read, oncount: ({ detail }) => set({ [field]: detail ?? undefined }),
    });
    const price = (label, field, hint) => number(label, field, hint, writtenPrice(supplier[field]), readPrice);
    const part = (label, field, hint, of) => number(label, field, hint, supplier[field] ?? '', percent(100, of));
    return h('details', {},
      h('summary', { 'data-key': `supplier ${id}` }, h('strong', {}, supplier.name ?? id), ` ${told(supplier, currencyOf(this.garden.plan))}`),
      h('div.fields', {},
        countField({ label: 'Name', mode: 'text', key: `supplier ${id} name`, value: supplier.name ?? id, read: readName, oncount: ({ detail }) => set({ name: detail || undefined }) }),
        countField({ label: 'Days ahead', key: `supplier ${id} leadDays`, value: supplier.leadDays ?? usualLeadDays(this.garden.plan), read: days, oncount: ({ detail }) => set({ leadDays: detail }) }),
        price('Delivery charge', 'delivery', 'for each order'),
        price('Free over', 'freeOver', 'empty: never'),
        part('Tax, %', 'tax', '', 'of the price'),
        part('Deposit, %', 'deposit', 'of the order, when it is placed', 'of the order'),
        countField({ label: 'Days to pay', key: `supplier ${id} payDays`, value: supplier.payDays ?? 0, read: days, hint: 'from the delivery', oncount: ({ detail }) => set({ payDays: detail || undefined }) }),
        tick(`supplier ${id} included`, 'prices are with tax', supplier.taxIncluded !== false,
          on => set({ taxIncluded: on ? undefined : false, ...(on || supplier.tax ? {} : { tax: 20 }) }), 'wall')));
  }

  #list() {
    const suppliers = suppliersOf(this.garden.plan);
    return h('section', {},
      h('h3', {}, 'A merchant’s list'),
      h('p.hint', {}, 'CSV or XLSX with a heading: item, price, and length, width or content. A length without a unit is in mm. It is shown before anything is taken. ',
        h('a', { href: `data:text/csv;charset=utf-8,${encodeURIComponent(template(priceRows(this.garden.plan, this.#examples)))}`, download: 'price-list.csv', 'data-key': 'list template' }, 'A list to fill in')),
      h('label', { for: 'list-file' }, 'From a file'),
      h('input', { id: 'list-file', type: 'file', accept: '.csv,.xlsx,text/csv,text/plain', 'data-key': 'list file', onchange: event => this.#file(event) }),
      h('label', { for: 'list-text' }, 'Or pasted'),
      h('textarea', { id: 'list-text', rows: 3, spellcheck: 'false', 'data-key': 'list text', value: this.#text, oninput: event => { this.#text = event.target.value; this.#named = {}; } }),
      suppliers.length ? h('label', { for: 'list-supplier' }, 'Sold by') : null,
      suppliers.length ? h('select', { id: 'list-supplier', 'data-key': 'list supplier', onchange: event => { this.#supplier = event.target.value; } },
        options([['', 'as the list says'], ...suppliers.map(one => [one.id, one.name ?? one.id])], this.#supplier)) : null,
      h('div.verbs', {},
        h('button', { type: 'button', 'data-key': 'list show', onclick: () => this.#show() }, 'Show how it is read'),
        this.#preview?.lines.length ? h('button.main', { type: 'button', 'data-key': 'list take', onclick: () => this.#take() }, this.#preview.bad.length ? `Take ${this.#preview.lines.length} good ${this.#preview.lines.length === 1 ? 'line' : 'lines'}` : 'Take the list') : null),
      this.wrong(),
      this.#preview ? this.#shown() : null);
  }

  async #file(event) {
    const [file] = event.target.files;
    if (!file) return undefined;
    this.#named = {};
    this.#text = '';
    await this.try(`${file.name} cannot be read`, async () => {
      this.#text = file.name.toLowerCase().endsWith('.xlsx') ? await api.workbookList(await base64(file)) : await file.text();
    });
    return this.problem ?? this.#show();
  }

  async #show() {
    const turn = ++this.#turn;
    this.#preview = null;
    if (!this.#text.trim()) return this.refuse('The list is empty: choose a file or paste its lines.');
    return this.try('The list cannot be read now', async () => {
      const preview = await api.merchantList(this.#readied(), this.#supplier, this.garden.plan).catch(problem => { if (turn === this.#turn) throw problem; });
      if (turn !== this.#turn) return;
      this.#preview = preview;
      const { lines, bad } = preview;
      this.say(bad.length ? `${lines.length} lines are understood, ${bad.length} ${bad.length === 1 ? 'is' : 'are'} not.` : `${lines.length} lines are understood.`);
    });
  }

  #readied() { return readied(this.#text, this.#named, codesOf(priceRows(this.garden.plan, this.#examples))); }

  /** What each column is, to be named by hand where a heading was not understood. */
  #columns() {
    const rows = rowsOf(this.#text);
    const head = rows[headOf(rows)];
    const understood = Object.fromEntries(this.#preview.columns.map(one => [one.heading, one.field]));
    return h('div.columns', { role: 'group', 'aria-label': 'What the columns are' }, (head?.cells ?? []).map((heading, i) => h('label', {}, `“${heading || `column ${i + 1}`}” is `,
      h('select', { 'data-key': `column ${i}`, onchange: event => { this.#named[i] = event.target.value; this.#show(); } },
        options(COLUMNS, this.#named[i] ?? understood[heading] ?? '')))));
  }

  #shown() {
    const { lines, bad, findings } = this.#preview;
    return h('div.preview', { 'data-key': 'list preview' },
      h('p', {}, `${lines.length} ${lines.length === 1 ? 'line' : 'lines'} understood, ${bad.length} bad.`),
      this.#columns(),
      bad.length ? h('ul.wrong', {}, bad.map(one => h('li', {}, `Line ${one.line}: ${one.text}. ${capital(one.way)}.`))) : null,
      findings.length ? h('ul.wrong', {}, findings.map(one => h('li', {}, `${one.place ?? one.where}: ${one.text}`))) : null,
      h('ol', {}, lines.slice(0, SHOWN).map(one => h('li', { value: one.line }, asRead(one, unitsOf(this.garden.plan))))),
      lines.length > SHOWN ? h('p.hint', {}, `and ${lines.length - SHOWN} more`) : null);
  }

  async #take() {
    const { lines: { length: count }, bad } = this.#preview;
    if (bad.length) this.#preview = await api.merchantList(without(this.#readied(), bad), this.#supplier, this.garden.plan);
    if (!this.#preview.garden) return this.refuse('The good lines do not go together: see below.');
    this.run(takeCatalogue(this.#preview.garden.catalogue));
    this.#preview = null;
    this.#text = '';
    this.say(`${count} ${count === 1 ? 'line is' : 'lines are'} taken. Undo brings the list before back.`);
    return this.render();
  }

  #timber() {
    const rows = timberRows(this.garden.plan, this.#examples);
    const names = Object.fromEntries(sectionChoices(this.garden.plan, ...rows.map(({ id }) => id)));
    const set = (id, fields) => this.run(setTimber(id, fields, this.#examples));
    return h('section', {},
      h('h3', {}, 'Timber'),
      h('ul.prices', {}, rows.map(({ id, goodFaces, treated, strengthClass }) => h('li', { 'data-key': `timber ${id}` },
        h('strong', {}, names[id]),
        tick(`timber ${id} faces`, 'both faces of its boards may be seen: angled pieces are nested where that saves a board', goodFaces > 1,
          on => set(id, { goodFaces: on ? 2 : undefined }), 'wall'),
        tick(`timber ${id} treated`, 'treated against rot', treated, on => set(id, { treated: on || undefined }), 'wall'),
        choiceField('Strength class stamped on it', `timber ${id} strength`, strengthClass, STRENGTHS.map(value => [value, value]),
          value => set(id, { strengthClass: value === 'ungraded' ? undefined : value }))))));
  }

  #prices() {
    const { plan } = this.garden;
    const rows = priceRows(plan, this.#examples);
    const names = Object.fromEntries(suppliersOf(plan).map(one => [one.id, one.name ?? one.id]));
    // its key once all that stands above it is there
    return h('section', { 'data-key': this.#examples ? 'prices' : null },
      h('h3', {}, 'Prices'),
      rows.some(row => row.example) ? h('p.hint', {}, 'What is marked “example” is ours: write your merchant’s price over it.') : null,
      countField({ label: 'Currency', mode: 'text', key: 'currency', value: currencyOf(plan), hint: 'prices keep their numbers', read: readCurrency, oncount: ({ detail }) => this.run(payIn(detail)) }),
      rows.length ? null : h('p.hint', {}, 'Nothing is on the list.'),
      h('ul.prices', {}, rows.map(row => {
        const key = `price ${row.list} ${row.name} ${row.index ?? ''} ${row.supplier}`.trim();
        const from = row.supplier ? `, ${names[row.supplier] ?? row.supplier}` : '';
        return h('li', { 'data-key': `row ${key}` }, countField({
          label: `${row.what}, ${row.sold}${from}`, mode: 'decimal', key, value: writtenPrice(row.price), hint: row.example ? 'example' : row.price === null ? 'no price yet' : '',
          read: readPrice, oncount: ({ detail }) => this.run(setPrice(row, detail, this.#examples)),
        }));
      })));
  }
}

function told(supplier, currency) {
  const parts = [];
  if (supplier.delivery) parts.push(`${money(supplier.delivery, currency)} to bring`);
  if (supplier.delivery && supplier.freeOver) parts.push(`free over ${money(supplier.freeOver, currency)}`);
  if (supplier.leadDays) parts.push(`${supplier.leadDays} ${supplier.leadDays === 1 ? 'day' : 'days'} ahead`);
  return parts.join(', ');
}


customElements.define('lap-catalogue', LapCatalogue);
place({ key: 'catalogue', title: 'Merchants', tag: 'lap-catalogue', table: 'buy', order: 30 });
