/** Light so bright that the cells become quick: gates against an independent integration in far shorter steps. */
import { describe, expect, test } from 'vitest';
import { cellSpeed, steadyConductance } from '../../src/circuit/cell.ts';
import type { Design } from '../../src/design/design.ts';
import { type LightProgram, luxAt, luxBefore, nextBreak } from '../../src/light/program.ts';
import type { CellId } from '../../src/parts/cells.ts';
import { pairOf } from '../../src/quantity/units.ts';
import { Engine } from '../../src/sound/engine.ts';
import { Gating, GRID } from '../../src/sound/gating.ts';
import { seededDesigns } from '../circuit/any-design.ts';
import { tripOhms } from '../circuit/board.ts';
import { designWith, thresholdTurned } from '../circuit/building.ts';
import { jumps, settingsFrom, steady } from './playing.ts';

/** Integration takes its time, ms. */
const LONG = 120_000;

interface Turn {
  readonly time: number;
  readonly sounding: boolean;
}

function ourTurns(design: Design, program: LightProgram, seconds: number): readonly Turn[] {
  const gating = new Gating(settingsFrom(design), program);
  const turns: Turn[] = [];
  for (let i = 0; i < seconds * GRID; i++)
    gating.advance((voice, time, sounding) => {
      if (voice === 'A' && time < seconds) turns.push({ time, sounding });
    });
  return turns;
}

/**
 * Voice A's conductance by Runge–Kutta in steps of a hundredth of the cell's time constant where it is, at most
 * five microseconds and a hundredth of the conductance, with an end at each of the grid's times; every step is told.
 */
