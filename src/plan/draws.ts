/**
 * Kits drawn by a seed: every part somewhere within its tolerance, two voices in one room. For each kit: where the
 * ends of the trimmers lie, how far they are turned for the note, and what the kit plays before it is tuned.
 *
 * Drawn for each voice: C, RA, the fixed part of RB, the trimmer, its end resistance (anywhere from none to the
 * maker's limit), the timer (its typical accuracy), and how the capacitor answers to temperature; drawn once for both:
 * the room, within 5 °C either way (common practice). No object is made for a kit.
 */
import type { Candidate, DrawLaw } from '../design/pitch.ts';
import { DIELECTRICS } from '../parts/capacitors.ts';
import { TIMERS } from '../parts/timers.ts';
import { endOhms } from '../parts/trimmers.ts';
import { gaussianFrom, uniformFrom } from '../quantity/random.ts';
import { type Fraction, type Hertz, type Pair, pairOf } from '../quantity/units.ts';
import { COMFORT } from './reach.ts';
import { type Chip, lawOf, middleHertz, targetRotations } from './timing.ts';

/** How far a room may be from the one the parts were chosen for, °C either way. */
const ROOM_DEGREES = 5;

/** One voice's parts as the draws use them. */
interface Drawn {
  readonly farads: number;
  readonly faradsTolerance: Fraction;
  readonly perDegree: number;
  readonly perDegreeSpread: number;
  readonly ownOhms: number;
  readonly ownTolerance: Fraction;
  readonly factor: number;
  readonly fixedOhms: number;
  readonly fixedTolerance: Fraction;
  readonly trimmerOhms: number;
  readonly trimmerTolerance: Fraction;
  readonly endOhms: number;
  readonly timer: Fraction;
  readonly lowHertz: Hertz;
  readonly highHertz: Hertz;
  readonly middleHertz: Hertz;
  /** Where every trimmer stands before it is tuned. */
  readonly rotation: Fraction;
}

/** What is drawn, ready to draw; null where a voice never runs. */
export interface KitPlan {
  readonly law: DrawLaw;
  readonly voices: Pair<Drawn>;
}

/** What each kit of a draw came to, one number a kit. */
export interface VoiceKits {
  /** Pitch at the stops, and at the wiper places 10 % and 90 %. */
  readonly topHertz: Float64Array;
  readonly bottomHertz: Float64Array;
  readonly easyTopHertz: Float64Array;
  readonly easyBottomHertz: Float64Array;
  /** Turn for the middle of the target; outside 0…1 where the kit does not reach it. */
  readonly rotation: Float64Array;
  /** Pitch with the trimmer where nominal parts would want it. */
  readonly untunedHertz: Float64Array;
}

export interface Kits {
  readonly count: number;
  readonly voices: Pair<VoiceKits>;
  /** Kits that reach their whole target: with the wiper at 10 to 90 %, and at full travel. */
  readonly reached: {
    readonly easy: { A: number; B: number; both: number };
    readonly full: { A: number; B: number; both: number };
  };
}

export function kitPlan(chip: Chip, candidate: Candidate, law: DrawLaw): KitPlan | null {
  const rotations = targetRotations(chip, candidate);
  const laws = pairOf((id) => lawOf(chip, chip.controlVolts[id], candidate.parts[id].ra.ohms));
  if (laws.A === null || laws.B === null) return null;
  return {
    law,
    voices: pairOf((id): Drawn => {
      const { ra, rbFixed, trimmer, capacitor } = candidate.parts[id];
      const { lowHertz, highHertz } = candidate.targets[id];
      const [least, most] = DIELECTRICS[capacitor.dielectric].perDegree;
      return {
        farads: capacitor.farads,
        faradsTolerance: capacitor.tolerance,
        perDegree: (least + most) / 2,
        perDegreeSpread: (most - least) / 2,
        ownOhms: laws[id]!.ownOhms,
        ownTolerance: ra.tolerance,
        factor: laws[id]!.factor,
        fixedOhms: rbFixed.ohms,
        fixedTolerance: rbFixed.tolerance,
        trimmerOhms: trimmer.ohms,
        trimmerTolerance: trimmer.tolerance,
        endOhms: endOhms(trimmer.part, trimmer.ohms),
        timer: TIMERS[chip.timer].accuracy.typical,
        lowHertz,
        highHertz,
        middleHertz: middleHertz(candidate.targets[id]),
        rotation: rotations[id],
      };
    }),
  };
}

