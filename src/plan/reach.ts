/**
 * What parts reach, to first order: each tolerance moves the logarithm of the period by its own share, the shares
 * add by their squares, and the sum is taken as bell-shaped (Gauss's law of error propagation). Used to rank; the
 * draws (`draws.ts`) are what is promised.
 */
import type { DrawLaw, Target, VoiceParts } from '../design/pitch.ts';
import { TIMERS, type TimerId } from '../parts/timers.ts';
import { endOhms } from '../parts/trimmers.ts';
import type { Fraction } from '../quantity/units.ts';
import type { TimingLaw } from './timing.ts';

/** Wiper places between which a trimmer is pleasant to set (common practice). */
export const COMFORT = { least: 0.1, most: 0.9 } as const;

/** Standard deviation of a part, as a share of its tolerance. */
export function deviationShare(law: DrawLaw): number {
  switch (law) {
    case 'uniform':
      return 1 / Math.sqrt(3);
    case 'normal-2':
      return 1 / 2;
    case 'normal-3':
      return 1 / 3;
  }
}

/** Probability that a standard normal number lies below z. Abramowitz and Stegun 7.1.26: off by 1.5e-7 at most. */
export function normalBelow(z: number): Fraction {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const tail =
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) *
    Math.exp(-x * x);
  return z >= 0 ? 1 - tail / 2 : tail / 2;
}

/** What decides a pitch, and by how much (± share of the period) its tolerance alone moves it. */
export interface Sensitivity {
  readonly of: 'capacitor' | 'ra' | 'rbFixed' | 'trimmer' | 'timer';
  /** ± share of the period at the limit of the tolerance. */
  readonly share: Fraction;
}

/** First-order sensitivities at a rotation, the largest first. */
export function sensitivitiesAt(
  timer: TimerId,
  law: TimingLaw,
  parts: VoiceParts,
  rotation: Fraction,
): readonly Sensitivity[] {
  const { ra, rbFixed, trimmer, capacitor } = parts;
  const end = endOhms(trimmer.part, trimmer.ohms);
  const turned = rotation * trimmer.ohms;
  const sum = law.ownOhms + law.factor * (rbFixed.ohms + turned + ((1 - rotation) * end) / 2);
  const found: Sensitivity[] = [
    { of: 'capacitor', share: capacitor.tolerance },
    { of: 'timer', share: TIMERS[timer].accuracy.typical },
    { of: 'trimmer', share: (law.factor * turned * trimmer.tolerance) / sum },
    { of: 'rbFixed', share: (law.factor * rbFixed.ohms * rbFixed.tolerance) / sum },
    { of: 'ra', share: (law.highFactor * ra.ohms * ra.tolerance) / sum },
  ];
  return found.toSorted((a, b) => b.share - a.share);
}

/** What a first-order reach is worked out from. Its entries may be written over: a search makes one object for all. */
export interface ReachInputs {
  ownOhms: number;
  factor: number;
  /** ± ohms of the charge resistor as they count in the period. */
  raSwing: number;
  fixedOhms: number;
  fixedTolerance: Fraction;
  trimmerOhms: number;
  trimmerTolerance: Fraction;
  endOhms: number;
  farads: number;
  /** Capacitor and timer together, ± share squared. */
  commonSquare: number;
  deviation: number;
}

/** Share of kits whose trimmer, between two rotations, reaches from `lowHertz` to `highHertz`: first order. */
export function firstOrderReach(i: ReachInputs, target: Target, least: Fraction, most: Fraction): Fraction {
  const above = endMargin(i, least, -1, target.highHertz);
  const below = endMargin(i, most, 1, target.lowHertz);
  return Math.max(0, above + below - 1);
}

/** Probability that one end of the travel lies past a frequency: above it (−1) or below it (+1). */
function endMargin(i: ReachInputs, rotation: Fraction, side: 1 | -1, hertz: number): Fraction {
  const turned = rotation * i.trimmerOhms;
  // The end resistance lies anywhere between none and the maker's limit: its middle.
  const sum = i.ownOhms + i.factor * (i.fixedOhms + turned + ((1 - rotation) * i.endOhms) / 2);
  const trimmer = i.factor * turned * i.trimmerTolerance;
  const fixed = i.factor * i.fixedOhms * i.fixedTolerance;
  const square = i.commonSquare + (trimmer * trimmer + fixed * fixed + i.raSwing * i.raSwing) / (sum * sum);
  const margin = side * Math.log(sum * i.farads * hertz);
  if (square === 0) return margin >= 0 ? 1 : 0;
  return normalBelow(margin / (i.deviation * Math.sqrt(square)));
}

/** The same for one voice's parts. */
export function firstOrderReachOf(
  timer: TimerId,
  law: TimingLaw,
  parts: VoiceParts,
  target: Target,
  drawLaw: DrawLaw,
  { least, most }: { readonly least: Fraction; readonly most: Fraction } = COMFORT,
): Fraction {
  return firstOrderReach(reachInputs(timer, law, parts, drawLaw), target, least, most);
}

function reachInputs(timer: TimerId, law: TimingLaw, parts: VoiceParts, drawLaw: DrawLaw): ReachInputs {
  const { ra, rbFixed, trimmer, capacitor } = parts;
  return {
    ownOhms: law.ownOhms,
    factor: law.factor,
    raSwing: law.highFactor * ra.ohms * ra.tolerance,
    fixedOhms: rbFixed.ohms,
    fixedTolerance: rbFixed.tolerance,
    trimmerOhms: trimmer.ohms,
    trimmerTolerance: trimmer.tolerance,
    endOhms: endOhms(trimmer.part, trimmer.ohms),
    farads: capacitor.farads,
    commonSquare: commonSquare(timer, capacitor.tolerance),
    deviation: deviationShare(drawLaw),
  };
}

export function commonSquare(timer: TimerId, capacitorTolerance: Fraction): number {
  return capacitorTolerance ** 2 + TIMERS[timer].accuracy.typical ** 2;
}
