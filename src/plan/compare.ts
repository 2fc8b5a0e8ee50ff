/** Capacitors side by side with the same resistors: what each reaches, on paper and in the batch, and how it drifts. */
import type { Candidate, DrawLaw, VoiceParts } from '../design/pitch.ts';
import { type Hertz, pairOf, type Volts } from '../quantity/units.ts';
import { nominalRange, PROMISED, type Range, worstCase } from './assess.ts';
import { commonRange, drawKits, kitPlan, roomFor } from './draws.ts';
import { type Drift, driftOf } from './drift.ts';
import { COMFORT } from './reach.ts';
import { type Chip, hertzAt, lawOf } from './timing.ts';

export const COMPARED = { min: 2, max: 6 } as const;
const COMPARED_KITS = 20_000;

export interface Compared {
  readonly parts: VoiceParts;
  readonly nominal: Range;
  readonly easyNominal: Range;
  /** What 99 % of drawn kits reach; null when no pitch is common to so many. */
  readonly promised: Range | null;
  readonly easyPromised: Range | null;
  /** With the trimmer in the middle: nominal, and every part at its limit. */
  readonly middleHertz: Hertz;
  readonly worstCase: Range;
  readonly drift: Drift;
}

/** One entry for each capacitor, in the order given; empty where the voice never runs. */
export function compareCapacitors(
  chip: Chip,
  controlVolts: Volts | null,
  base: VoiceParts,
  capacitors: readonly VoiceParts['capacitor'][],
  draw: { readonly law: DrawLaw; readonly seed: number; readonly kits?: number },
): readonly Compared[] {
  const law = lawOf(chip, controlVolts, base.ra.ohms);
  if (law === null) return [];
  const both: Chip = { ...chip, controlVolts: { A: controlVolts, B: controlVolts } };
  const room = roomFor(draw.kits ?? COMPARED_KITS);
  return capacitors.map((capacitor) => {
    const parts = { ...base, capacitor };
    const middleHertz = hertzAt(law, parts, 0.5);
    const candidate: Candidate = {
      parts: pairOf(() => parts),
      targets: pairOf(() => ({ lowHertz: middleHertz, highHertz: middleHertz })),
    };
    // The law exists, so the plan does.
    const { A } = drawKits(kitPlan(both, candidate, draw.law)!, draw.seed, room).voices;
    return {
      parts,
      nominal: nominalRange(law, parts, 0, 1),
      easyNominal: nominalRange(law, parts, COMFORT.least, COMFORT.most),
      promised: commonRange(A.topHertz, A.bottomHertz, PROMISED),
      easyPromised: commonRange(A.easyTopHertz, A.easyBottomHertz, PROMISED),
      middleHertz,
      worstCase: worstCase(chip, law, parts, 0.5),
      drift: driftOf(chip, controlVolts, parts, 0.5)!,
    };
  });
}
