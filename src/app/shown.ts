/**
 * What the screen says of a gate. Sound may chatter hundreds of times a second; a picture must not flash, so
 * a shown state is held, and quick changes are told as a rate in words.
 */
import type { Seconds } from '../quantity/units.ts';

export type ShownGate =
  | { readonly kind: 'sounding' }
  | { readonly kind: 'silent' }
  | { readonly kind: 'chattering'; readonly perSecond: number };

/** A shown state stays at least this long: under three changes, so fewer than two flashes, in any second. */
export const HOLD: Seconds = 0.35;
/** More changes of a gate in one second than this are told as chatter. */
const CHATTER_CHANGES = 6;
const WINDOW: Seconds = 1;

/** Follows one gate from reports of its state and how often it changed. */
export class GateWatch {
  #shown: ShownGate = { kind: 'silent' };
  #since: Seconds = Number.NEGATIVE_INFINITY;
  readonly #changes: { time: Seconds; count: number }[] = [];

  get shown(): ShownGate {
    return this.#shown;
  }

  /** A report: the time, the state now, and the changes since the report before. */
  take(time: Seconds, sounding: boolean, changes: number): ShownGate {
    if (changes > 0) this.#changes.push({ time, count: changes });
    while (this.#changes[0] && this.#changes[0].time <= time - WINDOW) this.#changes.shift();
    if (time - this.#since < HOLD) return this.#shown;
    const recent = this.#changes.reduce((sum, { count }) => sum + count, 0);
    const next: ShownGate =
      recent > CHATTER_CHANGES
        ? { kind: 'chattering', perSecond: Number((recent / 2 / WINDOW).toPrecision(2)) }
        : { kind: sounding ? 'sounding' : 'silent' };
    const same =
      next.kind === this.#shown.kind &&
      (next.kind !== 'chattering' || next.perSecond === (this.#shown as { perSecond: number }).perSecond);
    if (!same) {
      this.#shown = next;
      this.#since = time;
    }
    return this.#shown;
  }
}
