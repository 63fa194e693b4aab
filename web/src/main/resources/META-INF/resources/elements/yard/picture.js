import { s } from '../make.js';

/**
 * A picture of the site under the yard. @param {object | undefined} picture of the document: `data` its address, `at` where
 * its lower left corner lies, `width` and `height` millimetres, `turn` degrees, `faint` from 0 to 1, `hidden`
 */
export function drawnPicture(picture) {
  if (!picture?.data || picture.hidden) return [];
  const { at, width, height, turn = 0, faint = 0.5 } = picture;
  return [s('image', { href: picture.data, x: 0, y: -height, width, height, preserveAspectRatio: 'none', opacity: faint,
    transform: `translate(${at[0]} ${-at[1]}) rotate(${-turn})` })];
}
