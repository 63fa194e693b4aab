import { readCourses, readStage, readTurn, sideCheck } from '../state/checks.js';
import { placeBed, setBed, stageBed } from '../state/commands.js';
import { bedOf, unitsOf } from '../state/plan.js';
import { countField } from './count-field.js';
import { lengthField } from './length-field.js';

/**
 * What is typed of a bed most: its size where it has one, courses where its type does not say them, stage and turn.
 *
 * @param {import('./make.js').GardenElement} element in which they stand
 * @param {string} place first word of their keys
 */
export function bedFields(element, { id, size, type, section }, place) {
  const { plan } = element.garden;
  const side = (label, which) => size && lengthField({ label, units: unitsOf(plan), check: sideCheck(plan, section.thickness, which), key: `${place} ${which}`,
    onlength: ({ detail }) => element.run(setBed(id, { [which]: detail.mm })) });
  const count = (label, key, read, command, mode) => countField({ label, mode, read, key: `${place} ${key}`, oncount: ({ detail }) => element.run(command(detail)) });
  return {
    width: side('Width', 'width'),
    depth: side('Depth', 'depth'),
    courses: type ? null : count('Courses', 'courses', readCourses, courses => setBed(id, { courses })),
    stage: count('Stage', 'stage', readStage, stage => stageBed(id, stage)),
    turn: count('Turned, °', 'turn', readTurn, turn => now => placeBed(id, { ...bedOf(now, id).placement, turn })(now), 'decimal'),
  };
}

/** Shows what the bed has now in its fields. */
export function showBed({ width, depth, courses, stage, turn }, bed) {
  width?.show(bed.size.width);
  depth?.show(bed.size.depth);
  courses?.show(bed.courses);
  stage.show(bed.stage);
  turn.show(bed.placement.turn);
}
