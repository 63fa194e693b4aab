import { api } from '../api.js';
import { readPrice, writtenPrice } from '../state/catalogue.js';
import { money } from '../state/changes.js';
import { readText } from '../state/checks.js';
import { addWork, quoteOf, readUntil, readExclusions, readMargin, readTax, removeWork, setQuote, setWork } from '../state/quote.js';
import { paragraph } from '../state/words.js';
import { countField } from './count-field.js';
import { custom, h, row, table } from './make.js';
import { PartPlace } from './part-place.js';
import './shelf-piece.js';
import { place } from './places.js';
import { bringingLink } from './sheet-link.js';
import { shownNumber } from './shown-number.js';

const hours = text => {
  const value = Number(text.trim().replace(',', '.'));
  return Number.isFinite(value) && value >= 0 && value <= 100000 ? { value } : { error: 'Hours, from 0 to 100000.' };
};

/** lap-quote: for who builds for others: work, margin and terms, what it comes to, and what a change does to it. */
export class LapQuote extends PartPlace {
  #numbers = [];
  #from = null;
  #variation = null;

  #shelf = null;

  render() {
    this.bring('quote', 'The quote could not be fetched', () => this.#revisions());
    this.rebuild(
      this.#terms(), this.#labour(),
      this.standing(),
      this.part ? this.#sum(this.part) : h('p.hint', {}, 'Nothing is reckoned yet.'),
      this.#change(),
      this.#shelf ??= custom('shelf-piece', { garden: this.garden, kind: 'quote', contentOf: plan => plan.quote ?? null }));
  }

  async #revisions() {
    const { revisions } = await api.revisions(this.garden.id);
    this.#numbers = revisions.filter(one => one.kind !== 'deleted');
    this.#from = this.#numbers.some(one => one.number === this.#from) ? this.#from : this.#numbers[1]?.number ?? null;
    this.#variation = null;
  }

  #terms() {
    const quote = quoteOf(this.garden.plan);
    const set = fields => this.run(setQuote(fields));
    const field = (label, key, read, mode = 'text', hint = undefined) => countField({
      label, mode, key: `quote ${key}`, value: quote[key] ?? '', hint, read, oncount: ({ detail }) => set({ [key]: detail === '' ? undefined : detail ?? undefined }),
    });
    const text = (quote.exclusions ?? []).join('\n');
    return h('section', {},
      h('h3', {}, 'Terms'),
      h('div.fields', {},
        field('Client', 'client', readText(500)), field('Builder', 'builder', readText(500), 'text', 'name and address'), field('Tax, %', 'tax', readTax, 'decimal', 'added to the price'), field('Number', 'number', readText(100)),
        field('Margin, %', 'margin', readMargin, 'decimal', 'of the selling price'), field('Holds until', 'validUntil', readUntil, 'text', 'such as 2027-03-31')),
      h('label', { for: 'quote-exclusions' }, 'Not included, one a line'),
      h('textarea', { id: 'quote-exclusions', rows: '3', 'data-key': 'quote exclusions', value: text, onchange: event => this.#exclude(event.target) }),
      h('output.note', { for: 'quote-exclusions' }, this.#wrong ?? ''));
  }

  #wrong = null;

  #exclude(area) {
    const read = readExclusions(area.value);
    this.#wrong = read.error ?? null;
    if (read.error) this.render();
    else this.run(setQuote({ exclusions: read.value }));
  }

  #labour() {
    const run = command => this.run(command);
    const labour = quoteOf(this.garden.plan).labour ?? [];
    return h('section', {},
      h('h3', {}, 'Work'),
      labour.map((work, i) => h('div.fields.work', { 'data-key': `work ${i}` },
        countField({ label: 'What', mode: 'text', key: `work ${i} what`, value: work.what ?? '', hint: work.what ? '' : 'Labour', read: readText(200), oncount: ({ detail }) => run(setWork(i, { what: detail || undefined })) }),
        countField({ label: 'Hours', mode: 'decimal', key: `work ${i} hours`, value: work.hours ?? 0, read: hours, oncount: ({ detail }) => run(setWork(i, { hours: detail })) }),
        countField({ label: 'Cost of an hour', mode: 'decimal', key: `work ${i} rate`, value: writtenPrice(work.rate), read: readPrice, oncount: ({ detail }) => run(setWork(i, { rate: detail ?? undefined })) }),
        h('button.quiet', { type: 'button', 'data-key': `work ${i} off`, 'aria-label': `Take off ${work.what ?? 'Labour'}`, onclick: () => run(removeWork(i)) }, 'Delete'))),
      h('button', { type: 'button', 'data-key': 'work add', onclick: () => run(addWork({ hours: 8 })) }, 'Add work'));
  }

  #sum({ currency, cost, price, atLeast, lines, working, findings = [] }) {
    return h('section', {},
      h('h3', {}, 'What it comes to'),
      findings.length ? h('ul.wrong', {}, findings.map(one => h('li', {}, `${one.place ?? one.where}: ${paragraph(one)}`))) : null,
      h('div.across', { tabindex: '0', role: 'group', 'aria-label': 'Lines of the quote' }, table(['For', 'Cost', 'Price'],
        lines.map(line => row(line.what, [line.cost ?? '?', line.price ?? '?'])), 'table.lines')),
      h('p.total', { 'data-key': 'quote total' }, atLeast ? 'At least ' : '',
        shownNumber(this.garden.choice, 'quote', { value: Number(price), unit: currency, working, name: 'the quote', text: money(price, currency) }), ` for a cost of ${money(cost, currency)}.`),
      h('p', {}, bringingLink(this, api, 'quote.pdf', 'The quote, PDF', 'quote.pdf')));
  }

  #change() {
    if (this.#numbers.length < 2) return null;
    const [newest, ...older] = this.#numbers;
    return h('section', {},
      h('h3', {}, 'Variation'),
      h('div.between', {},
        h('label', {}, 'Since revision ', h('select', { 'data-key': 'variation from', onchange: event => { this.#from = Number(event.target.value); this.#variation = null; this.render(); } },
          older.map(({ number, stamp }) => h('option', { value: String(number), selected: number === this.#from }, `${number}${stamp ? `, ${stamp}` : ''}`)))),
        h('button', { type: 'button', 'data-key': 'variation', onclick: () => this.#vary(newest.number) }, 'Show')),
      this.#variation ? this.#varied(this.#variation, newest.number) : null);
  }

  async #vary(to) {
    await this.try('The variation could not be fetched', async () => {
      this.#variation = await api.variation(this.garden.id, this.#from, to);
      const { difference, currency } = this.#variation;
      this.say(`The order ${Number(difference) === 0 ? 'costs the same' : `changes by ${money(difference, currency)}`}.`);
    });
  }

  #varied({ currency, before, after, difference, atLeast, lines }, to) {
    const changed = lines.filter(line => line.packsBefore !== line.packsAfter || Number(line.difference) !== 0);
    return [
      changed.length ? h('div.across', { tabindex: '0', role: 'group', 'aria-label': 'Lines of the variation' }, table(['Line', 'Was', 'Is', 'More'],
        changed.map(line => row(line.label, [`${line.packsBefore || 'nothing'}${line.costBefore ? `: ${line.costBefore}` : ''}`,
          `${line.packsAfter || 'nothing'}${line.costAfter ? `: ${line.costAfter}` : ''}`, line.difference ?? '?'])))) : h('p.hint', {}, 'The order is the same.'),
      h('p.total', { 'data-key': 'variation total' }, `${atLeast ? 'At least: ' : ''}${money(before, currency)} was, ${money(after, currency)} is, ${money(difference, currency)} more.`),
      h('p', {}, bringingLink(this, api, `variation.pdf?from=${this.#from}&to=${to}`, 'The variation, PDF', 'variation.pdf')),
    ];
  }
}

customElements.define('lap-quote', LapQuote);
place({ key: 'quote', title: 'Quote', tag: 'lap-quote', table: 'share', order: 20 });
