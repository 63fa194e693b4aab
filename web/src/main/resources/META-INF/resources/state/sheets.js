/** What is asked of a sheet as part of its address. */

/**
 * @param {'plan' | string} name
 * @param {{paper?: string, mono?: boolean, scale?: number, layers?: string[], split?: boolean}} asked
 * @returns {string} `plan.pdf?paper=A2&mono=true`
 */
export function sheetAddress(name, ending, { paper, mono, scale, layers, split } = {}) {
  const query = new URLSearchParams();
  if (paper) query.set('paper', paper);
  if (mono) query.set('mono', 'true');
  if (name === 'plan' || name === 'sheets') {
    if (scale) query.set('scale', String(scale));
    if (layers) query.set('layers', layers.join(','));
    if (split) query.set('split', 'true');
  }
  const text = query.toString().replaceAll('%2C', ',');
  return `${name}.${ending}${text ? `?${text}` : ''}`;
}

/** @returns {{value: number | undefined} | {error: string}} 50 of `50` or `1:50`; nothing for the largest that fits */
export function readScale(text) {
  const clean = text.trim().replace(/^1\s*:\s*/, '');
  if (!clean) return { value: undefined };
  const value = Number(clean);
  return Number.isInteger(value) && value >= 1 && value <= 5000 ? { value } : { error: 'A whole number from 1 to 5000, as in 50 for 1:50.' };
}

/** What a file is called where it is put: after its garden and revision, `village-hall-r12-plan.pdf`. @param {string} revision the entity tag */
export function fileName(plan, revision, name) {
  const garden = (plan.name ?? '').normalize('NFKD').replace(/[\u0300-\u036f]/g, '').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-+|-+$/g, '').slice(0, 40) || 'garden';
  const number = String(revision ?? '').replace(/\D/g, '');
  return `${garden}${number ? `-r${number}` : ''}-${name}`;
}
