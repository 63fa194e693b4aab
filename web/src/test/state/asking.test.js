import { equal, test } from '../trial.js';
import { givesOf, keepAlike, layOutWith, letBedGive, letGive, pin, rankFirst, wish, wishOf } from '../../main/resources/META-INF/resources/state/asking.js';

const plan = { name: 'x', beds: [{ id: 'A' }, { id: 'B' }] };

test('a side that gives nothing leaves no trace in the document', () => {
  const given = letGive('width', [-50, 20])(plan);
  equal(given.give, { width: [-50, 20] });
  equal(givesOf(given, 'width'), [-50, 20]);
  equal(givesOf(given, 'depth'), [0, 0]);
  equal(letGive('width', [0, 0])(given), plan);
  equal(keepAlike('inLine', true)(keepAlike('inLine', false)(plan)), plan);
});

test('a bed that stays says so itself, and only it', () => {
  const stays = letBedGive('B', false)(plan);
  equal(stays.beds, [{ id: 'A' }, { id: 'B', give: false }]);
  equal(letBedGive('B', true)(stays), plan);
});

test('pins, widths and the ranking go back to nothing where they are as usual', () => {
  equal(pin('A', true)(plan).layOut, { pinned: ['A'] });
  equal(pin('A', false)(pin('A', true)(plan)), plan);
  equal(layOutWith('path', 900)(plan).layOut, { path: 900 });
  equal(layOutWith('path', 0)(layOutWith('path', 900)(plan)), plan);
  equal(rankFirst('sun')(plan).layOut.rank, ['sun', 'beds', 'area', 'cost']);
  equal(rankFirst('beds')(plan), plan);
});

test('a wish is at least and at most so many of a type', () => {
  const wanted = wish('T', 2, null)(plan);
  equal(wanted.layOut.beds, [{ type: 'T', least: 2 }]);
  equal(wishOf(wanted, 'T'), { type: 'T', least: 2 });
  equal(wish('T', 4, 3)(wanted).layOut.beds, [{ type: 'T', least: 4, most: 4 }]);
  equal(wish('T', null, null)(wanted), plan);
  equal(wishOf(plan, 'T'), null);
});

test('sizes in feet change by half inches, unless the garden says another step', () => {
  equal(letGive('width', [-101.6, 0])({ units: 'imperial', beds: [] }).give, { width: [-101.6, 0], step: 12.7 });
  equal(letGive('depth', [-50.8, 0])({ units: 'imperial', give: { step: 5 }, beds: [] }).give, { step: 5, depth: [-50.8, 0] });
});
