/** Changes to a design: pure, quiet when nothing changes, and never out of the document's own limits. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DocumentStore } from '../../src/app/store.ts';
import * as commands from '../../src/design/commands.ts';
import { decode, decodeText, encodeText } from '../../src/design/decode.ts';
import type { Design } from '../../src/design/design.ts';
import { LIMITS } from '../../src/design/limits.ts';
import { CELLS, type CellId } from '../../src/parts/cells.ts';
import { BENCH_DESIGN } from '../circuit/building.ts';

type Command = commands.Command;

const inside = (name: keyof typeof LIMITS) => fc.double({ ...LIMITS[name], noNaN: true });
const id = fc.constantFrom('A' as const, 'B' as const);
const orNull = <T>(values: fc.Arbitrary<T>) => fc.option(values, { nil: null, freq: 4 });

/** Every kind of change, with any values a field could hand over. The key is the command's name. */
const ANY: Readonly<Record<Exclude<keyof typeof commands, 'replaceWith'>, fc.Arbitrary<Command>>> = {
  rename: fc.string({ maxLength: 80 }).map(commands.rename),
  annotate: fc.string({ maxLength: 2000 }).map(commands.annotate),
  chooseTimer: fc.constantFrom('bipolar' as const, 'cmos' as const).map(commands.chooseTimer),
  chooseComparator: fc.constantFrom('classic' as const, 'later' as const).map(commands.chooseComparator),
  turnPitch: fc.tuple(id, inside('fraction')).map((x) => commands.turnPitch(...x)),
  fitPitchTrimmer: fc
    .tuple(id, fc.constantFrom('single-turn' as const, 'carbon' as const), inside('trimmerOhms'))
    .map(([voice, part, ohms]) => commands.fitPitchTrimmer(voice, { part, ohms })),
  setVoiceValue: fc.oneof(
    fc.tuple(id, inside('raOhms')).map(([v, x]) => commands.setVoiceValue(v, 'raOhms', x)),
    fc.tuple(id, inside('rbFixedOhms')).map(([v, x]) => commands.setVoiceValue(v, 'rbFixedOhms', x)),
    fc
      .tuple(id, orNull(inside('hysteresisOhms')))
      .map(([v, x]) => commands.setVoiceValue(v, 'hysteresisOhms', x)),
    fc.tuple(id, inside('inputOhms')).map(([v, x]) => commands.setVoiceValue(v, 'inputOhms', x)),
    fc.tuple(id, inside('pullUpOhms')).map(([v, x]) => commands.setVoiceValue(v, 'pullUpOhms', x)),
  ),
  setCapacitance: fc.tuple(id, inside('timingFarads')).map((x) => commands.setCapacitance(...x)),
  chooseDielectric: fc
    .tuple(id, fc.constantFrom('polyester' as const, 'y5v' as const, 'electrolytic' as const))
    .map((x) => commands.chooseDielectric(...x)),
  setPolarity: fc
    .tuple(id, fc.constantFrom('light' as const, 'shade' as const))
    .map((x) => commands.setPolarity(...x)),
  placeCell: fc
    .tuple(id, fc.constantFrom('top' as const, 'bottom' as const))
    .map((x) => commands.placeCell(...x)),
  setDividerOhms: fc.tuple(id, inside('dividerOhms')).map((x) => commands.setDividerOhms(...x)),
  setCell: fc
    .tuple(id, inside('cellOhms'), inside('gamma'))
    .map(([v, r10Ohms, gamma]) => commands.setCell(v, { r10Ohms, gamma })),
  setControlVolts: fc.tuple(id, orNull(inside('controlVolts'))).map((x) => commands.setControlVolts(...x)),
  turnThreshold: fc.tuple(id, inside('fraction')).map((x) => commands.turnThreshold(...x)),
  fitThresholdTrimmer: fc
    .tuple(id, fc.constantFrom('multi-turn' as const, 'carbon' as const), inside('trimmerOhms'))
    .map(([voice, part, ohms]) => commands.fitThresholdTrimmer(voice, { part, ohms })),
  setEndResistor: fc
    .tuple(id, fc.constantFrom('topOhms' as const, 'bottomOhms' as const), inside('endResistorOhms'))
    .map((x) => commands.setEndResistor(...x)),
  arrangeThreshold: fc.constantFrom('shared' as const, 'each' as const).map(commands.arrangeThreshold),
  setMixing: orNull(fc.record({ A: inside('mixOhms'), B: inside('mixOhms') })).map(commands.setMixing),
  setMixOhms: fc.tuple(id, inside('mixOhms')).map((x) => commands.setMixOhms(...x)),
  setShuntOhms: orNull(inside('shuntOhms')).map(commands.setShuntOhms),
  setLoadOhms: inside('loadOhms').map(commands.setLoadOhms),
  setVolume: orNull(fc.record({ ohms: inside('trimmerOhms'), rotation: inside('fraction') })).map(
    commands.setVolume,
  ),
  setCoupling: orNull(
    fc.record({
      farads: inside('couplingFarads'),
      kind: fc.constantFrom('film' as const, 'electrolytic' as const),
    }),
  ).map(commands.setCoupling),
  chooseSupply: fc
    .constantFrom('block-9v' as const, 'four-aa' as const, 'five-volt' as const)
    .map(commands.chooseSupply),
  setSupply: fc
    .record({ volts: inside('supplyVolts'), diode: fc.boolean() })
    .map((change) => commands.setSupply(change)),
  setSeed: fc.nat(999_999).map(commands.setSeed),
  setNoise: inside('noiseVolts').map(commands.setNoise),
  keepCell: fc
    .tuple(id, fc.constantFrom('light' as const, 'dark' as const))
    .map((x) => commands.keepCell(...x)),
  chooseCell: fc
    .tuple(id, fc.constantFrom(...(Object.keys(CELLS) as CellId[])))
    .map((x) => commands.chooseCell(...x)),
};

