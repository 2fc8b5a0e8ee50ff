/** Supply current, sag and hours, against a worked board and against published figures. */
import { describe, expect, test } from 'vitest';
import { astableFrom, astableOf } from '../../src/circuit/astable.ts';
import { pullOf } from '../../src/circuit/gate.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import {
  dischargeAmperes,
  drainOf,
  hoursOn,
  PLAY_STATES,
  type PlayState,
  powerOf,
  railUnderLoad,
  USUAL_LIT_LUX,
  USUAL_SHADED_LUX,
} from '../../src/circuit/power.ts';
import { lastSourceVolts, leastSourceVolts, railVolts } from '../../src/circuit/supply.ts';
import { COMPARATORS } from '../../src/parts/comparators.ts';
import { SUPPLIES } from '../../src/parts/supplies.ts';
import { TIMERS } from '../../src/parts/timers.ts';
import { seededDesigns } from './any-design.ts';
import { BENCH_DESIGN, designWith } from './building.ts';

/**
 * A board worked out by hand elsewhere: RA 3.9 kΩ, RB 12 kΩ + half of 50 kΩ, 47 and 68 nF, dividers of 12 kΩ,
 * references of 18.7 kΩ, pull-ups of 6.8 kΩ, 47 kΩ each into 4.7 kΩ; sounding in 300 lx, silent in 30 lx.
 */
const middle = { ...BENCH_DESIGN.voices.A.trimmer, rotation: 0.5 };
const worked = designWith({
  A: { trimmer: middle, capacitor: { farads: 47e-9, dielectric: 'polyester', tolerance: 0.1 } },
  B: { trimmer: middle, capacitor: { farads: 68e-9, dielectric: 'polyester', tolerance: 0.1 } },
});

test.each([
  [9, 'both', 15],
  [9, 'onlyA', 18.5],
  [9, 'none', 22],
  [5, 'both', 7.8],
  [5, 'onlyA', 10],
  [5, 'none', 12],
] as const)(
  'on %d V with %s sounding the worked board draws about %d mA (within a tenth)',
  (rail, state, expected) => {
    const { total } = drainOf(worked, rail, PLAY_STATES[state]);
    expect(Math.abs((total * 1000) / expected - 1)).toBeLessThan(0.1);
  },
);

test('the shares add up to the whole, and silent costs more than sounding', () => {
  const { states, hungriest } = powerOf(worked);
  for (const state of Object.keys(PLAY_STATES) as PlayState[]) {
    const { total, ...shares } = states[state].drain;
    expect(Object.values(shares).reduce((sum, share) => sum + share, 0)).toBeCloseTo(total, 12);
  }
  expect(hungriest).toBe('none');
  expect(states.none.drain.total).toBeGreaterThan(states.both.drain.total);
  expect(states.onlyA.drain.total).toBeLessThan(states.none.drain.total);
});

test('what RA lets through while sounding is the charge of each cycle and the discharge pin’s share of it', () => {
  const design = designWith();
  const { cycle } = instrumentOf(design).voices.A;
  const { cycle: cycleB } = instrumentOf(design).voices.B;
  // From first principles: while high, C·(V/3) is brought in every period; while low, the pin takes V/RA.
  const expected = (['A', 'B'] as const).reduce((sum, voice) => {
    const { frequency, dutyCycle } = voice === 'A' ? cycle : cycleB;
    const v = design.voices[voice];
    const sink = astableOf(design, voice, 9).sinkVolts;
    return sum + frequency * v.capacitor.farads * 3 + ((1 - dutyCycle) * (9 - sink)) / v.raOhms;
  }, 0);
  expect(drainOf(design, 9, PLAY_STATES.both).discharge).toBeCloseTo(expected, 9);
});

test('one threshold trimmer instead of two saves its current', () => {
  const each = drainOf(designWith(), 9, PLAY_STATES.both).references;
  const shared = drainOf(
    designWith({ threshold: { arrangement: 'shared' } }),
    9,
    PLAY_STATES.both,
  ).references;
  expect(shared).toBeCloseTo(each / 2, 12);
  expect(shared).toBeCloseTo(9 / 18_670, 12);
});

