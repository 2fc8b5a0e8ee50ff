/**
 * One candidate looked at closely: what it reaches on paper and in the batch, where the trimmers will stand, how fine
 * they are to set, what moves the pitch afterwards, and what would be worth changing.
 */
import { type Lock, lockBetween } from '../circuit/warnings-pitch.ts';
import type { Candidate, DrawLaw, Target, VoiceParts } from '../design/pitch.ts';
import { TIMERS } from '../parts/timers.ts';
import { endOhms } from '../parts/trimmers.ts';
import { type Fraction, type Hertz, type Pair, pairOf, VOICES, type VoiceId } from '../quantity/units.ts';
import { type Change, changesFor } from './changes.ts';
import { commonRange, drawKits, type Kits, kitPlan, quantile, roomFor, type VoiceKits } from './draws.ts';
import { type Drift, driftOf } from './drift.ts';
import { COMFORT, type Sensitivity, sensitivitiesAt } from './reach.ts';
import {
  astableAt,
  type Chip,
  type CurvePoint,
  curvePoint,
  dutyAt,
  hertzAt,
  lawOf,
  rbAt,
  type TimingLaw,
  targetRotations,
} from './timing.ts';

/** Lowest and highest pitch. */
export type Range = Target;

/** Share of kits that a promised range holds for. */
export const PROMISED: Fraction = 0.99;
/** Kits drawn for one candidate: the share is then off by 0.7 % at most, nineteen times of twenty. */
export const ASSESSED_KITS = 20_000;

export interface VoiceAssessment {
  /** Stop to stop with nominal parts, and with the wiper at 10 to 90 %. */
  readonly nominal: Range;
  readonly easyNominal: Range;
  /** What 99 % of the drawn kits reach; null when no pitch is common to so many. */
  readonly promised: Range | null;
  readonly easyPromised: Range | null;
  /** Share of kits that reach the target. */
  readonly reached: { readonly easy: Fraction; readonly full: Fraction };
  /** Nominal turn for the middle of the target, and how drawn kits spread about it (5 %, median, 95 %). */
  readonly rotation: Fraction;
  readonly rotationSpread: { readonly low: number; readonly middle: number; readonly high: number };
  /** Pitch, steepness and settability at that turn. */
  readonly atTarget: CurvePoint;
  readonly duty: Fraction;
  /** Pitch of kits before tuning, trimmer at the nominal turn (0.5 %, median, 99.5 %). */
  readonly untuned: { readonly lowHertz: Hertz; readonly middleHertz: Hertz; readonly highHertz: Hertz };
  /** Every part at the limit of its tolerance, all one way, trimmer at the nominal turn. */
  readonly worstCase: Range;
  readonly sensitivities: readonly Sensitivity[];
  readonly changes: readonly Change[];
  readonly drift: Drift;
}

export interface Assessment {
  readonly law: DrawLaw;
  readonly kits: number;
  readonly seed: number;
  /** Share of kits that reach both targets. */
  readonly reached: { readonly easy: Fraction; readonly full: Fraction };
  readonly voices: Pair<VoiceAssessment>;
  /** Whether the voices are near enough to lock, nominal parts at their targets (sweeps: at the middle); null = far enough apart. */
  readonly lock: Lock | null;
}

/** Null where a voice never runs (a control voltage that leaves no room). */
export function assess(
  chip: Chip,
  candidate: Candidate,
  draw: { readonly law: DrawLaw; readonly seed: number; readonly kits?: number },
): Assessment | null {
  const plan = kitPlan(chip, candidate, draw.law);
  if (plan === null) return null;
  const kits = drawKits(plan, draw.seed, roomFor(draw.kits ?? ASSESSED_KITS));
  const rotations = targetRotations(chip, candidate);
  return {
    law: draw.law,
    kits: kits.count,
    seed: draw.seed,
    reached: sharesOf(kits, 'both'),
    voices: pairOf((voice) => voiceAssessment(chip, candidate, voice, rotations[voice], kits, draw.law)),
    lock: lockBetween(
      chip.dipVolts,
      chip.controlVolts,
      pairOf((voice) => astableAt(chip, voice, candidate.parts[voice], rotations[voice])),
    ),
  };
}

