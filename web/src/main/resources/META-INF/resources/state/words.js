/** Words as sentences need them. */

/** With a capital at its beginning. */
export const capital = text => text.slice(0, 1).toUpperCase() + text.slice(1);

/** A count with its noun: `3 snags`. */
export const counted = (count, one, many = `${one}s`) => `${count} ${count === 1 ? one : many}`;
