/** How often a gate chatters, predicted, against the same gate played and counted. */
import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/design/design.ts';
import { type LightProgram, underLamp } from '../../src/light/program.ts';
import type { Ripple } from '../../src/light/ripple.ts';
import { chatterHertz, normalShare, worstChatter } from '../../src/plan/chatter.ts';
import type { Hertz, Lux } from '../../src/quantity/units.ts';
import { Gating, GRID } from '../../src/sound/gating.ts';
import { designWith } from '../circuit/building.ts';
import { settingsFrom } from '../sound/playing.ts';

/** Starts of voice A in steady light, after half a second to settle; B stays in the dark. */
function startsIn(design: Design, lux: Lux, ripple: Ripple | null, seconds: number): number {
  const program: LightProgram = underLamp({ kind: 'steady', lux: { A: lux, B: 0.1 } }, ripple);
  const gating = new Gating(settingsFrom(design), program);
  let starts = 0;
  for (let i = 0; i < seconds * GRID; i++)
    gating.advance((voice, time, released) => {
      if (voice === 'A' && released && time > 0.5) starts++;
    });
  return starts;
}

const lamp = (depth: number, shape: Ripple['shape'] = 'sine', hertz = 100): Ripple => ({
  hertz,
  depth,
  shape,
});

describe('chatter predicted and counted agree within 10 %', () => {
  test.each<[string, number | null, number, Ripple | null, number]>([
    ['ripple alone, no hysteresis', null, 0, lamp(0.1), 1],
    ['ripple alone, 680 kΩ', 680_000, 0, lamp(1), 1],
    ['ripple alone, rectified, 120 Hz', 2.2e6, 0, lamp(0.9, 'rectified', 120), 1],
    ['noise alone, no hysteresis', null, 0.001, null, 2],
    ['noise alone, 10 MΩ', 10e6, 0.005, null, 3],
    ['both, 2.2 MΩ', 2.2e6, 0.008, lamp(0.28, 'rectified'), 4],
    ['both, 680 kΩ, deep ripple', 680_000, 0.01, lamp(0.52), 5],
    ['both, ripple too small to do it alone', 680_000, 0.012, lamp(0.3), 6],
    ['both, no hysteresis', null, 0.003, lamp(0.05), 7],
  ])('%s', (_title, hysteresisOhms, noiseVolts, ripple, seed) => {
    const design = designWith({ voices: { hysteresisOhms }, noise: { voltsRms: noiseVolts, seed } });
    const { lux, hertz } = worstChatter(design, 'A', { ripple, noiseVolts });
    expect(hertz).toBeGreaterThan(3);
    const seconds = Math.min(60, Math.max(3, 1500 / hertz));
    const counted: Hertz = startsIn(design, lux, ripple, seconds + 0.5) / seconds;
    expect(Math.abs(counted / hertz - 1)).toBeLessThan(0.1);
  });

  test('and away from the worst light too', () => {
    const ripple = lamp(0.4);
    const design = designWith({ voices: { hysteresisOhms: 1e6 }, noise: { voltsRms: 0.01, seed: 9 } });
    const { lux } = worstChatter(design, 'A', { ripple, noiseVolts: 0.01 });
    for (const away of [0.96, 1.04]) {
      const hertz = chatterHertz(design, 'A', lux * away, { ripple, noiseVolts: 0.01 });
      const counted = startsIn(design, lux * away, ripple, 15.5) / 15;
      expect(Math.abs(counted / hertz - 1)).toBeLessThan(0.1);
    }
  });
});

test('a calm gate has none, and a gate far from its trip points has none', () => {
  const design = designWith();
  expect(worstChatter(design, 'A', { ripple: lamp(0.05), noiseVolts: 0.001 }).hertz).toBeLessThan(1e-6);
  expect(chatterHertz(design, 'A', 1000, { ripple: lamp(1), noiseVolts: 0.001 })).toBeLessThan(1e-9);
});

test('the normal law is that of the tables', () => {
  // Abramowitz and Stegun, table 26.1.
  for (const [m, share] of [
    [0, 0.5],
    [1, 0.841344746068543],
    [2, 0.977249868051821],
    [3, 0.99865010196837],
    [-4, 3.16712418e-5],
    [-5, 2.86651572e-7],
  ] as const)
    expect(Math.abs(normalShare(m) / share - 1)).toBeLessThan(1e-8);
});
