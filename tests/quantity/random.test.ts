/** Seeded numbers: they repeat, they differ between seeds, and they are spread as they should be. */
import { expect, test } from 'vitest';
import { gaussianFrom, uniformFrom } from '../../src/quantity/random.ts';

const take = (next: () => number, count: number) => Float64Array.from({ length: count }, next);
const mean = (values: Float64Array) => values.reduce((sum, x) => sum + x, 0) / values.length;

test('the same seed repeats, another does not', () => {
  expect(take(uniformFrom(5), 100)).toEqual(take(uniformFrom(5), 100));
  expect(take(uniformFrom(5), 100)).not.toEqual(take(uniformFrom(6), 100));
  expect(take(gaussianFrom(5), 100)).toEqual(take(gaussianFrom(5), 100));
});

test('uniform numbers fill 0…1 evenly (seed 1, 100 000 draws)', () => {
  const values = take(uniformFrom(1), 100_000);
  const bins = new Array<number>(10).fill(0);
  expect(values.every((x) => x >= 0 && x < 1)).toBe(true);
  for (const x of values) bins[Math.floor(x * 10)]!++;
  // Chi-square with nine degrees of freedom: 27.9 is passed once in a thousand seeds.
  const chi = bins.reduce((sum, n) => sum + (n - 10_000) ** 2 / 10_000, 0);
  expect(chi).toBeLessThan(27.9);
});

test('Gaussian numbers have mean 0, deviation 1, and follow each other independently (seed 2)', () => {
  const values = take(gaussianFrom(2), 100_000);
  expect(Math.abs(mean(values))).toBeLessThan(0.013);
  expect(mean(values.map((x) => x * x))).toBeCloseTo(1, 1);
  expect(Math.abs(mean(values.slice(1).map((x, i) => x * values[i]!)))).toBeLessThan(0.013);
  const beyondTwo = values.filter((x) => Math.abs(x) > 2).length / values.length;
  expect(Math.abs(beyondTwo - 0.0455)).toBeLessThan(0.0025);
});
