/**
 * Beats of two tones: where their interval lies near a ratio of small numbers, two of their partials nearly meet, and
 * the difference of those is heard as beats. Just ratios are those of `notes.ts`, with octaves added.
 */
import { INTERVAL_NAMES } from '../design/pitch.ts';
import type { Hertz, Pair } from '../quantity/units.ts';
import { centsBetween, justRatio } from './notes.ts';

export interface Beats {
  /** Upper to lower. */
  readonly ratio: readonly [number, number];
  /** How far the interval lies from that ratio, cents, + = wider. */
  readonly apartCents: number;
  /** Beats a second. */
  readonly hertz: Hertz;
}

/** Partials above this number are too weak to beat (a square wave's n-th has 1/n of its first). */
const HIGHEST_PARTIAL = 9;

const OCTAVE: readonly (readonly [number, number])[] = INTERVAL_NAMES.map((name) => justRatio(name));

/** Lowest terms of a ratio with octaves added to its upper side. */
function widened([upper, lower]: readonly [number, number], octaves: number): readonly [number, number] {
  let [p, q] = [upper * 2 ** octaves, lower];
  while (p % 2 === 0 && q % 2 === 0) [p, q] = [p / 2, q / 2];
  return [p, q];
}

/** The ratio of small numbers nearest to the interval of two frequencies above 0, and its beats; null when none is near. */
export function beatsOf({ A, B }: Pair<Hertz>): Beats | null {
  const [low, high] = A < B ? [A, B] : [B, A];
  const octaves = Math.floor(centsBetween(low, high) / 1200 + 1e-9);
  const near = OCTAVE.map((ratio) => widened(ratio, octaves))
    .filter((ratio) => Math.max(...ratio) <= HIGHEST_PARTIAL)
    .map(
      (ratio): Beats => ({
        ratio,
        apartCents: centsBetween(ratio[0], ratio[1] * (high / low)),
        hertz: Math.abs(ratio[1] * high - ratio[0] * low),
      }),
    )
    .toSorted((a, b) => Math.abs(a.apartCents) - Math.abs(b.apartCents));
  const [best] = near;
  return best && Math.abs(best.apartCents) <= NEAR_CENTS ? best : null;
}

/** Further away than this nobody hears the ratio. */
const NEAR_CENTS = 40;
