/** Two hundred instruments drawn by a seed, each integrated by a general-purpose solver that knows no closed form. */
import { expect, test } from 'vitest';
import { cycleOf } from '../../src/circuit/astable.ts';
import { cellSpeed, steadyConductance } from '../../src/circuit/cell.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import type { Design } from '../../src/design/design.ts';
import { gateTurns, type OdeGate, outputTurns, type Turn } from '../../src/headless/ode.ts';
import { odeRender } from '../../src/headless/ode-render.ts';
import type { LightProgram } from '../../src/light/program.ts';
import { uniformFrom } from '../../src/quantity/random.ts';
import { pairOf } from '../../src/quantity/units.ts';
import { REACH } from '../../src/sound/bandlimit.ts';
import { Gating, GRID } from '../../src/sound/gating.ts';
import { renderTake } from '../../src/sound/render.ts';
import { Timer } from '../../src/sound/timer.ts';
import { cellAt, designWith, thresholdTurned } from '../circuit/building.ts';
import { DARK, jumps, LIT, settingsFrom } from './playing.ts';

const COUNT = 200;
const SECONDS = 0.9;
const TOLERANCE = 1e-12;
/** Agreement asked for, relative. */
const AGREE = 1e-6;
/** The solver takes its time, ms. */
const LONG = 120_000;

interface Case {
  readonly design: Design;
  readonly program: LightProgram;
  readonly gate: OdeGate;
  /** When the light begins to change: the first time there, the second time back. */
  readonly moves: readonly [number, number];
}

/** Instruments whose voice A both starts and stops in a light that goes past its trip points and comes back. */
function casesFrom(seed: number, count: number): readonly Case[] {
  const uniform = uniformFrom(seed);
  const between = (low: number, high: number) => low * (high / low) ** uniform();
  const pick = <T>(...options: readonly T[]): T => options[Math.floor(uniform() * options.length)]!;
  const cases: Case[] = [];
  while (cases.length < count) {
    const volts = pick(5, 6, 9, 12);
    const turned = thresholdTurned(uniform(), { topOhms: pick(0, 8200), bottomOhms: pick(0, 470) });
    const design = designWith({
      timer: pick('bipolar', 'cmos'),
      comparator: pick('classic', 'later'),
      supply: { volts },
      A: {
        raOhms: between(1000, 47_000),
        rbFixedOhms: between(1000, 47_000),
        trimmer: {
          part: pick('single-turn', 'multi-turn', 'carbon'),
          ohms: between(5000, 200_000),
          tolerance: 0.1,
          rotation: uniform(),
        },
        capacitor: { farads: between(4.7e-9, 220e-9), dielectric: 'polyester', tolerance: 0.1 },
        controlVolts: pick(null, null, volts * (0.4 + 0.35 * uniform())),
        cell: { family: 'cds-8-20k', r10Ohms: between(5000, 50_000), gamma: 0.5 + 0.4 * uniform() },
        ...cellAt(pick('top', 'bottom'), between(2200, 100_000)),
        polarity: pick('light', 'shade'),
        hysteresisOhms: pick(null, between(100_000, 2e6)),
      },
      threshold: { trimmers: { A: turned, B: turned } },
    });
    const { tripLux } = instrumentOf(design).voices.A;
    const states = instrumentOf(design).gates.A.states;
    const inside = states.every((state) => state.otherVolts < state.limitVolts);
    const on = tripLux.on ?? 0;
    const off = tripLux.off ?? 0;
    if (!inside || Math.min(on, off) < 8 || Math.max(on, off) > 250) continue;
    const bright = Math.max(on, off) * between(2, 5);
    const dark = Math.min(on, off) / between(2, 5);
    // Steps and ramps, at moments that stand on no grid.
    const moves = [0.05 + 0.02 * uniform(), 0.5 + 0.02 * uniform()] as const;
    const ramps = [pick(0, 0.01 + 0.1 * uniform()), pick(0, 0.01 + 0.1 * uniform())] as const;
    const rows = [
      [0, bright],
      [moves[0], bright],
      [moves[0] + ramps[0], dark],
      [moves[1], dark],
      [moves[1] + ramps[1], bright],
    ] as const;
    const { cell, polarity } = design.voices.A;
    cases.push({
      design,
      moves,
      program: {
        kind: 'points',
        times: Float64Array.from(rows, ([time]) => time),
        lux: { A: Float64Array.from(rows, ([, lux]) => lux), B: Float64Array.from(rows, () => 1) },
      },
      gate: {
        speed: cellSpeed(cell),
        onAt: steadyConductance(cell.gamma, on),
        offAt: steadyConductance(cell.gamma, off),
        soundsAbove: polarity === 'light' ? 1 : -1,
      },
    });
  }
  return cases;
}

/** The product's gate: its state at time 0 and each change. */
function ourGate({ design, program }: Case): readonly Turn[] {
  const gating = new Gating(settingsFrom(design), program);
  const turns: Turn[] = [{ time: 0, on: gating.released('A') }];
  for (let i = 0; i < SECONDS * GRID; i++)
    gating.advance((voice, time, on) => {
      if (voice === 'A' && time < SECONDS) turns.push({ time, on });
    });
  return turns;
}

/** The product's timer, told the same of its reset pin: the output at time 0 and each change. */
function ourOutput({ design }: Case, pins: readonly Turn[], until: number): readonly Turn[] {
  const timer = new Timer(instrumentOf(design).astables.A, pins[0]!.on);
  const turns: Turn[] = [{ time: 0, on: timer.high }];
  const note = (time: number) => {
    if (timer.high !== turns.at(-1)!.on) turns.push({ time, on: timer.high });
  };
  for (const [i, pin] of pins.entries()) {
    if (i > 0) {
      timer.setReleased(pin.time, pin.on);
      note(pin.time);
    }
    const end = Math.min(until, pins[i + 1]?.time ?? until);
    while (timer.next < end) {
      const { next } = timer;
      timer.fire();
      note(next);
    }
  }
  return turns;
}

