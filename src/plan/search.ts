/**
 * From a wish and a drawer to the best candidates: every combination of RA, fixed part of RB, trimmer and capacitor
 * for both voices is accounted for, the best five hundred by first-order reach are drawn, and the best of those shown.
 * The search is a generator, so that whoever runs it can tell how far it is and stop it.
 */
import type { Candidate, Pitch, Target } from '../design/pitch.ts';
import type { Fraction, Pair } from '../quantity/units.ts';
import { VOICES } from '../quantity/units.ts';
import { drawKits, kitPlan, roomFor } from './draws.ts';
import { firstOrderReachOf } from './reach.ts';
import { cheapestPairs, type FoundPair, sharedParts } from './search-pairs.ts';
import {
  codesOf,
  fitsOf,
  type Miss,
  type Places,
  placesOf,
  UNIT,
  type VoiceFits,
  voiceParts,
  type Weights,
  weightsOf,
} from './search-voice.ts';
import { type Parts, partsOf } from './stock.ts';
import { type Chip, curvePoint, lawOf, targetRotations } from './timing.ts';
import { targetsOf, type WishProblem, wishProblems } from './wish.ts';

export interface SearchTask {
  readonly chip: Chip;
  readonly pitch: Pick<Pitch, 'wish' | 'drawer'>;
}

/** Candidates ranked by first-order reach and drawn, and kits drawn for each of them. */
export const MOST_RANKED = 500;
export const RANKING_KITS = 1500;

/** Why a candidate stands where it does: each preference's cost (0 = as good as can be) before its weight. */
export interface Reasons {
  /** Share of kits that miss a note with the wiper at 10 to 90 %, first order, of each voice. */
  readonly missed: Pair<Fraction>;
  /** Cents a degree at the target. */
  readonly centsPerDegree: Pair<number>;
  readonly differentParts: number;
  /** Sum of one kit's timing parts in the person's own prices; null where one has none. */
  readonly price: number | null;
}

export interface Ranked {
  readonly candidate: Candidate;
  readonly reasons: Reasons;
  /** Place in the first-order order, from 0. */
  readonly firstOrderPlace: number;
  /** Share of the kits drawn for the ranking that reach both notes, wiper at 10 to 90 %. */
  readonly drawnReach: Fraction;
  /** Weighted cost with what was drawn; the smallest is the best. */
  readonly cost: number;
}

export interface Progress {
  readonly stage: 'A' | 'B' | 'pairs' | 'draws';
  /** Of this stage, 0…1. */
  readonly share: Fraction;
}

export type SearchResult =
  | { readonly kind: 'refused'; readonly problems: readonly WishProblem[] }
  | {
      readonly kind: 'found';
      readonly targets: Pair<Target>;
      /** Best first; empty when no parts fit, and `misses` then says why. */
      readonly ranked: readonly Ranked[];
      /** Two-voice combinations accounted for, and pairs in which both voices fit. */
      readonly combinations: number;
      readonly fitting: number;
      readonly voices: Pair<{
        readonly tried: number;
        readonly fit: number;
        readonly misses: readonly Miss[];
      }>;
    };

export function* search(task: SearchTask): Generator<Progress, SearchResult> {
  const { chip, pitch } = task;
  const { wish } = pitch;
  const problems = wishProblems(pitch);
  const wanted = targetsOf(wish);
  if (!wanted.ok || problems.length > 0) return { kind: 'refused', problems };
  const { targets } = wanted;
  const parts = partsOf(pitch.drawer);
  const n = codesOf(parts);
  const weights = weightsOf(wish.weights, parts);

  const fits: VoiceFits[] = [];
  for (const voice of VOICES) {
    const trying = fitsOf({ chip, wish, parts, weights, voice, target: targets[voice] });
    let step = trying.next();
    while (!step.done) {
      yield { stage: voice, share: step.value };
      step = trying.next();
    }
    fits.push(step.value);
  }
  const [a, b] = fits as [VoiceFits, VoiceFits];

  const pairs = cheapestPairs(a, b, n, weights.perPart, MOST_RANKED, stockOf(parts, wish.kits));
  let step = pairs.next();
  while (!step.done) {
    yield { stage: 'pairs', share: step.value / MOST_RANKED };
    step = pairs.next();
  }

  const room = roomFor(RANKING_KITS);
  const ranked: Ranked[] = [];
  for (const [place, pair] of step.value.entries()) {
    ranked.push(rankedOf(task, parts, weights, targets, pair, place, room));
    if (place % 10 === 9) yield { stage: 'draws', share: (place + 1) / step.value.length };
  }
  ranked.sort((x, y) => x.cost - y.cost || x.firstOrderPlace - y.firstOrderPlace);
  return {
    kind: 'found',
    targets,
    ranked,
    combinations: a.tried * b.tried,
    fitting: a.codes.length * b.codes.length,
    voices: {
      A: { tried: a.tried, fit: a.codes.length, misses: a.misses },
      B: { tried: b.tried, fit: b.codes.length, misses: b.misses },
    },
  };
}

