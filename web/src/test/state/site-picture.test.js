import { dropPicture, layPicture, movePicture, pictureOf, scalePicture, setPicture } from '../../main/resources/META-INF/resources/state/site-picture.js';
import { equal, holds, test } from '../trial.js';

const plan = { ground: { outline: [[0, 0], [12000, 0], [12000, 9000], [0, 9000]] }, beds: [] };

test('a picture is laid as wide as the yard, and scaled by two points and their distance', () => {
  const laid = layPicture('data:image/png;base64,AA==', 800, 400)(plan);
  equal([pictureOf(laid).width, pictureOf(laid).height, pictureOf(laid).at], [12000, 6000, [0, 0]]);
  const scaled = scalePicture([2000, 1000], [6000, 1000], 2000)(laid);
  equal([pictureOf(scaled).width, pictureOf(scaled).height, pictureOf(scaled).at], [6000, 3000, [1000, 500]]);
  holds(scalePicture([1, 1], [1, 1], 2000)(laid) === laid, 'two points at one place have no distance');
});

test('it is turned, moved, hidden, shown again and taken away', () => {
  const laid = layPicture('data:image/png;base64,AA==', 100, 100)(plan);
  equal(pictureOf(setPicture({ turn: 90, hidden: true })(laid)).turn, 90);
  equal('hidden' in pictureOf(setPicture({ hidden: false })(setPicture({ hidden: true })(laid))), false);
  equal(pictureOf(movePicture(100, -50)(laid)).at, [100, -50]);
  equal(dropPicture(laid), plan);
});
