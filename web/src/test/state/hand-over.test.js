import { addSnag, dropSnag, setFinishYears, setSnag, setTender, snagsOf, tenderOf } from '../../main/resources/META-INF/resources/state/hand-over.js';
import { equal, test } from '../trial.js';

test('years and tenders are set, and leave no trace when they are taken out', () => {
  const plan = { beds: [] };
  const said = setTender('A', 'Class 4')(setFinishYears(3)(plan));
  equal(said.handOver, { finishYears: 3, tenders: [{ bed: 'A', who: 'Class 4' }] });
  equal(tenderOf(setTender('A', 'Class 5')(said), 'A'), 'Class 5');
  equal(setTender('A', '')(setFinishYears(undefined)(said)), plan);
});

test('a snag is found, shown by photos, mended and dropped', () => {
  const plan = { beds: [] };
  const found = addSnag({ bed: 'A', text: 'Splinters', found: '2027-06-02' })(plan);
  const mended = setSnag(0, { mended: '2027-06-05', photos: ['ab'] })(found);
  equal(snagsOf(mended), [{ bed: 'A', text: 'Splinters', found: '2027-06-02', mended: '2027-06-05', photos: ['ab'] }]);
  equal(snagsOf(setSnag(0, { mended: undefined, photos: [] })(mended)), snagsOf(found));
  equal(dropSnag(0)(found), plan);
});
