/** The timing network beyond the published rows: what it does at its limits, and what changes it. */
import { expect, test } from 'vitest';
import { astableOf, cycleOf, rbOhms, saturationVolts, settleSeconds } from '../../src/circuit/astable.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { railVolts } from '../../src/circuit/supply.ts';
import { TIMERS } from '../../src/parts/timers.ts';
import { designWith, pitchTurned } from './building.ts';

test('RB runs from the fixed part with the trimmer’s end resistance to the fixed part with all of it', () => {
  const voice = designWith().voices.A;
  expect(rbOhms(voice, 0)).toBe(12_000 + 500);
  expect(rbOhms(voice, 1)).toBe(62_000);
  expect(rbOhms(voice, 0.5)).toBe(12_000 + 500 + 24_750);
});

test('a trimmer too small for its share keeps the least end resistance of its kind', () => {
  const voice = designWith({
    A: { trimmer: { part: 'carbon', ohms: 100, tolerance: 0.2, rotation: 0 }, rbFixedOhms: 0 },
  }).voices.A;
  expect(rbOhms(voice)).toBe(5);
});

test('saturation at the discharge pin is straight between its points and goes on straight beyond them', () => {
  const { discharge } = TIMERS.bipolar;
  const points = discharge.kind === 'saturation' ? discharge.points : [];
  expect(saturationVolts(points, 0)).toBeCloseTo(0.02, 12);
  expect(saturationVolts(points, 0.00225)).toBeCloseTo(0.05, 12);
  expect(saturationVolts(points, 0.00975)).toBeCloseTo(0.13, 12);
  expect(saturationVolts(points, 0.0255)).toBeCloseTo(0.28, 12);
});

test('a level that is never reached takes for ever, and the frequency is nothing', () => {
  expect(settleSeconds(1, 3, 2, 1)).toBe(Number.POSITIVE_INFINITY);
  expect(settleSeconds(1, 2, 2, 1)).toBe(Number.POSITIVE_INFINITY);
  const above = designWith({ A: { controlVolts: 9.5 } });
  expect(cycleOf(astableOf(above, 'A', 9))).toMatchObject({ frequency: 0, dutyCycle: 1 });
  // The discharge pin cannot get below half of a very low control voltage.
  const low = designWith({ A: { controlVolts: 0.5, raOhms: 100 } });
  expect(cycleOf(astableOf(low, 'A', 18))).toMatchObject({ frequency: 0, dutyCycle: 0 });
});

test('the ends of the pitch trimmer and the cents for one per cent of turn belong to the sweep', () => {
  const design = designWith({ A: pitchTurned('A', 0.55) });
  const { endHertz, centsPerPercent, cycle } = instrumentOf(design).voices.A;
  const at = (rotation: number) => cycleOf(astableOf(design, 'A', 9, rotation)).frequency;
  expect(endHertz).toEqual([at(0), at(1)]);
  expect(endHertz[0]).toBeGreaterThan(cycle.frequency);
  expect(endHertz[1]).toBeLessThan(cycle.frequency);
  expect(centsPerPercent).toBeCloseTo(1200 * Math.log2(at(0.545) / at(0.555)), 9);
});

test('the diode takes its drop from the rail', () => {
  const { supply } = designWith({ supply: { diode: true } });
  expect(railVolts(supply)).toBeCloseTo(8.7, 12);
  expect(railVolts({ ...supply, volts: 0.1 })).toBe(0);
});

test('the same design gives equal behaviour, and the design is not touched', () => {
  const design = designWith();
  const before = structuredClone(design);
  expect(instrumentOf(design)).toEqual(instrumentOf(structuredClone(design)));
  expect(design).toEqual(before);
});
