/**
 * One half of the dual timer in time: a capacitor that is exact between events, and the flip-flop.
 * Truth table (TI SLFS022): reset dominates, trigger dominates threshold. Held in reset the output is low and
 * the capacitor decays through RB; released above the lower level it stays low until it has decayed there.
 *
 * A period too short for the sampling rate (its fundamental is above half of it) is not played edge by edge:
 * the output then stands at its mean, which is all of it that the rate can carry.
 */
import { type Astable, chargeSeconds, dippedVolts, dischargeSeconds } from '../circuit/astable.ts';
import type { Seconds, Volts } from '../quantity/units.ts';

/** A timer's output as the jack takes it. */
export const LEVEL = { low: 0, high: 1, mean: 2 } as const;

export class Timer {
  readonly #shortest: Seconds;
  /** A copy of its own, so that the caller may use one object again and again. */
  readonly #astable: { -readonly [Value in keyof Astable]: Astable[Value] };
  /** Times from one level to the other; the same in every cycle. */
  #highSeconds: Seconds = 0;
  #lowSeconds: Seconds = 0;
  /** The cycle is shorter than `shortest`. */
  #cycleIsTooFast = false;
  /** Capacitor voltage at `#since`. */
  #volts: Volts = 0;
  #since: Seconds = 0;
  #high = false;
  #released: boolean;
  #next: Seconds = Number.POSITIVE_INFINITY;

  /** Starts at time 0 with the capacitor empty. Periods below `shortest` are played as their mean. */
  constructor(astable: Astable, released: boolean, shortest: Seconds = 0) {
    this.#astable = { ...astable };
    this.#released = released;
    this.#shortest = shortest;
    this.#readCycle();
    this.#decide(0);
  }

  /** Output: high or low. */
  get high(): boolean {
    return this.#high;
  }

  /** Output as one of `LEVEL`. */
  get level(): number {
    if (this.#isTooFast) return LEVEL.mean;
    return this.#high ? LEVEL.high : LEVEL.low;
  }

  get #isTooFast(): boolean {
    return this.#released && this.#cycleIsTooFast;
  }

  /** When the output next changes by itself; Infinity while held in reset. */
  get next(): Seconds {
    return this.#next;
  }

  capacitorVolts(t: Seconds): Volts {
    const a = this.#astable;
    if (this.#isTooFast) return (a.lowerVolts + a.upperVolts) / 2;
    const aim = this.#high ? a.chargeVolts : a.sinkVolts;
    const ohms = this.#high ? a.chargeOhms : a.sinkOhms;
    return aim + (this.#volts - aim) * Math.exp(-(t - this.#since) / (ohms * a.farads));
  }

  /** The event at `next`: a level is reached and the output changes. */
  fire(): void {
    const t = this.#next;
    this.#volts = this.#high ? this.#astable.upperVolts : this.#astable.lowerVolts;
    this.#since = t;
    this.#high = !this.#high;
    this.#next = t + (this.#high ? this.#highSeconds : this.#lowSeconds);
  }

  /**
   * The upper level falls by `volts` for an instant. A capacitor that is charging and already above it there ends the
   * high at once; gives whether it did. The lower level falls too, away from a capacitor on its way down.
   */
  dip(t: Seconds, volts: Volts): boolean {
    if (!this.#high || this.capacitorVolts(t) < dippedVolts(this.#astable, volts)) return false;
    this.#moveTo(t);
    this.#high = false;
    this.#next = t + dischargeSeconds(this.#astable, this.#volts);
    return true;
  }

  /** The reset pin, released or held. */
  setReleased(t: Seconds, released: boolean): void {
    this.#moveTo(t);
    this.#released = released;
    this.#decide(t);
  }

  /** Other values in the timing network; the capacitor keeps its voltage. */
  setAstable(t: Seconds, astable: Astable): void {
    this.#moveTo(t);
    const own = this.#astable;
    own.farads = astable.farads;
    own.chargeVolts = astable.chargeVolts;
    own.chargeOhms = astable.chargeOhms;
    own.sinkVolts = astable.sinkVolts;
    own.sinkOhms = astable.sinkOhms;
    own.lowerVolts = astable.lowerVolts;
    own.upperVolts = astable.upperVolts;
    this.#readCycle();
    this.#decide(t);
  }

  #readCycle(): void {
    const a = this.#astable;
    this.#highSeconds = chargeSeconds(a, a.lowerVolts);
    this.#lowSeconds = dischargeSeconds(a, a.upperVolts);
    const period = this.#highSeconds + this.#lowSeconds;
    this.#cycleIsTooFast = period > 0 && (1 / period) * this.#shortest > 1;
  }

  #moveTo(t: Seconds): void {
    this.#volts = this.capacitorVolts(t);
    this.#since = t;
  }

  #decide(t: Seconds): void {
    const a = this.#astable;
    if (!this.#released || this.#isTooFast) {
      this.#high = false;
      this.#next = Number.POSITIVE_INFINITY;
      return;
    }
    if (!this.#high && this.#volts <= a.lowerVolts) this.#high = true;
    const wait = this.#high ? chargeSeconds(a, this.#volts) : dischargeSeconds(a, this.#volts);
    this.#next = t + wait;
  }
}
