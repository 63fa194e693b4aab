import { asRead, codesOf, headOf, readied, rowsOf, template, without } from '../../main/resources/META-INF/resources/state/merchant-list.js';
import { equal, test } from '../trial.js';

test('cells are read with quotes as RFC 4180 has them, whatever parts them', () => {
  equal(rowsOf('a;b\n"1;5";"say ""x"""\n').map(({ cells }) => cells), [['a', 'b'], ['1;5', 'say "x"']]);
  equal(rowsOf('a,b\r\n1,2').map(({ cells, line }) => [line, cells.join()]), [[1, 'a,b'], [2, '1,2']]);
});

test('columns are named by hand, and labels as the page shows them are understood', () => {
  const codes = codesOf([{ what: 'Timber 100x200', name: '100x200' }, { what: 'Topsoil', name: 'soil.topsoil' }]);
  equal(readied('Artikel;Preis;mm\ntopsoil;55,00;\nTimber  100x200;26.40;3600', { 0: 'item', 1: 'price', 2: 'length' }, codes),
    'item,price,length\nsoil.topsoil,"55,00",\n100x200,26.40,3600');
  equal(readied('item,x,price\na,b,1', { 1: '' }, new Map()), 'item,unused 2,price\na,b,1');
});

test('titles and empty rows stand above the headings and stay there', () => {
  const text = 'Prices of May\r\n\r\nArtikel,Prijs\r\nscrews,3\r\n';
  equal(headOf(rowsOf(text)), 2);
  equal(readied(text, { 0: 'item', 1: 'price' }, new Map()), 'Prices of May\n\nitem,price\nscrews,3');
  equal(without('Prices of May\n\nitem,price\nscrews,x\noil,3', [{ line: 4 }]), 'Prices of May\n\nitem,price\noil,3');
});

test('good lines are taken without the bad ones', () => {
  equal(without('item,price\na,1\nb,x\nc,3', [{ line: 3 }]), 'item,price\na,1\nc,3');
});

test('a template names all that can be bought', () => {
  equal(template([{ name: '100x200', what: 'Timber 100x200', sold: 'board of 9\' 10 1/8"', length: 3000 }, { name: 'screws', what: 'Screws', sold: 'box of 50' }]),
    'item,description,pack,length (mm),price\n100x200,Timber 100x200,"board of 9\' 10 1/8""",3000,\nscrews,Screws,box of 50,,');
});

test('a heading named by hand keeps its unit or currency', () => {
  const head = (heading, field) => readied(`"${heading.replaceAll('"', '""')}";x\n8;1`, { 0: field }, new Map()).split(',')[0];
  equal(['Board length (ft)', 'Board, in mm', 'Long [M]', "Size '"].map(heading => head(heading, 'length')), ['length (ft)', 'length (mm)', 'length (M)', "length (')"]);
  equal(['Farm', 'Length USD', 'Soft'].map(heading => head(heading, 'length')), ['length', 'length', 'length']);
  equal(['Net (USD)', 'Net, ft', 'Cost for all', 'USD'].map(heading => head(heading, 'price')), ['price (USD)', 'price', 'price', 'price']);
  equal(head('Pack of 3 ft', 'pack'), 'pack');
});

test('a line is shown in the garden\'s measures', () => {
  const line = { kind: 'section', fields: { item: '100x200', length: '2438.4', price: '24.50', thickness: '100' } };
  equal(asRead(line, 'metric'), 'item 100x200, length 2438.4, price 24.50, thickness 100');
  equal(asRead(line, 'imperial'), 'item 4x8, length 8\', price 24.50, thickness 3 15/16"');
  equal(asRead({ kind: 'goods', fields: { item: '100x200' } }, 'imperial'), 'item 100x200');
});
