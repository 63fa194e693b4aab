import { setWayIn } from '../../main/resources/META-INF/resources/state/load-in.js';
import { equal, test } from '../trial.js';

test('the way in keeps what is told and lets go what is not', () => {
  const plan = setWayIn('passage', { width: 900 })(setWayIn('vehicle', { payload: 500 })({}));
  equal(plan.loadIn, { vehicle: { payload: 500 }, passage: { width: 900 } });
  equal(setWayIn('passage', { width: undefined })(plan).loadIn, { vehicle: { payload: 500 } });
  equal(setWayIn(null, { barrow: 80 })(plan).loadIn.barrow, 80);
});
