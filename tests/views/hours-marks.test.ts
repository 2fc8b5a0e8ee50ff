/** Scales, lines and bands of the hours chart. */
import { expect, test } from 'vitest';
import {
  areaBetween,
  courseOf,
  hourTicks,
  lineThrough,
  luxSpan,
  luxTicks,
} from '../../src/views/plots/hours-marks.ts';

test('a line breaks where the light is not known, and its band with it', () => {
  const line = [
    { x: 0, y: 10 },
    { x: 1, y: 20 },
    { x: 2, y: null },
    { x: 3, y: 30 },
    { x: 4, y: 40 },
  ];
  expect(lineThrough(line)).toBe('M0.0 10.0L1.0 20.0M3.0 30.0L4.0 40.0');
  expect(areaBetween(line, line).match(/Z/g)).toHaveLength(2);
  const course = courseOf(line);
  expect(course(0.5)).toBe(15);
  expect(course(1.5)).toBeNull();
  expect(course(9)).toBeNull();
});

test('the scale of light holds all light, threshold and at least a decade, and never more than five', () => {
  const [least, most] = luxSpan([60, 300], [145]);
  expect(least).toBeLessThanOrEqual(60);
  expect(most).toBeGreaterThanOrEqual(300);
  expect(most / least).toBeGreaterThanOrEqual(10);
  const [dark, bright] = luxSpan([1e-9, 100_000], [Number.POSITIVE_INFINITY]);
  expect(bright / dark).toBeCloseTo(1e5, 0);
  expect(luxSpan([], [])[0]).toBeGreaterThan(0);
});

test('ticks of light are ones and threes inside the scale', () => {
  expect(luxTicks([25, 1200], false)).toEqual([30, 100, 300, 1000]);
  expect(luxTicks([0.9, 12_000], true)).toEqual([1, 10, 100, 1000, 10_000]);
});

test('ticks of the hours are round, as many as there is room for, past midnight too', () => {
  expect(hourTicks([10, 18], 10)).toEqual([10, 11, 12, 13, 14, 15, 16, 17, 18]);
  expect(hourTicks([10, 18], 3)).toEqual([12, 15, 18]);
  expect(hourTicks([20, 26], 4)).toEqual([20, 22, 24, 26]);
  expect(hourTicks([9.5, 10.5], 8)).toEqual([9.5, 9.75, 10, 10.25, 10.5]);
});
