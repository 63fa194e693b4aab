/** Which words stand in the yard, and how large: every bed has its code at least, and no words lie on others. */

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
 */
export function layLabels(beds, others, view) {
  const taken = [];
  const { k, x, y } = view;
  const drawn = [];
  for (const bed of beds) {
    layBed(bed, view, taken);
    if (bed.box) drawn.push([x + bed.box.left * k, y - bed.box.back * k, x + bed.box.right * k, y - bed.box.front * k]);
  }
  taken.push(...drawn);
  for (const text of others) layName(text, view, taken);
}

function layBed({ group, box, upright, at, room }, { k, x, y }, taken) {
  const [code, size] = [group.querySelector('.code:not(.lifted)'), group.querySelector('.label.size')];
  if (!code) return;
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
  taken.push(turned ? [cx - halfHigh, cy - halfWide, cx + halfHigh, cy + halfWide] : [cx - halfWide, cy - halfHigh, cx + halfWide, cy + halfHigh]);
}

function setSize(text, px, k) {
  text.style.fontSize = `${px / k}px`;
  text.style.strokeWidth = `${Math.min(3, px / 5) / k}px`;
}

function turn(text, turned) {
  const place = text.getAttribute('transform').replace(/ rotate\(.*$/, '');
  text.setAttribute('transform', turned ? `${place} rotate(-90)` : place);
}

/** A name that would lie on others is tried beside its place, then left out. */
function layName(text, { k, x, y }, taken) {
  const [, tx, ty, angle] = /translate\((\S+) (\S+)\)(?: rotate\((\S+)\))?/.exec(text.getAttribute('transform'));
  const wide = text.textContent.length * NAME * LETTER;
  const corner = text.classList.contains('corner');
  const slanted = Math.abs(Number(angle ?? 0)) > 45;
  const [halfWide, halfHigh] = slanted ? [NAME * 0.7, wide / 2] : [wide / 2, NAME * 0.7];
  const tries = corner || text.classList.contains('path-name') ? [[0, 0]] : [[0, 0], [0, -18], [0, 18], [wide / 2 + 14, 0], [-wide / 2 - 14, 0], [0, -34], [0, 34]];
  for (const [dx, dy] of tries) {
    const [cx, cy] = [x + Number(tx) * k + dx + (corner ? wide / 2 + 7 : 0), y + Number(ty) * k + dy + (corner ? NAME + 3 : 0)];
    const own = [cx - halfWide, cy - halfHigh, cx + halfWide, cy + halfHigh];
    if (taken.some(other => own[0] < other[2] && own[2] > other[0] && own[1] < other[3] && own[3] > other[1])) continue;
    taken.push(own);
    text.style.display = '';
    text.style.translate = corner ? '' : `${dx / k}px ${dy / k}px`;
    return;
  }
  text.style.display = 'none';
}
