/** Days, tasks and waits out of the job sheet's weekends. */

const DAYS = { mon: 'Mon', tue: 'Tue', wed: 'Wed', thu: 'Thu', fri: 'Fri', sat: 'Sat', sun: 'Sun' };
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** `Sat 6 Mar`, or `Sat` where no dates are known. */
export function dayName(day) {
  const name = DAYS[day.day] ?? day.day;
  if (!day.date) return name;
  const [, month, date] = day.date.split('-').map(Number);
  return `${name} ${date} ${MONTHS[month - 1]}`;
}

/** How full a day is, 0 to 1. */
export const fullness = day => (day.there > 0 ? Math.min(1, day.used / day.there) : 0);

/** `9:30`, so many minutes after the day begins. @param {string} from `09:00` */
export function clock(from, minutes) {
  const [hours, rest] = from.split(':').map(Number);
  const all = hours * 60 + rest + minutes;
  return `${Math.floor(all / 60) % 24}:${String(all % 60).padStart(2, '0')}`;
}

/**
 * Working days, weekend by weekend; days on which nothing is done or waited for are left out at the end.
 *
 * @returns {{weekend: number, days: object[]}[]}
 */
export function weekendsOf(weekends) {
  const groups = [];
  for (const day of weekends?.days ?? []) {
    if (groups.at(-1)?.weekend !== day.weekend) groups.push({ weekend: day.weekend, days: [] });
    groups.at(-1).days.push(day);
  }
  return groups;
}

/** What is drying or curing while this day passes. */
export const waitsOver = (weekends, number) => (weekends.waits ?? []).filter(wait => wait.fromDay < number && number < wait.toDay);

/** A task by its id. */
export const tasksById = weekends => new Map((weekends?.tasks ?? []).map(task => [task.id, task]));

/** `5 h`, `1.25 h`. */
export const hours = value => `${Math.round(value * 100) / 100} h`;

/** The weekends on which some beds are worked on, as said: `weekends 1 to 3`. @param {object | undefined} weekends @param {string[]} beds */
export function weekendsOfStage(weekends, beds) {
  const dayOf = new Map((weekends?.days ?? []).map(day => [day.number, day.weekend]));
  const numbers = (weekends?.tasks ?? []).filter(task => beds.includes(task.bed)).flatMap(task => [dayOf.get(task.firstDay), dayOf.get(task.lastDay)]).filter(Boolean);
  if (!numbers.length) return 'not planned yet';
  const [first, last] = [Math.min(...numbers), Math.max(...numbers)];
  return first === last ? `weekend ${first}` : `weekends ${first} to ${last}`;
}
