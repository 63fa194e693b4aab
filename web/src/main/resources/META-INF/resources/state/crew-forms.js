import { readText } from './checks.js';
import { put } from './ground.js';
import { number as numberField, readDay, readZone } from './ground-forms.js';

/** What can be entered about who builds and when, as data: see ground-forms.js for what a field is. */

const NAMES = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];
const DAYS = NAMES.map(name => name.slice(0, 3));
const WEEKEND = ['sat', 'sun'];
const MOST_DATES = 400;
const ONE_DAY = 86400000;

/** `sat, sun`, whole names too, in the order of the week. */
export function readDays(text) {
  const names = text.toLowerCase().split(/[,;\s]+/).filter(Boolean);
  const stranger = names.find(name => name.length < 3 || !NAMES.some(whole => whole.startsWith(name)));
  if (stranger) return { error: `“${stranger.slice(0, 12)}” is no day. Write ${DAYS.join(', ')}.` };
  const days = DAYS.filter(day => names.some(name => name.startsWith(day)));
  return { value: days.length ? days : undefined };
}

/** `2027-03-06, 2027-04-02 to 2027-04-05`, in order, each date once. */
export function readDates(text, plan) {
  const dates = new Set();
  for (const part of text.split(/[,;\n]/).map(one => one.trim()).filter(Boolean)) {
    const [from, to = from, more] = part.split(/\s+to\s+/).map(one => readDay(one));
    const wrong = more ? 'Write a date, or two with “to” between.' : from.error ?? to.error;
    if (wrong) return { error: wrong };
    if (to.value < from.value) return { error: `${to.value} comes before ${from.value}. Write the earlier first.` };
    for (let day = Date.parse(from.value); day <= Date.parse(to.value) && dates.size <= MOST_DATES; day += ONE_DAY) {
      dates.add(new Date(day).toISOString().slice(0, 10));
    }
  }
  const all = [...dates].sort();
  if (all.length > MOST_DATES) return { error: `More than ${MOST_DATES} days. Write fewer.` };
  if (!all.length) return { value: undefined };
  const { start } = plan.crew ?? {};
  if (!start) return { error: 'Dates need a first day of work. Write that first.' };
  return all[0] < start ? { error: `${all[0]} is past: work begins on ${start}.` } : { value: all };
}

/** Days in a row are written as `… to …`. */
export function writtenDates(dates) {
  const runs = [];
  for (const date of [...(dates ?? [])].sort()) {
    const run = runs.at(-1);
    if (run && Date.parse(date) - Date.parse(run[1]) === ONE_DAY) run[1] = date;
    else runs.push([date, date]);
  }
  return runs.map(([from, to]) => (from === to ? from : `${from} to ${to}`)).join(', ');
}

const dateOf = (start, day) => new Date(Date.parse(start) + day * ONE_DAY).toISOString().slice(0, 10);

/** What is done, each with its day: one that has none of its own was done on that from which the rest is planned. */
export const doneOn = ({ done = [], day = 0, asOf } = {}) => done.map(one => (one.on || one.day !== undefined ? one : { ...one, ...(asOf ? { on: asOf } : { day }) }));

/** The first date of what was done, where that has one. */
const firstDone = ({ crew: { start } = {}, tally }) => [tally?.asOf, ...doneOn(tally).map(one => one.on || (start && dateOf(start, one.day)))].filter(Boolean).sort()[0];

/** Whether something was done before a day. */
export const isDoneBefore = (plan, start) => Boolean(start) && firstDone(plan) < start;

/** Another first day of work: what was done stays on its date, and so does the day from which the rest is planned. */
export const startOn = start => plan => {
  const now = put(['crew', 'start'], start)(plan);
  const by = start && plan.crew?.start ? (Date.parse(plan.crew.start) - Date.parse(start)) / ONE_DAY : 0;
  const { tally } = plan;
  if (!by || !tally?.done?.length && !tally?.day) return now;
  const done = tally.done?.map(one => (one.on || one.day === undefined ? one : { ...one, day: one.day + by }));
  return { ...now, tally: { ...tally, ...(done ? { done } : {}), ...(tally.asOf ? {} : { day: Math.max(0, (tally.day ?? 0) + by) }) } };
};

/** The first day of work, which no date of the crew and of what was done may come before. */
export function readStart(text, plan) {
  const read = text.trim() === '' ? { value: undefined } : readDay(text);
  if (read.error) return read;
  const told = firstDone(plan);
  if (told && !read.value) return { error: `Work was done on ${told}, which needs a first day. Write another over it.` };
  if (isDoneBefore(plan, read.value)) return { error: `Work was done on ${told}. To go on later, say in Tally, Beds, from when the rest is planned.` };
  const { holidays = [], wet = [], people = [] } = plan.crew ?? {};
  const all = [...holidays, ...wet, ...people.flatMap(({ away = [], comes = [] }) => [...away, ...comes])];
  const lost = all.filter(date => !read.value || date < read.value).length;
  if (!lost) return read;
  return { error: `${lost} ${lost === 1 ? 'date of the crew lies' : 'dates of the crew lie'} before that. Take ${lost === 1 ? 'it' : 'them'} out first.` };
}

