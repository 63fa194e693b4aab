import { api } from '../api.js';
import { shown } from '../geometry/length.js';
import { measured, metricOf, unitIn, valueIn } from '../geometry/measure.js';
import { lengthCheck } from '../state/checks.js';
import { USUAL_WAY, setWayIn, wayInOf } from '../state/load-in.js';
import { unitsOf } from '../state/plan.js';
import { counted, paragraph } from '../state/words.js';
import { countField } from './count-field.js';
import { lengthField } from './length-field.js';
import { h } from './make.js';
import { PartPlace } from './part-place.js';
import { place } from './places.js';
import { sheetLink } from './sheet-link.js';
import { shownNumber } from './shown-number.js';

const between = (least, most, unit) => text => {
  const value = Number(text.trim().replace(',', '.'));
  if (text.trim() === '') return { value: undefined };
  return Number.isFinite(value) && value >= least && value <= most ? { value } : { error: `From ${least} to ${most} ${unit}.` };
};

const tenths = hours => Math.round(hours * 10) / 10;

/** lap-load-in: what comes in from the road: drops, trips, lifts, the way in, places for bags, barrow runs. */
export class LapLoadIn extends PartPlace {
  render() {
    this.bring('loads', 'Delivery and access cannot be shown');
    const loads = this.part;
    this.rebuild(
      h('div.bar', {}, h('nav', { 'aria-label': 'Sheets for delivery and access' }, sheetLink(this, api, 'load-in.pdf', 'Delivery and access, PDF'))),
      this.#way(),
      this.standing(),
      !loads ? h('p.hint', {}, 'Nothing is reckoned yet.') : loads.drops.length ? this.#all(loads) : h('p.hint', {}, 'Nothing comes in yet: add a bed.'));
  }

  #way() {
    const way = wayInOf(this.garden.plan);
    const units = unitsOf(this.garden.plan);
    const set = (part, fields) => this.run(setWayIn(part, fields));
    const own = (value, unit) => (value === '' ? value : Number(valueIn(value, unit, units).toFixed(2)));
    const number = (label, part, field, least, most, unit) => countField({
      label: `${label}, ${unitIn(unit, units)}`, mode: 'decimal', key: `way ${part ?? ''} ${field}`, value: own((part ? way[part]?.[field] : way[field]) ?? '', unit),
      read: between(own(least, unit), own(most, unit), unitIn(unit, units)),
      oncount: ({ detail }) => set(part, { [field]: typeof detail === 'number' ? Number(metricOf(detail, unit, units).toFixed(3)) : detail }),
    });
    const length = (label, part, field, least, most) => lengthField({
      label, units, mm: way[part]?.[field], check: lengthCheck(least, most, units), key: `way ${part} ${field}`, onlength: ({ detail }) => set(part, { [field]: detail.mm }),
    });
    return h('details', {},
      h('summary', { 'data-key': 'way in' }, 'Vehicle, passage, barrow'),
      h('div.fields', {},
        number('Payload of your vehicle', 'vehicle', 'payload', 1, 50000, 'kg'),
        length('Length of its bed', 'vehicle', 'bedLength', 300, 20000),
        number('Room on it', 'vehicle', 'volume', 0.01, 200, 'm3'),
        length('Narrowest passage', 'passage', 'width', 100, 20000),
        way.passage?.width ? length('After a square turn', 'passage', 'turn', 100, 20000) : null,
        number('Barrow', null, 'barrow', 10, 500, 'l')),
      h('p.hint', {}, `Usual: ${measured(USUAL_WAY.barrow, 'l', units, 1)}. How long a run takes is among the crew's rates. Your vehicle fetches from who charges nothing to bring.`));
  }

