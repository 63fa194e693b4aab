import { given, isNothing, saying } from './fields.js';

/** What goes with the garden to whoever tends it: commands plan => newPlan over the document's `handOver`. */

export const handOverOf = plan => plan.handOver ?? {};

const withHandOver = change => plan => saying(plan, 'handOver', given(change(handOverOf(plan)), isNothing));

/** From the last coat to the next, as the tin says; undefined where nobody said it. */
export const setFinishYears = finishYears => withHandOver(now => ({ ...now, finishYears }));

/** Who tends a bed; an empty text for nobody. */
export const setTender = (bed, who) => withHandOver(now => ({
  ...now, tenders: [...(now.tenders ?? []).filter(one => one.bed !== bed), ...(who ? [{ bed, who }] : [])],
}));

export const tenderOf = (plan, bed) => (handOverOf(plan).tenders ?? []).find(one => one.bed === bed)?.who ?? '';

export const snagsOf = plan => handOverOf(plan).snags ?? [];

/** @param {{bed?: string, text: string, found?: string, photos?: string[]}} snag */
export const addSnag = snag => withHandOver(now => ({ ...now, snags: [...(now.snags ?? []), snag] }));

/** Sets fields of the snag at a place of the list; what is undefined or empty is left out. */
export const setSnag = (at, fields) => withHandOver(now => ({
  ...now, snags: (now.snags ?? []).map((one, i) => (i === at ? given({ ...one, ...fields }, isNothing) : one)),
}));

export const dropSnag = at => withHandOver(now => ({ ...now, snags: (now.snags ?? []).filter((_, i) => i !== at) }));
