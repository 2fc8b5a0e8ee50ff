/** What one change of a part would do for a voice's reach, to first order: the changes that help, the best first. */
import { LIMITS } from '../design/limits.ts';
import type { DrawLaw, Target, VoiceParts } from '../design/pitch.ts';
import { DIELECTRICS } from '../parts/capacitors.ts';
import { seriesBetween, TRIMMER_OHMS } from '../parts/preferred.ts';
import { TIMERS } from '../parts/timers.ts';
import { endOhms, TRIMMERS } from '../parts/trimmers.ts';
import type { Fraction, Ohms, Volts } from '../quantity/units.ts';
import { firstOrderReachOf } from './reach.ts';
import { type Chip, lawOf } from './timing.ts';

export type Change = {
  /** Share of kits that reach the target with the wiper at 10 to 90 %, first order, before and after. */
  readonly before: Fraction;
  readonly after: Fraction;
  /** The voice's parts with the change made. */
  readonly parts: VoiceParts;
} & (
  | { readonly kind: 'closer capacitor'; readonly tolerance: Fraction }
  | { readonly kind: 'other capacitor'; readonly farads: number }
  | { readonly kind: 'closer trimmer'; readonly tolerance: Fraction }
  | { readonly kind: 'other trimmer'; readonly ohms: Ohms }
  | { readonly kind: 'other fixed part'; readonly ohms: Ohms }
);

/** Less than this is no help. */
const WORTH: Fraction = 0.002;

/** Steps to the neighbours in a series, this far away at most by ratio. */
const NEAR = 1.6;

export function changesFor(
  chip: Chip,
  controlVolts: Volts | null,
  parts: VoiceParts,
  target: Target,
  drawLaw: DrawLaw,
): readonly Change[] {
  const law = lawOf(chip, controlVolts, parts.ra.ohms);
  if (law === null) return [];
  const timer = TIMERS[chip.timer];
  const mostOhms = chip.railVolts / 6 / timer.thresholdAmperes;
  const reach = (with_: VoiceParts) => firstOrderReachOf(chip.timer, law, with_, target, drawLaw);
  const builds = ({ ra, rbFixed, trimmer }: VoiceParts) =>
    rbFixed.ohms + endOhms(trimmer.part, trimmer.ohms) >= timer.raMinOhms &&
    ra.ohms + rbFixed.ohms + trimmer.ohms <= mostOhms;
  const before = reach(parts);
  const found: Change[] = [];
  const { capacitor, trimmer, rbFixed } = parts;

  const closest = DIELECTRICS[capacitor.dielectric].tolerances.filter((t) => t < capacitor.tolerance);
  for (const tolerance of closest) {
    const changed = { ...parts, capacitor: { ...capacitor, tolerance } };
    found.push({ kind: 'closer capacitor', tolerance, before, after: reach(changed), parts: changed });
  }
  const least = Math.min(...Object.values(TRIMMERS).map(({ tolerance }) => tolerance));
  if (least < trimmer.tolerance) {
    const changed = { ...parts, trimmer: { ...trimmer, part: 'single-turn' as const, tolerance: least } };
    found.push({ kind: 'closer trimmer', tolerance: least, before, after: reach(changed), parts: changed });
  }
  for (const farads of neighbours(capacitor.farads)) {
    if (farads < LIMITS.timingFarads.min || farads > LIMITS.timingFarads.max) continue;
    const changed = { ...parts, capacitor: { ...capacitor, farads } };
    found.push({ kind: 'other capacitor', farads, before, after: reach(changed), parts: changed });
  }
  for (const ohms of neighbours(rbFixed.ohms)) {
    const changed = { ...parts, rbFixed: { ...rbFixed, ohms } };
    found.push({ kind: 'other fixed part', ohms, before, after: reach(changed), parts: changed });
  }
  for (const ohms of TRIMMER_OHMS) {
    if (ohms === trimmer.ohms || Math.max(ohms / trimmer.ohms, trimmer.ohms / ohms) > 5) continue;
    const changed = { ...parts, trimmer: { ...trimmer, ohms } };
    found.push({ kind: 'other trimmer', ohms, before, after: reach(changed), parts: changed });
  }
  return found
    .filter(({ after, parts: changed }) => after > before + WORTH && builds(changed))
    .toSorted((a, b) => b.after - a.after);
}

/** The values of E12 near another one. A value of 0 (none fitted) has none. */
function neighbours(value: number): readonly number[] {
  return value === 0
    ? []
    : seriesBetween('E12', value / NEAR, value * NEAR).filter((other) => Math.abs(other / value - 1) > 1e-6);
}
