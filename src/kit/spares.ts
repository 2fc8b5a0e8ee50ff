/**
 * How many of a part to have so that enough survive: parts are lost one by one and independently, so the number
 * left of n is binomial. The whole basket is safe when each line is safe at 1 − (1 − safe)/lines (the union bound).
 */
import type { Fraction } from '../quantity/units.ts';

/** Nobody orders more than this of one line; a rate that asks for it is refused by the batch's limits first. */
const MOST_PARTS = 100_000;

/** Chance that at least `needed` of `count` parts survive, each lost with chance `loss`. */
export function enoughChance(count: number, needed: number, loss: Fraction): Fraction {
  if (needed <= 0) return 1;
  if (count < needed) return 0;
  if (loss <= 0) return 1;
  if (loss >= 1) return 0;
  // P(0 lost), P(1 lost) … each from the one before; in logarithms, as the first may be far below 1e-300.
  let log = count * Math.log1p(-loss);
  let sum = 0;
  for (let lost = 0; lost <= count - needed; lost++) {
    sum += Math.exp(log);
    log += Math.log(((count - lost) / (lost + 1)) * (loss / (1 - loss)));
  }
  return Math.min(1, sum);
}

/** Least count with which at least `needed` survive with chance `safe`; null when no count below 100 000 does. */
export function countFor(needed: number, loss: Fraction, safe: Fraction): number | null {
  let low = needed;
  let high = Math.max(1, needed);
  while (enoughChance(high, needed, loss) < safe) {
    low = high + 1;
    high *= 2;
    if (high > MOST_PARTS) return null;
  }
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (enoughChance(middle, needed, loss) >= safe) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** What each of so many lines must be safe at, for the whole basket to be safe at `basket`. */
export function lineSafety(lines: number, basket: Fraction): Fraction {
  return lines > 0 ? 1 - (1 - basket) / lines : basket;
}

/** Whole packs for a number of pieces. */
export function packsFor(pieces: number, packSize: number): number {
  return Math.ceil(Math.max(0, pieces) / Math.max(1, packSize));
}
