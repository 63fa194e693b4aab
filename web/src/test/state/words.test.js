import { capital, counted, oneOf, paragraph } from '../../main/resources/META-INF/resources/state/words.js';
import { equal, test } from '../trial.js';

test('a sentence begins with a capital, and one thing has its noun in the singular', () => {
  equal([capital('head one column'), capital('')], ['Head one column', '']);
  equal([counted(1, 'snag'), counted(0, 'note'), counted(2, 'loss', 'losses')], ['1 snag', '0 notes', '2 losses']);
});

test('only the first way out begins with a capital, and names keep theirs', () => {
  equal(paragraph({ text: 'It is short.' }), 'It is short.');
  equal(paragraph({ text: 'It is short.', ways: ['Tape it again', 'Check the distance', 'Add a bed', 'A longer board', 'M-1A first'] }),
    'It is short. Tape it again, or check the distance, or add a bed, or a longer board, or M-1A first.');
});

test('one thing is told in the singular, a unit of measure as it is', () => {
  equal(['staples', 'ties', 'long screws', 'notches', 'm2', 'l', 'kg', 'CHF'].map(oneOf), ['staple', 'tie', 'long screw', 'notch', 'm2', 'l', 'kg', 'CHF']);
});
