/** The tables of parts: consistent in themselves, named in words, and true to the sheets they quote. */
import { describe, expect, test } from 'vitest';
import { cellOhms, cellSpeed, luxFor, steadyConductance, stepConductance } from '../../src/circuit/cell.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { warningsOf } from '../../src/circuit/warnings.ts';
import { chooseCell } from '../../src/design/commands.ts';
import { decode } from '../../src/design/decode.ts';
import { LIMITS } from '../../src/design/limits.ts';
import { DIELECTRICS } from '../../src/parts/capacitors.ts';
import { CELLS, type CellId } from '../../src/parts/cells.ts';
import { COMPARATORS } from '../../src/parts/comparators.ts';
import { SUPPLIES } from '../../src/parts/supplies.ts';
import { TIMERS } from '../../src/parts/timers.ts';
import { TRIMMERS } from '../../src/parts/trimmers.ts';
import { words } from '../../src/words/en.ts';
import { BENCH_DESIGN, cellAt, designWith } from './building.ts';

const families = Object.values(CELLS);
const cellOf = (family: CellId) => ({
  family,
  r10Ohms: CELLS[family].r10Ohms.usual,
  gamma: CELLS[family].gamma.usual,
});

test.each([
  ['cells', CELLS, words.voices.cellFamilies],
  ['dielectrics', DIELECTRICS, words.voices.dielectrics],
  ['timers', TIMERS, words.board.timers],
  ['comparators', COMPARATORS, words.board.comparators],
  ['supplies', SUPPLIES, words.board.supplies],
  ['trimmers', TRIMMERS, words.board.trimmerParts],
] as const)('%s: each stands under its own id, and each has one name', (_what, table, names) => {
  for (const [id, part] of Object.entries(table)) expect(part.id).toBe(id);
  expect(Object.keys(names).toSorted()).toEqual(Object.keys(table).toSorted());
  expect(new Set(Object.values(names)).size).toBe(Object.keys(table).length);
});

test('there are at least five cells of different speed, and no name of a maker in any name', () => {
  const speeds = new Set(families.map((f) => `${f.riseSeconds}/${f.fallSeconds}`));
  expect(speeds.size).toBeGreaterThanOrEqual(5);
  for (const name of Object.values(words.voices.cellFamilies)) expect(name).toMatch(/cell, .*kΩ/);
});

describe.each(families)('$id', (family) => {
  test('usual values lie within the band and within what a design may hold', () => {
    const { r10Ohms, gamma } = family;
    expect(r10Ohms.min).toBeLessThan(r10Ohms.usual);
    expect(r10Ohms.usual).toBeLessThan(r10Ohms.max);
    expect(r10Ohms.min).toBeGreaterThanOrEqual(LIMITS.cellOhms.min);
    expect(r10Ohms.max).toBeLessThanOrEqual(LIMITS.cellOhms.max);
    expect(gamma.usual - gamma.spread).toBeGreaterThanOrEqual(LIMITS.gamma.min);
    expect(gamma.usual + gamma.spread).toBeLessThanOrEqual(LIMITS.gamma.max);
    expect(family.darkOhms).toBeGreaterThan(r10Ohms.max);
  });

  test('the moving cell rises to 63 % and falls to 37 % in its published times at 10 lx (a fifth for the fall)', () => {
    const speed = cellSpeed(cellOf(family.id));
    const step = 1e-5;
    const until = (from: number, lux: number, level: number): number => {
      let y = from;
      for (let i = 0; i < 1e6; i++) {
        if (lux > 0 ? y >= level : y <= level) return i * step;
        y = stepConductance(speed, y, step, lux, lux, lux);
      }
      throw new Error('The cell never arrives.');
    };
    expect(Math.abs(until(0, 10, 1 - Math.exp(-1)) / family.riseSeconds - 1)).toBeLessThan(0.005);
    expect(Math.abs(until(1, 0, Math.exp(-1)) / family.fallSeconds - 1)).toBeLessThan(0.205);
  });

  test('chosen for a voice, it brings its usual values, and the design still reads', () => {
    const before = designWith({ A: { cell: { family: 'cds-8-20k', r10Ohms: 9999, gamma: 0.66 } } });
    const design = chooseCell('A', family.id)(before);
    if (family.id === 'cds-8-20k') expect(design).toBe(before);
    else {
      expect(design.voices.A.cell).toEqual(cellOf(family.id));
      expect(design.voices.B).toBe(before.voices.B);
      expect(chooseCell('A', family.id)(design)).toBe(design);
    }
    expect(decode(design)).toMatchObject({ ok: true });
    const { speeds, voices } = instrumentOf(design);
    expect(speeds.A.fallTau).toBeGreaterThan(0);
    expect(Number.isFinite(voices.A.cycle.frequency)).toBe(true);
  });

  test('in the dark it reads its dark resistance, and light brings it down', () => {
    const cell = cellOf(family.id);
    expect(cellOhms(cell, 0)).toBe(family.darkOhms);
    expect(cellOhms(cell, 10)).toBeCloseTo(cell.r10Ohms, 6);
    expect(luxFor(cell, cellOhms(cell, 100))).toBeCloseTo(100, 6);
  });
});

