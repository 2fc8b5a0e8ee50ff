/** Ripple of mains lamps against published figures and against plain sums over a cycle. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cameraAlias,
  exposureKeeps,
  ieee1789Limits,
  ieee1789Verdict,
  lampRipple,
  MAINS_LAMPS,
  type MainsLamp,
  type MainsLampId,
} from '../../src/light/mains-lamp.ts';
import {
  flickerIndexOf,
  RIPPLE_LIMITS,
  type Ripple,
  type RippleShape,
  rippleAt,
  rippleBefore,
  rippleBreak,
} from '../../src/light/ripple.ts';

const IEEE = 'IEEE 1789-2015, 8.1.1, as public software codes it';
const IES = 'IES definitions';
const CALC = 'from the definition';

/** Mean, extremes and area above the mean, by summing over one cycle. */
function summed(ripple: Ripple) {
  const count = 200_000;
  const values = Array.from({ length: count }, (_, i) => rippleAt(ripple, (i + 0.5) / count / ripple.hertz));
  const mean = values.reduce((sum, x) => sum + x, 0) / count;
  const above = values.reduce((sum, x) => sum + Math.max(0, x - mean), 0) / count;
  const max = values.reduce((most, x) => Math.max(most, x), 0);
  const min = values.reduce((least, x) => Math.min(least, x), Number.POSITIVE_INFINITY);
  return { mean, depth: (max - min) / (max + min), index: above / mean };
}

describe('limits of ripple', () => {
  test.each([
    ['ls:F1', 100, 8.0, 3.33, 0.01],
    ['ls:F2', 120, 9.6, 4.0, 0.01],
    ['ls:F3', 50, 1.25, 0.5, 0.01],
    ['ls:F4', 400, 32, 13.3, 0.1],
    ['ls:F4', 1000, 80, 33.3, 0.1],
    ['ls:F5', 1250, 100, 41.6, 0.1],
    ['ls:F5', 2000, null, 66.6, 0.1],
  ] as const)(
    `%s: at %d Hz low risk to %s %%, no effect to %s %% (${IEEE})`,
    (_id, hertz, low, none, within) => {
      const { lowRisk, noEffect } = ieee1789Limits(hertz);
      if (low === null) expect(lowRisk).toBeNull();
      else expect(Math.abs(lowRisk! * 100 - low)).toBeLessThanOrEqual(within);
      expect(Math.abs(noEffect! * 100 - none)).toBeLessThanOrEqual(within);
    },
  );

  test.each([
    [0.28, 100, 'above both'],
    [0.066, 120, 'low risk'],
    [0.03, 100, 'no effect'],
  ] as const)(`ls:F8: a depth of %d at %d Hz is "%s" (${IEEE})`, (depth, hertz, verdict) => {
    expect(ieee1789Verdict(depth, hertz)).toBe(verdict);
  });

  test('above 1250 Hz nothing is above low risk, above 3000 Hz nothing has an effect; below 8 Hz little is allowed', () => {
    expect(ieee1789Verdict(1, 1251)).toBe('low risk');
    expect(ieee1789Verdict(1, 3001)).toBe('no effect');
    expect(ieee1789Verdict(0.003, 5)).toBe('above both');
    expect(ieee1789Verdict(0.0015, 5)).toBe('low risk');
  });
});

