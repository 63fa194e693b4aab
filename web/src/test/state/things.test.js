import { calledThing, movePoint, moveThing, placeOfThing, pointsOf, removeThing } from '../../main/resources/META-INF/resources/state/things.js';
import { equal, holds, test } from '../trial.js';

const plan = {
  ground: { outline: [[0, 0], [9000, 0], [9000, 6000]], keepClear: [{ kind: 'tap', at: [500, 400] }, { kind: 'gate', hinge: [9000, 2000], leaf: 900 }] },
  paths: [{ id: 'P1', name: 'Spine', line: [[0, 0], [0, 5000]] }],
};

test('a path, a tap and a gate are moved as wholes, and nothing else changes', () => {
  equal(moveThing(['ground', 'keepClear', 0], 100, -50)(plan).ground.keepClear[0].at, [600, 350]);
  equal(moveThing(['ground', 'keepClear', 1], 0, 10)(plan).ground.keepClear[1], { kind: 'gate', hinge: [9000, 2010], leaf: 900 });
  equal(moveThing(['paths', 0], 100, 0)(plan).paths[0].line, [[100, 0], [100, 5000]]);
  holds(moveThing(['paths', 7], 1, 1)(plan) === plan && moveThing(['paths', 0], 0, 0)(plan) === plan, 'something changed');
});

test('a point is moved, to a tenth of a millimetre', () => {
  equal(movePoint(['ground', 'outline', 2], [8000.04, 6500])(plan).ground.outline[2], [8000, 6500]);
});

test('things are called by their kind or name, and deleted', () => {
  equal([calledThing(plan, ['ground', 'keepClear', 0]), calledThing(plan, ['paths', 0])], ['Tap', 'Path Spine']);
  equal(removeThing(['ground', 'keepClear', 0])(plan).ground.keepClear.length, 1);
  equal([placeOfThing(['paths', 0]), placeOfThing(['ground', 'keepClear', 0])], ['paths', 'ground']);
  equal([pointsOf(plan, ['ground', 'keepClear', 0]).single, pointsOf(plan, ['paths', 0]).at.join()], [true, 'paths,0,line']);
});
