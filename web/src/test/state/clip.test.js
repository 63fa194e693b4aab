import { boxOfClip, clipOf, isBuiltOtherwise, pasteBeds, readClip } from '../../main/resources/META-INF/resources/state/clip.js';
import { equal, holds, test } from '../trial.js';

const plan = { types: [{ id: 'T', width: 2400, depth: 1200, courses: 3 }], beds: [{ id: 'A', type: 'T', at: [1000, 2000] }, { id: 'B', width: 900, depth: 900, at: [5000, 2000], name: 'Herbs' }] };

test('copied beds are put down with codes of their own, moved as one', () => {
  const clip = readClip(clipOf(plan, ['A', 'B']));
  const pasted = pasteBeds(clip, 100, 3000)(plan);
  equal(pasted.beds.slice(2), [{ type: 'T', at: [1100, 5000], id: 'C' }, { width: 900, depth: 900, at: [5100, 5000], id: 'D' }]);
  equal(boxOfClip(clip, plan), { left: 1000, right: 5900, front: 2000, back: 3200 });
});

test('what is cut and put down again in its garden is the same bed, once', () => {
  const rest = { ...plan, beds: [plan.beds[0]], tally: { done: [{ task: 'B.course-1' }] } };
  const clip = readClip(clipOf(plan, ['B'], 'yard'));
  const back = pasteBeds(clip, 0, 500, 'yard')(rest);
  equal(back.beds[1], { width: 900, depth: 900, at: [5000, 2500], id: 'B', name: 'Herbs' });
  equal(pasteBeds(clip, 0, 500, 'yard')(back).beds[2], { width: 900, depth: 900, at: [5000, 2500], id: 'C' });
  equal(pasteBeds(clip, 0, 500, 'another')(rest).beds[1].id, 'C');
  equal(pasteBeds(readClip(clipOf(plan, ['B'])), 0, 500, 'yard')(rest).beds[1].id, 'C');
});

test('in a garden where something else is usual they are built as where they were copied', () => {
  const there = { defaults: { section: '6x6', courses: 4, notches: { width: 25.4 } }, types: plan.types, beds: [{ id: 'A', width: 900, depth: 900, at: [0, 0], courses: 2 }, { id: 'B', type: 'T', at: [0, 2000] }] };
  const clip = readClip(clipOf(there, ['A', 'B']));
  equal(pasteBeds(clip, 0, 0)(there).beds.slice(2).map(({ at: _at, ...bed }) => bed), [{ width: 900, depth: 900, courses: 2, id: 'C' }, { type: 'T', id: 'D' }]);
  holds(!isBuiltOtherwise(clip, there), 'in its own garden');
  equal(pasteBeds(clip, 0, 0)({ types: plan.types, beds: [] }).beds.map(({ at: _at, ...bed }) => bed),
    [{ width: 900, depth: 900, courses: 2, section: '6x6', notches: { width: 25.4 }, id: 'A' }, { type: 'T', section: '6x6', notches: { width: 25.4 }, id: 'B' }]);
  holds(isBuiltOtherwise(clip, { beds: [] }), 'elsewhere');
  equal(pasteBeds(readClip(clipOf({ beds: there.beds.slice(0, 1) }, ['A'])), 0, 0)({ defaults: { section: '6x6', courses: 4 }, beds: [] }).beds[0],
    { width: 900, depth: 900, courses: 2, section: '100x200', id: 'A', at: [0, 0] });
});

test('in a garden without their type they become beds of their own', () => {
  const clip = readClip(clipOf(plan, ['A']));
  equal(pasteBeds(clip, 0, 0)({ beds: [] }).beds, [{ width: 2400, depth: 1200, courses: 3, at: [1000, 2000], id: 'A' }]);
});

test('other text on the clipboard holds no beds', () => {
  holds([readClip('hello'), readClip('{"format":"x"}'), readClip('null')].every(one => one === null), 'something was read');
});
