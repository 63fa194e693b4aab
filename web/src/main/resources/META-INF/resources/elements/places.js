/**
 * The places round the yard. A place is one element file, `elements/lap-NAME.js`, that ends with
 *
 *     customElements.define('lap-pegs', LapPegs);
 *     place({ key: 'pegs', title: 'Pegs', tag: 'lap-pegs', side: 'lee', order: 20 });
 *
 * and one line in `elements/each-place.js` that imports it. The button that opens it, its frame with the heading and
 * "Put away", the room for it on wide and narrow screens and what is remembered over a reload come of themselves.
 *
 * - `key`: word in addresses and tests. The button is `[data-key="place pegs"]`, the frame `[data-place="pegs"]`.
 * - `title`: on the button and as the frame's h2. The element draws no heading of that level itself.
 * - `side`: where it opens. `lee` is the column on the left (308 px wide, two at once), `strip` the column on the right
 *   (336 px, one at once), `foot` the broad shelf over the house wall (as wide as the screen, about 340 px high, one at
 *   once). Each scrolls by itself. Below 821 px all are one column as wide as the screen, and only the place that was
 *   opened last is shown: lay out with grid or flex that holds from 320 px upwards.
 * - `order`: its turn in the row. The row reads ground 10, pegs 20, beds 30, paths 35, rack 40, rolls 50, saw-day 60, catalogue
 *   70, slip 80, load-in 90, quote 95, weekends 100, try-out 110, tally 120, revisions 125, sheets 130,
 *   snags 140.
 * - `first`: open until somebody decides otherwise.
 * - `badge`: garden => short text beside the title, null for none; looked at again with every plan and job sheet.
 *
 * The element is a `GardenElement` (make.js): `garden` and `yard` (the lap-yard element) are set before `attached()`;
 * it is taken off the page when put away, so listen through `listen`, `follow` and `atEnd`, and keep nothing that must
 * last: what lasts is in the document (`garden.plans.run(command)`) or in `garden.choice`. Draw with `rebuild`.
 * From anywhere `this.openPlace('rack')` opens a place and moves the focus to it.
 *
 * @typedef {{key: string, title: string, tag: string, side: 'lee'|'strip'|'foot', order: number, first?: boolean,
 *     badge?: (garden: import('../state/garden.js').Garden) => string | null}} Place
 */

/** @type {Place[]} */
const places = [];

/** @param {Place} one */
export function place(one) {
  places.push(one);
  places.sort((a, b) => a.order - b.order);
}

/** @returns {Place[]} in their order */
export const allPlaces = () => places;
