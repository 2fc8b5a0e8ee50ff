/** What a voice does when its reset is released after a long silence, event by event. */
import type { Seconds, Volts } from '../quantity/units.ts';
import { type Astable, chargeSeconds, dischargeSeconds } from './astable.ts';

/** A stretch between two events: the output's state, and the capacitor's way from one voltage to another. */
export interface Stretch {
  readonly start: Seconds;
  readonly end: Seconds;
  readonly high: boolean;
  readonly from: Volts;
  readonly to: Volts;
  /** Where the capacitor heads, and how fast. */
  readonly aim: Volts;
  readonly tau: Seconds;
}

/** The first stretches after the release, from a capacitor at rest; empty when the voice never swings. */
export function firstStretches(a: Astable, cycles: number): readonly Stretch[] {
  const stretches: Stretch[] = [];
  let start = 0;
  let volts = a.sinkVolts;
  for (let i = 0; i < 2 * cycles; i++) {
    const high = i % 2 === 0;
    const length = high ? chargeSeconds(a, volts) : dischargeSeconds(a, volts);
    if (!Number.isFinite(length)) return [];
    const to = high ? a.upperVolts : a.lowerVolts;
    stretches.push({
      start,
      end: start + length,
      high,
      from: volts,
      to,
      aim: high ? a.chargeVolts : a.sinkVolts,
      tau: (high ? a.chargeOhms : a.sinkOhms) * a.farads,
    });
    start += length;
    volts = to;
  }
  return stretches;
}

/** Capacitor voltage within a stretch. */
export function voltsWithin(stretch: Stretch, t: Seconds): Volts {
  return stretch.aim + (stretch.from - stretch.aim) * Math.exp(-(t - stretch.start) / stretch.tau);
}
