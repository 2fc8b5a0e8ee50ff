/** Every warning: a design that calls it up, a neighbour that does not, its words, and numbers in all of them. */
import { describe, expect, test } from 'vitest';
import bare from '../../presets/shoebox-chorus.json' with { type: 'json' };
import { astableFrom, cycleOf } from '../../src/circuit/astable.ts';
import { cellSpeed, steadyConductance, stepConductance } from '../../src/circuit/cell.ts';
import { cellSiemens, nodeVolts } from '../../src/circuit/gate.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { upperDipVolts } from '../../src/circuit/supply.ts';
import { type Warning, warningsOf } from '../../src/circuit/warnings.ts';
import { reachableLux, resetCorner } from '../../src/circuit/warnings-gate.ts';
import { dipVolts, lockWindow, spreadCents } from '../../src/circuit/warnings-pitch.ts';
import { rippleVolts } from '../../src/circuit/warnings-sensor.ts';
import { decode } from '../../src/design/decode.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/design.ts';
import { CELLS, type CellId } from '../../src/parts/cells.ts';
import { SUPPLIES, type SupplyId } from '../../src/parts/supplies.ts';
import { words } from '../../src/words/en.ts';
import type { WarningId } from '../../src/words/warning-facts.ts';
import { WARNING_WORDS, warningWords } from '../../src/words/warnings.ts';
import { seededDesigns } from './any-design.ts';
import { BENCH_DESIGN, type Changes, cellAt, designWith, thresholdTurned } from './building.ts';

const warnings = (design: Design) => warningsOf(design, instrumentOf(design));
const idsOf = (design: Design) => new Set<string>(warnings(design).map(({ id }) => id));
const found = <K extends WarningId>(design: Design, id: K) =>
  warnings(design).find((warning): warning is Extract<Warning, { id: K }> => warning.id === id);

const cell = (family: CellId, r10Ohms: number = CELLS[family].r10Ohms.usual) => ({
  cell: { family, r10Ohms, gamma: CELLS[family].gamma.usual },
});
const supplied = (kind: SupplyId, more: Partial<Design['supply']> = {}) => ({
  supply: { ...BENCH_DESIGN.supply, ...SUPPLIES[kind], kind, ...more },
});
const { A } = BENCH_DESIGN.voices;
const threshold = (rotation: number, change = {}) => ({
  threshold: {
    trimmers: { A: thresholdTurned(rotation, change), B: thresholdTurned(rotation, change) },
  },
});
const dielectric = (id: Design['voices']['A']['capacitor']['dielectric'], tolerance = 0.1) => ({
  voices: { capacitor: { ...A.capacitor, dielectric: id, tolerance } },
});
const tuned = (change: Partial<Design['voices']['A']['trimmer']>, more = {}) => ({
  voices: { ...more, trimmer: { ...A.trimmer, ...change } },
});
const output = (change: Partial<Design['output']>): Changes => ({ output: change });
const quiet = {};

/** Row of the list of pitfalls this build was planned with, or null; what calls it up; a neighbour that does not. */
type Case = readonly [id: WarningId, rows: readonly number[], fires: Changes, rests: Changes];

