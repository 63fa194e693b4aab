import { rectangle } from '../geometry/outline.js';
import { onGrid } from '../geometry/snap.js';
import { toYard } from '../geometry/view.js';
import { boxOfClip, clipOf, isBuiltOtherwise, pasteBeds, readClip } from '../state/clip.js';
import { copyBed, lastBed, removeBed, standBed } from '../state/commands.js';
import { addTo } from '../state/ground.js';
import { arrayBeds, lastBeds, removeBeds } from '../state/group.js';
import { addPath } from '../state/paths.js';
import { beginWith } from '../state/new-garden.js';
import { USUAL, bedsOf, calledOf, unitsOf, yardOf } from '../state/plan.js';
import { roomFor, saidOfRoom } from '../state/room.js';
import { calledThing, removeThing } from '../state/things.js';
import { contains } from '../geometry/distance.js';

/** A bed that is added by one key, until another size was used, millimetres. */
const firstBed = plan => ({ ...beginWith(unitsOf(plan)).bed, courses: plan.defaults?.courses ?? USUAL.courses });

/** A gate's leaf until it is measured, millimetres. */
const LEAF = 900;

/**
 * What can be done from everywhere: keys, menus, the tag and the places ask for it by name (`ask` of every element).
 *
 * @param {{garden: object, yard: object, say: (text: string) => void, form: () => void, keys: () => void}} parts
 * @returns {Object<string, (detail?: object) => void>}
 */
export function actsOf({ garden, yard, say, form, keys }) {
  const { plans, choice } = garden;

  /** Takes what a command has added and moves the focus there. */
  const take = (ids, text) => {
    choice.takeBeds(ids);
    yard.render();
    yard.focusBed(ids[0]);
    say(text);
  };

  const like = () => {
    const { bed, plan } = garden;
    const last = bed ?? bedsOf(plan).findLast(one => one.size);
    if (last?.type) return { type: last.type };
    return last?.size ? { ...last.size, courses: last.courses } : firstBed(plan);
  };

  function addBed({ at = null } = {}) {
    const made = like();
    const own = made.type ? bedsOf(plans.plan).find(bed => bed.type === made.type).own : rectangle(made.width, made.depth);
    const point = at ?? (yard.pointer.over && toYard(yard.view, yard.pointer.over));
    const ground = yardOf(plans.plan);
    if (point && (!ground || contains(ground, point))) {
      const rest = value => onGrid(value, yard.grid);
      const [w, d] = [Math.max(...own.map(([x]) => x)), Math.max(...own.map(([, y]) => y))];
      plans.run(standBed({ ...made, at: [rest(point[0] - w / 2), rest(point[1] - d / 2)] }));
      return take([lastBed(plans.plan)], `Bed ${lastBed(plans.plan)} is added.`);
    }
    const room = roomFor(own, plans.plan, garden.reckoning.sheet);
    plans.run(standBed({ ...made, at: room.at }));
    return take([lastBed(plans.plan)], `Bed ${lastBed(plans.plan)} is added.${saidOfRoom(room)}`);
  }

  function duplicate() {
    const { beds, plan } = garden;
    if (!beds.length) return say('Nothing is in hand.');
    if (beds.length === 1) {
      const [bed] = beds;
      const own = bed.outline.map(([x, y]) => [x - bed.placement.at[0], y - bed.placement.at[1]]);
      const room = roomFor(own, plan, garden.reckoning.sheet);
      plans.run(copyBed(bed.id, room.at));
      return take([lastBed(plans.plan)], `Bed ${lastBed(plans.plan)} is a copy of ${calledOf(bed)}.${saidOfRoom(room)}`);
    }
    const count = beds.length;
    plans.run(arrayBeds(choice.beds, { columns: 2, rows: 1, across: beginWith(unitsOf(plan)).path, away: 0 }));
    return take(lastBeds(plans.plan, count), `${count} copies are added on the right.`);
  }

  function remove(said = 'deleted') {
    const { beds } = garden;
    if (!beds.length) return say('Nothing is in hand.');
    plans.run(beds.length > 1 ? removeBeds(choice.beds) : removeBed(beds[0].id));
    yard.render();
    say(`${beds.length > 1 ? `${beds.length} beds are` : `${calledOf(beds[0])} is`} ${said}. Undo brings ${beds.length > 1 ? 'them' : 'it'} back.`);
    return yard.svg.focus({ preventScroll: true });
  }

  function removeOne({ thing }) {
    const called = calledThing(plans.plan, thing);
    choice.takeThing(null);
    plans.run(removeThing(thing));
    say(`${called} is deleted. Undo brings it back.`);
  }

  /** The clipboard's own text, so that beds go from window to window; kept here too, where the browser has none. */
  let clip = null;

  const copy = cutFrom => {
    if (!choice.beds.length) return null;
    clip = clipOf(plans.plan, choice.beds, cutFrom);
    say(`${choice.beds.length === 1 ? calledOf(garden.bed) : `${choice.beds.length} beds`} copied.`);
    return clip;
  };

  function paste({ text = null, at = null } = {}) {
    const read = readClip(text ?? '') ?? readClip(clip ?? '');
    if (!read) return say('No beds are copied.');
    const { plan } = plans;
    const box = boxOfClip(read, plan);
    const point = at ?? (yard.pointer.over && toYard(yard.view, yard.pointer.over));
    let by = null;
    if (point) by = [onGrid(point[0] - (box.left + box.right) / 2, yard.grid), onGrid(point[1] - (box.front + box.back) / 2, yard.grid)];
    else {
      const own = [[box.left, box.front], [box.right, box.front], [box.right, box.back], [box.left, box.back]].map(([x, y]) => [x - box.left, y - box.front]);
      const room = roomFor(own, plan, garden.reckoning.sheet);
      by = [room.at[0] - box.left, room.at[1] - box.front];
    }
    plans.run(pasteBeds(read, ...by, garden.id));
    return take(lastBeds(plans.plan, read.beds.length), `${read.beds.length === 1 ? 'The bed is' : `${read.beds.length} beds are`} pasted${isBuiltOtherwise(read, plan) ? ', built as where it was copied and not as is usual here' : ''}.`);
  }

  async function addThing({ kind, text }) {
    const points = await yard.draw({ as: 'point', name: text });
    if (!points) return;
    const [at] = points;
    plans.run(addTo(['ground', 'keepClear'], kind === 'gate' ? { kind, hinge: at, leaf: LEAF, swing: 'in' } : { kind, at }));
    choice.takeThing(['ground', 'keepClear', plans.plan.ground.keepClear.length - 1]);
    say(`${text} is added. Drag it, or describe it in Ground.`);
  }

  async function addPathHere() {
    const width = beginWith(unitsOf(plans.plan)).path;
    const line = await yard.draw({ as: 'line', name: 'Path', width });
    if (!line) return;
    plans.run(addPath(line, width));
    choice.takeThing(['paths', plans.plan.paths.length - 1]);
    say('The path is added. It has no layers yet: Paths adds them.');
  }

  return {
    'add bed': addBed, 'add bed form': form, 'add path': addPathHere, 'add thing': addThing, 'delete thing': removeOne, duplicate, delete: () => remove(),
    copy: () => copy(), cut: () => { const text = copy(garden.id); if (text) remove('cut'); return text; }, paste, keys,
    'try out': () => {
      plans.tryOut();
      say('Trying: nothing is saved until you keep it.');
      requestAnimationFrame(() => requestAnimationFrame(() => document.querySelector('try-bar button')?.focus()));
    },
    measure: async () => { await yard.draw({ as: 'line', name: 'Measure' }); },
  };
}
