import { fileName, readScale, sheetAddress } from '../../main/resources/META-INF/resources/state/sheets.js';
import { equal, holds, test } from '../trial.js';

test('only what is asked of a sheet stands in its address', () => {
  equal(sheetAddress('rolls', 'pdf'), 'rolls.pdf');
  equal(sheetAddress('rolls', 'pdf', { paper: 'A3', scale: 50, layers: ['beds'], split: true, mono: true }), 'rolls.pdf?paper=A3&mono=true');
  equal(sheetAddress('plan', 'svg', { scale: 50, layers: ['beds', 'keep-clear'], split: true }), 'plan.svg?scale=50&layers=beds,keep-clear&split=true');
});

test('a scale is written as a number or as 1:50', () => {
  equal(readScale('1 : 50'), { value: 50 });
  equal(readScale(''), { value: undefined });
  holds(readScale('0').error && readScale('2.5').error, 'no scales');
});

test('a file is named after its garden and revision', () => {
  equal(fileName({ name: 'Ferry lané nursery!' }, '"12"', 'plan.pdf'), 'ferry-lane-nursery-r12-plan.pdf');
  equal(fileName({}, null, 'slip.csv'), 'garden-slip.csv');
});
