/** How a bed is built beyond its figures, as choices with the usual one first. */

/** @typedef {{key: string, label: string, choices: [string, string][], now: string, usual: string}} Choice */

const CHOICES = [
  { key: 'base', label: 'Base', choices: [['slatted', 'slatted'], ['open', 'open']], usual: 'slatted', within: 'kind' },
  { key: 'liner', label: 'Liner', choices: [['yes', 'lined'], ['no', 'none']], usual: 'yes', within: 'wanted' },
  { key: 'finish', label: 'Finish', choices: [['yes', 'oiled'], ['no', 'none']], usual: 'yes', within: 'wanted' },
];

/**
 * @param {object} whole a bed of the document with type and defaults filled in
 * @returns {Choice[]}
 */
export function choicesOf(whole) {
  return CHOICES.map(({ key, label, choices, usual, within }) => ({ key, label, choices, usual, now: said(whole[key], within) ?? usual }));
}

function said(value, within) {
  const plain = value !== null && typeof value === 'object' ? value[within] : value;
  if (plain === true) return 'yes';
  if (plain === false) return 'no';
  return plain;
}

/**
 * The value to write into the document for a choice; what else the bed says about it stays.
 *
 * @param {object} bed as it stands in the document
 * @param {string} key of the choice
 * @param {string} chosen
 */
export function chosenValue(bed, key, chosen) {
  const { within } = CHOICES.find(choice => choice.key === key);
  const value = { yes: true, no: false }[chosen] ?? chosen;
  const before = bed[key];
  return before !== null && typeof before === 'object' ? { ...before, [within]: value } : value;
}

/**
 * Walls that are seen after one is turned over.
 *
 * @param {string[]} walls all letters
 * @param {string[] | undefined} seen as the document says, undefined for all
 * @param {string} wall the one that is pressed
 * @returns {string[] | undefined} undefined where all are seen again
 */
export function turnedOver(walls, seen, wall) {
  const now = new Set(seen ?? walls);
  if (now.has(wall)) now.delete(wall);
  else now.add(wall);
  return now.size === walls.length ? undefined : walls.filter(letter => now.has(letter));
}
