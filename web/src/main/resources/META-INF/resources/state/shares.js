/** When a share ends, as a day of the calendar here. */

/** Longer than a garden is built, shorter than a share is forgotten; also what the server takes where nothing is said. */
export const USUAL_DAYS = 90;

const two = number => String(number).padStart(2, '0');

/** @param {Date} now @returns {string} the day so many days later, such as `2027-02-27` */
export function dayAfter(now, days) {
  const day = new Date(now.getFullYear(), now.getMonth(), now.getDate() + days);
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}

/** @param {string} day such as `2027-02-27`; empty for no end @returns {?string} the last moment of that day, as the server takes it */
export function endOf(day) {
  if (!day) return null;
  const [year, month, date] = day.split('-').map(Number);
  return new Date(year, month - 1, date, 23, 59, 59, 999).toISOString();
}
