/**
 * One voice's timing: the RC astable of a 555-type timer in the RA – discharge pin – RB – C connection.
 * Exact exponentials between events; no stepping. SI units.
 *
 * Source: TI SLFS022 "A-stable operation" (ideal case) and its truth table; the discharge side is the same
 * derivation with the discharge pin at `sinkVolts` instead of 0 V.
 */

import type { Design, Trimmer, Voice } from '../design/design.ts';
import { type Discharge, TIMERS } from '../parts/timers.ts';
import { endOhms } from '../parts/trimmers.ts';
import type { Farads, Fraction, Hertz, Ohms, Seconds, VoiceId, Volts } from '../quantity/units.ts';

/** What the capacitor sees: where it heads, through what, and where the timer switches. */
export interface Astable {
  readonly farads: Farads;
  /** Charging: toward the supply through RA + RB. */
  readonly chargeVolts: Volts;
  readonly chargeOhms: Ohms;
  /** Discharging, and held in reset: toward the discharge pin's own level. */
  readonly sinkVolts: Volts;
  readonly sinkOhms: Ohms;
  /** Trigger and threshold levels. */
  readonly lowerVolts: Volts;
  readonly upperVolts: Volts;
}

/** Resistance of a trimmer used as a variable resistor: end + w·(P − end). */
export function rheostatOhms(trimmer: Trimmer, rotation: Fraction = trimmer.rotation): Ohms {
  const end = endOhms(trimmer.part, trimmer.ohms);
  return end + rotation * (trimmer.ohms - end);
}

/** RB: the fixed part plus the trimmer. */
export function rbOhms(voice: Voice, rotation: Fraction = voice.trimmer.rotation): Ohms {
  return voice.rbFixedOhms + rheostatOhms(voice.trimmer, rotation);
}

/** Voltage at a bipolar discharge pin for a current into it: straight lines between published points. */
export function saturationVolts(
  points: Extract<Discharge, { kind: 'saturation' }>['points'],
  amperes: number,
): Volts {
  let [i0, v0] = points[0]!;
  let volts = v0;
  for (const [i1, v1] of points.slice(1)) {
    volts = v0 + ((amperes - i0) * (v1 - v0)) / (i1 - i0);
    if (amperes <= i1) break;
    [i0, v0] = [i1, v1];
  }
  return volts;
}

/** The timing network, from plain values. `railVolts` is the supply at the chip. */
export function astableFrom(parts: {
  raOhms: Ohms;
  rbOhms: Ohms;
  farads: Farads;
  railVolts: Volts;
  controlVolts: Volts | null;
  discharge: Discharge;
}): Astable {
  const { raOhms, farads, railVolts, controlVolts, discharge } = parts;
  const upperVolts = controlVolts ?? (2 * railVolts) / 3;
  const common = {
    farads,
    chargeVolts: railVolts,
    chargeOhms: raOhms + parts.rbOhms,
    lowerVolts: upperVolts / 2,
    upperVolts,
  };
  if (discharge.kind === 'saturation')
    return {
      ...common,
      sinkVolts: saturationVolts(discharge.points, railVolts / raOhms),
      sinkOhms: parts.rbOhms,
    };
  // A resistance to 0 V pulled up by RA: Thévenin's equivalent at the discharge pin.
  return {
    ...common,
    sinkVolts: (railVolts * discharge.ohms) / (raOhms + discharge.ohms),
    sinkOhms: parts.rbOhms + (raOhms * discharge.ohms) / (raOhms + discharge.ohms),
  };
}

/** The timing network of one voice of a design, at a rail voltage and (for sweeps) another rotation. */
export function astableOf(design: Design, voice: VoiceId, railVolts: Volts, rotation?: Fraction): Astable {
  const v = design.voices[voice];
  return astableFrom({
    raOhms: v.raOhms,
    rbOhms: rbOhms(v, rotation),
    farads: v.capacitor.farads,
    railVolts,
    controlVolts: v.controlVolts,
    discharge: TIMERS[design.timer].discharge,
  });
}

/** Time for the capacitor to go from one voltage to another toward `aim`; Infinity when it never arrives. */
export function settleSeconds(from: Volts, to: Volts, aim: Volts, tau: Seconds): Seconds {
  const ratio = (from - aim) / (to - aim);
  return ratio >= 1 && Number.isFinite(ratio) ? tau * Math.log(ratio) : Number.POSITIVE_INFINITY;
}

/** Time charging from a voltage up to the upper level; 0 when already there. */
export function chargeSeconds(a: Astable, fromVolts: Volts): Seconds {
  if (fromVolts >= a.upperVolts) return 0;
  return settleSeconds(fromVolts, a.upperVolts, a.chargeVolts, a.chargeOhms * a.farads);
}

/** Time discharging from a voltage down to the lower level; 0 when already there. */
export function dischargeSeconds(a: Astable, fromVolts: Volts): Seconds {
  if (fromVolts <= a.lowerVolts) return 0;
  return settleSeconds(fromVolts, a.lowerVolts, a.sinkVolts, a.sinkOhms * a.farads);
}

/**
 * Where the upper level lies for the instant of a dip. A dip counts no deeper than half-way to the lower level: deeper
 * ones, of a weak supply, would have two voices end each other's highs without time passing.
 */
export function dippedVolts({ lowerVolts, upperVolts }: Astable, dip: Volts): Volts {
  return Math.max(upperVolts - dip, (lowerVolts + upperVolts) / 2);
}

export interface Cycle {
  readonly highSeconds: Seconds;
  readonly lowSeconds: Seconds;
  readonly frequency: Hertz;
  /** Share of the period the output is high. */
  readonly dutyCycle: Fraction;
  /** First high after a long reset: the capacitor starts at the discharge pin's level, not at a third. */
  readonly firstHighSeconds: Seconds;
}

/** The steady cycle and the first high. Frequency 0 when a level is never reached. */
export function cycleOf(a: Astable): Cycle {
  const highSeconds = chargeSeconds(a, a.lowerVolts);
  const lowSeconds = dischargeSeconds(a, a.upperVolts);
  const period = highSeconds + lowSeconds;
  const runs = Number.isFinite(period) && period > 0;
  return {
    highSeconds,
    lowSeconds,
    frequency: runs ? 1 / period : 0,
    dutyCycle: runs ? highSeconds / period : Number.isFinite(highSeconds) ? 0 : 1,
    firstHighSeconds: chargeSeconds(a, a.sinkVolts),
  };
}
