/** Live sound is the same sound: any cut into blocks gives the same samples. And what the page is told. */
import { describe, expect, test } from 'vitest';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import type { LightProgram } from '../../src/light/program.ts';
import { uniformFrom } from '../../src/quantity/random.ts';
import { REACH } from '../../src/sound/bandlimit.ts';
import { Engine } from '../../src/sound/engine.ts';
import { renderTake } from '../../src/sound/render.ts';
import { FRAME, FRAME_LENGTH } from '../../src/sound/settings.ts';
import { designWith, pitchTurned, thresholdTurned } from '../circuit/building.ts';
import { DARK, jumps, LIT, ONLY_A, settingsFrom, steady } from './playing.ts';
import { steppedEdges } from './stepped-timer.ts';

const chatty = designWith({
  voices: { hysteresisOhms: null },
  noise: { voltsRms: 0.002, seed: 9 },
});

/** The light at which it chatters. */
const TRIP = instrumentOf(chatty).voices.A.tripLux.on!;

/** What happens to a running engine, and at which sample. */
const EVENTS: readonly { at: number; act: (engine: Engine) => void }[] = [
  { at: 9_001, act: (e) => e.aim({ A: 40, B: 300 }, 0.05) },
  { at: 15_000, act: (e) => e.setSettings(settingsFrom(designWith({ voices: pitchTurned('A', 0.9) }))) },
  { at: 15_128, act: (e) => e.aim({ A: 300, B: 2 }, 0.004) },
  {
    at: 20_480,
    act: (e) => e.setSettings(settingsFrom(designWith({ timer: 'cmos', output: { mixOhms: null } }))),
  },
  { at: 26_001, act: (e) => e.play(jumps([0, 2, 300], [0.6, 300, 2], [0.7, 100, 100]), 0) },
  { at: 34_000, act: (e) => e.setSettings(settingsFrom(chatty)) },
  { at: 34_000, act: (e) => e.aim({ A: TRIP, B: TRIP }, 0.3) },
  { at: 40_960, act: (e) => e.setSettings(settingsFrom(designWith({ output: { coupling: null } }))) },
];
const LENGTH = 57_600;

/** Renders everything, each stretch between two events in blocks of the sizes that `size` gives. */
function played(start: LightProgram, size: () => number, design = chatty): Float32Array {
  const engine = new Engine(48_000, settingsFrom(design), start);
  const out = new Float32Array(LENGTH);
  let at = 0;
  const until = (end: number) => {
    while (at < end) {
      const block = Math.min(size(), end - at);
      engine.render(out.subarray(at, at + block));
      at += block;
    }
  };
  for (const event of EVENTS) {
    until(event.at);
    event.act(engine);
  }
  until(LENGTH);
  return out;
}

/** The first sample at which two sounds differ; −1 when they are identical to the last bit. */
function firstDifference(a: Float32Array, b: Float32Array): number {
  return a.length === b.length ? a.findIndex((value, i) => !Object.is(value, b[i])) : 0;
}

describe('one long render', () => {
  const light = steady(TRIP, 300);
  const long = played(light, () => LENGTH);
  const uniform = uniformFrom(77);
  const mixed = [128, 1, 7, 1000];
  let turn = 0;

  test.each<[string, () => number]>([
    ['128', () => 128],
    ['1', () => 1],
    ['7', () => 7],
    ['1000', () => 1000],
    ['128, 1, 7 and 1000 in turn', () => mixed[turn++ % 4]!],
    ['any size up to 4096 (seed 77)', () => 1 + Math.floor(uniform() * 4096)],
  ])('equals the same in blocks of %s, sample for sample', (_name, size) => {
    expect(firstDifference(played(light, size), long)).toBe(-1);
  });

  test('is not the same with another seed, so that the comparison means something', () => {
    const other = { ...chatty, noise: { ...chatty.noise, seed: 10 } };
    expect(
      firstDifference(
        played(light, () => 128, other),
        long,
      ),
    ).toBeGreaterThanOrEqual(0);
    expect(long.some((value) => value !== 0)).toBe(true);
  });

  test('is what a take holds, moved by the reach of the edges', () => {
    const engine = new Engine(48_000, settingsFrom(chatty), light);
    const live = new Float32Array(5000);
    for (let at = 0; at < live.length; at += 125) engine.render(live.subarray(at, at + 125));
    const take = renderTake(settingsFrom(chatty), light, (5000 - REACH) / 48_000);
    expect(firstDifference(live.subarray(REACH), take.samples)).toBe(-1);
  });
});