describe('published figures', () => {
  test('el:A21, NE556 without load at 9 V, output low: 11.6 mA by a straight line (TI SLFS023, 5 and 15 V)', () => {
    expect(drainOf(designWith(), 9, PLAY_STATES.none).timers * 1000).toBeCloseTo(11.6, 6);
    expect(drainOf(designWith(), 5, PLAY_STATES.none).timers * 1000).toBeCloseTo(6, 6);
    expect(drainOf(designWith(), 15, PLAY_STATES.none).timers * 1000).toBeCloseTo(20, 6);
  });

  test('TLC555: 170 µA at 5 V and 360 µA at 15 V for each timer, silent or not (TI SLFS043F)', () => {
    for (const state of [PLAY_STATES.both, PLAY_STATES.none]) {
      expect(drainOf(designWith({ timer: 'cmos' }), 5, state).timers).toBeCloseTo(340e-6, 12);
      expect(drainOf(designWith({ timer: 'cmos' }), 15, state).timers).toBeCloseTo(720e-6, 12);
    }
  });

  test.each([
    [1000, 9],
    [4700, 1.915],
  ])('el:A40, discharge pin in reset, 9 V and RA %d Ω: %d mA (V/RA)', (raOhms, expected) => {
    const ideal = astableFrom({
      raOhms,
      rbOhms: 47_000,
      farads: 1e-8,
      railVolts: 9,
      controlVolts: null,
      discharge: { kind: 'resistance', ohms: 0 },
    });
    expect(Math.abs((dischargeAmperes(ideal, raOhms) * 1000) / expected - 1)).toBeLessThan(0.001);
  });

  test.each([
    [9, 8],
    [5, 4],
  ])('el:A41, reset pin at %d V with 10 kΩ and 0.1 mA into it: %d V (TI SLFS023)', (rail, expected) => {
    const design = designWith({ voices: { pullUpOhms: 10_000 } });
    expect(pullOf(design, 'A', rail).high.volts).toBeCloseTo(expected, 9);
  });

  test('el:A42, comparator sinks pull-up 0.885 mA and 1.5 mA from the pin: 2.4 mA, below 4 mA (onsemi LM393/D)', () => {
    const design = designWith({ voices: { pullUpOhms: 10_000 } });
    const pullUp = (9 - pullOf(design, 'A', 9).low.volts) / 10_000;
    expect(Math.abs((pullUp * 1000) / 0.885 - 1)).toBeLessThan(0.05);
    const sunk = pullUp + TIMERS.bipolar.resetLowMostAmperes;
    expect(Math.abs((sunk * 1000) / 2.4 - 1)).toBeLessThan(0.05);
    expect(sunk).toBeLessThan(COMPARATORS.classic.sinkAmperes);
  });

  test('el:F1, 0.107 V lost to 500 mA is 0.214 Ω (Energizer, Battery internal resistance)', () => {
    const cell = { ...BENCH_DESIGN.supply, volts: 2.485, sourceOhms: 0.214 };
    expect(railVolts(cell) - railVolts(cell, 0.5)).toBeCloseTo(0.107, 9);
  });

  test.each([
    ['el:F2', 'block-9v', 0.013, 42.3],
    ['el:F3', 'block-9v', 0.0015, 367],
    ['el:F4', 'four-aa', 0.015, 173],
  ] as const)(
    '%s, %s at %d A: %d h (Duracell MN1604 550 mAh, AA 2600 mAh)',
    (_id, kind, amperes, expected) => {
      expect(Math.abs(hoursOn(kind, amperes)! / expected - 1)).toBeLessThan(0.01);
    },
  );

  test('el:F5, 13 mA through 1.7 Ω: 22 mV (Duracell MN1604)', () => {
    const { supply } = BENCH_DESIGN;
    expect(Math.abs((railVolts(supply) - railVolts(supply, 0.013)) / 0.022 - 1)).toBeLessThan(0.01);
  });

  test('el:F6, four cells of 0.15 Ω: 0.60 Ω (Energizer E91)', () => {
    expect(SUPPLIES['four-aa'].sourceOhms).toBe(4 * 0.15);
  });

  test('el:F3, a CMOS build with smaller currents lasts hundreds of hours on a 9 V block (TI SLFS043F)', () => {
    const frugal = designWith({
      timer: 'cmos',
      comparator: 'later',
      voices: { raOhms: 47_000, pullUpOhms: 100_000, divider: { cell: 'bottom', fixedOhms: 100_000 } },
    });
    const { hours } = powerOf(frugal).states.none;
    expect(hours).toBeGreaterThan(150);
    expect(hours).toBeGreaterThan(6 * powerOf(designWith()).states.none.hours!);
  });
});