describe('depth and index', () => {
  const full = (shape: RippleShape, duty?: number): Ripple => ({
    hertz: 100,
    depth: 1,
    shape,
    ...(duty === undefined ? {} : { duty }),
  });

  test(`ls:F6: 110 at most and 90 at least is 10 %; a sine of 10 % has index 0.03183 (${IES})`, () => {
    const ripple: Ripple = { hertz: 100, depth: 0.1, shape: 'sine' };
    expect(100 * rippleAt(ripple, 0.0025)).toBeCloseTo(110, 9);
    expect(100 * rippleAt(ripple, 0.0075)).toBeCloseTo(90, 9);
    expect(Math.abs(flickerIndexOf(ripple) - 0.03183)).toBeLessThan(1e-4);
  });

  test.each([
    ['full sine', full('sine'), 0.3183],
    ['|sin|', full('rectified'), 0.2105],
    ['triangle to zero', full('triangle'), 0.25],
    ['square, duty 0.5', full('pulse'), 0.5],
    ['square, duty 0.25', full('pulse', 0.25), 0.75],
    ['sin², which is a full sine', full('sine'), 0.3183],
  ] as const)(`ls:F7: the index of %s (${IES})`, (_name, ripple, index) => {
    expect(Math.abs(flickerIndexOf(ripple) - index)).toBeLessThan(5e-4);
  });

  test('sin² is a full sine', () => {
    for (let i = 0; i < 100; i++) {
      const t = i / 100 / 100;
      expect(rippleAt(full('sine'), t)).toBeCloseTo(2 * Math.sin(Math.PI * (100 * t + 0.25)) ** 2, 9);
    }
  });

  test('at any depth the mean is 1, and depth and index come out when a cycle is summed', () => {
    fc.assert(
      fc.property(
        fc.constantFrom<RippleShape>('sine', 'rectified', 'triangle', 'pulse'),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        fc.double({ ...RIPPLE_LIMITS.duty, noNaN: true }),
        (shape, depth, duty) => {
          const ripple: Ripple = { hertz: 100, depth, shape, ...(shape === 'pulse' ? { duty } : {}) };
          const sums = summed(ripple);
          expect(sums.mean).toBeCloseTo(1, 3);
          expect(sums.depth).toBeCloseTo(depth, 3);
          expect(sums.index).toBeCloseTo(flickerIndexOf(ripple), 3);
        },
      ),
      { seed: 7, numRuns: 20 },
    );
  });

  test.each(Object.keys(MAINS_LAMPS) as MainsLampId[])(
    'depth and shape of “%s” give the index that is told of it',
    (id) => {
      const { depth, depthSpan, indexSpan, source }: MainsLamp = MAINS_LAMPS[id];
      expect(depth).toBeGreaterThanOrEqual(depthSpan.min);
      expect(depth).toBeLessThanOrEqual(depthSpan.max);
      expect(source).toMatch(/from memory|trade/);
      for (const mains of [50, 60] as const) {
        const ripple = lampRipple(id, mains);
        expect(ripple.hertz).toBe(mains === 50 ? 100 : 120);
        if (indexSpan === null) continue;
        expect(flickerIndexOf(ripple)).toBeGreaterThan(indexSpan.min - 0.01);
        expect(flickerIndexOf(ripple)).toBeLessThan(indexSpan.max + 0.01);
      }
    },
  );
});

test('breaks come strictly later, on every kink and jump, and the light jumps nowhere else', () => {
  fc.assert(
    fc.property(
      fc.constantFrom<RippleShape>('sine', 'rectified', 'triangle', 'pulse'),
      fc.double({ ...RIPPLE_LIMITS.hertz, noNaN: true }),
      fc.double({ ...RIPPLE_LIMITS.duty, noNaN: true }),
      fc.double({ min: 0, max: 10_000, noNaN: true }),
      (shape, hertz, duty, start) => {
        const ripple: Ripple = { hertz, depth: 1, shape, ...(shape === 'pulse' ? { duty } : {}) };
        let t = start;
        let jumps = 0;
        for (let i = 0; i < 60; i++) {
          const next = rippleBreak(ripple, t);
          if (next === Number.POSITIVE_INFINITY) {
            expect(shape).toBe('sine');
            return;
          }
          expect(next).toBeGreaterThan(t);
          const step = rippleAt(ripple, next) - rippleBefore(ripple, next);
          if (shape === 'pulse') {
            // Up to 1/duty or down to 0, in turns.
            expect(Math.abs(step)).toBeCloseTo(1 / duty, 9);
            jumps++;
          } else expect(step).toBe(0);
          t = next;
        }
        if (shape === 'pulse') expect(jumps).toBe(60);
        if (shape === 'rectified') expect(60 / (t - start) / hertz).toBeGreaterThan(0.9);
      },
    ),
    { seed: 3, numRuns: 60 },
  );
});

describe('a camera', () => {
  test.each([
    ['ls:F12', 100, 30, 10],
    ['ls:F12', 100, 29.97, 10.09],
    ['ls:F12', 100, 25, 0],
    ['ls:F12', 100, 60, 20],
    ['ls:F12', 100, 24, 4],
    ['ls:F13', 120, 30, 0],
    ['ls:F13', 120, 29.97, 0.12],
    ['ls:F13', 120, 25, 5],
    ['ls:F13', 120, 60, 0],
  ] as const)(`%s: %d Hz at %d frames a second beats at %d Hz (${CALC})`, (_id, hertz, rate, beat) => {
    expect(Math.abs(cameraAlias(hertz, rate) - beat)).toBeLessThanOrEqual(0.01);
  });

  test.each([
    ['ls:F14', 100, 100, 0],
    ['ls:F14', 100, 60, 0.1654],
    ['ls:F14', 100, 64, 0.1998],
    ['ls:F14', 100, 128, 0.2585],
    ['ls:F14', 100, 30, 0.0827],
    ['ls:F14', 100, 32, 0.039],
    ['ls:F15', 120, 120, 0],
    ['ls:F15', 120, 60, 0],
    ['ls:F15', 120, 100, 0.1559],
  ] as const)(`%s: of %d Hz an exposure of 1/%d s keeps %d (${CALC})`, (_id, hertz, part, kept) => {
    expect(Math.abs(exposureKeeps(hertz, 1 / part) - kept)).toBeLessThanOrEqual(5e-4);
  });

  test('a very short exposure keeps all', () => {
    expect(exposureKeeps(100, 0)).toBe(1);
    expect(exposureKeeps(100, 1e-5)).toBeCloseTo(1, 5);
  });
});