test('a chattering gate plays what the truth table makes of it, pulse by pulse and no pulse more', () => {
  const settings = { ...settingsFrom(chatty), jack: ONLY_A };
  const seconds = 0.5;
  const take = renderTake(settings, steady(TRIP, 2), seconds, 192_000);
  const gates = take.gate.filter(({ voice }) => voice === 'A');
  expect(gates.length).toBeGreaterThan(100);
  const pins = gates.map(({ time, sounding }) => ({ time, released: sounding }));
  const edges = steppedEdges(settings.astables.A, pins, seconds, gates[0]!.sounding);
  expect(edges.length).toBeGreaterThan(50);
  // The area under 0 V and 1 V is the time the output was high, however short its pulses.
  const highUntil = (end: number) => {
    let high = 0;
    let since = gates[0]!.sounding ? 0 : null;
    for (const edge of edges) {
      if (edge.time > end) break;
      if (edge.high) since = edge.time;
      else if (since !== null) {
        high += edge.time - since;
        since = null;
      }
    }
    return since === null ? high : high + end - since;
  };
  let area = 0;
  let checked = 0;
  for (const [i, value] of take.samples.entries()) {
    area += value / take.sampleRate;
    if (i % 960 !== 959) continue;
    const t = (i + 0.5) / take.sampleRate;
    // Near an edge its ripples are still under way.
    if (edges.some(({ time }) => Math.abs(time - t) < 20 / take.sampleRate)) continue;
    expect(Math.abs(area - highUntil(t))).toBeLessThan(2e-5);
    checked++;
  }
  expect(checked).toBeGreaterThan(50);
});

describe('frames for the page', () => {
  test('tell time, light, nodes, gates and what happened since the frame before', () => {
    const design = designWith();
    const engine = new Engine(
      48_000,
      settingsFrom(design),
      jumps([0, LIT, DARK], [0.1, DARK, DARK], [0.2, LIT, DARK]),
    );
    const frame = new Float64Array(FRAME_LENGTH);
    engine.render(new Float32Array(4800));
    engine.report(frame);
    expect(frame[FRAME.time]).toBeCloseTo(0.1, 9);
    expect(frame[FRAME.luxB]).toBe(DARK);
    expect([frame[FRAME.soundingA], frame[FRAME.soundingB]]).toEqual([1, 0]);
    expect([frame[FRAME.changesA], frame[FRAME.changesB]]).toEqual([0, 0]);
    expect(frame[FRAME.peak]).toBeGreaterThan(0.1);
    engine.render(new Float32Array(48_000 * 0.4));
    engine.report(frame);
    expect(frame[FRAME.luxA]).toBe(LIT);
    expect([frame[FRAME.changesA], frame[FRAME.changesB]]).toEqual([2, 0]);
    engine.report(frame);
    expect([frame[FRAME.changesA], frame[FRAME.peak]]).toEqual([0, 0]);
  });

  test('a node in steady light reads what the instrument says', () => {
    const design = designWith();
    const engine = new Engine(48_000, settingsFrom(design), steady(300, 300));
    engine.render(new Float32Array(4800));
    const frame = new Float64Array(FRAME_LENGTH);
    engine.report(frame);
    const ohms = 12_000 * (300 / 10) ** -0.7;
    expect(frame[FRAME.nodeA]).toBeCloseTo((9 * ohms) / (ohms + 12_000), 9);
  });
});

describe('a running engine given other values', () => {
  test('follows a threshold turned past the present light within a grid step', () => {
    const engine = new Engine(48_000, settingsFrom(designWith()), steady(LIT, LIT));
    engine.render(new Float32Array(4800));
    expect(engine.sounding('A')).toBe(true);
    const low = thresholdTurned(0);
    engine.setSettings(
      settingsFrom(designWith({ threshold: { trimmers: { A: low, B: thresholdTurned(0.27) } } })),
    );
    engine.render(new Float32Array(64));
    expect([engine.sounding('A'), engine.sounding('B')]).toEqual([false, true]);
  });

  test('a pull-up that starves the reset pin silences at once, a sound one lets go again', () => {
    const heard: [string, boolean][] = [];
    const engine = new Engine(48_000, settingsFrom(designWith()), steady(LIT, DARK));
    engine.onGate = (voice, _time, sounding) => heard.push([voice, sounding]);
    engine.render(new Float32Array(4800));
    engine.setSettings(settingsFrom(designWith({ voices: { pullUpOhms: 90_000 } })));
    const out = new Float32Array(24_000);
    engine.render(out);
    expect(engine.sounding('A')).toBe(false);
    expect(Math.max(...out.subarray(12_000).map(Math.abs))).toBeLessThan(1e-6);
    engine.setSettings(settingsFrom(designWith()));
    engine.render(out);
    expect(engine.sounding('A')).toBe(true);
    expect(Math.max(...out.subarray(12_000))).toBeGreaterThan(0.05);
  });

  test('equal values leave the pitch where it is', () => {
    const { cycle } = instrumentOf(designWith()).voices.A;
    const engine = new Engine(
      48_000,
      settingsFrom(designWith({ output: { coupling: null } })),
      steady(LIT, DARK),
    );
    const out = new Float32Array(96_000);
    for (let at = 0; at < out.length; at += 480) {
      engine.setSettings(settingsFrom(designWith({ output: { coupling: null } })));
      engine.render(out.subarray(at, at + 480));
    }
    const middle = (Math.min(...out.subarray(1000)) + Math.max(...out.subarray(1000))) / 2;
    let ups = 0;
    let first = 0;
    let last = 0;
    for (let i = 9600; i < out.length; i++)
      if (out[i - 1]! < middle && out[i]! >= middle) {
        ups++;
        last = i;
        first ||= i;
      }
    expect(((ups - 1) * 48_000) / (last - first) / cycle.frequency).toBeCloseTo(1, 4);
  });
});