/** Room for a draw of so many kits; it can be drawn into again and again. */
export function roomFor(count: number): Kits {
  const list = () => new Float64Array(count);
  return {
    count,
    voices: pairOf(() => ({
      topHertz: list(),
      bottomHertz: list(),
      easyTopHertz: list(),
      easyBottomHertz: list(),
      rotation: list(),
      untunedHertz: list(),
    })),
    reached: { easy: { A: 0, B: 0, both: 0 }, full: { A: 0, B: 0, both: 0 } },
  };
}

/** Numbers from −1 to 1 as a law spreads them; bell-shaped ones may lie outside. */
function spreadFrom(law: DrawLaw, seed: number): () => number {
  if (law === 'uniform') {
    const uniform = uniformFrom(seed);
    return () => 2 * uniform() - 1;
  }
  const gaussian = gaussianFrom(seed);
  const share = law === 'normal-2' ? 1 / 2 : 1 / 3;
  return () => share * gaussian();
}

/** Draws kits; the same plan and seed give the same kits. Fills and returns `into`. */
export function drawKits(plan: KitPlan, seed: number, into: Kits): Kits {
  // What is no tolerance (the room, end resistances) is drawn alike under every law.
  const spread = spreadFrom(plan.law, seed);
  const level = uniformFrom(seed ^ 0x5bd1_e995);
  const { easy, full } = into.reached;
  easy.A = easy.B = easy.both = full.A = full.B = full.both = 0;
  const { A, B } = plan.voices;
  for (let kit = 0; kit < into.count; kit++) {
    const degrees = ROOM_DEGREES * (2 * level() - 1);
    const a = drawVoice(A, into.voices.A, kit, degrees, spread, level);
    const b = drawVoice(B, into.voices.B, kit, degrees, spread, level);
    full.A += a & 1;
    full.B += b & 1;
    full.both += a & b & 1;
    easy.A += a >> 1;
    easy.B += b >> 1;
    easy.both += (a & b) >> 1;
  }
  return into;
}

/** One voice of one kit. 1 = reached at full travel, 3 = also with the wiper at 10 to 90 %. */
function drawVoice(
  v: Drawn,
  into: VoiceKits,
  kit: number,
  degrees: number,
  spread: () => number,
  level: () => number,
): number {
  const warm = 1 + degrees * (v.perDegree + v.perDegreeSpread * (2 * level() - 1));
  const farads = v.farads * (1 + v.faradsTolerance * spread()) * (1 + v.timer * spread()) * warm;
  const own = v.ownOhms * (1 + v.ownTolerance * spread());
  const trimmer = v.trimmerOhms * (1 + v.trimmerTolerance * spread());
  const end = v.endOhms * level();
  const least = v.fixedOhms * (1 + v.fixedTolerance * spread()) + end;
  const way = trimmer - end;
  const base = own + v.factor * least;
  const perTurn = v.factor * way;
  const top = 1 / (farads * base);
  const bottom = 1 / (farads * (base + perTurn));
  const easyTop = 1 / (farads * (base + COMFORT.least * perTurn));
  const easyBottom = 1 / (farads * (base + COMFORT.most * perTurn));
  into.topHertz[kit] = top;
  into.bottomHertz[kit] = bottom;
  into.easyTopHertz[kit] = easyTop;
  into.easyBottomHertz[kit] = easyBottom;
  into.rotation[kit] = (1 / (v.middleHertz * farads) - base) / perTurn;
  into.untunedHertz[kit] = 1 / (farads * (base + v.rotation * perTurn));
  if (!(top >= v.highHertz && bottom <= v.lowHertz)) return 0;
  return easyTop >= v.highHertz && easyBottom <= v.lowHertz ? 3 : 1;
}

/** The value below which a share of some numbers in rising order lies: the nearest of them. */
export function quantile(sorted: Float64Array, share: Fraction): number {
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.round(share * (sorted.length - 1))))]!;
}

/** The lowest and the highest pitch that a share of kits reach both; null when no pitch is common to so many. */
export function commonRange(
  topHertz: Float64Array,
  bottomHertz: Float64Array,
  share: Fraction,
): { readonly lowHertz: Hertz; readonly highHertz: Hertz } | null {
  // Each end may be missed by half of those that are left over.
  const missed = (1 - share) / 2;
  const highHertz = quantile(topHertz.toSorted(), missed);
  const lowHertz = quantile(bottomHertz.toSorted(), 1 - missed);
  return lowHertz < highHertz ? { lowHertz, highHertz } : null;
}