const sharesOf = ({ reached, count }: Kits, of: VoiceId | 'both') => ({
  easy: reached.easy[of] / count,
  full: reached.full[of] / count,
});

function voiceAssessment(
  chip: Chip,
  candidate: Candidate,
  voice: VoiceId,
  rotation: Fraction,
  kits: Kits,
  drawLaw: DrawLaw,
): VoiceAssessment {
  const parts = candidate.parts[voice];
  const controlVolts = chip.controlVolts[voice];
  // A plan was made, so the voice runs.
  const law = lawOf(chip, controlVolts, parts.ra.ohms)!;
  const drawn = kits.voices[voice];
  return {
    nominal: nominalRange(law, parts, 0, 1),
    easyNominal: nominalRange(law, parts, COMFORT.least, COMFORT.most),
    promised: commonRange(drawn.topHertz, drawn.bottomHertz, PROMISED),
    easyPromised: commonRange(drawn.easyTopHertz, drawn.easyBottomHertz, PROMISED),
    reached: sharesOf(kits, voice),
    rotation,
    rotationSpread: spreadOf(drawn.rotation),
    atTarget: curvePoint(law, parts, rotation),
    duty: dutyAt(law, parts.ra.ohms, rbAt(parts, rotation)),
    untuned: untunedOf(drawn),
    worstCase: worstCase(chip, law, parts, rotation),
    sensitivities: sensitivitiesAt(chip.timer, law, parts, rotation),
    changes: changesFor(chip, controlVolts, parts, candidate.targets[voice], drawLaw),
    drift: driftOf(chip, controlVolts, parts, rotation)!,
  };
}

/** From the wiper at `most` to the wiper at `least`. */
export function nominalRange(law: TimingLaw, parts: VoiceParts, least: Fraction, most: Fraction): Range {
  return { lowHertz: hertzAt(law, parts, most), highHertz: hertzAt(law, parts, least) };
}

function spreadOf(rotations: Float64Array): VoiceAssessment['rotationSpread'] {
  const sorted = rotations.toSorted();
  return { low: quantile(sorted, 0.05), middle: quantile(sorted, 0.5), high: quantile(sorted, 0.95) };
}

function untunedOf({ untunedHertz }: VoiceKits): VoiceAssessment['untuned'] {
  const sorted = untunedHertz.toSorted();
  return {
    lowHertz: quantile(sorted, 0.005),
    middleHertz: quantile(sorted, 0.5),
    highHertz: quantile(sorted, 0.995),
  };
}

/** Lowest and highest pitch at a turn, with every part at a limit of its tolerance and the timer at its typical one. */
export function worstCase(chip: Chip, law: TimingLaw, parts: VoiceParts, rotation: Fraction): Range {
  const { ra, rbFixed, trimmer, capacitor } = parts;
  const timer = TIMERS[chip.timer].accuracy.typical;
  const end = endOhms(trimmer.part, trimmer.ohms);
  const hertz = (side: 1 | -1): Hertz => {
    const stop = side === 1 ? end : 0;
    const way = trimmer.ohms * (1 + side * trimmer.tolerance) - stop;
    const rb = rbFixed.ohms * (1 + side * rbFixed.tolerance) + stop + rotation * way;
    const own = law.ownOhms * (1 + side * ra.tolerance);
    const farads = capacitor.farads * (1 + side * capacitor.tolerance) * (1 + side * timer);
    return 1 / (farads * (own + law.factor * rb));
  };
  return { lowHertz: hertz(1), highHertz: hertz(-1) };
}

/** Pitches of a batch before tuning, kit by kit: what a bench full of finished boards plays. Null as in `assess`. */
export function untunedBench(
  chip: Chip,
  candidate: Candidate,
  draw: { readonly law: DrawLaw; readonly seed: number; readonly kits: number },
): readonly Pair<Hertz>[] | null {
  const plan = kitPlan(chip, candidate, draw.law);
  if (plan === null) return null;
  const { voices } = drawKits(plan, draw.seed, roomFor(draw.kits));
  const [a, b] = VOICES.map((voice) => voices[voice].untunedHertz) as [Float64Array, Float64Array];
  return Array.from(a, (hertz, kit) => ({ A: hertz, B: b[kit]! }));
}