/** To begin a day of work; the server's own, a test compares them. */
const LATEST = '22:00';

/** `9:00` or `09:00`. */
export function readTime(text) {
  const match = /^(\d{1,2}):(\d{2})$/.exec(text.trim());
  if (text.trim() === '') return { value: undefined };
  const value = match && `${match[1].padStart(2, '0')}:${match[2]}`;
  return !match || value > LATEST || Number(match[2]) > 59 ? { error: `Write a time of day to ${LATEST}, as in 09:00.` } : { value };
}

const number = (key, label, least, most, usual, more = {}) => numberField(key, label, least, most, usual, { empty: true, ...more });

/** Whole numbers only. */
const whole = (key, label, most, usual) => number(key, label, 0, most, usual, {
  read: text => {
    const value = Number(text.trim());
    return Number.isInteger(value) && value >= 0 && value <= most ? { value } : { error: `Write a whole number, 0 to ${most}.` };
  },
});

const days = (label, usual, hint) => ({ key: ['days'], label, kind: 'text', usual, hint, read: readDays, written: list => (list ?? []).join(', ') });
const dates = (key, label, hint) => ({ key: [key], label, kind: 'text', hint, read: readDates, written: writtenDates });
const minutes = (key, label, usual) => number(key, label, 0, 10000, usual);

export const CREW_LISTS = {
  people: {
    title: 'Who builds', path: ['crew', 'people'], one: 'person',
    hint: 'With nobody named, two people who can lift are assumed; the first press names both.',
    fresh: (plan, count) => (count ? [{ name: `Helper ${count}` }] : [{ name: 'You' }, { name: 'Helper' }]),
    fields: [
      { key: ['name'], label: 'Name', kind: 'text', read: text => { const read = readText(60)(text); return read.value === '' ? { value: undefined } : read; } },
      number('hours', 'Hours of the day', 0.25, 16, undefined, { hint: 'empty: all day' }),
      {
        key: ['lifts'], label: 'A heavy timber', kind: 'choice', usual: 'true', choices: [['true', 'takes an end'], ['false', 'cannot lift']],
        becomes: ({ lifts: _lifts, ...person }, chosen) => (chosen === 'false' ? { ...person, lifts: false } : person),
      },
      days('Comes on', undefined, 'empty: every working day'),
      dates('comes', 'Comes only on these dates', 'empty: no such limit'),
      dates('away', 'Away on', 'as in 2027-04-02 to 2027-04-05'),
    ],
  },
};

/** From order to the door where nobody says otherwise; common practice, no source. */
const LEAD_DAYS = 7;

/** The same for a supplier that names none. */
export const usualLeadDays = plan => plan.crew?.leadDays ?? LEAD_DAYS;

export const CREW_OBJECTS = {
  crew: {
    title: 'Days of work', path: ['crew'],
    fields: [
      { key: ['start'], label: 'First day of work', kind: 'text', read: readStart, command: startOn, hint: 'year-month-day; empty counts weekends only' },
      days('Days', WEEKEND, 'as in sat, sun'),
      { key: ['from'], label: 'Begins at', kind: 'text', usual: '09:00', read: readTime },
      number('hours', 'Hours a day', 0.25, 16, 6),
      whole('leadDays', 'Days to deliver', 365, LEAD_DAYS),
      number('liftLimit', 'Lift, kg a person', 1, 200, 25),
      { key: ['zone'], label: 'Time zone', kind: 'text', hint: 'as in Europe/London', read: readZone },
      dates('holidays', 'Days off for everybody', 'as in 2027-04-02 to 2027-04-05'),
      dates('wet', 'Wet days, no finish goes on', 'as in 2027-03-07'),
    ],
  },
  waits: {
    title: 'Waits', path: ['crew', 'waits'], hint: 'Common practice: follow the tin, the bag and the maker.',
    fields: [
      whole('cureDays', 'Concrete cures, days', 60, 7), number('coatGapHours', 'Between coats, h', 0, 500, 24),
      number('beforeLinerHours', 'Before the liner, h', 0, 500, 48), whole('settleDays', 'Soil settles, days', 365, 28),
    ],
  },
  rates: {
    title: 'How long work takes, minutes', path: ['crew', 'rates'], hint: 'Common practice: put in your own after the first bed.',
    fields: [
      minutes('setOut', 'Set out a bed', 45), minutes('cut', 'A cut', 4), minutes('setting', 'A saw setting', 3),
      minutes('firstCourse', 'Piece, course 1', 15), minutes('course', 'Piece above', 8), minutes('coat', 'Coat, m²', 8),
      minutes('liner', 'Liner, m²', 5), minutes('barrow', 'A barrow', 8), minutes('path', 'Path, m²', 15),
    ],
  },
};
