/** Pitch of synthetic recordings against the frequency they were made with; and what a pitch says of a board. */
import { expect, test } from 'vitest';
import { astableOf, cycleOf } from '../../src/circuit/astable.ts';
import { checkPitch, pitchOf } from '../../src/kit/pitch-ear.ts';
import { gaussianFrom, uniformFrom } from '../../src/quantity/random.ts';
import { BENCH_DESIGN, designWith } from '../circuit/building.ts';

const RATE = 48_000;

/** A pulse wave of an exact frequency from its Fourier series up to half the rate, with noise and hum 20 dB below. */
function recording(hertz: number, duty: number, hum: number, seed: number, seconds = 1): Float32Array {
  const gaussian = gaussianFrom(seed);
  const uniform = uniformFrom(seed + 1);
  const [start, humStart] = [uniform(), uniform()];
  const length = seconds * RATE;
  const wave = new Float32Array(length);
  const overtones = Math.min(40, Math.floor((0.48 * RATE) / hertz));
  for (let k = 1; k <= overtones; k++) {
    const size = Math.sin(Math.PI * k * duty) / k;
    const step = (2 * Math.PI * k * hertz) / RATE;
    // Chebyshev's recurrence: a cosine from the two before it.
    const twice = 2 * Math.cos(step);
    let [before, now] = [Math.cos(2 * Math.PI * k * start - step), Math.cos(2 * Math.PI * k * start)];
    for (let i = 0; i < length; i++) {
      wave[i]! += size * now;
      [before, now] = [now, twice * now - before];
    }
  }
  const rms = Math.sqrt(wave.reduce((sum, x) => sum + x * x, 0) / length);
  for (let i = 0; i < length; i++)
    wave[i] =
      0.2 *
      (wave[i]! / rms +
        0.1 * gaussian() +
        0.1 * Math.SQRT2 * Math.sin(2 * Math.PI * ((hum * i) / RATE + humStart)));
  return wave;
}

const cents = (heard: number, made: number): number => 1200 * Math.log2(heard / made);

test.each([
  [40, 50],
  [48.7, 50],
  [55, 60],
  [61, 60],
  [82.4, 50],
  [100.3, 50],
  [149.9, 50],
  [166, 60],
  [239.8, 60],
  [272.1, 50],
  [394.4, 60],
  [440, 50],
  [659.3, 60],
  [880, 50],
])('%f Hz with noise and %i Hz hum 20 dB below each: within 1 cent (seed 31)', (hertz, hum) => {
  const heard = pitchOf(recording(hertz, hertz < 200 ? 0.515 : 0.6, hum, 31), RATE);
  if (heard.kind !== 'pitch') throw new Error(heard.why);
  expect(Math.abs(cents(heard.hertz, hertz))).toBeLessThan(1);
});

test.each([[1046.5], [1319], [1661.2], [2000]])(
  '%f Hz with noise and 50 Hz hum 20 dB below each: within 5 cents (seed 32)',
  (hertz) => {
    const heard = pitchOf(recording(hertz, 0.53, 50, 32), RATE);
    if (heard.kind !== 'pitch') throw new Error(heard.why);
    expect(Math.abs(cents(heard.hertz, hertz))).toBeLessThan(5);
  },
);

test('at 44.1 kHz and in half a second it is as good (seed 33)', () => {
  const wave = recording(300, 0.53, 50, 33, 1);
  const heard = pitchOf(wave.subarray(0, RATE / 2), 44_100);
  if (heard.kind !== 'pitch') throw new Error(heard.why);
  expect(Math.abs(cents(heard.hertz, (300 * 44_100) / RATE))).toBeLessThan(1);
});

test('silence, noise and too short a recording have no pitch, each for its reason (seed 34)', () => {
  const gaussian = gaussianFrom(34);
  const noise = Float32Array.from({ length: RATE }, () => 0.1 * gaussian());
  expect(pitchOf(noise, RATE)).toEqual({ kind: 'none', why: 'no steady pitch' });
  expect(pitchOf(new Float32Array(RATE), RATE)).toEqual({ kind: 'none', why: 'silent' });
  expect(pitchOf(noise.subarray(0, 1000), RATE)).toEqual({ kind: 'none', why: 'too short' });
});

test('a board with 7 % more capacitance is told so, which way to turn, and how far', () => {
  const built = designWith({
    A: { capacitor: { ...BENCH_DESIGN.voices.A.capacitor, farads: 82e-9 * 1.07 } },
  });
  const hertzOf = (design: typeof built, rotation?: number) =>
    cycleOf(astableOf(design, 'A', 9, rotation)).frequency;
  const target = hertzOf(BENCH_DESIGN);
  const check = checkPitch(BENCH_DESIGN, 'A', 9, hertzOf(built), target)!;
  expect(check.ratio).toBeCloseTo(1.07, 9);
  expect(check.farads).toBeCloseTo(82e-9 * 1.07, 15);
  expect(check.cents).toBeCloseTo(-1200 * Math.log2(1.07), 6);
  // Too low: anticlockwise, and there the built board sounds its target.
  expect(check.turn).toBeLessThan(0);
  expect(hertzOf(built, check.rotation!) / target).toBeCloseTo(1, 8);
  expect(checkPitch(BENCH_DESIGN, 'A', 9, target / 40, target)!.rotation).toBeNull();
});
