/** Warnings about the timing of each voice, and about the two pitches together. SI units. */
import type { Design, Voice } from '../design/design.ts';
import { DIELECTRICS } from '../parts/capacitors.ts';
import { SUPPLIES } from '../parts/supplies.ts';
import { TIMERS } from '../parts/timers.ts';
import { endOhms, TRIMMERS } from '../parts/trimmers.ts';
import type { Fraction, Hertz, Ohms, Pair, Seconds, VoiceId, Volts } from '../quantity/units.ts';
import { pairOf, VOICES } from '../quantity/units.ts';
import {
  type Astable,
  astableOf,
  chargeSeconds,
  cycleOf,
  dippedVolts,
  dischargeSeconds,
  rbOhms,
} from './astable.ts';
import type { Instrument } from './instrument.ts';
import { railVolts, upperDipVolts } from './supply.ts';
import { type Warning, warn } from './warning.ts';

/** Fixed resistors of a common build; the design does not state it. */
const RESISTOR_TOLERANCE: Fraction = 0.01;

/** Interval, cents, of a ratio of frequencies. */
const cents = (ratio: number): number => 1200 * Math.log2(ratio);

/**
 * Worst case of an untuned pitch, cents down and up (both positive): the period is the product of capacitance,
 * resistance and the timer's own factor, each within ± its tolerance.
 */
export function spreadCents(tolerances: {
  readonly capacitor: Fraction;
  readonly resistance: Fraction;
  readonly timer: Fraction;
}): { readonly down: number; readonly up: number } {
  const { capacitor, resistance, timer } = tolerances;
  return {
    down: cents((1 + capacitor) * (1 + resistance) * (1 + timer)),
    up: -cents((1 - capacitor) * (1 - resistance) * (1 - timer)),
  };
}

export function pitchWarnings(design: Design, instrument: Instrument, voice: VoiceId): readonly Warning[] {
  const out: Warning[] = [];
  const v = design.voices[voice];
  const timer = TIMERS[design.timer];
  const { cycle, endHertz, centsPerPercent } = instrument.voices[voice];
  const rail = instrument.railVolts;

  if (v.raOhms < timer.raMinOhms)
    out.push(
      warn('ra-too-small', voice, 'danger', {
        ohms: v.raOhms,
        amperes: rail / v.raOhms,
        leastOhms: timer.raMinOhms,
      }),
    );
  const leastOhms = v.rbFixedOhms + endOhms(v.trimmer.part, v.trimmer.ohms);
  if (leastOhms < timer.raMinOhms)
    out.push(warn('rb-near-zero', voice, 'wrong', { leastOhms, topHertz: endHertz[0] }));
  const mostOhms = rail / 6 / timer.thresholdAmperes;
  if (v.raOhms + rbOhms(v) > mostOhms)
    out.push(warn('resistors-too-large', voice, 'wrong', { ohms: v.raOhms + rbOhms(v), mostOhms }));
  out.push(...capacitorWarnings(v, voice));
  if (cycle.frequency === 0) {
    out.push(warn('no-pitch', voice, 'wrong', { controlVolts: v.controlVolts, railVolts: rail }));
    return out;
  }

  const hertz = cycle.frequency;
  if (hertz > timer.formulaMaxHertz)
    out.push(warn('above-formula', voice, 'caution', { hertz, mostHertz: timer.formulaMaxHertz }));
  if (hertz < 20 || hertz > 20_000) out.push(warn('outside-hearing', voice, 'caution', { hertz }));
  const perPercent = Math.abs(centsPerPercent ?? 0);
  const errorCents = perPercent * TRIMMERS[v.trimmer.part].settable.rheostat * 100;
  if (errorCents > 5)
    out.push(warn('coarse-trimmer', voice, 'caution', { errorCents, centsPerPercent: perPercent }));
  out.push(...toleranceWarnings(design, voice));
  out.push(...batteryPitchWarnings(design, instrument, voice, hertz));
  return out;
}

function capacitorWarnings({ capacitor }: Voice, voice: VoiceId): readonly Warning[] {
  const { polarised, kind, overTemperature } = DIELECTRICS[capacitor.dielectric];
  if (polarised) return [warn('polarised-timing', voice, 'wrong', { farads: capacitor.farads })];
  const [fall, rise] = overTemperature;
  // A pitch falls as the capacitance rises.
  const facts = { downCents: cents(1 + rise), upCents: -cents(1 + fall) };
  return kind === 'ceramic' && rise - fall > 0.1 ? [warn('drifting-ceramic', voice, 'caution', facts)] : [];
}

/** What the tolerances of one batch do to this pitch, and whether the trimmer can make it good. */
function toleranceWarnings(design: Design, voice: VoiceId): readonly Warning[] {
  const v = design.voices[voice];
  const out: Warning[] = [];
  const trimmed = rbOhms(v) - v.rbFixedOhms;
  const total = v.raOhms + 2 * rbOhms(v);
  const resistance =
    ((v.raOhms + 2 * v.rbFixedOhms) * RESISTOR_TOLERANCE + 2 * trimmed * v.trimmer.tolerance) / total;
  const capacitor = v.capacitor.tolerance;
  const { down, up } = spreadCents({ capacitor, resistance, timer: TIMERS[design.timer].accuracy.typical });
  if (Math.max(down, up) > 100)
    out.push(warn('pitch-spread', voice, 'note', { downCents: down, upCents: up }));

  // RB that keeps (RA + 2·RB)·C when the capacitor lies at its limits.
  const neededFor = (share: Fraction): Ohms => (total / (1 + share) - v.raOhms) / 2;
  const least = v.rbFixedOhms + endOhms(v.trimmer.part, v.trimmer.ohms);
  const most = v.rbFixedOhms + v.trimmer.ohms * (1 - v.trimmer.tolerance);
  const [small, large] = [neededFor(capacitor), neededFor(-capacitor)];
  if (small < least)
    out.push(
      warn('pitch-out-of-reach', voice, 'caution', { end: 'top', share: (least - small) / rbOhms(v) }),
    );
  if (large > most)
    out.push(
      warn('pitch-out-of-reach', voice, 'caution', { end: 'bottom', share: (large - most) / rbOhms(v) }),
    );
  return out;
}

