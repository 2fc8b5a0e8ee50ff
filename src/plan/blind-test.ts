/**
 * Two sounds and X, which is one of them: what X is each time, what the listener said, and how likely so good a score is
 * by guessing. The chance is the upper tail of the binomial distribution with one half.
 */
import { uniformFrom } from '../quantity/random.ts';
import type { Fraction } from '../quantity/units.ts';

export type Side = 'first' | 'second';

export interface BlindTest {
  readonly seed: number;
  /** What was said of each X so far, and what it was. */
  readonly answers: readonly { readonly said: Side; readonly was: Side }[];
}

/** What X is at a turn, from 0; the same seed gives the same order. */
function xAt(seed: number, turn: number): Side {
  const uniform = uniformFrom(seed);
  for (let i = 0; i < turn; i++) uniform();
  return uniform() < 0.5 ? 'first' : 'second';
}

/** What X is now. */
export function presentX({ seed, answers }: BlindTest): Side {
  return xAt(seed, answers.length);
}

/** After an answer; X is drawn anew. */
export function answered(test: BlindTest, said: Side): BlindTest {
  return { ...test, answers: [...test.answers, { said, was: presentX(test) }] };
}

export interface Score {
  readonly right: number;
  readonly of: number;
  /** How often guessing does as well or better. */
  readonly chance: Fraction;
}

export function scoreOf({ answers }: BlindTest): Score {
  const right = answers.filter(({ said, was }) => said === was).length;
  return { right, of: answers.length, chance: atLeast(right, answers.length) };
}

/** Probability of at least `right` heads in `of` throws. */
function atLeast(right: number, of: number): Fraction {
  // The ways to throw k heads, each from the one before.
  let ways = 1;
  let sum = 0;
  for (let k = 0; k <= of; k++) {
    if (k >= right) sum += ways;
    ways = (ways * (of - k)) / (k + 1);
  }
  return sum / 2 ** of;
}
