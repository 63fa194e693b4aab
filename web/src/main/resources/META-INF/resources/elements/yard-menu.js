import { toYard } from '../geometry/view.js';
import { mirrorBed, turnBed } from '../state/commands.js';
import { turnBeds } from '../state/group.js';
import { calledOf } from '../state/plan.js';
import { calledThing, placeOfThing } from '../state/things.js';
import { openMenu } from './menu.js';

/** The menu of the yard, by the right button, a held finger or the menu key: for what is under it, which it takes hold of. */
export function yardMenu(yard, event) {
  if (yard.sketch) return;
  event.preventDefault();
  const { garden } = yard;
  const { choice } = garden;
  const byKey = event.clientX === 0 && event.clientY === 0 || event.pointerType === undefined && event.detail === 0 && !event.buttons && event.button === 0;
  const target = event.target.closest?.('[data-bed], [data-thing]');
  const box = target?.getBoundingClientRect();
  const at = byKey && box ? [box.left + box.width / 2, box.top + box.height / 2] : [event.clientX, event.clientY];
  const point = toYard(yard.view, yard.pointer.at({ clientX: at[0], clientY: at[1] }));
  const bed = target?.dataset.bed ?? null;
  const thing = bed === null && target ? target.dataset.thing.split(' ').map(part => (/^\d+$/.test(part) ? Number(part) : part)) : null;
  if (bed !== null && !choice.has(bed)) choice.takeBed(bed);
  if (thing) choice.takeThing(thing);
  openMenu(bed !== null ? bedItems(yard) : thing ? thingItems(yard, thing) : groundItems(yard, point), { at, label: 'Yard' });
}

function bedItems(yard) {
  const { garden } = yard;
  const { beds } = garden.choice;
  const many = beds.length > 1;
  const run = command => () => garden.plans.run(command);
  return [
    { text: many ? 'Duplicate them' : 'Duplicate', key: 'menu duplicate', hint: 'D', act: () => yard.ask('duplicate') },
    { text: 'Copy', key: 'menu copy', hint: 'Ctrl C', act: () => yard.ask('copy') },
    { text: 'Cut', key: 'menu cut', hint: 'Ctrl X', act: () => yard.ask('cut') },
    null,
    { text: 'Turn 90°', key: 'menu turn', hint: 'T', act: run(many ? turnBeds(beds, { turn: 90 }) : turnBed(beds[0], 90)) },
    { text: 'Mirror', key: 'menu mirror', hint: 'M', act: run(many ? turnBeds(beds, { mirror: true }) : mirrorBed(beds[0])) },
    null,
    ...(many ? [] : [{ text: 'Courses', key: 'menu courses', act: () => yard.openPlace('courses') }]),
    { text: `All about ${many ? 'them' : calledOf(garden.bed)}`, key: 'menu beds', act: () => yard.openPlace('beds') },
    null,
    { text: 'Delete', key: 'menu delete', hint: 'Del', act: () => yard.ask('delete') },
  ];
}

function thingItems(yard, thing) {
  return [
    { text: `Describe ${calledThing(yard.garden.plan, thing)}`, key: 'menu describe', act: () => yard.openPlace(placeOfThing(thing)) },
    { text: 'Delete', key: 'menu delete', hint: 'Del', act: () => yard.ask('delete thing', { thing }) },
  ];
}

function groundItems(yard, point) {
  return [
    { text: 'Add a bed here', key: 'menu add bed', hint: 'B', act: () => yard.ask('add bed', { at: point }) },
    { text: 'Add a path', key: 'menu add path', act: () => yard.ask('add path') },
    { text: 'Paste', key: 'menu paste', hint: 'Ctrl V', act: () => yard.ask('paste', { at: point }) },
    null,
    { text: 'Measure', key: 'menu measure', act: () => yard.ask('measure') },
    { text: 'Whole yard', key: 'menu whole', hint: '0', act: () => yard.wholeYard() },
  ];
}
