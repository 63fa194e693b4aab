/** A merchant's list as text, made ready for the server that reads it: columns named by hand, labels as the page shows them. */

import { shown } from '../geometry/length.js';
import { sectionName } from './build.js';
import { CURRENCIES } from './currencies.js';

/** What a column can be, by the headings that the server knows, with what is said of each. */
export const COLUMNS = [['', 'not wanted'], ['item', 'item'], ['price', 'price'], ['length', 'length'], ['width', 'width'], ['thickness', 'thickness'], ['height', 'height'],
  ['pack', 'pack'], ['content', 'content'], ['unit', 'unit'], ['label', 'description'], ['bundle', 'sold in bundles of'], ['least', 'least count'], ['mass', 'weight, kg'], ['supplier', 'supplier']];

const SIGNS = [';', '\t', ','];

const signOf = text => {
  const head = text.split(/\r?\n/).find(line => SIGNS.some(sign => line.includes(sign))) ?? '';
  return SIGNS.map(sign => ({ sign, count: head.split(sign).length - 1 })).reduce((best, one) => (one.count > best.count ? one : best)).sign;
};

/** Rows of cells with the lines they began and ended on; quotes as RFC 4180 has them. @returns {{cells: string[], line: number}[]} */
export function rowsOf(text) {
  const sign = signOf(text);
  const rows = [];
  let [cells, cell, quoted, line] = [[], '', false, 1];
  const end = () => {
    cells.push(cell);
    rows.push({ cells, line });
    [cells, cell] = [[], ''];
  };
  for (let i = 0; i < text.length; i++) {
    const letter = text[i];
    if (quoted) {
      if (letter === '"' && text[i + 1] === '"') cell += text[++i];
      else if (letter === '"') quoted = false;
      else cell += letter;
      if (letter === '\n') line++;
    } else if (letter === '"' && cell === '') quoted = true;
    else if (letter === sign) {
      cells.push(cell);
      cell = '';
    } else if (letter === '\n') {
      end();
      line++;
    } else if (letter !== '\r') cell += letter;
  }
  if (cell !== '' || cells.length) end();
  return rows;
}

/** Which row has the headings: titles and empty rows above it fill one cell at most. @param {{cells: string[]}[]} rows */
export const headOf = rows => Math.max(0, rows.findIndex(({ cells }) => cells.filter(cell => cell.trim()).length > 1));

const written = cell => (/[",\n;\t]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

const plain = text => text.trim().toLowerCase().replace(/\s+/g, ' ');

/** Fields that hold a length, in millimetres once they are read. */
const LENGTHS = ['length', 'width', 'thickness', 'height', 'step'];

const saidAtEnd = (of, flags) => new RegExp(`[\\s,;:([_-](?:in\\s+)?(${of})[)\\].]*$`, flags);
const UNIT = saidAtEnd('mm|cm|m|in|inches|ft|feet|"|\'', 'i');
const CURRENCY = saidAtEnd(CURRENCIES.join('|'));

/** A heading named by hand keeps the unit or currency that it says, as in `Board length (ft)`; the server reads both. */
function called(field, heading) {
  const said = field === 'price' ? CURRENCY : LENGTHS.includes(field) ? UNIT : null;
  const unit = said?.exec(heading.trim())?.[1];
  return unit ? `${field} (${unit})` : field;
}

/** A line as the server read it, in the garden's measures. @param {{kind: string, fields: Object<string, string>}} line */
export const asRead = ({ kind, fields }, units) => Object.entries(fields).map(([field, value]) => {
  if (LENGTHS.includes(field)) return `${field} ${shown(Number(value), units)}`;
  return `${field} ${field === 'item' && kind === 'section' ? sectionName(value, units) : value}`;
}).join(', ');

/**
 * The list with its headings as named by hand, and labels as the page shows them in place of codes.
 *
 * @param {Object<number, string>} named what a column is, by its number from 0; those left out keep their heading
 * @param {Map<string, string>} codes by label
 */
export function readied(text, named, codes) {
  const rows = rowsOf(text.replace(/^\uFEFF/, ''));
  if (!rows.length) return text;
  const at = headOf(rows);
  const [head, ...rest] = rows.slice(at);
  const headings = head.cells.map((cell, i) => (i in named ? called(named[i], cell) || `unused ${i + 1}` : cell));
  const item = headings.findIndex(cell => plain(cell) === 'item');
  const byLabel = new Map([...codes].map(([label, code]) => [plain(label), code]));
  return [...rows.slice(0, at).map(({ cells }) => cells), headings, ...rest.map(({ cells }) => cells.map((cell, i) => (i === item ? byLabel.get(plain(cell)) ?? cell : cell)))]
    .map(cells => cells.map(written).join(',')).join('\n');
}

/** The list without the lines that were told as bad. @param {{line: number}[]} bad by their lines in a list as `readied` writes it */
export function without(text, bad) {
  const gone = new Set(bad.map(({ line }) => line));
  return rowsOf(text).filter((_, i) => !gone.has(i + 1)).map(({ cells }) => cells.map(written).join(',')).join('\n');
}

/** What a line calls its goods on the page, and the code by which the catalogue knows them. @param {object[]} rows see priceRows */
export function codesOf(rows) {
  const codes = new Map();
  for (const { what, name } of rows) if (!codes.has(what)) codes.set(what, name);
  return codes;
}

/** A list to fill in: a line for all that can be bought, prices left empty. @param {object[]} rows see priceRows */
export const template = rows => ['item,description,pack,length (mm),price',
  ...rows.map(({ name, what, sold, length }) => [name, what, sold, String(length ?? ''), ''].map(written).join(','))].join('\n');