const apart = (ours: number, theirs: number) => Math.abs(ours / theirs - 1);

const cases = casesFrom(20_250, COUNT);

test(
  `period, duty and first cycle are the solver’s within one in a million (${COUNT} designs, seed 20250)`,
  () => {
    for (const { design } of cases) {
      const a = instrumentOf(design).astables.A;
      const cycle = cycleOf(a);
      const rest: Turn[] = [{ time: 0, on: true }];
      const span = cycle.firstHighSeconds + 1.6 * (cycle.highSeconds + cycle.lowSeconds);
      // From rest: high, down, up, down.
      const [up, down, again, last] = outputTurns(a, rest, a.sinkVolts, span, TOLERANCE);
      expect(up).toEqual({ time: 0, on: true });
      const period = last!.time - down!.time;
      expect(apart(cycle.frequency, 1 / period)).toBeLessThan(AGREE);
      expect(apart(cycle.dutyCycle, (last!.time - again!.time) / period)).toBeLessThan(AGREE);
      expect(apart(cycle.firstHighSeconds, down!.time)).toBeLessThan(AGREE);
      expect(apart(cycle.lowSeconds, again!.time - down!.time)).toBeLessThan(AGREE);
    }
  },
  LONG,
);

test(
  'gate times are the solver’s within one in a million, and within 0.1 µs',
  () => {
    for (const [i, one] of cases.entries()) {
      const ours = ourGate(one);
      const theirs = gateTurns(one.gate, one.program, 'A', SECONDS, TOLERANCE);
      expect(
        ours.map(({ on }) => on),
        `design ${i}`,
      ).toEqual(theirs.map(({ on }) => on));
      expect(ours.length, `changes of design ${i}`).toBe(3);
      for (const turn of [1, 2] as const) {
        const [our, their] = [ours[turn]!.time, theirs[turn]!.time];
        expect(their).toBeGreaterThan(one.moves[turn - 1]!);
        expect(apart(our, their), `change ${turn} of design ${i}`).toBeLessThan(AGREE);
        expect(Math.abs(our - their), `change ${turn} of design ${i}`).toBeLessThan(1e-7);
      }
    }
  },
  LONG,
);

test(
  'output edges are the solver’s while the reset pin comes and goes within cycles',
  () => {
    const uniform = uniformFrom(77);
    for (const one of cases) {
      const a = instrumentOf(one.design).astables.A;
      const { highSeconds, lowSeconds } = cycleOf(a);
      const period = highSeconds + lowSeconds;
      let time = 0;
      const pins: Turn[] = [0, 1, 2, 3, 4].map((i) => {
        const pin = { time, on: i % 2 === 0 };
        // Held for less than a cycle, so that the capacitor is met on its way; released for a few.
        time += period * (pin.on ? 0.3 + 2 * uniform() : 0.7 * uniform());
        return pin;
      });
      const until = time + 2 * period;
      const theirs = outputTurns(a, pins, 0, until, TOLERANCE);
      const ours = ourOutput(one, pins, until);
      expect(ours.map(({ on }) => on)).toEqual(theirs.map(({ on }) => on));
      expect(theirs.length).toBeGreaterThan(6);
      for (const [i, turn] of theirs.entries())
        if (i > 0) expect(apart(ours[i]!.time, turn.time)).toBeLessThan(AGREE);
    }
  },
  LONG,
);

test(
  'the whole take, too: away from its edges the jack’s voltage is the solver’s',
  () => {
    const design = designWith();
    const settings = settingsFrom(design);
    const { voices } = instrumentOf(design);
    const gates = pairOf((voice) => ({
      speed: settings.speeds[voice],
      onAt: steadyConductance(settings.speeds[voice].gamma, voices[voice].tripLux.on!),
      offAt: steadyConductance(settings.speeds[voice].gamma, voices[voice].tripLux.off!),
      soundsAbove: 1 as const,
    }));
    const program = jumps([0, LIT, DARK], [0.02, LIT, LIT], [0.06, DARK, LIT]);
    const seconds = 0.15;
    const ours = renderTake(settings, program, seconds, 48_000);
    const theirs = odeRender(settings, gates, program, seconds, 48_000, TOLERANCE);
    expect(ours.gate.map(({ voice }) => voice)).toEqual(['A', 'B', 'B', 'A']);
    let compared = 0;
    for (let i = REACH; i < theirs.length - REACH; i++) {
      const near = theirs.subarray(i - REACH - 1, i + REACH + 2);
      const steps = near.slice(1).map((value, j) => Math.abs(value - near[j]!));
      // An edge is a step of a tenth of a volt; between edges the coupling capacitor moves the jack far more slowly.
      if (Math.max(...steps) > 0.02) continue;
      expect(Math.abs(ours.samples[i]! - theirs[i]!)).toBeLessThan(1e-5);
      compared++;
    }
    expect(compared).toBeGreaterThan(2000);
  },
  LONG,
);

test('and a wrong time constant would be noticed', () => {
  const one = cases[0]!;
  const slow = { ...one.gate, speed: { ...one.gate.speed, fallTau: one.gate.speed.fallTau * (1 + 1e-4) } };
  const [, theirs] = gateTurns(slow, one.program, 'A', SECONDS, TOLERANCE);
  const [, ours] = ourGate(one);
  expect(apart(ours!.time, theirs!.time)).toBeGreaterThan(AGREE);
});