describe('published figures', () => {
  test.each([
    ['cds-dual-5-15k', 'Hamamatsu P1395-01', 5000, 15_000, 0.6, 0.12, 0.25, 0.1e6],
    ['cds-2k5-7k5', 'Hamamatsu P722-7R', 2500, 7500, 0.7, 0.05, 0.04, 0.5e6],
    ['cds-50-150k', 'Hamamatsu P1195', 50_000, 150_000, 0.9, 0.04, 0.01, 20e6],
    ['cds-8-20k', 'GL5528 class, distributors’ tables', 8000, 20_000, 0.7, 0.02, 0.03, 1e6],
  ] as const)('%s is as printed (%s)', (id, _source, min, max, gamma, rise, fall, dark) => {
    const f = CELLS[id];
    expect([f.r10Ohms.min, f.r10Ohms.max, f.gamma.usual]).toEqual([min, max, gamma]);
    expect([f.riseSeconds, f.fallSeconds, f.darkOhms]).toEqual([rise, fall, dark]);
  });

  test('el:C5, 9 kΩ at 10 lx and 400 Ω at 1000 lx: 1.897 kΩ at 100 lx, 3.032 kΩ at 50 lx (RS 232-3816)', () => {
    const cell = cellOf('cds-9k');
    for (const [lux, expected] of [
      [1000, 400],
      [100, 1897],
      [50, 3032],
    ] as const)
      expect(Math.abs(cellOhms(cell, lux) / expected - 1)).toBeLessThan(0.001);
  });

  test('el:C7, the 5 to 10 kΩ cell: 7.549 kΩ at 10 lx and 1.900 kΩ at 100 lx (open GL55xx library’s fit)', () => {
    const cell = cellOf('cds-5-10k');
    for (const [lux, expected] of [
      [10, 7549],
      [100, 1900],
    ] as const)
      expect(Math.abs(cellOhms(cell, lux) / expected - 1)).toBeLessThan(0.01);
  });

  test('el:C17, greatest heat in a cell on 9 V behind 10 kΩ and 1 kΩ: 2.025 and 20.25 mW (V²/4R)', () => {
    // The least resistor a rating allows is the same law turned round.
    for (const fixedOhms of [150, 120]) {
      const design = designWith({ voices: cellAt('bottom', fixedOhms) });
      const heat = warningsOf(design, instrumentOf(design)).find(({ id }) => id === 'cell-heat');
      if (heat?.id !== 'cell-heat') throw new Error('No warning of heat.');
      expect(heat.facts.watts * fixedOhms).toBeCloseTo(2.025e-3 * 10_000, 9);
      expect(heat.facts.watts * fixedOhms).toBeCloseTo(20.25e-3 * 1000, 9);
    }
  });

  test('el:E1 and el:E2, settability: ± 4.5 and ± 0.9 mV of 9 V; ± 150 and ± 50 Ω of 100 kΩ (Bourns 3362, 3296)', () => {
    expect(9 * TRIMMERS['single-turn'].settable.divider).toBeCloseTo(4.5e-3, 12);
    expect(9 * TRIMMERS['multi-turn'].settable.divider).toBeCloseTo(0.9e-3, 12);
    expect(1e5 * TRIMMERS['single-turn'].settable.rheostat).toBeCloseTo(150, 9);
    expect(1e5 * TRIMMERS['multi-turn'].settable.rheostat).toBeCloseTo(50, 9);
  });

  test('el:E5, one degree of 220° and of 240° is 0.4545 and 0.4167 % (Piher PT-10, Bourns 3362)', () => {
    expect(100 / TRIMMERS.carbon.degrees).toBeCloseTo(0.4545, 4);
    expect(100 / TRIMMERS['single-turn'].degrees).toBeCloseTo(0.4167, 4);
  });

  test('el:A19, 150 ppm/°C over 10 °C is 2.6 cents (TI SLFS023)', () => {
    expect(Math.abs(1200 * Math.log2(1 + 10 * TIMERS.bipolar.driftPerDegree) - 2.6)).toBeLessThan(0.1);
  });
});

test('a slow cell makes the voice answer the hand later than a quick one', () => {
  const shade = (family: CellId) => {
    const design = chooseCell('A', family)(BENCH_DESIGN);
    const speed = instrumentOf(design).speeds.A;
    const { gamma } = design.voices.A.cell;
    const target = steadyConductance(gamma, 60);
    let y = steadyConductance(gamma, 300);
    let seconds = 0;
    while (y > target) {
      y = stepConductance(speed, y, 1e-4, 30, 30, 30);
      seconds += 1e-4;
    }
    return seconds;
  };
  expect(shade('cds-dual-5-15k')).toBeGreaterThan(3 * shade('cds-8-20k'));
});
