/**
 * The values of a pupil's work sheet. No two numbers of one class set share a sheet: a number picks one place in a
 * fixed list of all combinations, and different numbers pick different places (a stride without common factor with the
 * list's length). SI units.
 */
import { uniformFrom } from '../quantity/random.ts';

const CHOICES = {
  r10Ohms: [8000, 9000, 10_000, 11_000, 12_000, 13_000, 15_000, 16_000, 18_000, 20_000],
  gamma: [0.6, 0.65, 0.7, 0.75, 0.8],
  lux: [20, 30, 40, 50, 80, 100, 150, 200, 300, 400, 500],
  fixedOhms: [4700, 6800, 8200, 10_000, 12_000, 15_000, 18_000],
  cell: ['bottom', 'top'],
  belowOhms: [1500, 2000, 2500, 3000, 3500, 4000, 5000, 6000],
  raOhms: [2200, 3300, 4700, 6800, 10_000, 22_000],
  rbOhms: [15_000, 18_000, 22_000, 27_000, 33_000, 39_000, 47_000],
  farads: [22e-9, 33e-9, 47e-9, 68e-9, 100e-9],
} as const;
export type Chosen = { readonly [K in keyof typeof CHOICES]: (typeof CHOICES)[K][number] };

const KEYS = Object.keys(CHOICES) as (keyof Chosen)[];

/** All combinations: so many different sheets there are. */
export const SHEETS = KEYS.reduce((product, key) => product * CHOICES[key].length, 1);

const greatestCommon = (a: number, b: number): number => (b === 0 ? a : greatestCommon(b, a % b));

/** The values for a pupil's number, a whole number from 1 to `SHEETS`. */
export function chosenFor(number: number, seed: number): Chosen {
  const uniform = uniformFrom(seed);
  const offset = Math.floor(uniform() * SHEETS);
  // Near the golden section of the list neighbours lie far apart.
  let stride = Math.floor(SHEETS * (0.6 + 0.05 * uniform()));
  while (greatestCommon(stride, SHEETS) !== 1) stride++;
  let place = Number((BigInt(offset) + BigInt(number) * BigInt(stride)) % BigInt(SHEETS));
  const chosen: Partial<Record<keyof Chosen, number | string>> = {};
  for (const key of KEYS) {
    const options = CHOICES[key];
    chosen[key] = options[place % options.length]!;
    place = Math.floor(place / options.length);
  }
  return chosen as Chosen;
}