const CASES: readonly Case[] = [
  [
    'no-hysteresis',
    [1],
    { voices: { hysteresisOhms: null }, noise: { voltsRms: 0.001 } },
    { voices: { hysteresisOhms: null } },
  ],
  ['lamp-ripple', [2], { voices: { hysteresisOhms: 2e6 } }, quiet],
  ['threshold-misses-rooms', [5], { voices: cellAt('bottom', 200_000) }, quiet],
  [
    'light-changes-nothing',
    [],
    { ...threshold(1, { topOhms: 0, bottomOhms: 1e6 }), comparator: 'later' },
    quiet,
  ],
  [
    'grade-spread',
    [6],
    quiet,
    {
      ...tuned({}, cell('cds-5-10k')),
      ...threshold(0.05, { topOhms: 0, trimmer: { ...A.trimmer, ohms: 100_000 } }),
    },
  ],
  ['cells-unequal', [7], { A: cell('cds-8-20k', 18_000) }, { A: cell('cds-8-20k', 12_500) }],
  ['slow-fall', [9], { voices: cell('cds-dual-5-15k') }, { voices: cell('cds-2k5-7k5') }],
  ['touchable-node', [13], { voices: { ...cell('cds-50-150k', 1e6), ...cellAt('bottom', 1e6) } }, quiet],
  ['long-lead', [14], { voices: cellAt('top', 470_000) }, { voices: cellAt('top', 47_000) }],
  ['sounds-in-shade', [15], { A: { polarity: 'shade' } }, quiet],
  ['unplugged-sounds', [16], { A: { polarity: 'shade' } }, quiet],
  ['cell-heat', [], { voices: cellAt('bottom', 150) }, { voices: cellAt('bottom', 220) }],
  ['cadmium', [61], quiet, quiet],
  [
    'reference-above-range',
    [17],
    {
      ...threshold(0.95, { topOhms: 0 }),
      voices: { polarity: 'shade', ...cellAt('bottom', 1e6), ...cell('cds-2-6k', 500) },
    },
    quiet,
  ],
  ['node-above-range', [17], quiet, { voices: { ...cellAt('bottom', 200_000), ...cell('cds-2-6k') } }],
  ['both-above-range', [17], threshold(0.95, { topOhms: 0 }), threshold(0.5, { topOhms: 0 })],
  ['never-sounds', [18], { voices: { pullUpOhms: 90_000 } }, quiet],
  ['never-silent', [19], { voices: { pullUpOhms: 330 } }, quiet],
  ['reset-half', [21], { voices: { pullUpOhms: 1000 } }, { voices: { pullUpOhms: 2200 } }],
  ['reset-low-worst', [19], { voices: { pullUpOhms: 4700 } }, quiet],
  [
    'reset-high-worst',
    [20],
    { ...supplied('five-volt'), voices: { pullUpOhms: 10_000 } },
    { ...supplied('five-volt'), voices: { pullUpOhms: 9500 } },
  ],
  ['comparator-overloaded', [19], { voices: { pullUpOhms: 3300 } }, { voices: { pullUpOhms: 3900 } }],
  ['hysteresis-wide', [22], { voices: { hysteresisOhms: 68_000 } }, quiet],
  [
    'thresholds-interact',
    [23],
    { threshold: { arrangement: 'shared' }, voices: { hysteresisOhms: 220_000 } },
    { voices: { hysteresisOhms: 220_000 } },
  ],
  ['touchy-threshold', [24], threshold(0.02, { topOhms: 0, bottomOhms: 0 }), quiet],
  ['no-pitch', [], { A: { controlVolts: 9.5 } }, { A: { controlVolts: 6 } }],
  ['rb-near-zero', [25], { voices: { rbFixedOhms: 0 } }, { voices: { rbFixedOhms: 1000 } }],
  ['ra-too-small', [26], { voices: { raOhms: 990 } }, { voices: { raOhms: 1000 } }],
  ['resistors-too-large', [], { voices: { rbFixedOhms: 6.2e6 } }, { voices: { rbFixedOhms: 5.8e6 } }],
  [
    'pitch-spread',
    [28],
    quiet,
    {
      ...dielectric('c0g', 0.01),
      timer: 'cmos',
      voices: { capacitor: { ...A.capacitor, tolerance: 0.01 }, trimmer: { ...A.trimmer, ohms: 1000 } },
    },
  ],
  ['pitch-out-of-reach', [29], tuned({ rotation: 0.01 }), tuned({ rotation: 0.4 })],
  ['drifting-ceramic', [30], dielectric('x7r'), dielectric('c0g')],
  ['polarised-timing', [31], dielectric('electrolytic'), dielectric('polyester')],
  ['coarse-trimmer', [36], tuned({ part: 'carbon' }), tuned({ part: 'multi-turn' })],
  ['pitch-moves-with-battery', [37], quiet, supplied('five-volt')],
  ['above-formula', [], { voices: { capacitor: { ...A.capacitor, farads: 100e-12 } } }, quiet],
  ['outside-hearing', [], { voices: { capacitor: { ...A.capacitor, farads: 2e-6 } } }, quiet],
  ['voices-lock', [32], { B: A }, { B: A, timer: 'cmos' }],
  ['outputs-joined', [41], output({ mixOhms: null }), quiet],
  ['output-overloaded', [38], { timer: 'cmos', output: { mixOhms: null } }, { timer: 'cmos' }],
  ['too-loud-line', [40], output({ shuntOhms: null }), quiet],
  [
    'too-loud-headphones',
    [40],
    output({
      loadOhms: 32,
      mixOhms: { A: 100, B: 100 },
      shuntOhms: null,
      coupling: { farads: 1e-3, kind: 'electrolytic' },
    }),
    output({ loadOhms: 32, coupling: { farads: 1e-3, kind: 'electrolytic' } }),
  ],
  ['thin-sound', [42], output({ coupling: { farads: 47e-9, kind: 'film' } }), quiet],
  ['dc-at-jack', [42], output({ coupling: null }), quiet],
  ['coupling-polarity', [42], output({ coupling: { farads: 1e-6, kind: 'electrolytic' } }), quiet],
  ['thump', [35], output({ coupling: { farads: 1e-5, kind: 'film' } }), quiet],
  ['no-decoupling', [33], { supply: { decoupled: false } }, { supply: { decoupled: false }, timer: 'cmos' }],
  ['supply-below-range', [38], supplied('five-volt', { volts: 4.4 }), supplied('five-volt', { volts: 4.6 })],
  ['supply-above-range', [38], { supply: { volts: 16.5 } }, { supply: { volts: 15.5 } }],
  ['battery-sag', [44], { supply: { sourceOhms: 40 } }, quiet],
  ['battery-hours', [45], { voices: { raOhms: 2200 } }, quiet],
  ['battery-unused', [45], supplied('four-aa'), { ...supplied('four-aa'), timer: 'cmos' }],
  ['no-diode', [46], quiet, { supply: { diode: true } }],
];

