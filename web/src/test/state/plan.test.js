import { bedOf, bedsOf, boundsOf, calledOf, freeId, named, unitsOf, usualSection, yardOf } from '../../main/resources/META-INF/resources/state/plan.js';
import { equal, test } from '../trial.js';

test('a bed in three entries is a whole garden, its defaults filled in', () => {
  const [bed] = bedsOf({ beds: [{ width: 2400, depth: 1200, courses: 3 }] });
  equal([bed.outline, bed.section, bed.lap, bed.stage], [[[0, 0], [2400, 0], [2400, 1200], [0, 1200]], { id: '100x200', thickness: 100, height: 200 }, 'turning', 1]);
});

test('a bed takes what its type gives and says otherwise where it does', () => {
  const plan = { types: [{ id: 'T', width: 2400, depth: 1200, courses: 2, section: '75x200' }], beds: [{ id: 'A', type: 'T', courses: 4 }] };
  const bed = bedOf(plan, 'A');
  equal([bed.courses, bed.section.thickness, bed.size], [4, 75, { width: 2400, depth: 1200 }]);
});

test('outlines come by corners and by walls as well', () => {
  const byCorners = bedsOf({ beds: [{ id: 'A', outline: [[0, 1200], [0, 0], [2400, 0], [2400, 1200]] }] })[0];
  const byWalls = bedsOf({ beds: [{ id: 'A', walls: [2400, 1200, 2400, 1200].map(length => ({ length, turn: 'left' })) }] })[0];
  equal(byCorners.own, [[0, 0], [2400, 0], [2400, 1200], [0, 1200]]);
  equal(byWalls.own, byCorners.own);
});

test('beds without a code are named as the job sheet names them, else by the next free letter', () => {
  const plan = { beds: [{ id: 'A' }, {}, {}] };
  equal(named(plan, { yard: [{ bed: 'A' }, { bed: 'Q' }] }).beds.map(bed => bed.id), ['A', 'Q', 'B']);
  const whole = { beds: [{ id: 'A' }] };
  equal(named(whole, null) === whole, true);
  equal(freeId(['A', 'B', 'D']), 'C');
});

test('what is drawn is the yard, or the beds with a step round them', () => {
  equal(boundsOf({ ground: { outline: [[0, 0], [5000, 0], [5000, 4000]] } }), { left: 0, right: 5000, front: 0, back: 4000 });
  equal(boundsOf({ beds: [{ id: 'A', width: 2000, depth: 1000, at: [500, 700] }] }), { left: -500, right: 3500, front: 0, back: 2700 });
  equal([yardOf({}), unitsOf({}), unitsOf({ units: 'imperial' })], [null, 'metric', 'imperial']);
});

test('a bed is called by its name, else by its code', () => {
  equal([calledOf({ id: 'A', name: 'Herbs' }), calledOf({ id: 'A', name: '' })], ['Herbs', 'Bed A']);
});

test("the garden's own defaults stand before ours, and a bed's own shape before its type's", () => {
  const plan = { defaults: { courses: 5, lap: 'long-wall' }, types: [{ id: 'T', width: 2400, depth: 1200 }],
    beds: [{ id: 'A', type: 'T' }, { id: 'B', type: 'T', outline: [[0, 0], [900, 0], [900, 900], [0, 900]] }] };
  const [a, b] = bedsOf(plan);
  equal([a.courses, a.lap, a.size], [5, 'long-wall', { width: 2400, depth: 1200 }]);
  equal([b.size, b.own[2]], [null, [900, 900]]);
});

test('what cannot be a bed yet, and timber that is half told, are drawn all the same', () => {
  const halfTold = { sections: [{ id: '75x200', stock: [] }] };
  const [line, none] = bedsOf({ catalogue: halfTold, defaults: { section: '75x200' }, beds: [{ id: 'A', outline: [[0, 0], [1000, 0]] }, { id: 'B', outline: [] }] });
  equal([line.own, none.own], [Array(4).fill([0, 0]), Array(4).fill([0, 0])]);
  equal(line.section, { id: '75x200', thickness: 75, height: 200 });
  equal(usualSection({ catalogue: halfTold, defaults: { section: '75x200' } }).thickness, 75);
  equal(usualSection({}).thickness, 100);
});
