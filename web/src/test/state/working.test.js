import { arithmetic, figure, labelOf, rounded, roundedWithUnit } from '../../main/resources/META-INF/resources/state/working.js';
import { equal, test } from '../trial.js';

test('a working unfolds as a line of arithmetic: loose soil 2.311 / (1 - 0.15) = 2.719', () => {
  const working = { inputs: [{ name: 'settled', value: 2.3114, unit: 'm3' }, { name: 'settlement', value: 0.15, unit: '' }],
    formula: 'settled / (1 - settlement)', source: 'common practice, no source' };
  const { lines, inputs, source } = arithmetic(working, 2.7193, 'm3');
  equal(lines, ['2.3114 ÷ (1 − 0.15) = 2.7193 m³']);
  equal(inputs, ['settled 2.3114 m³', 'settlement 0.15']);
  equal(source, 'common practice, no source');
});

test('longer names are read before the shorter ones they begin with', () => {
  const working = { inputs: [{ name: 'soil', value: 2, unit: 'm' }, { name: 'soil depth', value: 3, unit: 'm' }], formula: 'soil depth x soil' };
  equal(arithmetic(working, 6, 'm2').lines, ['3 × 2 = 6 m²']);
});

test('a formula that names nothing, or no working at all, is the bare result', () => {
  equal(arithmetic({ inputs: [], formula: 'counted', source: '' }, 4, 'notches').lines, ['= 4 notches']);
  equal(arithmetic(null, 4, '').lines, ['= 4']);
});

test('a name with signs of its own is read as it stands', () => {
  equal(arithmetic({ inputs: [{ name: 'gap (max)', value: 15, unit: 'mm' }], formula: 'gap (max) + 1' }, 16, 'mm').lines, ['15 + 1 = 16 mm']);
});

test('figures are short and never powers of ten', () => {
  equal([0.0095, 2.71934, 374.4000001, 31200, 1e-9, -0].map(figure), ['0.0095', '2.7193', '374.4', '31200', '0', '0']);
  equal([0.94661, 10.1601, 1584].map(rounded), ['0.947', '10.16', '1584']);
});

test('units and keys are told in words', () => {
  equal([roundedWithUnit(2, 'm3', 'metric'), roundedWithUnit(2, 'screws', 'metric'), labelOf('soil.loose'), labelOf('soil.topsoil')], ['2 m³', '2 screws', 'Soil, loose', 'Soil topsoil']);
});

test('a garden in feet reads the result in its own measures, below the working', () => {
  equal(arithmetic(null, 0.764554857984, 'm3', 'imperial').lines, ['= 0.7646 m³', '= 1 cu yd']);
  equal([roundedWithUnit(2400, 'mm', 'imperial'), roundedWithUnit(4, 'notches', 'imperial')], [`7' 10 1/2"`, '4 notches']);
});

test('a formula in several steps is told a step a line, without the result a second time', () => {
  const working = { inputs: [{ name: 'sum of needs', value: 66, unit: '' }, { name: 'spare', value: 0.1, unit: '' }],
    formula: 'need = sum of needs x (1 + spare); cheapest mix: 1 x box of 100' };
  equal(arithmetic(working, 72.6, 'screws').lines, ['need = 66 × (1 + 0.1)', 'cheapest mix: 1 × box of 100']);
});

test('a number of the slip says its sum once, and a pack keeps the name that begins with a figure', () => {
  const working = { inputs: [{ name: 'sum of needs', value: 5.6188, unit: 'm3' }, { name: 'spare', value: 0.05, unit: '' }, { name: 'loose load of 3 m3', value: 3, unit: 'm3' }],
    formula: 'need = sum of needs x (1 + spare); cheapest mix of packs that covers it: 2 x loose load of 3 m3 at 165.00 = 330.00 GBP; rounded half up to 2 decimals' };
  const { lines, words } = arithmetic(working, 5.8997, 'm3');
  equal(lines, ['need = 5.6188 × (1 + 0.05)', 'cheapest mix of packs that covers it: 2 × loose load of 3 m3 at 165.00 = 330.00 GBP', 'rounded half up to 2 decimals']);
  equal(words, 'need = sum of needs x (1 + spare)');
});