function integrate(
  design: Design,
  program: LightProgram,
  seconds: number,
  tell: (t0: number, y0: number, t1: number, y1: number) => void,
): void {
  const { gamma } = design.voices.A.cell;
  const { riseTau, fallTau } = cellSpeed(design.voices.A.cell);
  const slope = (y: number, lux: number) => {
    const gap = lux / 10 - Math.max(0, y) ** (1 / gamma);
    return gap / (gap > 0 ? riseTau : fallTau);
  };
  const mean = program.kind === 'ripple' ? program.of : program;
  let y = steadyConductance(gamma, luxAt(mean, 'A', 0));
  let t = 0;
  let bend = 0;
  let grid = 0;
  while (t < seconds) {
    if (t >= bend) bend = nextBreak(program, t);
    if (t >= grid / GRID) grid++;
    const lux0 = luxAt(program, 'A', t);
    const lux1 = luxBefore(program, 'A', t + 5e-6);
    const highest = Math.max(y, steadyConductance(gamma, Math.max(lux0, lux1)));
    const constant = (gamma * Math.min(riseTau, fallTau)) / highest ** (1 / gamma - 1);
    const fastest = Math.max(Math.abs(slope(y, lux0)), Math.abs(slope(y, lux1)));
    const longest = Math.min(5e-6, constant / 100, (0.01 * y) / fastest);
    const end = Math.min(t + longest, bend, grid / GRID, seconds);
    const step = end - t;
    const middle = luxAt(program, 'A', t + step / 2);
    const k1 = slope(y, lux0);
    const k2 = slope(y + (step / 2) * k1, middle);
    const k3 = slope(y + (step / 2) * k2, middle);
    const k4 = slope(y + step * k3, luxBefore(program, 'A', end));
    const next = y + (step / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    tell(t, y, end, next);
    y = next;
    t = end;
  }
}

/** Where that conductance passes the trip resistances that the whole net solved gives; the voice sounds in light. */
function theirTurns(design: Design, program: LightProgram, seconds: number): readonly Turn[] {
  const { r10Ohms, gamma } = design.voices.A.cell;
  const onAt = r10Ohms / tripOhms(design, 'A', { A: false, B: false })!;
  const offAt = r10Ohms / tripOhms(design, 'A', { A: true, B: false })!;
  let sounding = steadyConductance(gamma, luxAt(program, 'A', 0)) > onAt;
  const turns: Turn[] = [];
  integrate(design, program, seconds, (t0, y0, t1, y1) => {
    const trip = sounding ? offAt : onAt;
    if (y1 > trip === sounding) return;
    sounding = !sounding;
    turns.push({ time: t0 + ((t1 - t0) * (trip - y0)) / (y1 - y0), sounding });
  });
  return turns;
}

/** A cell that weighs against a fixed resistor, and a threshold in the middle of what the light does. */
const instrument = (gamma: number, fixedOhms: number, rotation: number, family: CellId = 'cds-8-20k') =>
  designWith({
    voices: {
      cell: { family, r10Ohms: 12_000, gamma },
      divider: { cell: 'bottom', fixedOhms },
    },
    threshold: { trimmers: { A: thresholdTurned(rotation), B: thresholdTurned(rotation) } },
  });

/** Straight lines through rows of [time, lux]. */
const lines = (...rows: readonly (readonly [number, number])[]): LightProgram => ({
  kind: 'points',
  times: Float64Array.from(rows, ([time]) => time),
  lux: { A: Float64Array.from(rows, ([, lux]) => lux), B: Float64Array.from(rows, () => 1) },
});

const rampsTo = (lux: number) => lines([0, 2], [0.01, 2], [0.05, lux], [0.1, lux], [0.13, 2], [0.4, 2]);
const jumpsTo = (lux: number) => jumps([0, 2, 1], [0.0101, lux, 1], [0.1003, 2, 1]);

// One resistor for a trip point in ordinary light, one for a trip point far up, where the cell is quick.
describe.each([
  [0.4, 12_000],
  [0.4, 3000],
  [0.5, 12_000],
])('with γ %d against %d Ω', (gamma, fixedOhms) => {
  const design = instrument(gamma, fixedOhms, 0.27);
  test.each([
    ['a ramp to 40 000 lx', rampsTo(40_000)],
    ['a ramp to 100 000 lx', rampsTo(100_000)],
    ['a jump to 40 000 lx', jumpsTo(40_000)],
    ['a jump to 100 000 lx', jumpsTo(100_000)],
    [
      'a rippling lamp of 100 000 lx',
      { kind: 'ripple', of: steadyFrom(2, 100_000), hertz: 100, depth: 0.37, shape: 'rectified' },
    ],
  ] as const)(
    '%s changes the gate when the integration says, and never else',
    (_name, program) => {
      const ours = ourTurns(design, program, 0.4);
      const theirs = theirTurns(design, program, 0.4);
      expect(ours.map(({ sounding }) => sounding)).toEqual(theirs.map(({ sounding }) => sounding));
      expect(theirs.length).toBeGreaterThan(0);
      for (const [i, { time }] of theirs.entries()) expect(Math.abs(ours[i]!.time - time)).toBeLessThan(1e-6);
    },
    LONG,
  );
});

/** From one light to another within a moment, and steady from then on. */
function steadyFrom(from: number, to: number) {
  return {
    kind: 'ramp' as const,
    from: { A: from, B: 1 },
    to: { A: to, B: 1 },
    start: 0.01,
    duration: 0.001,
  };
}

/** The largest relative error of voice A's conductance at the grid's times. */
function worstConductance(design: Design, program: LightProgram, seconds: number): number {
  const gating = new Gating(settingsFrom(design), program);
  let worst = 0;
  let next = 1;
  integrate(design, program, seconds, (_t0, _y0, t, y) => {
    if (t < next / GRID) return;
    gating.advance(() => {});
    worst = Math.max(worst, Math.abs(gating.conductance('A') / y - 1));
    next++;
  });
  expect(next).toBeGreaterThan(seconds * GRID - 1);
  return worst;
}

test.each([
  [10, 1000],
  [1000, 10],
  [2, 20_000],
  [20_000, 2],
])(
  'just after a jump from %d lx to %d lx the conductance is right to two in a million',
  (from, to) => {
    for (const gamma of [0.4, 0.7, 1]) {
      const program = jumps([0, from, 1], [0.01003, to, 1]);
      expect(worstConductance(instrument(gamma, 12_000, 0.27), program, 0.03)).toBeLessThan(2e-6);
    }
  },
  LONG,
);

test.each([
  // The tau of down is a half, and a thirteenth, of that of up; light up to twenty times the sun.
  ['cds-8-20k', 2e6],
  ['cds-50-150k', 1e5],
] as const)(
  'a cell far quicker than a grid step follows the light, and so does its gate (%s, %d lx)',
  (family, lux) => {
    // The mean light holds the node at the reference.
    const design = instrument(0.4, (4.88 * 12_000) / steadyConductance(0.4, lux), 0.27, family);
    const program: LightProgram = {
      kind: 'ripple',
      of: { kind: 'steady', lux: { A: lux, B: 1 } },
      hertz: 100,
      depth: 0.8,
      shape: 'sine',
    };
    expect(worstConductance(design, program, 0.011)).toBeLessThan(2e-5);
    const ours = ourTurns(design, program, 0.022);
    const theirs = theirTurns(design, program, 0.022);
    expect(ours.map(({ sounding }) => sounding)).toEqual(theirs.map(({ sounding }) => sounding));
    expect(theirs.length).toBeGreaterThan(3);
    for (const [i, { time }] of theirs.entries()) expect(Math.abs(ours[i]!.time - time)).toBeLessThan(1e-6);
  },
  LONG,
);

test('a quick cell on one side takes nothing from a slow one on the other', () => {
  const quick = instrument(0.4, 12_000, 0.27, 'cds-50-150k').voices.A;
  const slow = designWith({ B: { cell: { family: 'cds-8-20k', r10Ohms: 12_000, gamma: 0.7 } } });
  const beside = { ...slow, voices: { ...slow.voices, A: quick } };
  const light = (A: number): LightProgram => ({
    kind: 'ramp',
    from: { A, B: 5 },
    to: { A: A * 1.5, B: 800 },
    start: 0.002,
    duration: 0.05,
  });
  const alone = new Gating(settingsFrom(beside), light(5));
  const together = new Gating(settingsFrom(beside), light(8e6));
  for (let i = 0; i < 0.1 * GRID; i++) {
    alone.advance(() => {});
    together.advance(() => {});
    expect(Math.abs(together.conductance('B') / alone.conductance('B') - 1)).toBeLessThan(1e-6);
  }
});

test(
  'five hundred instruments drawn from the limits, in light up to 200 000 lx, never lose a number (seed 4711)',
  () => {
    const { uniform, anyDesign } = seededDesigns(4711);
    const anyLux = () => (uniform() < 0.2 ? 0 : 10 ** (-2 + 7.3 * uniform()));
    const families = ['cds-8-20k', 'cds-2-6k', 'cds-50-150k', 'cds-9k'] as const;
    const out = new Float32Array(480);
    for (let i = 0; i < 500; i++) {
      const drawn = anyDesign();
      const voices = pairOf((voice) => {
        const cell = drawn.voices[voice].cell;
        const gamma = uniform() < 0.3 ? 0.4 : cell.gamma;
        return { ...drawn.voices[voice], cell: { ...cell, gamma, family: families[i % 4]! } };
      });
      const rows = [0, 0.003, 0.006, 0.0063, 0.012].map((time) => [time, anyLux(), anyLux()] as const);
      const straight: LightProgram = {
        kind: 'points',
        times: Float64Array.from(rows, ([time]) => time),
        lux: { A: Float64Array.from(rows, (row) => row[1]), B: Float64Array.from(rows, (row) => row[2]) },
      };
      const of = [jumps(...rows), straight, steady(anyLux(), anyLux())][i % 3]!;
      const shape = (['pulse', 'sine', 'rectified', 'triangle'] as const)[i % 4]!;
      const program: LightProgram =
        of.kind === 'ripple' || uniform() < 0.5
          ? of
          : { kind: 'ripple', of, hertz: 40 + 460 * uniform(), depth: 1, shape, duty: 0.05 };
      const settings = settingsFrom({ ...drawn, voices });
      const gating = new Gating(settings, program);
      const brightest = pairOf((voice) => steadyConductance(voices[voice].cell.gamma, 200_000 * 20));
      for (let step = 0; step < 0.02 * GRID; step++) {
        gating.advance((_voice, time) => expect(Number.isFinite(time)).toBe(true));
        for (const voice of ['A', 'B'] as const) {
          const y = gating.conductance(voice);
          if (!(y >= 0 && y <= brightest[voice] * 1.000001) || !Number.isFinite(gating.node(voice)))
            throw new Error(`design ${i}, step ${step}, voice ${voice}: ${y}, ${gating.node(voice)} V`);
        }
      }
      new Engine(48_000, settings, program).render(out);
      expect(out.every(Number.isFinite), `design ${i}`).toBe(true);
    }
  },
  LONG,
);
