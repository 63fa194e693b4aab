/**
 * The places of the page, at four tables by the job: lay out, buy, build, share. A place is one element file,
 * `elements/lap-NAME.js`, that ends with
 *
 *     customElements.define('lap-pegs', LapPegs);
 *     place({ key: 'pegs', title: 'Setting out', tag: 'lap-pegs', table: 'build', order: 40 });
 *
 * and one line in `elements/each-place.js` that imports it. Its tab, its frame with the heading, the room for it on wide and
 * narrow screens and what is remembered over a reload come of themselves.
 *
 * - `key`: word in addresses and tests. The tab is `[data-key="place pegs"]`, the frame `[data-place="pegs"]`.
 * - `title`: on the tab and as the frame's h2. The element draws no heading of that level itself.
 * - `table`: `lay-out`, `buy`, `build` or `share`. A place without a table has no tab: something else opens it.
 * - `order`: its turn among the tabs of its table, in tens: Lay out: ground 10, beds 20, paths 30, (laid out for you 40),
 *   sun 50. Buy: slip 10, rack 20, merchants 30, rolls 40, (sizes that give 45), delivery 50. Build: stages 10,
 *   saw day 20, courses 30, setting out 40, weekends 50, tally 60. Share: sheets 10, quote 20, revisions 30, people 40,
 *   hand-over 50.
 * - `wide`: true where it wants half of the screen instead of a column; lay out with grid or flex that holds from 320 px.
 * - `lifts`: true where a course that is lifted in the yard stays so; every other place puts it back.
 * - `badge`: garden => short text beside the title, null for none; looked at again with every plan and job sheet.
 *
 * The element is a `GardenElement` (make.js): `garden` and `yard` (the lap-yard element) are set before `attached()`;
 * it is taken off the page when another place is opened, so listen through `listen`, `follow` and `atEnd`, and keep nothing
 * that must last: what lasts is in the document (`garden.plans.run(command)`) or in `garden.choice`. Draw with `rebuild`.
 * From anywhere `this.openPlace('rack')` opens a place and moves the focus to it.
 *
 * @typedef {{key: string, title: string, tag: string, table?: 'lay-out'|'buy'|'build'|'share', order: number, wide?: boolean, lifts?: boolean,
 *     badge?: (garden: import('../state/garden.js').Garden) => string | null}} Place
 */

/** The four tables, in the order of the job. */
export const TABLES = [['lay-out', 'Lay out'], ['buy', 'Buy'], ['build', 'Build'], ['share', 'Share']];

/** @type {Place[]} */
const places = [];

/** @param {Place} one */
export function place(one) {
  places.push(one);
  const turn = ({ table }) => TABLES.findIndex(([key]) => key === table);
  places.sort((a, b) => turn(a) - turn(b) || a.order - b.order);
}

/** @returns {Place[]} in their order */
export const allPlaces = () => places;