describe.each(CASES)('%s', (id, _rows, fires, rests) => {
  test('is called up by a design that has it, and its words say what to do, with no empty place', () => {
    const warning = found(designWith(fires), id);
    expect(warning).toBeDefined();
    const { who, reason, remedy, source } = warningWords(warning!);
    expect(who).toBe(warning!.voice === null ? 'The instrument' : `Voice ${warning!.voice}`);
    for (const text of [reason, remedy, source]) {
      expect(text.length).toBeGreaterThan(5);
      expect(text).not.toMatch(/NaN|undefined|null|∞|Infinity/);
    }
    expect(reason).toMatch(/\.$/);
    expect(remedy).toMatch(/\.$/);
  });

  // Every cell family of today holds cadmium, so that note has no neighbour.
  if (id !== 'cadmium')
    test('rests in a neighbour that does not', () => {
      expect(idsOf(designWith(rests))).not.toContain(id);
    });
});

test('every warning that has words is called up here, and no other', () => {
  expect(CASES.map(([id]) => id).toSorted()).toEqual(Object.keys(WARNING_WORDS).toSorted());
});

test('at least 25 rows of the list of pitfalls have a warning', () => {
  const rows = new Set(CASES.flatMap(([, numbers]) => numbers));
  expect(rows.size).toBeGreaterThanOrEqual(25);
});

test('the careful build calls up notes, and one caution: it has no diode', () => {
  const loud = warnings(DEFAULT_DESIGN).filter(({ severity }) => severity !== 'note');
  expect(loud.map(({ id, severity }) => [id, severity])).toEqual([['no-diode', 'caution']]);
});

test('the bare build calls up what it does wrong', () => {
  const decoded = decode(bare);
  if (!decoded.ok) throw new Error('The bare build does not read.');
  const ids = idsOf(decoded.design);
  for (const id of ['no-hysteresis', 'rb-near-zero', 'outputs-joined', 'too-loud-line', 'no-decoupling'])
    expect(ids).toContain(id);
  for (const id of ['drifting-ceramic', 'coarse-trimmer', 'coupling-polarity', 'no-diode', 'lamp-ripple'])
    expect(ids).toContain(id);
});

