/** Gates in time: against an independent integration, in slow light, and in noise. */
import { describe, expect, test } from 'vitest';
import { cellOhms, cellSpeed } from '../../src/circuit/cell.ts';
import { overdriveVolts } from '../../src/circuit/gate.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import type { Design } from '../../src/design/design.ts';
import { type LightProgram, luxAt } from '../../src/light/program.ts';
import type { VoiceId } from '../../src/quantity/units.ts';
import { Gating, GRID } from '../../src/sound/gating.ts';
import { tripOhms } from '../circuit/board.ts';
import { cellAt, designWith, thresholdTurned } from '../circuit/building.ts';
import { DARK, jumps, LIT, settingsFrom, steady } from './playing.ts';

interface Change {
  readonly voice: VoiceId;
  readonly time: number;
  readonly released: boolean;
}

/** Every change of a reset pin in the first seconds of a program. */
function changesIn(design: Design, program: LightProgram, seconds: number): readonly Change[] {
  const gating = new Gating(settingsFrom(design), program);
  const changes: Change[] = [];
  for (let i = 0; i < seconds * GRID; i++)
    gating.advance((voice, time, released) => changes.push({ voice, time, released }));
  return changes;
}

/**
 * The same, by brute force: the rate equation by Runge–Kutta at two microseconds, and the cell's resistance held
 * against the trip resistances that the whole net solved gives. Voice A alone; its gate starts silent.
 */
