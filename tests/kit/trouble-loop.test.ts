/** What is played of a board with a mistake: its solved voltage at the jack, in pitch and level, over and over. */
import { expect, test } from 'vitest';
import { troubledPiece } from '../../src/app/troubled-sound.ts';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { jackNet, netlistOf } from '../../src/circuit/network/design-netlist.ts';
import { joined } from '../../src/circuit/network/netlist.ts';
import { runNetwork } from '../../src/circuit/network/network.ts';
import { setForBench } from '../../src/kit/drawn-board.ts';
import { type Trouble, troubledBy } from '../../src/kit/kit-tasks.ts';
import { pitchOf } from '../../src/kit/pitch-ear.ts';
import { USUAL_BENCH } from '../../src/kit/slip.ts';
import { luxIn } from '../../src/kit/slip-values.ts';
import { loopOf } from '../../src/kit/trouble-loop.ts';
import { BENCH_DESIGN, designWith } from '../circuit/building.ts';

const RATE = 48_000;

/** Amplitude of a frequency in samples, through a raised cosine. */
function lineOf(samples: ArrayLike<number>, hertz: number): number {
  let [re, im] = [0, 0];
  for (let n = 0; n < samples.length; n++) {
    const window = 1 - Math.cos((2 * Math.PI * (n + 0.5)) / samples.length);
    const angle = (2 * Math.PI * hertz * n) / RATE;
    re += samples[n]! * window * Math.cos(angle);
    im += samples[n]! * window * Math.sin(angle);
  }
  return (2 * Math.hypot(re, im)) / samples.length;
}

const repeated = (volts: Float32Array, seconds: number): Float32Array =>
  Float32Array.from({ length: seconds * RATE }, (_, i) => volts[i % volts.length]!);

const BRIDGE: Trouble = { kind: 'joined', one: 'gate A', other: 'control B' };

test('samples of a net have the lines of its exact voltage, and no aliases above −75 dB', () => {
  const design = setForBench(BENCH_DESIGN, USUAL_BENCH);
  const run = runNetwork(netlistOf(design, luxIn('lit', USUAL_BENCH)), {
    settleSeconds: 0.05,
    measureSeconds: 0.5,
  });
  if (run.kind !== 'computed') throw new Error(run.reason);
  const samples = run.samplesOf('out A', RATE);
  expect(samples.length).toBeGreaterThan(0.49 * RATE);
  const hertz = run.halves.A.frequency!;
  const first = lineOf(samples, hertz);
  for (const k of [1, 2, 5, 21]) {
    const exact = run.amplitudeOf('out A', k * hertz);
    expect(Math.abs(lineOf(samples, k * hertz) - exact)).toBeLessThan(0.002 * first);
  }
  // Overtones above half the rate do not come back as other pitches.
  for (let k = Math.ceil((0.55 * RATE) / hertz); k < (1.9 * RATE) / hertz; k += 7)
    expect(20 * Math.log10(lineOf(samples, Math.abs(RATE - k * hertz)) / first), `${k}`).toBeLessThan(-75);
  expect(run.samplesOf('no such net', RATE)).toHaveLength(0);
});

test('with a cut forgotten both voices are in the loop, at the pitch and level the circuit was solved to', () => {
  const { hertz, loop } = troubledBy(BENCH_DESIGN, USUAL_BENCH, BRIDGE);
  const healthy = instrumentOf(BENCH_DESIGN).voices;
  // The control pin of B hangs on the gate of A: B is flat (job:F30).
  expect(hertz.B!).toBeLessThan(healthy.B.cycle.frequency / 1.1);
  const design = setForBench(BENCH_DESIGN, USUAL_BENCH);
  const netlist = joined(netlistOf(design, luxIn('lit', USUAL_BENCH)), 'gate A', 'control B');
  const run = runNetwork(netlist, { settleSeconds: 0.05, measureSeconds: 0.8 });
  if (run.kind !== 'computed') throw new Error(run.reason);
  const sound = repeated(loop!.volts, 2);
  for (const voice of ['A', 'B'] as const) {
    const exact = run.amplitudeOf(jackNet(design), hertz[voice]!);
    expect(lineOf(sound, hertz[voice]!) / exact, voice).toBeCloseTo(1, 1);
    // Not where the healthy board would have it, if that is elsewhere.
    if (voice === 'B') expect(lineOf(sound, healthy.B.cycle.frequency) / exact).toBeLessThan(0.1);
  }
});

test('a voice alone keeps its pitch within a cent, however often the loop comes round', () => {
  // Without its charge resistor B is silent.
  const { hertz, loop } = troubledBy(BENCH_DESIGN, USUAL_BENCH, {
    kind: 'opened',
    part: 'charge B',
    pin: '1',
  });
  expect(hertz.B).toBeNull();
  const heard = pitchOf(repeated(loop!.volts, 3), loop!.rate);
  if (heard.kind !== 'pitch') throw new Error(heard.why);
  expect(Math.abs(1200 * Math.log2(heard.hertz / hertz.A!))).toBeLessThan(1);
});

test('a loop comes round without a jump, and too little of a sound makes none', () => {
  const hertz = 331.7;
  const sine = Float32Array.from({ length: 30_000 }, (_, n) => Math.sin((2 * Math.PI * hertz * n) / RATE));
  // Made for another pitch: only the fade makes it round.
  const { volts } = loopOf(sine, RATE, [200])!;
  const step = 2 * Math.PI * (hertz / RATE);
  for (let i = -3; i < 1200; i++) {
    const [here, next] = [volts.at(i)!, volts.at((i + 1) % volts.length)!];
    expect(Math.abs(next - here)).toBeLessThan(1.1 * step);
  }
  expect(loopOf(sine.slice(0, 1500), RATE, [hertz])).toBeNull();
});

test('what is played stays within full scale, as loud as the board is; where nothing sounds nothing is played', () => {
  const troubled = troubledBy(BENCH_DESIGN, USUAL_BENCH, BRIDGE);
  const piece = troubledPiece(BENCH_DESIGN, troubled);
  if (piece?.kind !== 'recorded') throw new Error('nothing to play');
  const { left, right, sampleRate } = piece.sound;
  expect(left.length).toBe(piece.seconds * sampleRate);
  expect(right).toEqual(left);
  const peak = left.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  const volts = troubled.loop!.volts.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  expect(peak).toBeCloseTo(volts / instrumentOf(BENCH_DESIGN).jack.boundVolts, 5);
  // A board far louder than its design could be is held at full scale.
  const loud = { ...troubled.loop!, volts: troubled.loop!.volts.map((x) => 100 * x) };
  const held = troubledPiece(BENCH_DESIGN, { ...troubled, loop: loud });
  if (held?.kind !== 'recorded') throw new Error('nothing to play');
  expect(held.sound.left.reduce((most, x) => Math.max(most, Math.abs(x)), 0)).toBe(1);
  const dead = troubledBy(designWith({}), USUAL_BENCH, { kind: 'joined', one: 'rail', other: 'ground' });
  expect(dead.loop).toBeNull();
  expect(troubledPiece(BENCH_DESIGN, dead)).toBeNull();
});
