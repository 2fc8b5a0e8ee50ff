import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GateWatch, HOLD } from '../../src/app/shown.ts';

/** Feeds a gate that changes at given moments, reported thirty times a second; collects the shown changes. */
function shownChanges(toggles: readonly number[], seconds: number) {
  const watch = new GateWatch();
  const changes: { time: number; kind: string }[] = [];
  let sounding = false;
  let next = 0;
  for (let frame = 0; frame <= seconds * 30; frame++) {
    const time = frame / 30;
    let count = 0;
    while (next < toggles.length && toggles[next]! <= time) {
      sounding = !sounding;
      count++;
      next++;
    }
    const before = watch.shown;
    const after = watch.take(time, sounding, count);
    if (after !== before) changes.push({ time, kind: after.kind });
  }
  return { changes, last: watch.shown, sounding };
}

describe('what the screen says of a gate', () => {
  it('never changes more than three times in any second, whatever the gate does', () => {
    fc.assert(
      fc.property(
        fc
          .array(fc.double({ min: 0, max: 6, noNaN: true }), { maxLength: 400 })
          .map((times) => times.sort((a, b) => a - b)),
        (toggles) => {
          const { changes } = shownChanges(toggles, 8);
          for (const { time } of changes)
            expect(changes.filter((c) => c.time >= time && c.time < time + 1).length).toBeLessThanOrEqual(3);
        },
      ),
      { seed: 11, numRuns: 200 },
    );
  });

  it('comes to the true state once the gate has rested', () => {
    fc.assert(
      fc.property(
        fc
          .array(fc.double({ min: 0, max: 3, noNaN: true }), { maxLength: 60 })
          .map((times) => times.sort((a, b) => a - b)),
        (toggles) => {
          const { last, sounding } = shownChanges(toggles, 3 + 1 + 2 * HOLD + 0.1);
          expect(last.kind).toBe(sounding ? 'sounding' : 'silent');
        },
      ),
      { seed: 12, numRuns: 200 },
    );
  });

  it('tells a hundred changes a second as a rate in words', () => {
    const toggles = Array.from({ length: 300 }, (_, i) => i / 100);
    const { last } = shownChanges(toggles, 2.9);
    expect(last.kind).toBe('chattering');
    expect(last.kind === 'chattering' && last.perSecond).toBeGreaterThan(45);
    expect(last.kind === 'chattering' && last.perSecond).toBeLessThan(55);
  });

  it('shows one clear change at once', () => {
    const { changes } = shownChanges([1], 2);
    expect(changes.map((c) => c.kind)).toEqual(['sounding']);
    expect(changes[0]!.time).toBeCloseTo(1, 1);
  });
});
