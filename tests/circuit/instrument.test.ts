/** The whole behaviour of a design: numbers for every design there can be, and steady light told without contradiction. */
import { expect, test } from 'vitest';
import { instrumentOf, momentIn } from '../../src/circuit/instrument.ts';
import { decode } from '../../src/design/decode.ts';
import { Gating } from '../../src/sound/gating.ts';
import { settingsOf } from '../../src/sound/settings.ts';
import { seededDesigns } from './any-design.ts';
import { designWith } from './building.ts';

/** Dotted paths of all values that are no number where a number should be. */
function notNumbers(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isNaN(value) ? [path] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) => notNumbers(part, `${path}.${key}`));
}

test('no value of the behaviour is anything but a number, over 500 designs (seed 2027)', () => {
  const { anyDesign } = seededDesigns(2027);
  for (let i = 0; i < 500; i++) {
    const design = anyDesign();
    expect(decode(design)).toMatchObject({ ok: true });
    expect(notNumbers(instrumentOf(design)), `design ${i}`).toEqual([]);
  }
});

test('a voice that cannot run has no pitch to turn, and says so with a number or with nothing', () => {
  const { centsPerPercent, cycle } = instrumentOf(designWith({ A: { controlVolts: 9.5 } })).voices.A;
  expect(cycle.frequency).toBe(0);
  expect(Number.isNaN(centsPerPercent)).toBe(false);
});

test('steady light is told as the moving gates settle in it, over 300 designs (seed 2028)', () => {
  const { anyDesign, between } = seededDesigns(2028);
  for (let i = 0; i < 300; i++) {
    const design = anyDesign();
    const instrument = instrumentOf(design);
    const lux = { A: between({ min: 0.1, max: 5000 }), B: between({ min: 0.1, max: 5000 }) };
    const quiet = { ...design, noise: { ...design.noise, voltsRms: 0 } };
    const gating = new Gating(settingsOf(quiet, instrument), { kind: 'steady', lux });
    for (let step = 0; step < 30; step++) gating.advance(() => {});
    const moment = momentIn(design, instrument, lux, { A: false, B: false });
    for (const id of ['A', 'B'] as const) {
      expect(moment[id].sounding, `design ${i}, ${id}`).toBe(gating.released(id));
      expect(moment[id].nodeVolts).toBeCloseTo(gating.node(id), 9);
    }
  }
});
