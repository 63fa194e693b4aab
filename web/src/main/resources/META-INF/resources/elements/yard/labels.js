/** Which words stand in the yard, and how large: every bed has its code at least, no words lie on others, none leave the picture. */

/** Type sizes, pixels: a code as large as its bed lets it be, and what cannot be read well is not written. */
const CODE = { most: 17, least: 4 };
const SIZE = 12;
const NAME = 12;

/** Breadth of a letter by its type size, for the letters of both families in use; measured in Chromium. */
const LETTER = 0.64;

/**
 * @param {Iterable<{group: Element, box: object, upright: boolean, at: number[], outline: number[][]}>} beds as drawn
 * @param {Iterable<SVGTextElement>} others names of paths, surfaces and things in the ground, most wanted first
 * @param {import('../../geometry/view.js').View} view
 * @param {[number, number]} size of the picture, pixels
 * @param {{left: number, top: number, width: number, height: number}} frame the part of it that is for the drawing
 * @param {number[][]} tapes where the tapes lie: left, top, right, bottom
 */
export function layLabels(beds, others, view, size, frame, tapes) {
  const taken = [];
  const { k, x, y } = view;
  const drawn = [];
  const picture = [0, 0, ...size];
  const clear = [frame.left, frame.top, frame.left + frame.width, frame.top + frame.height];
  const seen = [k, x, y, ...size, ...clear].join();
  for (const bed of beds) {
    // a bed that is drawn as it was, in the same view, has its words where they are
    if (bed.laid?.seen !== seen) bed.laid = { seen, box: layBed(bed, view, picture, clear) };
    if (bed.laid.box) taken.push(bed.laid.box);
    if (bed.box) drawn.push([x + bed.box.left * k, y - bed.box.back * k, x + bed.box.right * k, y - bed.box.front * k]);
  }
  taken.push(...tapes, ...drawn);
  for (const text of others) layName(text, view, taken, picture, clear);
}

const within = (own, room) => own[0] >= room[0] && own[1] >= room[1] && own[2] <= room[2] && own[3] <= room[3];

const meets = (own, other) => own[0] < other[2] && own[2] > other[0] && own[1] < other[3] && own[3] > other[1];

const common = (one, other) => [Math.max(one[0], other[0]), Math.max(one[1], other[1]), Math.min(one[2], other[2]), Math.min(one[3], other[3])];

const moved = ([left, top, right, bottom], [dx, dy]) => [left + dx, top + dy, right + dx, bottom + dy];

/** How far a box must go to lie in a room that it fits into, along each axis. */
const inwards = (own, room) => [0, 1].map(axis => Math.max(room[axis] - own[axis], 0) || Math.min(room[axis + 2] - own[axis + 2], 0));

/** @returns {number[] | null} where its words are in the picture */
function layBed({ group, upright, at, room }, { k, x, y }, picture, clear) {
  const [code, size] = [group.querySelector('.code:not(.lifted)'), group.querySelector('.label.size')];
  if (!code) return null;
  const [wide, high] = [room.wide * k, room.high * k];
  const [across, down] = upright ? [high, wide] : [wide, high];
  const withSize = across > size.textContent.length * SIZE * LETTER + 6 && down > CODE.most + SIZE + 8;
  const letters = code.textContent.length * LETTER;
  const codePx = Math.max(CODE.least, Math.min(CODE.most, (wide - 4) / letters, high - 4));
  const turned = upright && withSize;
  group.classList.toggle('with-size', withSize);
  setSize(code, withSize ? CODE.most : codePx, k);
  if (withSize) setSize(size, SIZE, k);
  code.classList.toggle('by-size', withSize);
  turn(code, turned);
  if (size) turn(size, upright);
  const [cx, cy] = [x + at[0] * k, y - at[1] * k];
  const [halfWide, halfHigh] = withSize
    ? [size.textContent.length * SIZE * LETTER / 2, (CODE.most + SIZE) / 2 + 3] : [letters * codePx / 2, codePx / 2];
  const own = turned ? [cx - halfHigh, cy - halfWide, cx + halfHigh, cy + halfWide] : [cx - halfWide, cy - halfHigh, cx + halfWide, cy + halfHigh];
  // the name of a bed that is seen in part goes to that part, where there is room
  const free = common([cx - wide / 2, cy - high / 2, cx + wide / 2, cy + high / 2], clear);
  const tried = within(own, picture) ? [0, 0] : inwards(own, free);
  const by = within(moved(own, tried), free) ? tried : [0, 0];
  const laid = moved(own, by);
  const cut = meets(laid, picture) && !within(laid, picture);
  for (const text of [code, size]) {
    text.style.translate = by[0] || by[1] ? `${by[0] / k}px ${by[1] / k}px` : '';
    text.style.visibility = cut ? 'hidden' : '';
  }
  return cut ? null : laid;
}

function setSize(text, px, k) {
  text.style.fontSize = `${px / k}px`;
  text.style.strokeWidth = `${Math.min(3, px / 5) / k}px`;
}

function turn(text, turned) {
  const place = text.getAttribute('transform').replace(/ rotate\(.*$/, '');
  text.setAttribute('transform', turned ? `${place} rotate(-90)` : place);
}

/** A name that would lie on others or leave the picture is tried beside its place, then left out. */
function layName(text, { k, x, y }, taken, picture, clear) {
  const [, tx, ty, angle] = /translate\((\S+) (\S+)\)(?: rotate\((\S+)\))?/.exec(text.getAttribute('transform'));
  const wide = text.textContent.length * NAME * LETTER;
  const corner = text.classList.contains('corner');
  const slanted = Math.abs(Number(angle ?? 0)) > 45;
  const [halfWide, halfHigh] = slanted ? [NAME * 0.7, wide / 2] : [wide / 2, NAME * 0.7];
  const [cx, cy] = [x + Number(tx) * k + (corner ? wide / 2 + 7 : 0), y + Number(ty) * k + (corner ? NAME + 3 : 0)];
  const at = [cx - halfWide, cy - halfHigh, cx + halfWide, cy + halfHigh];
  // what is not in sight has no name there; what stands at the edge has it inwards
  const seen = meets([cx - 1, cy - 1, cx + 1, cy + 1], picture);
  const [inX, inY] = inwards(at, clear);
  const beside = corner || text.classList.contains('path-name') ? [[0, 0]] : besides(wide / 2 + 14);
  const own = seen && beside.map(([dx, dy]) => moved(at, [dx + (Math.sign(dx) === -Math.sign(inX) ? 0 : inX), dy + (Math.sign(dy) === -Math.sign(inY) ? 0 : inY)]))
    .find(tried => within(tried, clear) && !taken.some(other => meets(tried, other)));
  text.style.display = own ? '' : 'none';
  if (!own) return;
  taken.push(own);
  const [dx, dy] = [own[0] - at[0], own[1] - at[1]];
  text.style.translate = dx || dy ? `${dx / k}px ${dy / k}px` : '';
}

/** Where a name is tried beside its place, the nearest first. @param {number} aside so far that it stands clear of it */
const besides = aside => [[0, 0], [0, -18], [0, 18], [aside, 0], [-aside, 0], [0, -34], [0, 34],
  ...[18, -18, 34, -34].flatMap(down => [[aside, down], [-aside, down]]), [0, -50], [0, 50]];
