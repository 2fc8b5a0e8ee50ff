/** When a steady tone should fade: nothing has changed for a while, by hand or by light. */
import type { Lux, Pair, Seconds } from '../quantity/units.ts';
import { VOICES } from '../quantity/units.ts';

export const FADE_AFTER: Seconds = 20;
/** Light that moves by more than this share since it last counted is a change. */
const CHANGE: number = 0.1;

export class Rest {
  #since: Seconds;
  #lux: Pair<Lux> | null = null;

  constructor(now: Seconds) {
    this.#since = now;
  }

  /** Something was done. */
  touch(now: Seconds): void {
    this.#since = now;
  }

  /** The light now; returns whether that counted as a change. */
  see(now: Seconds, lux: Pair<Lux>, gateChanged: boolean): boolean {
    const before = this.#lux;
    const moved =
      before === null || VOICES.some((v) => Math.abs(lux[v] - before[v]) > CHANGE * Math.max(1, before[v]));
    if (!moved && !gateChanged) return false;
    if (moved) this.#lux = lux;
    this.#since = now;
    return true;
  }

  isDue(now: Seconds): boolean {
    return now - this.#since >= FADE_AFTER;
  }
}