/** Whether the drawer holds enough of everything two voices use, for the whole batch. */
export function stockOf(parts: Parts, kits: number): (a: Places, b: Places) => boolean {
  const lists = [parts.resistors, parts.trimmers, parts.capacitors];
  if (lists.every((list) => list.every(({ quantity }) => quantity === null))) return () => true;
  const enough = (list: readonly { readonly quantity: number | null }[], at: number, each: number) => {
    const { quantity } = list[at]!;
    return quantity === null || quantity >= each * kits;
  };
  return (a, b) => {
    const resistors = [a[0], a[1], b[0], b[1]];
    return (
      resistors.every((at) =>
        enough(parts.resistors, at, resistors.filter((other) => other === at).length),
      ) &&
      enough(parts.trimmers, a[2], a[2] === b[2] ? 2 : 1) &&
      enough(parts.trimmers, b[2], 1) &&
      enough(parts.capacitors, a[3], a[3] === b[3] ? 2 : 1) &&
      enough(parts.capacitors, b[3], 1)
    );
  };
}

function rankedOf(
  { chip, pitch }: SearchTask,
  parts: Parts,
  weights: Weights,
  targets: Pair<Target>,
  pair: FoundPair,
  place: number,
  room: ReturnType<typeof roomFor>,
): Ranked {
  const { wish } = pitch;
  const n = codesOf(parts);
  const places = { A: placesOf(pair.a, n), B: placesOf(pair.b, n) };
  const candidate: Candidate = {
    parts: { A: voiceParts(parts, places.A), B: voiceParts(parts, places.B) },
    targets,
  };
  const reasons = reasonsOf(chip, candidate, wish.law, places, parts);
  // What fits has a law, so there is always a plan; and the same seed for all, so that luck favours none.
  const { reached, count } = drawKits(kitPlan(chip, candidate, wish.law)!, wish.seed, room);
  const drawn = { A: 1 - reached.easy.A / count, B: 1 - reached.easy.B / count };
  const missedMore = drawn.A + drawn.B - reasons.missed.A - reasons.missed.B;
  return {
    candidate,
    reasons,
    firstOrderPlace: place,
    drawnReach: reached.easy.both / count,
    cost: (pair.cost - 3 * weights.perPart) * UNIT + weights.wish.surerReach * missedMore,
  };
}

function reasonsOf(
  chip: Chip,
  candidate: Candidate,
  law: Pitch['wish']['law'],
  places: Pair<Places>,
  parts: Parts,
): Reasons {
  const rotations = targetRotations(chip, candidate);
  const of = (voice: 'A' | 'B') => {
    const voiceParts = candidate.parts[voice];
    const timing = lawOf(chip, chip.controlVolts[voice], voiceParts.ra.ohms)!;
    return {
      missed: 1 - firstOrderReachOf(chip.timer, timing, voiceParts, candidate.targets[voice], law),
      centsPerDegree: curvePoint(timing, voiceParts, rotations[voice]).centsPerDegree,
    };
  };
  const [a, b] = [of('A'), of('B')];
  const own = (p: Places) => (p[0] === p[1] ? 3 : 4);
  return {
    missed: { A: a.missed, B: b.missed },
    centsPerDegree: { A: a.centsPerDegree, B: b.centsPerDegree },
    differentParts: own(places.A) + own(places.B) - sharedParts(places.A, places.B),
    price: VOICES.map((voice) => priceOf(parts, places[voice])).reduce(added),
  };
}

const added = (a: number | null, b: number | null): number | null =>
  a === null || b === null ? null : a + b;

function priceOf(parts: Parts, [ra, rb, p, c]: Places): number | null {
  return [parts.resistors[ra]!, parts.resistors[rb]!, parts.trimmers[p]!, parts.capacitors[c]!]
    .map(({ price }) => price)
    .reduce(added);
}
