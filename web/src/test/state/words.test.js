import { capital, counted } from '../../main/resources/META-INF/resources/state/words.js';
import { equal, test } from '../trial.js';

test('a sentence begins with a capital, and one thing has its noun in the singular', () => {
  equal([capital('head one column'), capital('')], ['Head one column', '']);
  equal([counted(1, 'snag'), counted(0, 'note'), counted(2, 'loss', 'losses')], ['1 snag', '0 notes', '2 losses']);
});
