/** Hearing two sounds against X: fair draws, and a score that guessing is weighed against. */
import { expect, test } from 'vitest';
import { answered, type BlindTest, presentX, scoreOf } from '../../src/plan/blind-test.ts';

const begun = (seed: number): BlindTest => ({ seed, answers: [] });
const after = (test: BlindTest, answers: number, right: number): BlindTest => {
  let now = test;
  for (let i = 0; i < answers; i++) {
    const x = presentX(now);
    const other = x === 'first' ? 'second' : 'first';
    now = answered(now, i < right ? x : other);
  }
  return now;
};

test('nothing answered is no score, and guessing does as well for certain', () => {
  expect(scoreOf(begun(1))).toEqual({ right: 0, of: 0, chance: 1 });
});

// Binomial tails as printed in tables of significance for such tests: 5 of 5, 9 of 10, 12 of 16.
test.each([
  [5, 5, 1 / 32],
  [10, 9, 11 / 1024],
  [16, 12, 2517 / 65536],
  [4, 0, 1],
])('of %i answers %i right: guessing does as well in a share of %f', (answers, right, chance) => {
  const score = scoreOf(after(begun(7), answers, right));
  expect(score.right).toBe(right);
  expect(score.of).toBe(answers);
  expect(score.chance).toBeCloseTo(chance, 12);
});

test('X is either sound about as often, and the same seed repeats it (seeds 1 to 400)', () => {
  const seeds = Array.from({ length: 400 }, (_, i) => i + 1);
  const third = seeds.map((seed) => presentX(after(begun(seed), 2, 1)));
  expect(seeds.map((seed) => presentX(after(begun(seed), 2, 2)))).toEqual(third);
  const firsts = third.filter((x) => x === 'first').length;
  // Four standard deviations of 400 fair throws are 40.
  expect(Math.abs(firsts - 200)).toBeLessThan(40);
});

test('a long test is scored without loss: 500 right of 1000', () => {
  const { chance } = scoreOf(after(begun(3), 1000, 500));
  expect(chance).toBeGreaterThan(0.5);
  expect(chance).toBeLessThan(0.53);
});