/** What an emptying battery does to a pitch: the discharge pin's level does not shrink with the supply. */
function batteryPitchWarnings(
  design: Design,
  instrument: Instrument,
  voice: VoiceId,
  hertz: Hertz,
): readonly Warning[] {
  if (SUPPLIES[design.supply.kind].ampereHours === null) return [];
  const fromVolts = instrument.railVolts;
  const toVolts = railVolts({ ...design.supply, volts: instrument.power.lastSourceVolts });
  const later = cycleOf(astableOf(design, voice, toVolts)).frequency;
  if (later <= 0) return [];
  const moved = cents(later / hertz);
  const driftCents = cents(1 + TIMERS[design.timer].driftPerVolt * Math.abs(fromVolts - toVolts));
  if (Math.abs(moved) + driftCents < 5) return [];
  return [warn('pitch-moves-with-battery', voice, 'note', { fromVolts, toVolts, cents: moved, driftCents })];
}

/** Simple ratios at which two voices that disturb each other tend to stick. */
const RATIOS: readonly (readonly [number, number])[] = [
  [1, 1],
  [2, 1],
  [3, 1],
  [3, 2],
  [4, 3],
];

/** Dip of the rail with capacitors at the chips: 300 mA for 200 ns out of 10 µF, V. */
const DECOUPLED_DIP: Volts = 0.006;

/**
 * Dip of the shared rail at each edge, V: what the design states, or what the timer's own spike makes of the
 * source's resistance where nothing stands beside the chip; never more than half the rail.
 */
export function dipVolts(design: Design, rail: Volts): Volts {
  const { spikeAmperes } = TIMERS[design.timer];
  const { decoupled, sourceOhms, sharedDipVolts } = design.supply;
  const own = spikeAmperes === 0 ? 0 : decoupled ? DECOUPLED_DIP : spikeAmperes * sourceOhms;
  return Math.min(rail / 2, Math.max(sharedDipVolts, own));
}

/**
 * How much sooner a voice's cycle ends when its upper level falls by `upperDip` at the last moment that still counts:
 * the high is cut short, and the way down is shorter too. Both parts in seconds; exact exponentials.
 */
export function lockWindow(
  astable: Astable,
  upperDip: Volts,
): { readonly high: Seconds; readonly low: Seconds } {
  const dipped = dippedVolts(astable, upperDip);
  return {
    high: chargeSeconds(astable, dipped),
    low: dischargeSeconds(astable, astable.upperVolts) - dischargeSeconds(astable, dipped),
  };
}

/**
 * How far a voice may stand below another, cents, and still be held by it: the other's edge must find it within its
 * window. (Short of the high part alone, every first meeting locks; up to both parts, a lock once made holds.)
 * For ratios other than 1 : 1 that is divided by their product (from memory, an upper estimate).
 */
export function lockCents(
  slower: Astable,
  upperDip: Volts,
  ratio: readonly [number, number] = [1, 1],
): number {
  const { frequency } = cycleOf(slower);
  const { high, low } = lockWindow(slower, upperDip);
  return -cents(Math.max(0.5, 1 - (high + low) * frequency)) / (ratio[0] * ratio[1]);
}

/** Two voices that are likely to stick together: at which ratio, how far from it, and within what they would. */
export interface Lock {
  readonly upper: number;
  readonly lower: number;
  readonly apartCents: number;
  readonly lockCents: number;
  readonly dipVolts: Volts;
}

/** Whether two running voices are near enough to lock, to first order; null when they are not. */
export function lockBetween(
  dip: Volts,
  controlVolts: Pair<Volts | null>,
  astables: Pair<Astable>,
): Lock | null {
  const [a, b] = [cycleOf(astables.A).frequency, cycleOf(astables.B).frequency];
  const slower = a < b ? 'A' : 'B';
  const upperDip = upperDipVolts(dip, controlVolts[slower]);
  const interval = Math.abs(cents(a / b));
  for (const ratio of RATIOS) {
    const apartCents = Math.abs(interval - cents(ratio[0] / ratio[1]));
    const within = lockCents(astables[slower], upperDip, ratio);
    if (within > 0 && apartCents < within)
      return { upper: ratio[0], lower: ratio[1], apartCents, lockCents: within, dipVolts: dip };
  }
  return null;
}

/** Warnings about the two pitches together. */
export function togetherWarnings(design: Design, instrument: Instrument): readonly Warning[] {
  const { astables, voices } = instrument;
  if (VOICES.some((voice) => voices[voice].cycle.frequency === 0)) return [];
  const controlVolts = pairOf((voice) => design.voices[voice].controlVolts);
  const lock = lockBetween(dipVolts(design, instrument.railVolts), controlVolts, astables);
  return lock ? [warn('voices-lock', null, 'caution', lock)] : [];
}