test('the worst comes first', () => {
  const order = Object.keys(words.warnings.severities);
  const design = designWith({ voices: { raOhms: 500, hysteresisOhms: null }, noise: { voltsRms: 0.001 } });
  const ranks = warnings(design).map(({ severity }) => order.indexOf(severity));
  expect(ranks[0]).toBe(0);
  expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
});

test('no fact and no sentence holds anything but numbers, over 500 designs of every family (seed 2029)', () => {
  const { anyDesign, uniform, between } = seededDesigns(2029);
  const seen = new Set<string>();
  const wrong: string[] = [];
  const one = <T>(options: readonly T[]): T => options[Math.floor(uniform() * options.length)]!;
  for (let i = 0; i < 500; i++) {
    const drawn = anyDesign();
    const kind = one(Object.keys(SUPPLIES) as SupplyId[]);
    const family = one(Object.keys(CELLS) as CellId[]);
    const design: Design = {
      ...drawn,
      supply: {
        ...drawn.supply,
        kind,
        sourceOhms: between({ min: 0.01, max: 100 }),
        decoupled: one([true, false]),
        sharedDipVolts: 2 * uniform(),
      },
      voices: { ...drawn.voices, A: { ...drawn.voices.A, cell: { ...drawn.voices.A.cell, family } } },
    };
    expect(decode(design).ok).toBe(true);
    for (const warning of warnings(design)) {
      seen.add(warning.id);
      for (const [name, value] of Object.entries(warning.facts))
        if (Number.isNaN(value)) wrong.push(`design ${i}: ${name} of ${warning.id}`);
      const { reason, remedy } = warningWords(warning);
      if (/NaN|undefined/.test(`${reason} ${remedy}`)) wrong.push(`design ${i}: words of ${warning.id}`);
    }
  }
  expect(wrong).toEqual([]);
  expect(seen.size).toBeGreaterThan(35);
}, 60_000);

