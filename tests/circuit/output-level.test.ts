/** Levels, DC and headphone power at the jack, against rendered sound, the net's own solution and published figures. */
import { describe, expect, test } from 'vitest';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import {
  dbuOf,
  dbvOf,
  HEADPHONE_MOST_OHMS,
  headphoneLevel,
  type Jack,
  outputDraw,
  readoutOf,
  timerOutput,
  weeklyHoursAt,
} from '../../src/circuit/output.ts';
import type { Design } from '../../src/design/design.ts';
import { renderTake } from '../../src/sound/render.ts';
import { DARK, LIT, settingsFrom, steady } from '../sound/playing.ts';
import { designWith } from './building.ts';
import { rail, resistor, solve } from './nodal.ts';

/** A square of a voltage behind a resistance into a load, only voice A wired. */
function square(volts: number, ohms: number, loadOhms: number, couplingFarads: number | null = null): Jack {
  return {
    sources: [0, 1, 0, 1].map((high) => ({ volts: volts * high, ohms })),
    loadOhms,
    couplingFarads,
    boundVolts: volts,
    clashAmperes: 0,
  };
}
const half = { A: 0.5, B: 0.5 };
const near = (value: number, expected: number, share: number) =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThanOrEqual(share);

describe('published figures', () => {
  test('el:G3, −10 dBV is 0.31623 V and −7.782 dBu; +4 dBu is 1.22765 V (line-level references)', () => {
    near(dbvOf(0.31623)!, -10, 1e-4);
    near(dbuOf(0.31623)!, -7.782, 1e-4);
    near(dbuOf(1.22765)!, 4, 1e-4);
    near(dbvOf(1.22765)! - dbvOf(0.31623)!, 11.782, 1e-4);
  });

  test.each([
    [9, 4.5, 13.06],
    [7.6, 3.8, 11.6],
    [5, 2.5, 7.96],
    [3.3, 1.65, 4.35],
  ])('el:G4, a 50 %% square of %d Vpp is %d V rms, %d dBV (Vpp·√(d·(1 − d)))', (vpp, rms, dbv) => {
    const level = readoutOf(square(vpp, 0, 1e9), half).voices.A;
    near(level.peakToPeakVolts, vpp, 1e-6);
    near(level.rmsVolts, rms, 1e-3);
    expect(Math.abs(level.dbv! - dbv)).toBeLessThan(0.01);
  });

  test('el:G6, from 7.6 Vpp to −10 dBV takes 12.02 : 1, −21.6 dB (line-level references)', () => {
    const { rmsVolts, dbv } = readoutOf(square(7.6, 0, 1e9), half).voices.A;
    near(rmsVolts / 0.31623, 12.02, 0.005);
    near(dbv! + 10, 21.6, 0.005);
  });

  test('el:G7, two voices of 7.6 Vpp through 100 kΩ onto 10 kΩ: 0.3167 V and −9.99 dBV each (line levels)', () => {
    const g = 1 / 100_000;
    const ohms = 1 / (2 * g + 1 / 10_000);
    const sources = [0, 1, 1, 2].map((high) => ({ volts: 7.6 * high * g * ohms, ohms }));
    const { voices } = readoutOf({ ...square(1, 0, 1e12), sources }, half);
    near(voices.A.rmsVolts, 0.3167, 0.001);
    near(voices.B.dbv!, -9.99, 0.001);
  });

  test.each([
    [100, 1.091, 37.2e-3, 115.7],
    [1000, 0.1395, 0.608e-3, 97.8],
    [10_000, 14.4e-3, 6.4e-6, 78.1],
  ])(
    'el:G9, a 9 Vpp square through %d Ω into 32 Ω: %d V, %d W, %d dB at 100 dB for 1 mW',
    (ohms, rms, watts, decibels) => {
      const { voices, headphones } = readoutOf(square(9, ohms, 32), { A: 0.5, B: 0 });
      near(voices.A.rmsVolts, rms, 0.005);
      near(headphones!.watts, watts, 0.01);
      near(headphones!.decibels!, decibels, 0.005);
    },
  );

  test('EN 50332: 150 mV in 32 Ω is 0.703 mW, 98.5 dB at 100 dB for 1 mW', () => {
    const { watts, decibels } = headphoneLevel(0.15, 32);
    near(watts, 0.703e-3, 0.001);
    near(decibels!, 98.5, 0.001);
  });

  test.each([
    [83, 20],
    [86, 10],
    [95, 1.25],
    [100, 0.394],
  ])('el:H1, %d dB for %d hours a week (WHO and ITU, Safe listening, 2019)', (decibels, hours) => {
    near(weeklyHoursAt(decibels), hours, 0.002);
  });

  test('el:G11, 10 µF into 10 kΩ thumps for 0.10 s', () => {
    expect(readoutOf(square(9, 0, 10_000, 1e-5), half).thumpSeconds).toBeCloseTo(0.1, 12);
  });
});