  #all(loads) {
    const units = unitsOf(this.garden.plan);
    return h('div.loads', {},
      loads.findings.length ? h('ul.wrong', {}, loads.findings.map(one => h('li', {}, h('strong', {}, `${one.place ?? one.where}: `), paragraph(one)))) : null,
      loads.drops.map(drop => this.#drop(drop)),
      h('section', {},
        h('h3', {}, 'Lifts over the limit'),
        loads.lifts.length ? h('dl', {}, loads.lifts.map((lift, i) => h('div', { 'data-key': `lift ${i}` },
          h('dt', {}, `${lift.count} × ${lift.name}, ${lift.label}`),
          h('dd', {}, shownNumber(this.garden.choice, `lift ${lift.item} ${lift.name}`, {
            value: lift.people, unit: 'people', working: lift.working, name: lift.name, text: `${measured(lift.massKg, 'kg', units, 1)}: ${lift.people} people${lift.beyondCrew ? ', wheels' : lift.overGuide ? ', over guide' : ''}` }))))) : h('p.hint', {}, 'None.')),
      h('section', {},
        h('h3', {}, 'The way in'),
        loads.longest ? h('p', {}, `Longest: ${loads.longest.name} of ${loads.longest.label}.`
          + (loads.roundTurn === null ? '' : ` ${shown(loads.roundTurn, units)} goes round the turn, carried level.`)) : null,
        loads.bags ? h('p', {}, bagsText(loads, units)) : null),
      h('section', {},
        h('h3', {}, 'Barrow'),
        h('dl', {}, loads.barrows.map(one => h('div', { 'data-key': `barrow ${one.item}` },
          h('dt', {}, one.label),
          h('dd', {}, shownNumber(this.garden.choice, `barrow ${one.item}`, {
            value: one.runs, unit: 'runs', working: one.working, name: one.label, text: `${one.runs} runs, ${tenths(one.hours)} h` }))))),
        h('p', { id: 'barrow-sum' }, `${loads.barrows.reduce((sum, one) => sum + one.runs, 0)} runs, `
          + `${tenths(loads.barrows.reduce((sum, one) => sum + one.hours, 0))} h in all.`)),
      h('ul.hint', {}, loads.cautions.map(text => h('li', {}, text))));
  }

  #drop(drop) {
    const { trips } = drop;
    const units = unitsOf(this.garden.plan);
    const kg = mass => measured(mass, 'kg', units, 0);
    const labels = new Map(drop.loads.map(load => [load.item, load.label]));
    return h('section', { 'data-key': `drop ${drop.supplier}` },
      h('h3', {}, `${drop.name}: ${drop.massAtLeast ? 'at least ' : ''}${kg(drop.massKg)}`
        + (trips ? `, ${trips.count} ${trips.count === 1 ? 'trip' : 'trips'} of the ${drop.vehicle.name}` : '')),
      trips ? h('p.hint', {}, fewestTrips(trips)) : null,
      trips?.tooMuch.length ? h('ul', {}, trips.tooMuch.map(load => h('li', {}, `${load.count} × ${load.name} (${load.label}) cannot go on it`))) : null,
      trips ? h('ol', {}, trips.trips.map(trip => h('li', {}, `${kg(trip.massKg)}: ${trip.loads.map(load => `${load.count} × ${load.name} (${labels.get(load.item)})`).join(', ')}`)))
        : h('ul', {}, drop.loads.map(load => h('li', {}, `${load.count} × ${load.name}, ${load.label}${load.massKg === null ? '' : `, ${measured(load.massKg, 'kg', units, 1)} each`}`))));
  }
}

function fewestTrips({ proven, atLeast, tooMuch }) {
  if (!proven) return `It takes at least ${counted(atLeast, 'trip')}.`;
  return `These are the fewest trips that carry ${tooMuch.length ? 'what can go on it' : 'it'}.`;
}

function bagsText(loads, units) {
  const taken = `Bulk bags and heaps take ${counted(loads.bags, 'place')} and are emptied where they stand`;
  if (!loads.bagPlaces) return `${taken}: draw the yard's outline, and places for them are looked for.`;
  if (!loads.bagPlaces.length) return `${taken}: no place is free.`;
  return `${taken}. Middles at ${loads.bagPlaces.map(([x, y]) => `${shown(x, units)} / ${shown(y, units)}`).join(', ')} (across / away from the house).`;
}

customElements.define('lap-load-in', LapLoadIn);
place({ key: 'load-in', title: 'Delivery', tag: 'lap-load-in', table: 'buy', order: 50, wide: true });
