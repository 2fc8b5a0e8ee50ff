/**
 * One half of the timer against its truth table (TI SLFS022: reset over trigger over threshold), and against a
 * capacitor followed in small steps through any sequence of resets.
 */
import { describe, expect, test } from 'vitest';
import { type Astable, astableOf, cycleOf } from '../../src/circuit/astable.ts';
import { uniformFrom } from '../../src/quantity/random.ts';
import { Timer } from '../../src/sound/timer.ts';
import { designWith, pitchTurned } from '../circuit/building.ts';
import { type Edge, type Pins, steppedEdges } from './stepped-timer.ts';

const astable = (rotation = 0.55): Astable =>
  astableOf(designWith({ A: pitchTurned('A', rotation) }), 'A', 9);

/** Edges of the output, by the product's timer. */
function edgesOf(a: Astable, pins: Pins, seconds: number, startsReleased: boolean): Edge[] {
  const timer = new Timer(a, startsReleased);
  const edges: Edge[] = [];
  let high = timer.high;
  const note = (time: number) => {
    if (timer.high !== high) edges.push({ time, high: timer.high });
    high = timer.high;
  };
  for (const { time, released } of pins) {
    while (timer.next < Math.min(time, seconds)) {
      const at = timer.next;
      timer.fire();
      note(at);
    }
    if (time >= seconds) break;
    timer.setReleased(time, released);
    note(time);
  }
  return edges;
}

describe('a reset in the middle of a charge', () => {
  const a = astable();
  const { firstHighSeconds, highSeconds } = cycleOf(a);

  test('shorter than the decay to a third of the supply gives no extra pulse', () => {
    const at = firstHighSeconds * 0.9;
    const timer = new Timer(a, true);
    timer.setReleased(at, false);
    expect(timer.high).toBe(false);
    expect(timer.next).toBe(Number.POSITIVE_INFINITY);
    const volts = timer.capacitorVolts(at);
    expect(volts).toBeGreaterThan(a.lowerVolts);
    timer.setReleased(at + 10e-6, true);
    expect(timer.high).toBe(false);
    const decay = a.sinkOhms * a.farads * Math.log((volts - a.sinkVolts) / (a.lowerVolts - a.sinkVolts));
    expect(timer.next).toBeCloseTo(at + decay, 12);
    timer.fire();
    expect(timer.high).toBe(true);
    expect(timer.next - (at + decay)).toBeCloseTo(highSeconds, 12);
  });

  test('below a third of the supply rises at once when let go', () => {
    const at = firstHighSeconds * 0.2;
    const timer = new Timer(a, true);
    timer.setReleased(at, false);
    expect(timer.capacitorVolts(at)).toBeLessThan(a.lowerVolts);
    timer.setReleased(at + 1e-6, true);
    expect(timer.high).toBe(true);
  });

  test('long enough empties the capacitor: the first high is the long one', () => {
    const timer = new Timer(a, true);
    timer.setReleased(0.001, false);
    timer.setReleased(1, true);
    expect(timer.high).toBe(true);
    expect(timer.next - 1).toBeCloseTo(firstHighSeconds, 9);
  });
});

test.each([1, 2, 3, 4])('any sequence of resets gives the edges that small steps give (seed %i)', (seed) => {
  const uniform = uniformFrom(seed);
  const a = astable(uniform());
  const period = 1 / cycleOf(a).frequency;
  const pins: { time: number; released: boolean }[] = [];
  // Stretches from a fiftieth of a period to three periods.
  for (let time = 0, released = false; time < 0.1; released = !released) {
    time += period * 0.02 * 150 ** uniform();
    pins.push({ time, released });
  }
  const ours = edgesOf(a, pins, 0.1, true);
  const theirs = steppedEdges(a, pins, 0.1, true);
  expect(ours.length).toBeGreaterThan(20);
  expect(ours.map(({ high }) => high)).toEqual(theirs.map(({ high }) => high));
  // A step late at each edge, and the edges of one stretch add up.
  for (const [i, { time }] of ours.entries()) expect(Math.abs(time - theirs[i]!.time)).toBeLessThan(3e-6);
});

describe('other values while it runs', () => {
  test('the capacitor keeps its voltage', () => {
    const timer = new Timer(astable(0.2), true);
    const before = timer.capacitorVolts(1e-4);
    timer.setAstable(1e-4, astable(0.9));
    expect(timer.capacitorVolts(1e-4)).toBe(before);
    expect(timer.high).toBe(true);
  });

  test('levels that fall below the capacitor end the high at once', () => {
    const a = astable();
    const timer = new Timer(a, true);
    const at = cycleOf(a).firstHighSeconds * 0.95;
    timer.setAstable(at, { ...a, upperVolts: 3, lowerVolts: 1.5 });
    expect(timer.next).toBe(at);
    timer.fire();
    expect(timer.high).toBe(false);
  });

  test('levels that are never reached leave it as it is', () => {
    const a = astable();
    const timer = new Timer({ ...a, upperVolts: 9.5, lowerVolts: 4.75 }, true);
    expect(timer.high).toBe(true);
    expect(timer.next).toBe(Number.POSITIVE_INFINITY);
  });
});
