/** Words as sentences need them. */

/** With a capital at its beginning. */
export const capital = text => text.slice(0, 1).toUpperCase() + text.slice(1);

/** A count with its noun: `3 snags`. */
export const counted = (count, one, many = `${one}s`) => `${count} ${count === 1 ? one : many}`;

/** Of what a place shows. */
export const NOT_YET = 'Not worked out yet';

/** Why something stands as it does: what the server says, or that nothing is heard of it. @param {string} said empty for nothing */
export const withoutServer = (text, said) => (said ? `${text}, the server says: ${said}` : `${text}: the server cannot be reached`);

const small = text => (/^([A-Z][a-z]|A )/.test(text) ? text.slice(0, 1).toLowerCase() + text.slice(1) : text);

/** What is wrong and the ways out in one paragraph: `It is short. Tape it again, or check the marks.` */
export const paragraph = ({ text, ways = [] }) =>
  (ways.length ? `${text} ${ways.map((way, i) => (i ? small(way) : way)).join(', or ')}.` : text);

/** One of things that are counted: `staples`, `staple`; units of measure stay. */
export const oneOf = unit => (/^[a-z ]{2,}s$/.test(unit) ? unit.replace(/ches$/, 'ch').replace(/(?<!t)ies$/, 'y').replace(/s$/, '') : unit);