/** Level of rendered sound once the coupling capacitor has settled. */
function rendered(design: Design, lux: readonly [number, number]) {
  const { samples } = renderTake(settingsFrom(design), steady(...lux), 3, 48_000);
  const tail = samples.subarray(48_000);
  const mean = tail.reduce((sum, value) => sum + value, 0) / tail.length;
  return { mean, rms: Math.sqrt(tail.reduce((sum, value) => sum + (value - mean) ** 2, 0) / tail.length) };
}

const boards = [
  { name: 'mixed, 10 µF', output: { coupling: { farads: 1e-5, kind: 'film' as const } } },
  { name: 'joined, 20 µF', output: { mixOhms: null, coupling: { farads: 2e-5, kind: 'film' as const } } },
  { name: 'no capacitor', output: { coupling: null } },
  {
    name: 'volume control, headphones',
    output: {
      volume: { ohms: 1000, rotation: 0.6 },
      loadOhms: 64,
      coupling: { farads: 2e-4, kind: 'film' as const },
    },
  },
];

describe.each(boards)('$name', ({ output }) => {
  test.each(['bipolar', 'cmos'] as const)('the levels are those of the rendered sound, %s', (timer) => {
    const design = designWith({ timer, output });
    const { level } = instrumentOf(design);
    near(rendered(design, [LIT, LIT]).rms, level.both.rmsVolts, 0.02);
    near(rendered(design, [LIT, DARK]).rms, level.voices.A.rmsVolts, 0.01);
    near(rendered(design, [DARK, LIT]).rms, level.voices.B.rmsVolts, 0.01);
  });

  test('DC stands at the jack only where no capacitor holds it', () => {
    const design = designWith({ output });
    const { level } = instrumentOf(design);
    const { mean } = rendered(design, [LIT, LIT]);
    if (output.coupling === null) {
      near(mean, level.dcVolts, 0.01);
      expect(level.couplingVolts).toBeNull();
    } else {
      expect(level.dcVolts).toBe(0);
      expect(Math.abs(mean)).toBeLessThan(0.02 * level.both.peakToPeakVolts);
      // Above 0: the plus leg belongs to the timers.
      expect(level.couplingVolts).toBeGreaterThan(0);
    }
  });

  test('what the outputs draw agrees with the net', () => {
    const design = designWith({ output });
    const { dutyCycle: a } = instrumentOf(design).voices.A.cycle;
    const { dutyCycle: b } = instrumentOf(design).voices.B.cycle;
    const { mixOhms, shuntOhms, volume, loadOhms } = { ...design.output };
    const held = instrumentOf(design).level.couplingVolts ?? 0;
    let mean = 0;
    for (const [highA, highB] of [
      [false, false],
      [true, false],
      [false, true],
      [true, true],
    ] as const) {
      const share = (highA ? a : 1 - a) * (highB ? b : 1 - b);
      const [outA, outB] = [timerOutput(design, 9, highA), timerOutput(design, 9, highB)];
      const parts = [
        rail('driveA', outA.volts),
        rail('driveB', outB.volts),
        resistor('driveA', 'mix', outA.ohms + (mixOhms?.A ?? 0)),
        resistor('driveB', 'mix', outB.ohms + (mixOhms?.B ?? 0)),
        rail('held', held),
        resistor(volume ? 'wiper' : 'mix', 'held', loadOhms),
      ];
      if (shuntOhms) parts.push(resistor('mix', '0', shuntOhms));
      if (volume)
        parts.push(
          resistor('mix', 'wiper', volume.ohms * (1 - volume.rotation)),
          resistor('wiper', '0', volume.ohms * volume.rotation),
        );
      const { mix } = solve(parts);
      if (highA) mean += share * Math.max(0, (outA.volts - mix!) / (outA.ohms + (mixOhms?.A ?? 0)));
      if (highB) mean += share * Math.max(0, (outB.volts - mix!) / (outB.ohms + (mixOhms?.B ?? 0)));
    }
    near(outputDraw(design, 9, { A: a, B: b }).meanAmperes, mean, 1e-6);
  });
});

test('a silenced jack has no level in decibels, and no number that is none', () => {
  const { level } = instrumentOf(
    designWith({ output: { volume: { ohms: 10_000, rotation: 0 }, loadOhms: 32 } }),
  );
  expect(level.both).toEqual({ peakToPeakVolts: 0, rmsVolts: 0, dbv: null, dbu: null });
  expect(level.headphones).toEqual({ watts: 0, decibels: null, weeklyHours: null });
});

test('only a load of 600 Ω or less is taken for headphones', () => {
  expect(
    instrumentOf(designWith({ output: { loadOhms: HEADPHONE_MOST_OHMS } })).level.headphones,
  ).not.toBeNull();
  expect(
    instrumentOf(designWith({ output: { loadOhms: HEADPHONE_MOST_OHMS + 1 } })).level.headphones,
  ).toBeNull();
});
