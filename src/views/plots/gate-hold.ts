/**
 * What a gate's picture may show: each shown state stays at least 350 ms, so that however fast a gate chatters its
 * picture changes at most three times in a second (two opposite changes are one flash; WCAG 2.2, 2.3.1 allows three).
 */
import type { Seconds } from '../../quantity/units.ts';

export const SHORTEST_SHOWN: Seconds = 0.35;

export class GateHold {
  #shown: boolean | null = null;
  #since: Seconds = Number.NEGATIVE_INFINITY;

  /** Tells the state at a moment of the data's own clock; returns the one to show. */
  next(time: Seconds, sounding: boolean): boolean {
    // A clock that went back is another run: what was held belongs to the past one.
    if (this.#shown === null || time < this.#since) {
      this.#shown = sounding;
      this.#since = time;
    } else if (sounding !== this.#shown && time - this.#since >= SHORTEST_SHOWN) {
      this.#shown = sounding;
      this.#since = time;
    }
    return this.#shown;
  }
}
