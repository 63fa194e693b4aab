import { WAITS } from './keeper.js';

/**
 * Listens for one garden's news and listens again after every break. After a break it looks once, as something may
 * have been said meanwhile; where listening is refused for good it looks at each wait.
 */
export class News {
  #parts;
  #ended = new AbortController();

  /**
   * @param {object} parts
   * @param {(heard: (revision: number) => void, signal: AbortSignal) => Promise<void>} parts.listen
   * @param {(revision?: number) => void} parts.look
   * @param {(run: () => void, ms: number) => any} [parts.later]
   */
  constructor({ listen, look, later = (run, ms) => setTimeout(run, ms) }) {
    this.#parts = { listen, look, later };
  }

  /** Goes on until `end`. */
  async begin() {
    const { listen, look, later } = this.#parts;
    const { signal } = this.#ended;
    for (let tries = 0; !signal.aborted; tries++) {
      try {
        await listen(revision => {
          tries = 0;
          if (!signal.aborted) look(revision);
        }, signal);
      } catch (away) {
        if (signal.aborted) return;
      }
      await new Promise(wake => later(wake, WAITS[Math.min(tries, WAITS.length - 1)]));
      if (!signal.aborted) look();
    }
  }

  end() { this.#ended.abort(); }
}
