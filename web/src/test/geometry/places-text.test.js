import { readPlaces, writtenPlaces } from '../../main/resources/META-INF/resources/geometry/places-text.js';
import { equal, holds, test } from '../trial.js';

test('places are read as they are written', () => {
  equal(readPlaces('0, 0; 12000, 0; 12 m x 9 m', 3).value, [[0, 0], [12000, 0], [12000, 9000]]);
  equal(readPlaces('0, 0; 12 m, 9 m; 2,4 m, 1,2 m', 3).value, [[0, 0], [12000, 9000], [2400, 1200]]);
  equal(readPlaces(`0, 0; 32' 6", 0; 20', 14'`, 3, 200, 'imperial').value, [[0, 0], [9906, 0], [6096, 4267.2]]);
  equal(readPlaces('-200 1200', 1).value, [[-200, 1200]]);
  equal(writtenPlaces([[0, 0], [12000, -5]], 'metric'), '0, 0; 12000, -5');
  holds(readPlaces('0, 0; 5', 2).error.startsWith('Place 2'), 'one length is no place');
  holds(readPlaces('0, 0', 3).error.startsWith('1 of 3'), 'too few');
});
