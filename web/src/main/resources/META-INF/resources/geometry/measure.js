import { feetAndInches } from './length.js';

/**
 * Amounts in a garden's own measures. The server's numbers are metric; `lapyard.geometry.Measure` has the same table.
 * NIST Special Publication 811 (2008), appendix B: 1 lb = 0.45359237 kg, 1 yd = 0.9144 m, 1 US gal = 3.785411784 l,
 * 1 lbf = 4.4482216152605 N, all exact.
 */
const LBF_KN = 0.0044482216152605;
const SQUARE_FOOT_M2 = 0.09290304;

const IMPERIAL = {
  kg: ['lb', 0.45359237], t: ['lb', 0.00045359237], m: ['ft', 0.3048], m2: ['sq ft', SQUARE_FOOT_M2], m3: ['cu yd', 0.764554857984],
  l: ['gal', 3.785411784], kN: ['lbf', LBF_KN], 'kN/m2': ['psf', LBF_KN / SQUARE_FOOT_M2], 'kN/m': ['lbf/ft', LBF_KN / 0.3048],
};

const SIGNS = { m2: 'm²', m3: 'm³', mm2: 'mm²', mm3: 'mm³', 'kg/m3': 'kg/m³', 'm2/l': 'm²/l', 'kN/m2': 'kN/m²', 'kN/m3': 'kN/m³', 'N/mm2': 'N/mm²' };

export const isFeet = units => units === 'imperial';

/** The sign of the unit in which a garden reads a metric one. @param {'metric'|'imperial'} units */
export const unitIn = (unit, units) => (isFeet(units) && IMPERIAL[unit] ? IMPERIAL[unit][0] : SIGNS[unit] ?? unit ?? '');

/** The number that goes with {@link unitIn}; lengths in mm stay. */
export const valueIn = (value, unit, units) => (isFeet(units) && IMPERIAL[unit] ? value / IMPERIAL[unit][1] : value);

/** The metric number for one that was typed in the garden's own unit. */
export const metricOf = (value, unit, units) => (isFeet(units) && IMPERIAL[unit] ? value * IMPERIAL[unit][1] : value);

/** `45 kg`, `99 lb`, `8' 2"`. @param {number} decimals of the metric number; pounds and forces are whole */
export function measured(value, unit, units, decimals) {
  if (unit === 'mm' && isFeet(units)) return feetAndInches(value);
  const own = valueIn(value, unit, units);
  const whole = isFeet(units) && /^(lb|lbf|psf|lbf\/ft)$/.test(unitIn(unit, units));
  return `${Number(own.toFixed(whole ? 0 : decimals))} ${unitIn(unit, units)}`.trim();
}
