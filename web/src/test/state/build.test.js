import { FIELDS, isWanted, layersOf, layersText, readLayers, sectionChoices, sectionName, sectionsOf, turnedOver, valueOf, written } from '../../main/resources/META-INF/resources/state/build.js';
import { equal, test } from '../trial.js';

const field = name => FIELDS.find(({ key, sub }) => (sub ? `${key}.${sub}` : key) === name);
const value = (name, layers) => { const { value: now, from } = valueOf(field(name), layers); return [now, from]; };

test('what a bed does not say comes from its type, then the garden, then the trade', () => {
  equal(value('courses', {}), [3, 'usual']);
  equal(value('courses', { garden: { courses: 2 } }), [2, 'garden']);
  equal(value('courses', { garden: { courses: 2 }, type: { courses: 4 } }), [4, 'type']);
  equal(valueOf(field('courses'), { own: { courses: 5 }, type: { courses: 4 } }), { value: 5, from: 'own', else: 4 });
  equal(value('base.kind', { own: { base: 'open' } }), ['open', 'own']);
  equal(value('liner.wanted', { garden: { liner: false } }), ['no', 'garden']);
  equal(value('finish.coats', { own: { finish: true }, garden: { finish: { coats: 3 } } }), [3, 'garden']);
});

test('a bed that says its own base covers all of its type\'s', () => {
  const layers = { own: { base: { drainGap: 20 } }, type: { base: { bearerEvery: 300 } }, garden: {} };
  equal(valueOf(field('base.bearerEvery'), layers), { value: 400, from: 'own', else: 300 });
});

test('what is written keeps what else is said, and plain stays plain', () => {
  equal(written(field('finish.wanted'), { own: { finish: { coats: 3 } } }, 'no'), { coats: 3, wanted: false });
  equal(written(field('base.kind'), { own: {} }, 'open'), 'open');
  equal(written(field('base.drainGap'), { own: { base: 'slatted' } }, 20), { kind: 'slatted', drainGap: 20 });
  equal(written(field('base.bearerEvery'), { type: { base: { drainGap: 20 } } }, 300), { drainGap: 20, bearerEvery: 300 });
  equal(written(field('finish.coats'), { own: { finish: { coats: 3 } } }, undefined) ?? 'gone', 'gone');
  equal(written(field('food'), {}, 'yes'), true);
});

test('fields of what is not wanted are not asked for', () => {
  equal(isWanted(field('finish.coats'), { own: { finish: false } }), false);
  equal(isWanted(field('base.bearerEvery'), { garden: { base: 'open' }, own: { base: 'slatted' } }), true);
});

test('layers are read as they are spoken, and must make up the whole', () => {
  equal(readLayers('60 topsoil, 40% soil.compost'), { value: [{ material: 'soil.topsoil', share: 60 }, { material: 'soil.compost', share: 40 }] });
  equal(readLayers('60 topsoil, 30 compost').error, '10 % missing. Add it to one layer.');
  equal(readLayers('60 topsoil, 50 compost').error, '10 % over the whole. Take it off one layer.');
  equal(readLayers('lots of soil').error.startsWith('“lots of soil” is no layer'), true);
  equal(layersText(layersOf({})), '60 topsoil, 30 compost, 10 grit');
  equal(layersText(layersOf({ own: { fill: { layers: [{ material: 'soil.grit', share: 100 }] } }, type: {} })), '100 grit');
});

test('walls are hidden and seen one by one; all seen is said by saying nothing', () => {
  const walls = ['A', 'B', 'C', 'D'];
  equal(turnedOver(walls, undefined, 'C'), ['A', 'B', 'D']);
  equal(turnedOver(walls, ['A', 'B', 'D'], 'A'), ['B', 'D']);
  equal(turnedOver(walls, ['A', 'B', 'D'], 'C') ?? 'all', 'all');
});

test('the timbers to choose from are the usual one and the garden\'s own', () => {
  equal(sectionsOf({ catalogue: { sections: [{ id: '75x200' }, { id: '100x200' }] } }), ['100x200', '75x200']);
  equal(sectionChoices({ units: 'imperial', catalogue: { sections: [{ id: '75x200' }] } }, '50x75'), [['100x200', '4x8'], ['75x200', '3x8'], ['50x75', '2x3']]);
  equal(sectionChoices({ units: 'imperial', catalogue: { sections: [{ id: '4x8' }] } }), [['100x200', '100x200'], ['4x8', '4x8']], 'two of one name are told apart');
});

test('the laps are called as on the course cards', () => {
  equal(field('lap').choices, [['turning', 'alternating'], ['long-wall', 'long-wall']]);
});

test('a section is named in nominal inches where the garden is in feet; sizes as sold, common practice, no source', () => {
  const table = [['100x200', '4x8'], ['50x75', '2x3'], ['150x150', '6x6'], ['6x6', '6x6'], ['12x20', '12x20'], ['oak', 'oak']];
  for (const [id, name] of table) equal([sectionName(id, 'imperial'), sectionName(id, 'metric')], [name, id]);
});
