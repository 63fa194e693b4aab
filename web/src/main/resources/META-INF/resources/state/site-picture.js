import { bounds } from '../geometry/outline.js';
import { yardOf } from './plan.js';
import { put, valueAt } from './ground.js';

/** The picture of the site under the yard: laid, scaled by two points whose distance is known, turned, faint or hidden. */

const PATH = ['ground', 'picture'];

export const pictureOf = plan => valueAt(plan, PATH) ?? null;

/** Lays a picture as wide as the yard. @param {string} data its address @param {number} wide pixels @param {number} high */
export const layPicture = (data, wide, high) => plan => {
  const yard = yardOf(plan);
  const box = yard ? bounds(yard) : { left: 0, right: 12000, front: 0 };
  const width = box.right - box.left;
  return put(PATH, { data, at: [box.left, box.front], width, height: Math.max(1, Math.round(width * high / wide)), faint: 0.5 })(plan);
};

/** Sets fields; the usual ones are left out. */
export const setPicture = fields => plan => {
  const picture = pictureOf(plan);
  if (!picture) return plan;
  const next = { ...picture, ...fields };
  for (const [key, usual] of [['turn', 0], ['hidden', false]]) if (next[key] === usual) delete next[key];
  return put(PATH, next)(plan);
};

/**
 * Scales it about the first of two points so that they are so far apart.
 *
 * @param {[number, number]} a where the first point of the picture lies now, yard millimetres
 * @param {[number, number]} b the second
 * @param {number} mm how far apart they are on the ground
 */
export const scalePicture = (a, b, mm) => plan => {
  const picture = pictureOf(plan);
  const now = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (!picture || now < 1 || !(mm > 0)) return plan;
  const k = mm / now;
  const tenth = value => Math.round(value * 10) / 10;
  return setPicture({ at: [tenth(a[0] + (picture.at[0] - a[0]) * k), tenth(a[1] + (picture.at[1] - a[1]) * k)], width: tenth(picture.width * k), height: tenth(picture.height * k) })(plan);
};

export const movePicture = (dx, dy) => plan => {
  const picture = pictureOf(plan);
  return picture ? setPicture({ at: [picture.at[0] + dx, picture.at[1] + dy] })(plan) : plan;
};

export const dropPicture = put(PATH, undefined);