test('the rail under load balances the source, over 300 designs (seed 2030)', () => {
  const { anyDesign, between } = seededDesigns(2030);
  let balanced = 0;
  for (let i = 0; i < 300; i++) {
    const drawn = anyDesign();
    const design = { ...drawn, supply: { ...drawn.supply, sourceOhms: between({ min: 0.01, max: 100 }) } };
    const rail = railUnderLoad(design);
    const excess = (at: number) => railVolts(design.supply, drainOf(design, at, PLAY_STATES.both).total) - at;
    expect(rail).toBeGreaterThanOrEqual(0);
    expect(rail).toBeLessThanOrEqual(railVolts(design.supply));
    if (Math.abs(excess(rail)) < 1e-7) balanced++;
    // Where the current jumps (a voice stops running) there is no balance, only a place where it changes sides.
    else expect(excess(rail - 1e-6) > 0 && excess(rail + 1e-6) < 0, `design ${i}`).toBe(true);
  }
  expect(balanced).toBeGreaterThan(290);
});

test('the sag grows with the source’s resistance, and a regulated supply has none', () => {
  const sag = (sourceOhms: number) => powerOf(designWith({ supply: { sourceOhms } })).states.none.sagVolts;
  expect(sag(0)).toBe(0);
  expect(sag(1.7)).toBeGreaterThan(0.03);
  expect(sag(1.7)).toBeLessThan(0.04);
  expect(sag(20)).toBeGreaterThan(5 * sag(1.7));
  const regulated = designWith({ supply: { ...SUPPLIES['five-volt'], kind: 'five-volt' } });
  expect(powerOf(regulated).states.both.sagVolts).toBe(0);
  expect(powerOf(regulated).states.both.hours).toBeNull();
});

test('a battery’s time is over when it is empty, or when a chip leaves its range', () => {
  const block = BENCH_DESIGN.supply;
  const four = { ...block, ...SUPPLIES['four-aa'], kind: 'four-aa' as const };
  expect(lastSourceVolts(block, 'bipolar', 'classic')).toBe(5.4);
  expect(lastSourceVolts(four, 'bipolar', 'classic')).toBe(4.5);
  expect(lastSourceVolts({ ...four, diode: true }, 'bipolar', 'classic')).toBeCloseTo(4.8, 12);
  expect(lastSourceVolts(four, 'cmos', 'classic')).toBe(3.6);
  expect(leastSourceVolts(four, 'cmos', 'classic')).toBe(2);
  expect(powerOf(designWith({ supply: four })).unusedShare).toBeCloseTo(0.9 / 2.4, 9);
  expect(powerOf(designWith()).unusedShare).toBe(0);
});

test('without a light of its own, a voice that sounds in shade is taken to sound in the shade', () => {
  const drain = (polarity: 'light' | 'shade', lux?: number) => {
    const design = designWith({ voices: { polarity } });
    const both = lux === undefined ? undefined : { A: lux, B: lux };
    return drainOf(design, 9, PLAY_STATES.both, both).dividers;
  };
  expect(drain('light')).toBe(drain('light', USUAL_LIT_LUX));
  expect(drain('shade')).toBe(drain('shade', USUAL_SHADED_LUX));
  expect(drain('light')).toBeGreaterThan(drain('shade'));
});
