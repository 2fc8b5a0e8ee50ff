/** Light by the end of a rippling cell's conductance: the way back of the band, as far as any light leads. */
import { expect, test } from 'vitest';
import { cellSpeed } from '../../src/circuit/cell.ts';
import { luxForBand, rippledBand } from '../../src/plan/ripple-band.ts';

const speed = cellSpeed({ family: 'cds-8-20k', r10Ohms: 12_000, gamma: 0.68 });
const deep = { hertz: 100, depth: 1, shape: 'pulse', duty: 0.55 } as const;

test('the light found for an end of the band is the one that leaves that end there', () => {
  for (const ripple of [deep, { hertz: 100, depth: 0.4, shape: 'sine' } as const])
    for (const lux of [1, 100, 10_000]) {
      const band = rippledBand(speed, lux, ripple);
      for (const end of ['low', 'high'] as const)
        expect(luxForBand(speed, ripple, end, band[end]) / lux).toBeCloseTo(1, 3);
    }
});

test('what no light leaves there is told as such, however dark the lamp is between its pulses', () => {
  const { low } = rippledBand(speed, 1e6, deep);
  expect(luxForBand(speed, deep, 'low', 30 * low)).toBe(Number.POSITIVE_INFINITY);
  expect(luxForBand(speed, deep, 'high', 1e-30)).toBe(0);
  expect(luxForBand(speed, deep, 'high', 1e300)).toBe(Number.POSITIVE_INFINITY);
});