function bruteForce(
  design: Design,
  program: LightProgram,
  seconds: number,
  startsSounding: boolean,
  otherHigh = false,
): number[] {
  const { cell, polarity } = design.voices.A;
  const { riseTau, fallTau } = cellSpeed(cell);
  const step = 2e-6;
  const slope = (y: number, lux: number) => {
    const gap = lux / 10 - y ** (1 / cell.gamma);
    return gap / (gap > 0 ? riseTau : fallTau);
  };
  // In light the cell's resistance falls; the trip resistance for each state of the output.
  const trips = {
    silent: tripOhms(design, 'A', { A: false, B: otherHigh })!,
    sounding: tripOhms(design, 'A', { A: true, B: otherHigh })!,
  };
  const soundsBelow = polarity === 'light';
  let y = (luxAt(program, 'A', 0) / 10) ** cell.gamma;
  let sounding = startsSounding;
  const times: number[] = [];
  const count = Math.round(seconds / step);
  for (let i = 0; i < count; i++) {
    const t = i * step;
    const before = y;
    const l0 = luxAt(program, 'A', t);
    const l1 = luxAt(program, 'A', t + step / 2);
    // The light is straight between its rows and all rows stand on whole steps, up to a jump at their end.
    const l2 = 2 * l1 - l0;
    const k1 = slope(y, l0);
    const k2 = slope(y + (step / 2) * k1, l1);
    const k3 = slope(y + (step / 2) * k2, l1);
    const k4 = slope(y + step * k3, l2);
    y += (step / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    const ohms = cell.r10Ohms / y;
    const trip = sounding ? trips.sounding : trips.silent;
    const shouldSound = ohms < trip === soundsBelow;
    if (shouldSound !== sounding) {
      const yTrip = cell.r10Ohms / trip;
      times.push(t + step * ((yTrip - before) / (y - before)));
      sounding = shouldSound;
    }
  }
  return times;
}

/** A hand that comes over the sensor, stays, and goes; straight stretches, rows on whole steps of that. */
const hand = (lit: number, shaded: number): LightProgram => {
  const rows: [number, number][] = [
    [0, lit],
    [0.05, lit],
    [0.11, shaded * 1.5],
    [0.16, shaded],
    [0.3, shaded],
    [0.34, lit * 0.6],
    [0.4, lit],
  ];
  return {
    kind: 'points',
    times: Float64Array.from(rows, ([t]) => t),
    lux: { A: Float64Array.from(rows, ([, x]) => x), B: Float64Array.from(rows, () => 1) },
  };
};

describe('a hand over the sensor', () => {
  test.each(
    (['top', 'bottom'] as const).flatMap((position) =>
      (['light', 'shade'] as const).map((polarity) => ({ position, polarity })),
    ),
  )(
    'changes the gate when an independent integration says (cell at the $position, sounds in $polarity)',
    ({ position, polarity }) => {
      const turned = thresholdTurned(
        position === 'top' ? 0.75 : 0.27,
        position === 'top' ? { topOhms: 1000 } : {},
      );
      const design = designWith({
        voices: { ...cellAt(position), polarity },
        threshold: { trimmers: { A: turned, B: turned } },
      });
      for (const program of [hand(400, 5), hand(2000, 10), jumps([0, 300, 1], [0.1, 8, 1], [0.3, 300, 1])]) {
        const ours = changesIn(design, program, 0.5).filter(({ voice }) => voice === 'A');
        const theirs = bruteForce(design, program, 0.5, polarity === 'light');
        expect(ours.length).toBe(2);
        expect(theirs.length).toBe(2);
        for (const [i, { time }] of ours.entries()) expect(Math.abs(time - theirs[i]!)).toBeLessThan(1e-6);
        expect(ours[0]!.released).toBe(polarity === 'shade');
      }
    },
  );

  test.each([1, 1000])(
    'also on a shared trimmer, which the other voice loads as it is (%d lx there)',
    (other) => {
      const design = designWith({
        threshold: { arrangement: 'shared' },
        voices: { hysteresisOhms: 150_000 },
      });
      const alone = hand(400, 5);
      if (alone.kind !== 'points') throw new Error('The hand comes as rows.');
      const program: LightProgram = { ...alone, lux: { A: alone.lux.A, B: alone.lux.B.map(() => other) } };
      const ours = changesIn(design, program, 0.5);
      const theirs = bruteForce(design, program, 0.5, true, other > 100);
      expect(ours.map(({ voice }) => voice)).toEqual(['A', 'A']);
      for (const [i, { time }] of ours.entries()) expect(Math.abs(time - theirs[i]!)).toBeLessThan(1e-6);
    },
  );

  test.each([0.45, 0.9])('also with a cell of two speeds (γ %d)', (gamma) => {
    const design = designWith({
      voices: { cell: { family: 'cds-8-20k', r10Ohms: 12_000, gamma } },
      threshold: { trimmers: { A: thresholdTurned(gamma < 0.6 ? 0.4 : 0.2), B: thresholdTurned(0.2) } },
    });
    const { riseTau, fallTau } = cellSpeed(design.voices.A.cell);
    expect(riseTau).not.toBe(fallTau);
    const ours = changesIn(design, hand(900, 4), 0.5).filter(({ voice }) => voice === 'A');
    const theirs = bruteForce(design, hand(900, 4), 0.5, true);
    expect(ours.length).toBe(2);
    for (const [i, { time }] of ours.entries()) expect(Math.abs(time - theirs[i]!)).toBeLessThan(1e-6);
  });
});

describe('in light that changes slowly', () => {
  test.each(['light', 'shade'] as const)('the gate changes at the trip points (%s)', (polarity) => {
    const design = designWith({ voices: { polarity } });
    const { on, off } = instrumentOf(design).voices.A.tripLux;
    const seconds = 20;
    const slow = (from: number, to: number): LightProgram => ({
      kind: 'ramp',
      from: { A: from, B: from },
      to: { A: to, B: to },
      start: 0,
      duration: seconds,
    });
    for (const [from, to] of [
      [on! * 0.8, on! * 1.2],
      [on! * 1.2, on! * 0.8],
    ] as const) {
      const program = slow(from, to);
      const changes = changesIn(design, program, seconds).filter(({ voice }) => voice === 'A');
      expect(changes.length).toBe(1);
      const [change] = changes as [Change];
      const trip = change.released ? on! : off!;
      expect(Math.abs(luxAt(program, 'A', change.time) / trip - 1)).toBeLessThan(1e-3);
    }
  });

  test('without hysteresis and noise it changes once, at the one trip point there is', () => {
    const design = designWith({ voices: { hysteresisOhms: null } });
    const { on, off } = instrumentOf(design).voices.A.tripLux;
    expect(off!).toBeCloseTo(on!, 9);
    const program: LightProgram = {
      kind: 'ramp',
      from: { A: on! * 0.8, B: 1 },
      to: { A: on! * 1.2, B: 1 },
      start: 0,
      duration: 20,
    };
    expect(changesIn(design, program, 20).length).toBe(1);
  });
});

describe('noise', () => {
  /** Light that holds the node some standard deviations of the noise from the trip point. */
  function marginLight(design: Design, deviations: number): LightProgram {
    const gate = instrumentOf(design).gates.A;
    const state = gate.states[0]!;
    // By halving: the light at which the steady node is that far below the trip point.
    const { fixedOhms } = design.voices.A.divider;
    const nodeAt = (lux: number) => {
      const ohms = cellOhms(design.voices.A.cell, lux);
      return (9 * ohms) / (ohms + fixedOhms);
    };
    const wanted = state.tripVolts - deviations * design.noise.voltsRms;
    let low = 0.1;
    let high = 10_000;
    for (let i = 0; i < 80; i++) {
      const middle = Math.sqrt(low * high);
      if (nodeAt(middle) > wanted) low = middle;
      else high = middle;
    }
    expect(overdriveVolts(state, nodeAt(low))).toBeCloseTo(deviations * design.noise.voltsRms, 9);
    return steady(low, 1);
  }

  const bare = (seed = 1) =>
    designWith({ voices: { hysteresisOhms: null }, noise: { voltsRms: 0.001, seed } });

  test.each([
    // Independent values at 3000 a second, joined straight: 2·3000·Φ(m)·(1 − Φ(m)) changes a second.
    [0, 1500],
    [1, 2 * 3000 * 0.841345 * 0.158655],
    [2, 2 * 3000 * 0.97725 * 0.02275],
  ])(
    'with no hysteresis makes the gate chatter: %d deviations from the trip point, %d changes a second',
    (margin, rate) => {
      const seconds = 20;
      const changes = changesIn(bare(), marginLight(bare(), margin), seconds);
      const expected = rate * seconds;
      // Four standard deviations of a count, with some allowance for neighbours being alike.
      expect(Math.abs(changes.length - expected)).toBeLessThan(6 * Math.sqrt(expected));
    },
  );

  test('is kept out by the hysteresis fitted', () => {
    const design = designWith({ noise: { voltsRms: 0.001, seed: 1 } });
    const { on } = instrumentOf(design).voices.A.tripLux;
    const program: LightProgram = {
      kind: 'ramp',
      from: { A: on! * 0.5, B: 1 },
      to: { A: on! * 1.5, B: 1 },
      start: 0,
      duration: 20,
    };
    expect(changesIn(design, program, 20).length).toBe(1);
    const without = designWith({ voices: { hysteresisOhms: null }, noise: { voltsRms: 0.001, seed: 1 } });
    expect(changesIn(without, program, 20).length).toBeGreaterThan(30);
  });

  test('repeats from its seed and differs with another', () => {
    const light = marginLight(bare(), 0);
    const first = changesIn(bare(5), light, 1);
    expect(changesIn(bare(5), light, 1)).toEqual(first);
    expect(changesIn(bare(6), light, 1)).not.toEqual(first);
  });

  test('is its own at each sensor', () => {
    const design = bare();
    const gating = new Gating(settingsFrom(design), steady(100, 100));
    const nodes: [number, number][] = [];
    for (let i = 0; i < 3000; i++) {
      gating.advance(() => {});
      nodes.push([gating.node('A'), gating.node('B')]);
    }
    const mean = (values: number[]) => values.reduce((sum, x) => sum + x, 0) / values.length;
    const [a, b] = [mean(nodes.map(([x]) => x)), mean(nodes.map(([, x]) => x))];
    const sd = Math.sqrt(mean(nodes.map(([x]) => (x - a) ** 2)));
    expect(Math.abs(sd / 0.001 - 1)).toBeLessThan(0.06);
    expect(Math.abs(mean(nodes.map(([x, y]) => (x - a) * (y - b))) / 1e-6)).toBeLessThan(0.08);
  });
});

test('changes are told in order of time, and both voices of a shared trimmer take part', () => {
  const design = designWith({
    voices: { hysteresisOhms: 100_000 },
    threshold: { arrangement: 'shared', trimmers: { A: thresholdTurned(0.3), B: thresholdTurned(0.3) } },
    noise: { voltsRms: 0.02, seed: 3 },
  });
  const changes = changesIn(design, jumps([0, 300, 1], [0.2, 5, 300], [0.4, 300, 5], [0.6, 5, 300]), 1);
  expect(new Set(changes.map(({ voice }) => voice)).size).toBe(2);
  for (let i = 1; i < changes.length; i++)
    expect(changes[i]!.time).toBeGreaterThanOrEqual(changes[i - 1]!.time);
  for (const voice of ['A', 'B'] as const) {
    const own = changes.filter((c) => c.voice === voice);
    for (let i = 1; i < own.length; i++) expect(own[i]!.released).toBe(!own[i - 1]!.released);
  }
});

test('the gate starts as its light says', () => {
  for (const [lux, sounds] of [
    [LIT, true],
    [DARK, false],
  ] as const)
    expect(new Gating(settingsFrom(designWith()), steady(lux, lux)).released('A')).toBe(sounds);
});

test('an aim goes straight from the present light to the new one', () => {
  const gating = new Gating(settingsFrom(designWith()), steady(100, 10));
  for (let i = 0; i < 300; i++) gating.advance(() => {});
  gating.aim({ A: 200, B: 10 }, 0.1);
  for (let i = 0; i < 150; i++) gating.advance(() => {});
  expect(gating.lux('A')).toBeCloseTo(150, 6);
  gating.aim({ A: 50, B: 10 }, 0.1);
  expect(gating.lux('A')).toBeCloseTo(150, 6);
  for (let i = 0; i < 600; i++) gating.advance(() => {});
  expect(gating.lux('A')).toBe(50);
  expect(gating.lux('B')).toBe(10);
});
