/**
 * Preferred values as data: the E series of IEC 60063, and the values trimmers and capacitors are usually sold in.
 * Plain numbers of one decade; SI units where a function gives parts.
 */
import type { Farads, Ohms } from '../quantity/units.ts';

export type SeriesId = 'E3' | 'E6' | 'E12' | 'E24' | 'E48' | 'E96' | 'E192';

// IEC 60063, two significant figures. The standard's list departs from the rounded roots of ten at eight places.
const E24 = [
  10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91,
] as const;

/** Every n-th value of a list. */
const everyOf = (n: number, values: readonly number[]): readonly number[] =>
  values.filter((_, i) => i % n === 0);

/** IEC 60063, three significant figures: the rounded roots of ten, but 920 where the root gives 919. */
const E192: readonly number[] = Array.from({ length: 192 }, (_, i) => {
  const value = Math.round(100 * 10 ** (i / 192));
  return value === 919 ? 920 : value;
});

/** The mantissas of one decade, as whole numbers from 10 or from 100 on. */
export const SERIES: Readonly<Record<SeriesId, readonly number[]>> = {
  E3: everyOf(8, E24),
  E6: everyOf(4, E24),
  E12: everyOf(2, E24),
  E24,
  E48: everyOf(4, E192),
  E96: everyOf(2, E192),
  E192,
};

/** Whole-number mantissa times a power of ten, without the rounding error of a product. */
const scaled = (mantissa: number, exponent: number): number => Number(`${mantissa}e${exponent}`);

/** A share by which a value may lie outside a range and still count as its end: rounding only. */
const ROUNDING = 1e-9;

/** The values of a series from `min` to `max`, both included, rising. Both above 0; empty when none lies there. */
export function seriesBetween(series: SeriesId, min: number, max: number): readonly number[] {
  if (!(min > 0 && max >= min && Number.isFinite(max))) return [];
  const mantissas = SERIES[series];
  const digits = Math.floor(Math.log10(mantissas[0]!));
  const found: number[] = [];
  const last = Math.floor(Math.log10(max)) - digits;
  for (let exponent = Math.floor(Math.log10(min)) - digits; exponent <= last; exponent++)
    for (const mantissa of mantissas) {
      const value = scaled(mantissa, exponent);
      if (value >= min * (1 - ROUNDING) && value <= max * (1 + ROUNDING)) found.push(value);
    }
  return found;
}

/** The value of a series nearest by ratio (the smaller of two equally near). Value above 0 and finite. */
export function nearestPreferred(series: SeriesId, value: number): number {
  const near = seriesBetween(series, value / 3, value * 3);
  const apart = (other: number) => Math.abs(Math.log(other / value));
  return near.reduce((best, other) => (apart(other) < apart(best) ? other : best));
}

/** Whether a value stands in a series, within rounding. */
export function isPreferred(series: SeriesId, value: number): boolean {
  return value > 0 && Math.abs(nearestPreferred(series, value) / value - 1) < 1e-6;
}

/** Trimmers: 1-2-5 in each decade (Bourns 3362 and 3296, common values). */
export const TRIMMER_OHMS: readonly Ohms[] = [1, 10, 100].flatMap((k) => [1000 * k, 2000 * k, 5000 * k]);

/** Fixed resistors worth trying as RA or RBf: below, the discharge pin is strained; above, leakage tells. */
export const TIMING_OHMS = { min: 1000, max: 470e3 } as const;

/** Timing capacitors worth trying for a tone: film and ceramic as commonly stocked (common practice). */
export const TIMING_FARADS: { readonly min: Farads; readonly max: Farads } = { min: 1e-9, max: 1e-6 };
