/** The memory behind the live traces, and the calm of its gate lanes. */
import { describe, expect, test } from 'vitest';
import { GateHold, SHORTEST_SHOWN } from '../../src/views/plots/gate-hold.ts';
import {
  emptyWindow,
  sampleAt,
  sampled,
  soundingStretches,
  type TraceFrame,
  TraceRing,
} from '../../src/views/plots/trace-ring.ts';

const frame = (seconds: number, a = 1, b = 2, soundingA = true, soundingB = false): TraceFrame => ({
  seconds,
  volts: { A: a, B: b },
  sounding: { A: soundingA, B: soundingB },
});

describe('the ring', () => {
  test('gives the frames back oldest first, as seconds before the newest', () => {
    const ring = new TraceRing(16);
    for (const t of [10, 10.5, 11]) ring.push(frame(t, t, t * 2));
    const window = emptyWindow(16);
    ring.copyWindow(4, window);
    expect(window.length).toBe(3);
    expect([...window.ago.subarray(0, 3)]).toEqual([-1, -0.5, 0]);
    expect([...window.voltsA.subarray(0, 3)]).toEqual([10, 10.5, 11]);
    expect([...window.voltsB.subarray(0, 3)]).toEqual([20, 21, 22]);
  });

  test('reaches one frame beyond the window, so that the line runs to the edge', () => {
    const ring = new TraceRing(64);
    for (let t = 0; t <= 10; t++) ring.push(frame(t));
    const window = emptyWindow(64);
    ring.copyWindow(3.5, window);
    expect([...window.ago.subarray(0, window.length)]).toEqual([-4, -3, -2, -1, 0]);
  });

  test('filled over and over it keeps the newest frames in order', () => {
    const ring = new TraceRing(8);
    for (let n = 0; n < 1003; n++) ring.push(frame(n, n));
    const window = emptyWindow(8);
    ring.copyWindow(1000, window);
    expect([...window.voltsA.subarray(0, window.length)]).toEqual([
      995, 996, 997, 998, 999, 1000, 1001, 1002,
    ]);
  });

  test('a clock that starts again starts another trace', () => {
    const ring = new TraceRing(8);
    ring.push(frame(100, 1));
    ring.push(frame(0.1, 7));
    const window = emptyWindow(8);
    ring.copyWindow(4, window);
    expect(window.length).toBe(1);
    expect(window.voltsA[0]).toBe(7);
  });

  test('the same moment told twice counts once', () => {
    const ring = new TraceRing(8);
    ring.push(frame(1));
    ring.push(frame(1));
    const window = emptyWindow(8);
    ring.copyWindow(4, window);
    expect(window.length).toBe(1);
  });

  test('empty, it has no samples', () => {
    const window = emptyWindow(4);
    new TraceRing(4).copyWindow(4, window);
    expect(sampleAt(window, 0)).toBeNull();
    expect(sampled(window, 12)).toEqual([]);
    expect(soundingStretches(window, 'A')).toEqual([]);
  });
});

describe('reading a window', () => {
  const ring = new TraceRing(512);
  for (let n = 0; n <= 120; n++) ring.push(frame(n / 30, n, 0, n < 60, n >= 30 && n < 90));
  const window = emptyWindow(512);
  ring.copyWindow(4, window);

  test('the cursor reads the nearest frame', () => {
    expect(sampleAt(window, -1.001)?.volts.A).toBe(90);
    expect(sampleAt(window, -99)?.volts.A).toBe(0);
    expect(sampleAt(window, 0)).toEqual({
      ago: 0,
      volts: { A: 120, B: 0 },
      sounding: { A: false, B: false },
    });
  });

  test('the table has twelve moments from the oldest to the newest', () => {
    const rows = sampled(window, 12);
    expect(rows).toHaveLength(12);
    expect(rows[0]?.ago).toBe(-4);
    expect(rows.at(-1)?.ago).toBe(0);
    for (let n = 1; n < rows.length; n++) expect(rows[n]!.ago).toBeGreaterThan(rows[n - 1]!.ago);
  });

  test('the lanes show when each voice sounded', () => {
    expect(soundingStretches(window, 'A')).toEqual([[-4, expect.closeTo(-2, 9)]]);
    expect(soundingStretches(window, 'B')).toEqual([[expect.closeTo(-3, 9), expect.closeTo(-1, 9)]]);
  });
});

describe('what a gate shows', () => {
  test('a slow gate is shown as it is', () => {
    const hold = new GateHold();
    expect([0, 1, 2, 3].map((t) => hold.next(t, t % 2 === 0))).toEqual([true, false, true, false]);
  });

  test.each([2, 5, 10, 29, 60, 98])(
    'chattering %i times a second it changes at most three times in any second',
    (rate) => {
      const hold = new GateHold();
      const changes: number[] = [];
      let shown = hold.next(0, true);
      for (let n = 1; n <= 600; n++) {
        const t = n / 60;
        const next = hold.next(t, Math.floor(t * 2 * rate) % 2 === 0);
        if (next !== shown) changes.push(t);
        shown = next;
      }
      for (const from of changes) {
        expect(changes.filter((t) => t >= from && t < from + 1).length).toBeLessThanOrEqual(3);
      }
      for (let n = 1; n < changes.length; n++) {
        expect(changes[n]! - changes[n - 1]!).toBeGreaterThanOrEqual(SHORTEST_SHOWN - 1e-9);
      }
    },
  );

  test('it comes to rest at the true state', () => {
    const hold = new GateHold();
    hold.next(0, true);
    expect(hold.next(0.1, false)).toBe(true);
    expect(hold.next(0.36, false)).toBe(false);
  });

  test('a clock that starts again forgets what was held', () => {
    const hold = new GateHold();
    hold.next(50, true);
    expect(hold.next(0, false)).toBe(false);
  });
});
