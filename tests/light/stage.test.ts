import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { skyLeft } from '../../src/light/hand.ts';
import {
  candelaFor,
  DEFAULT_STAGE,
  HAND_TRAVEL,
  handPlace,
  lampLuxAtTable,
  STAGE_LIMITS,
  type Stage,
  sensorPlace,
  stageLux,
} from '../../src/light/stage.ts';
import { VOICES } from '../../src/quantity/units.ts';

/** Evenly spread numbers, ends included; a plain double would nearly always be tiny. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 10_000 }).map((step) => min + ((max - min) * step) / 10_000);

const inLimits = (name: keyof typeof STAGE_LIMITS) => evenly(STAGE_LIMITS[name].min, STAGE_LIMITS[name].max);

const anyStage: fc.Arbitrary<Stage> = fc.record({
  lampOn: fc.boolean(),
  lampCandela: inLimits('lampCandela'),
  lampMetres: inLimits('lampMetres'),
  roomLux: inLimits('roomLux'),
  spacingMetres: inLimits('spacingMetres'),
  handMetres: inLimits('handMetres'),
  cover: fc.record({ A: inLimits('cover'), B: inLimits('cover') }),
});

const covered = (stage: Stage, A: number, B: number): Stage => ({ ...stage, cover: { A, B } });

describe('the stage as it is first met', () => {
  test('gives both sensors 300 lx with the hands at rest', () => {
    const lux = stageLux(DEFAULT_STAGE);
    expect(Math.abs(lux.A - 300)).toBeLessThan(0.1);
    expect(lux.B).toBeCloseTo(lux.A, 9);
  });

  test('lies inside its own limits', () => {
    for (const name of ['lampCandela', 'lampMetres', 'roomLux', 'spacingMetres', 'handMetres'] as const) {
      expect(DEFAULT_STAGE[name]).toBeGreaterThanOrEqual(STAGE_LIMITS[name].min);
      expect(DEFAULT_STAGE[name]).toBeLessThanOrEqual(STAGE_LIMITS[name].max);
    }
  });

  test('with a hand over A leaves A only the sky past the hand, and B nearly all', () => {
    const lux = stageLux(covered(DEFAULT_STAGE, 1, 0));
    // ls:L13: a hand 5 cm above leaves 0.4098 of the room's 20 lx; the other hand at rest takes under 1 %.
    expect(Math.abs(lux.A - 20 * 0.4098)).toBeLessThan(0.08);
    expect(lux.B).toBeGreaterThan(299);
  });

  test('with the lamp off leaves the room alone', () => {
    const lux = stageLux({ ...DEFAULT_STAGE, lampOn: false });
    expect(lux.A).toBeLessThanOrEqual(20);
    expect(lux.A).toBeGreaterThan(19.8);
  });
});

describe('where things are', () => {
  test('the sensors lie half the spacing left and right of the middle', () => {
    expect(sensorPlace(DEFAULT_STAGE, 'A')).toBe(-0.09);
    expect(sensorPlace(DEFAULT_STAGE, 'B')).toBe(0.09);
  });

  test('hand A comes from the left and hand B from the right', () => {
    expect(handPlace(covered(DEFAULT_STAGE, 0, 0), 'A')).toBeCloseTo(-0.09 - HAND_TRAVEL, 12);
    expect(handPlace(covered(DEFAULT_STAGE, 0, 0), 'B')).toBeCloseTo(0.09 + HAND_TRAVEL, 12);
    expect(handPlace(covered(DEFAULT_STAGE, 1, 1), 'A')).toBeCloseTo(-0.09, 12);
    expect(handPlace(covered(DEFAULT_STAGE, 1, 1), 'B')).toBeCloseTo(0.09, 12);
  });

  test('both hands shade both sensors', () => {
    const room: Stage = { ...DEFAULT_STAGE, lampOn: false, roomLux: 100 };
    const left = skyLeft(0.06, 0.05, 0) * skyLeft(0.06, 0.05, 0.18);
    expect(stageLux(covered(room, 1, 1)).A).toBeCloseTo(100 * left, 9);
  });
});

describe('the lamp', () => {
  test('shines in from the middle: it half goes where the hand meets the line from the sensor to it', () => {
    // Line at the hand's height, 15 of 40 cm up: 4.5 cm inwards from the sensor. The hand's edge gets there
    // with its centre 1.5 cm short of the sensor.
    const stage: Stage = {
      ...DEFAULT_STAGE,
      lampMetres: 0.4,
      spacingMetres: 0.24,
      handMetres: 0.15,
      roomLux: 0,
    };
    const half = covered(stage, 1 - 0.015 / HAND_TRAVEL, 0);
    const left = stageLux(half).A / lampLuxAtTable(stage);
    expect(left).toBeGreaterThan(0.5);
    expect(left).toBeLessThan(0.56);
  });

  test('follows I·cos³θ/h² at a sensor beside it', () => {
    const stage = { lampCandela: 100, lampMetres: 0.6, spacingMetres: 0.9 };
    const cosine = 0.6 / Math.hypot(0.6, 0.45);
    expect(lampLuxAtTable(stage)).toBeCloseTo((100 * cosine ** 3) / 0.36, 9);
  });

  test('set to a lux gives that lux, at any height and spacing', () => {
    fc.assert(
      fc.property(
        evenly(0.1, 20_000),
        inLimits('lampMetres'),
        inLimits('spacingMetres'),
        (lux, lampMetres, spacingMetres) => {
          const lampCandela = candelaFor(lux, lampMetres, spacingMetres);
          const back = lampLuxAtTable({ lampCandela, lampMetres, spacingMetres });
          expect(Math.abs(back / lux - 1)).toBeLessThan(1e-12);
        },
      ),
    );
  });
});

describe('any stage within the limits', () => {
  test('gives finite light, none below zero and none above lamp and room together', () => {
    fc.assert(
      fc.property(anyStage, (stage) => {
        const most = (stage.lampOn ? lampLuxAtTable(stage) : 0) + stage.roomLux;
        for (const voice of VOICES) {
          const lux = stageLux(stage)[voice];
          expect(Number.isFinite(lux)).toBe(true);
          expect(lux).toBeGreaterThanOrEqual(0);
          expect(lux).toBeLessThanOrEqual(most * (1 + 1e-12));
        }
      }),
    );
  });

  test('gives neither sensor more light when a hand comes further', () => {
    fc.assert(
      fc.property(anyStage, inLimits('cover'), fc.constantFrom(...VOICES), (stage, other, hand) => {
        const [less, more] = [stage.cover[hand], other].sort((a, b) => a - b);
        const before = stageLux({ ...stage, cover: { ...stage.cover, [hand]: less! } });
        const after = stageLux({ ...stage, cover: { ...stage.cover, [hand]: more! } });
        const allowance = 1e-7 * (lampLuxAtTable(stage) + stage.roomLux);
        for (const voice of VOICES) expect(after[voice]).toBeLessThanOrEqual(before[voice] + allowance);
      }),
    );
  });

  test('a hand centred over a sensor hides the whole lamp from it', () => {
    fc.assert(
      fc.property(anyStage, fc.constantFrom(...VOICES), (stage, voice) => {
        const dark = { ...stage, lampOn: true, roomLux: 0, cover: { ...stage.cover, [voice]: 1 } };
        expect(stageLux(dark)[voice]).toBe(0);
      }),
    );
  });

  test('is the same seen in a mirror', () => {
    fc.assert(
      fc.property(anyStage, (stage) => {
        const lux = stageLux(stage);
        const mirrored = stageLux(covered(stage, stage.cover.B, stage.cover.A));
        expect(mirrored.A).toBeCloseTo(lux.B, 6);
        expect(mirrored.B).toBeCloseTo(lux.A, 6);
      }),
    );
  });
});
