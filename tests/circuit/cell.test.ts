/** The light cell: its inverse, its dark limit, and its movement. */
import { describe, expect, test } from 'vitest';
import {
  cellOf,
  cellOhms,
  cellSpeed,
  conductanceSlope,
  luxFor,
  ohmsOf,
  steadyConductance,
  stepConductance,
} from '../../src/circuit/cell.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { designWith } from './building.ts';

const cell = { family: 'cds-8-20k', r10Ohms: 12_000, gamma: 0.7 } as const;

test('the light for a resistance gives that resistance', () => {
  for (const lux of [0.05, 1, 10, 100, 5000]) expect(luxFor(cell, cellOhms(cell, lux))).toBeCloseTo(lux, 6);
});

test('in the dark the cell reads its dark resistance, and no light is given for it', () => {
  expect(cellOhms(cell, 0)).toBe(1e6);
  expect(cellOhms(cell, -1)).toBe(1e6);
  expect(ohmsOf(cell, 0)).toBe(1e6);
  expect(luxFor(cell, 1e6)).toBeNull();
  expect(luxFor(cell, 0)).toBeNull();
});

test('a cell settled in a light stays there, and moves towards it from both sides', () => {
  const speed = cellSpeed(cell);
  for (const lux of [1, 30, 1000]) {
    const y = steadyConductance(0.7, lux);
    expect(conductanceSlope(speed, y, lux)).toBeCloseTo(0, 9);
    expect(conductanceSlope(speed, y * 1.1, lux)).toBeLessThan(0);
    expect(conductanceSlope(speed, y * 0.9, lux)).toBeGreaterThan(0);
  }
});

test('falling into the dark, ten times the light is 10^(γ − 1) of the time to a half', () => {
  const speed = cellSpeed(cell);
  const secondsToHalve = (from: number) => {
    let y = steadyConductance(0.7, from);
    const half = y / 2;
    let steps = 0;
    for (; y > half; steps++) y = stepConductance(speed, y, 1e-5, 0, 0, 0);
    return steps * 1e-5;
  };
  // From dy/dt = −y^(1/γ)/τ: the time goes with y^(1 − 1/γ), and y with E^γ.
  const ratio = 10 ** (0.7 - 1);
  expect(secondsToHalve(1000) / secondsToHalve(100)).toBeCloseTo(ratio, 2);
  expect(secondsToHalve(100) / secondsToHalve(10)).toBeCloseTo(ratio, 2);
});

test('one τ serves where it predicts the published fall within a fifth; a steeper slope sets two', () => {
  const one = cellSpeed({ ...cell, gamma: 0.7 });
  expect(one.fallTau).toBe(one.riseTau);
  const two = cellSpeed({ ...cell, gamma: 0.9 });
  expect(two.fallTau).not.toBe(two.riseTau);
});

test('a step of a third of a millisecond is as good as a hundred small ones', () => {
  const speed = cellSpeed(cell);
  const from = steadyConductance(0.7, 300);
  let fine = from;
  for (let i = 0; i < 1000; i++) fine = stepConductance(speed, fine, 1 / 300_000, 30, 30, 30);
  let coarse = from;
  for (let i = 0; i < 10; i++) coarse = stepConductance(speed, coarse, 1 / 3000, 30, 30, 30);
  expect(Math.abs(coarse / fine - 1)).toBeLessThan(1e-7);
});

test('conductance never falls below nothing', () => {
  const speed = cellSpeed(cell);
  let y = 1e-9;
  for (let i = 0; i < 100; i++) y = stepConductance(speed, y, 0.1, 0, 0, 0);
  expect(y).toBeGreaterThanOrEqual(0);
});

describe('a cell kept in the dark', () => {
  test('reads 1.2 times lower at 10 lx (PerkinElmer, light history at 1 fc; from memory)', () => {
    const kept = cellOf({ cell, cellKept: 'dark' });
    expect(cellOhms(cell, 10) / cellOhms(kept, 10)).toBeCloseTo(1.2, 12);
    expect(cellOf({ cell, cellKept: 'light' })).toBe(cell);
  });

  test('starts its voice in less light, by the power law turned round', () => {
    const on = (cellKept: 'light' | 'dark') =>
      instrumentOf(designWith({ A: { cellKept, hysteresisOhms: null } })).voices.A.tripLux.on!;
    expect(on('light') / on('dark')).toBeCloseTo(1.2 ** (1 / 0.7), 9);
  });
});