describe('published figures', () => {
  test('el:A18, 2.25 / 5 / 13 % of period are 38.5 / 84.5 / 211.6 cents (cents = 1200·log2)', () => {
    for (const [timer, expected] of [
      [0.0225, 38.5],
      [0.05, 84.5],
      [0.13, 211.6],
    ] as const)
      expect(Math.abs(spreadCents({ capacitor: 0, resistance: 0, timer }).down - expected)).toBeLessThan(0.1);
  });

  test('el:A22, C ± 10 %, R ± 1 %, timer ± 2.25 %: −220.8 … +239.2 cents (TI SLFS023 tolerances)', () => {
    const { down, up } = spreadCents({ capacitor: 0.1, resistance: 0.01, timer: 0.0225 });
    expect(Math.abs(down / 220.8 - 1)).toBeLessThan(0.005);
    expect(Math.abs(up / 239.2 - 1)).toBeLessThan(0.005);
  });

  test('el:A17, greatest RA + RB 10 MΩ at 15 V and 3.33 MΩ at 5 V (TI SLFS023, note 3)', () => {
    for (const [volts, expected] of [
      [15, 10e6],
      [5, 3.33e6],
    ] as const) {
      const facts = found(
        designWith({ supply: { volts }, voices: { rbFixedOhms: 9.99e6, raOhms: 1e5 } }),
        'resistors-too-large',
      )!.facts;
      expect(Math.abs(facts.mostOhms / expected - 1)).toBeLessThan(0.03);
    }
  });

  test('el:A20, 0.3 %/V from 9.6 V to 5.4 V is 21.7 cents (TI SLFS023)', () => {
    const facts = found(designWith({ supply: { volts: 9.6 } }), 'pitch-moves-with-battery')!.facts;
    expect(facts.toVolts).toBe(5.4);
    expect(Math.abs(facts.driftCents - 21.7)).toBeLessThan(0.1);
  });

  test('el:D27 and el:D28, 15 % more or less capacitance is −242.0 / +281.4 cents; 82 % less +2969 (EIA RS-198)', () => {
    const x7r = found(designWith(dielectric('x7r')), 'drifting-ceramic')!.facts;
    expect(Math.abs(x7r.downCents - 242)).toBeLessThan(0.1);
    expect(Math.abs(x7r.upCents - 281.4)).toBeLessThan(0.1);
    expect(
      Math.abs(found(designWith(dielectric('y5v')), 'drifting-ceramic')!.facts.upCents - 2969),
    ).toBeLessThan(1);
  });

  test('el:A44, a 200 mA spike over 1.7 Ω is 0.34 V, over 0.6 Ω 0.12 V; el:A43, out of 10 µF 6 mV (EDN Asia)', () => {
    expect(dipVolts(designWith({ supply: { decoupled: false } }), 9)).toBeCloseTo(0.34, 9);
    expect(dipVolts(designWith(supplied('four-aa', { decoupled: false })), 6)).toBeCloseTo(0.12, 9);
    expect(dipVolts(designWith(), 9)).toBeCloseTo((0.3 * 200e-9) / 10e-6, 9);
  });

  test.each([
    [9, 29],
    [5, 52],
  ])(
    'job finding 5: 0.1 V of dip on %d V cuts the high short by %d cents at mid travel (calculation)',
    (rail, told) => {
      const mid = astableFrom({
        raOhms: 3900,
        rbOhms: 12_000 + 25_000,
        farads: 47e-9,
        railVolts: rail,
        controlVolts: null,
        discharge: { kind: 'resistance', ohms: 0 },
      });
      const { high } = lockWindow(mid, upperDipVolts(0.1, null));
      expect(Math.abs(-1200 * Math.log2(1 - high * cycleOf(mid).frequency) - told)).toBeLessThan(0.5);
    },
  );

  test('el:A41, pull-up 10 kΩ with 0.4 mA into the pin leaves 5.0 / 1.0 / 0.5 V of 9 / 5 / 4.5 V (TI SLFS023)', () => {
    const design = designWith({ voices: { pullUpOhms: 10_000 } });
    for (const [rail, expected] of [
      [9, 5],
      [5, 1],
      [4.5, 0.5],
    ] as const)
      expect(resetCorner(design, 'A', rail).high).toBeCloseTo(expected, 9);
  });

  test('the pull-up window of a bipolar timer is 6.0 to 10 kΩ (TI SLFS022A reset figures, 9 V low and 5 V high)', () => {
    const low = (pullUpOhms: number) => resetCorner(designWith({ voices: { pullUpOhms } }), 'A', 9).low;
    const high = (pullUpOhms: number) => resetCorner(designWith({ voices: { pullUpOhms } }), 'A', 5).high;
    expect(low(6100)).toBeLessThan(0.3);
    expect(low(5900)).toBeGreaterThan(0.3);
    expect(high(9900)).toBeGreaterThan(1);
    expect(high(10_100)).toBeLessThan(1);
  });
});

test('the reachable light is what the trip points give at the two stops', () => {
  const reach = reachableLux(designWith(), 'A', 9)!;
  const at = (rotation: number) => instrumentOf(designWith(threshold(rotation))).voices.A.tripLux.on!;
  expect(reach.to).toBeCloseTo(at(0), 6);
  expect(reach.from).toBeCloseTo(at(1), 6);
  expect(reach.from).toBeLessThan(10);
  expect(reach.to).toBeGreaterThan(1000);
});

test.each([30, 95, 300])(
  'the ripple under a 30 %% lamp at %d lx is that of the moving cell, within a tenth',
  (lux) => {
    const design = designWith();
    const instrument = instrumentOf(design);
    const { cell: fitted } = design.voices.A;
    const speed = cellSpeed(fitted);
    const step = 1e-4;
    const at = (i: number) => lux * (1 + 0.3 * Math.sin(2 * Math.PI * 100 * step * i));
    let y = steadyConductance(fitted.gamma, lux);
    let [least, most] = [9, 0];
    for (let i = 0; i < 6000; i++) {
      y = stepConductance(speed, y, step, at(i), at(i + 0.5), at(i + 1));
      if (i < 5000) continue;
      const node = nodeVolts(instrument.gates.A.states[0]!, cellSiemens(instrument.gates.A, y));
      [least, most] = [Math.min(least, node), Math.max(most, node)];
    }
    expect(Math.abs(rippleVolts(design, instrument, 'A', lux) / (most - least) - 1)).toBeLessThan(0.1);
  },
);