const anyCommand = fc.oneof(...Object.values(ANY));

test('every change there is has its generator here', () => {
  expect(Object.keys(ANY).sort()).toEqual(
    Object.keys(commands)
      .filter((name) => name !== 'replaceWith')
      .sort(),
  );
});

describe.each(Object.entries(ANY))('%s', (_name, command) => {
  test('the same change made twice is the identical object the second time', () => {
    fc.assert(
      fc.property(command, (change) => {
        const once = change(BENCH_DESIGN);
        expect(change(once)).toBe(once);
      }),
      { seed: 21, numRuns: 30 },
    );
  });

  test('the design it starts from is not touched', () => {
    const before = structuredClone(BENCH_DESIGN);
    fc.assert(
      fc.property(command, (change) => {
        change(BENCH_DESIGN);
        expect(BENCH_DESIGN).toEqual(before);
      }),
      { seed: 22, numRuns: 10 },
    );
  });
});

test.each<[string, (design: Design) => Command]>([
  ['the same name', (d) => commands.rename(d.name)],
  ['the same turn', (d) => commands.turnPitch('A', d.voices.A.trimmer.rotation)],
  ['the same capacitor', (d) => commands.setCapacitance('B', d.voices.B.capacitor.farads)],
  ['the same dielectric', (d) => commands.chooseDielectric('B', d.voices.B.capacitor.dielectric)],
  ['the same supply', (d) => commands.chooseSupply(d.supply.kind)],
  ['equal mixing resistors', (d) => commands.setMixing({ ...d.output.mixOhms! })],
  ['an equal coupling capacitor', (d) => commands.setCoupling({ ...d.output.coupling! })],
  ['the same threshold', (d) => commands.turnThreshold('A', d.threshold.trimmers.A.trimmer.rotation)],
])('%s is no change at all', (_what, command) => {
  expect(command(BENCH_DESIGN)(BENCH_DESIGN)).toBe(BENCH_DESIGN);
});

test('a change leaves the rest of the design shared with the one before', () => {
  const after = commands.turnPitch('A', 0.9)(BENCH_DESIGN);
  expect(after.voices.A.trimmer.rotation).toBe(0.9);
  expect(after.voices.B).toBe(BENCH_DESIGN.voices.B);
  expect(after.voices.A.capacitor).toBe(BENCH_DESIGN.voices.A.capacitor);
  expect(after.output).toBe(BENCH_DESIGN.output);
});

test('another kind of part brings its own tolerance, the same kind keeps the one typed in', () => {
  const carbon = commands.fitPitchTrimmer('A', { part: 'carbon' })(BENCH_DESIGN);
  expect(carbon.voices.A.trimmer).toMatchObject({ part: 'carbon', ohms: 50_000, tolerance: 0.2 });
  const larger = commands.fitPitchTrimmer('A', { ohms: 100_000 })(BENCH_DESIGN);
  expect(larger.voices.A.trimmer).toMatchObject({ part: 'single-turn', ohms: 100_000, tolerance: 0.1 });
  const ceramic = commands.chooseDielectric('A', 'y5v')(BENCH_DESIGN);
  expect(ceramic.voices.A.capacitor).toMatchObject({ dielectric: 'y5v', tolerance: 0.2 });
});

test('one mixing resistor of outputs that are joined cannot be set', () => {
  const joined = commands.setMixing(null)(BENCH_DESIGN);
  expect(commands.setMixOhms('A', 1000)(joined)).toBe(joined);
});

test.each([31, 32, 33])('after any run of changes the document can be read back (seed %i)', (seed) => {
  fc.assert(
    fc.property(fc.array(anyCommand, { maxLength: 30 }), (run) => {
      const design = run.reduce((current, command) => command(current), BENCH_DESIGN);
      expect(decode(design)).toEqual({ ok: true, design });
      expect(decodeText(encodeText(design))).toEqual({ ok: true, design });
    }),
    { seed, numRuns: 60 },
  );
});

test.each([41, 42])('any run of changes is taken back step by step, object by object (seed %i)', (seed) => {
  fc.assert(
    fc.property(fc.array(anyCommand, { maxLength: 25 }), (run) => {
      const store = new DocumentStore(BENCH_DESIGN);
      const seen: Design[] = [BENCH_DESIGN];
      for (const command of run) {
        store.change('change', command);
        if (store.current !== seen.at(-1)) seen.push(store.current);
      }
      for (const design of seen.toReversed()) {
        expect(store.current).toBe(design);
        store.undo();
      }
      expect(store.current).toBe(BENCH_DESIGN);
      for (const design of seen) {
        expect(store.current).toBe(design);
        store.redo();
      }
    }),
    { seed, numRuns: 60 },
  );
});
