/**
 * How far band-limited pulses can go: by the area of the step's rises (a linear filter's greatest answer to an input
 * between 0 and 1 is the area under the positive part of its kernel: Oppenheim and Schafer, Discrete-Time Signal
 * Processing, on stability), and by the worst train of pulses itself.
 */
import { expect, test } from 'vitest';
import { BandlimitedLine, MOST_OVERSHOOT, REACH } from '../../src/sound/bandlimit.ts';

/** Pulses between 0 and 1 that change at these times, samples, from 0 on; `count` samples of them. */
function pulses(changes: readonly number[], count: number): Float32Array {
  const line = new BandlimitedLine();
  const out = new Float32Array(count);
  let level = 0;
  let next = 0;
  for (let i = 0; i < count; i++) {
    for (; next < changes.length && changes[next]! <= i; next++) {
      line.edge(i - changes[next]!, 1 - 2 * level, 0);
      level = 1 - level;
    }
    line.run(out, i, 1, level, 1);
  }
  return out;
}

test('the rises of one step add up to the bound', () => {
  const phases = 500;
  const rows = Array.from({ length: phases }, (_, phase) => pulses([REACH + 1 - phase / phases], 4 * REACH));
  let last = 0;
  let rises = 0;
  for (let i = 0; i < 4 * REACH; i++)
    for (const row of rows) {
      rises += Math.max(0, row[i]! - last);
      last = row[i]!;
    }
  expect(last).toBeCloseTo(1, 6);
  expect(rises).toBeLessThanOrEqual(MOST_OVERSHOOT);
  expect(rises).toBeGreaterThan(MOST_OVERSHOOT - 1e-3);
});

test('the worst pulses there are reach it, and stay within it wherever they fall between samples', () => {
  // Where the kernel is positive the input is 1: it crosses zero at every 1/0.88 samples but for its middle.
  const crossings = Array.from({ length: 27 }, (_, i) => (i - 13) / 0.88).filter((x) => x !== 0);
  let most = 0;
  for (let phase = 0; phase < 1; phase += 1 / 64) {
    const changes = crossings.map((x) => 3 * REACH + phase + x);
    for (const value of pulses(changes, 8 * REACH)) most = Math.max(most, Math.abs(value));
  }
  expect(most).toBeLessThanOrEqual(MOST_OVERSHOOT);
  expect(most).toBeGreaterThan(MOST_OVERSHOOT - 0.01);
});
