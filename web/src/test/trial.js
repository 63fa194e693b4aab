/** The least that a test of a module needs: a sentence and a function. Runs in a browser page and collects. */

const trials = [];

/** @param {string} sentence what holds @param {() => void | Promise<void>} run throws where it does not */
export function test(sentence, run) { trials.push({ sentence, run }); }

/** The same to the last part; numbers exactly. */
export function equal(actual, expected, about = '') {
  const [a, b] = [plain(actual), plain(expected)];
  if (a !== b) throw new Error(`${about ? `${about}: ` : ''}expected ${b}, was ${a}`);
}

/** Within `by` of each other. */
export function near(actual, expected, by, about = '') {
  if (!(Math.abs(actual - expected) <= by)) throw new Error(`${about ? `${about}: ` : ''}expected ${expected} to within ${by}, was ${actual}`);
}

export function holds(truth, about) {
  if (!truth) throw new Error(about);
}

const plain = value => JSON.stringify(value, (_, part) => {
  if (part === undefined) return 'undefined';
  return part && typeof part === 'object' && !Array.isArray(part)
    ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
    : part;
});

/** Numbers from 0 to below 1 that are the same for the same seed (mulberry32). */
export function seeded(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6D2B79F5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** A stand-in for the browser's storage. */
export function storage(most = Infinity) {
  const kept = new Map();
  return {
    getItem: key => kept.get(key) ?? null,
    setItem(key, text) {
      if (text.length > most) throw new Error('full');
      kept.set(key, text);
    },
    removeItem: key => kept.delete(key),
  };
}

/** @returns {Promise<{sentence: string, error: string | null}[]>} in the order they were written */
export async function runAll() {
  const results = [];
  for (const { sentence, run } of trials) {
    try {
      await run();
      results.push({ sentence, error: null });
    } catch (error) {
      results.push({ sentence, error: String(error?.stack ?? error) });
    }
  }
  return results;
}
