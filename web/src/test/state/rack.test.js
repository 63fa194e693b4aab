import { badText, chalked, goodRuns, rackBoard, readBad, readRack, setBoard, takeOffRack } from '../../main/resources/META-INF/resources/state/rack.js';
import { equal, holds, test } from '../trial.js';

test('bad spans are read as they are called out, in order and joined', () => {
  equal(readBad('1180-1260, 0 to 150', 2750), { value: [[0, 150], [1180, 1260]] });
  equal(readBad('0-200; 150-300', 2750), { value: [[0, 300]] });
  equal(readBad('1.18 m to 1.26 m', 2750), { value: [[1180, 1260]] });
  equal(readBad('', 2750), { value: [] });
  equal(badText([[0, 150], [1180, 1260]]), '0-150, 1180-1260');
});

test('in feet and inches bad spans are written so that they are read again, and told so', () => {
  equal(badText([[0, 152.4], [1219.2, 1295.4]], 'imperial'), `0" to 6", 4' to 4' 3"`);
  equal(readBad(`4' to 4' 3", 0" to 6"`, 2438.4, 'imperial'), { value: [[0, 152.4], [1219.2, 1295.4]] });
  equal(readBad(`7' to 9'`, 2438.4, 'imperial').error, `1' beyond the end of the board. Write 8' or less.`);
  equal(readBad('rot', 2438.4, 'imperial').error, '“rot” is no span. Write from and to, such as 0" to 5 7/8".');
});

test('a bad span that cannot be is told with its amount', () => {
  equal(readBad('2700-2800', 2750).error, '50 mm beyond the end of the board. Write 2750 mm or less.');
  equal(readBad('300-200', 2750).error, '200 mm does not lie beyond 300 mm. Write the nearer end first.');
  equal(readBad('rot', 2750).error, '“rot” is no span. Write from and to, such as 0-150.');
});

test('a board of 2750 split to 150 and rotten from 1180 to 1260 has runs of 1030 and 1490, worked by hand', () => {
  const lengths = (plan, length, bad) => goodRuns(plan, { length, bad }).map(([a, b]) => b - a);
  equal(lengths({}, 2750, [[0, 150], [1180, 1260]]), [1030, 1490]);
  equal(lengths({}, 1000, [[200, 900]]), []);
  equal(lengths({ saw: { leastPiece: 100, keepOffcut: 1100 } }, 2750, [[1180, 1260], [0, 150], [20, 50]]), [1490]);
});

test('boards are racked with a code of their own, changed and taken off', () => {
  const plan = rackBoard({ length: 2400, section: '100x200', count: 3 })({ rack: [{ id: 'K1', length: 900 }] });
  equal(plan.rack[1], { id: 'K2', section: '100x200', length: 2400, count: 3 });
  equal(readRack(plan)[0], { index: 0, id: 'K1', section: '100x200', length: 900, count: 1, bad: [], goodFaces: 2, origin: '', coated: false });
  equal(setBoard(1, { count: undefined, coated: true })(plan).rack[1], { id: 'K2', section: '100x200', length: 2400, coated: true });
  holds(setBoard(1, { count: 3 })(plan) === plan && setBoard(5, {})(plan) === plan, 'another plan');
  equal(takeOffRack(0)(plan).rack.map(board => board.id), ['K2']);
});

test('what is sawn out of boards on hand is found at its place on the board', () => {
  const board = (stock, ...cuts) => ({ stock, cuts: cuts.map(([mark, from, to]) => ({ mark, from, to })) });
  const sheet = { cutting: [{ boards: [board('4800', ['A-1A', 10, 900]), board('K1 1260-2750', ['S-1F', 10, 710]), board('K1 150-1180', ['S-2F', 10, 910]), board('K2', ['U-1F', 10, 1510]), board('K2', ['U-2F', 10, 1510])] }] };
  const found = chalked(sheet);
  equal(found.get('K1'), [[{ mark: 'S-2F', from: 160, to: 1060 }, { mark: 'S-1F', from: 1270, to: 1970 }]]);
  equal(found.get('K2').length, 2);
  equal([found.has('4800'), chalked(null).size], [false, 0]);
  const numbered = chalked({ cutting: [{ boards: [{ stock: '2A', cuts: [] }, { stock: '7 0-900', cuts: [] }, { stock: '3600.5', cuts: [] }] }] });
  equal([...numbered.keys()], ['2A', '7']);
});

test('what a board is worth kept is written beside it and taken away again', () => {
  const plan = setBoard(0, { salvage: 4.5 })(rackBoard({ length: 2400, section: '100x200', count: 1 })({}));
  equal(readRack(plan)[0].salvage, 4.5);
  equal('salvage' in setBoard(0, { salvage: undefined })(plan).rack[0], false);
});
