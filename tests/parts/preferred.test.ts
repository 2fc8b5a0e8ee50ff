/** Preferred values against the lists of IEC 60063, and nearest values against published pairs. */
import { describe, expect, test } from 'vitest';
import { agedShare, DIELECTRICS } from '../../src/parts/capacitors.ts';
import {
  isPreferred,
  nearestPreferred,
  SERIES,
  type SeriesId,
  seriesBetween,
} from '../../src/parts/preferred.ts';

/** As IEC 60063 prints them. */
const PRINTED: Readonly<Partial<Record<SeriesId, string>>> = {
  E3: '10 22 47',
  E6: '10 15 22 33 47 68',
  E12: '10 12 15 18 22 27 33 39 47 56 68 82',
  E24: '10 11 12 13 15 16 18 20 22 24 27 30 33 36 39 43 47 51 56 62 68 75 82 91',
  E48: '100 105 110 115 121 127 133 140 147 154 162 169 178 187 196 205 215 226 237 249 261 274 287 301 316 332 348 365 383 402 422 442 464 487 511 536 562 590 619 649 681 715 750 787 825 866 909 953',
  E96: '100 102 105 107 110 113 115 118 121 124 127 130 133 137 140 143 147 150 154 158 162 165 169 174 178 182 187 191 196 200 205 210 215 221 226 232 237 243 249 255 261 267 274 280 287 294 301 309 316 324 332 340 348 357 365 374 383 392 402 412 422 432 442 453 464 475 487 499 511 523 536 549 562 576 590 604 619 634 649 665 681 698 715 732 750 768 787 806 825 845 866 887 909 931 953 976',
};

test.each(Object.entries(PRINTED))('%s is the list IEC 60063 prints', (series, printed) => {
  expect(SERIES[series as SeriesId].join(' ')).toBe(printed);
});

test('E192 holds E96, 192 different values in rising order, and 920 in the place of the root’s 919', () => {
  expect(new Set(SERIES.E192).size).toBe(192);
  expect(SERIES.E192.toSorted((a, b) => a - b)).toEqual(SERIES.E192);
  expect(SERIES.E192).toEqual(expect.arrayContaining([...SERIES.E96, 920]));
  expect(SERIES.E192).not.toContain(919);
});

describe('the nearest value by ratio (el:D1 to D4, against the lists of IEC 60063)', () => {
  test.each([
    [163_408, { E6: 150e3, E12: 150e3, E24: 160e3, E48: 162e3, E96: 162e3 }],
    [2500, { E6: 2200, E12: 2700, E24: 2400, E96: 2490 }],
    [8600, { E6: 10e3, E12: 8200, E96: 8660 }],
    [37_400, { E12: 39e3, E24: 36e3, E48: 38_300, E96: 37_400 }],
  ] as const)('%d', (value, expected) => {
    for (const [series, nearest] of Object.entries(expected))
      expect(nearestPreferred(series as SeriesId, value), series).toBe(nearest);
  });
});

test('a range takes both its ends, in any decade, and an impossible one is empty', () => {
  expect(seriesBetween('E3', 1e3, 1e5)).toEqual([1000, 2200, 4700, 10e3, 22e3, 47e3, 100e3]);
  expect(seriesBetween('E6', 1e-9, 1e-8)).toEqual([1e-9, 1.5e-9, 2.2e-9, 3.3e-9, 4.7e-9, 6.8e-9, 1e-8]);
  for (const [min, max] of [
    [0, 10],
    [-1, 10],
    [10, 1],
    [1, Number.POSITIVE_INFINITY],
    [Number.NaN, 1],
  ] as const)
    expect(seriesBetween('E12', min, max)).toEqual([]);
  expect(isPreferred('E12', 4700)).toBe(true);
  expect(isPreferred('E12', 5000)).toBe(false);
  expect(isPreferred('E12', 0)).toBe(false);
});

test('what a dielectric is told to be hangs together', () => {
  for (const { tolerances, tolerance, perDegree, overTemperature } of Object.values(DIELECTRICS)) {
    expect(tolerances).toContain(tolerance);
    expect(tolerances.toSorted((a, b) => a - b)).toEqual(tolerances);
    expect(perDegree[0]).toBeLessThanOrEqual(perDegree[1]);
    // Ten degrees are well within the rated range.
    expect(10 * perDegree[0]).toBeGreaterThanOrEqual(overTemperature[0]);
    expect(10 * perDegree[1]).toBeLessThanOrEqual(overTemperature[1]);
  }
});

test('a part as old as it was is unchanged, and film is at its limit after two years', () => {
  for (const { ageing } of Object.values(DIELECTRICS)) expect(agedShare(ageing, 24, 24)).toBe(1);
  expect(agedShare(DIELECTRICS.polyester.ageing, 0, 2 * 8766)).toBeCloseTo(0.97, 12);
});
