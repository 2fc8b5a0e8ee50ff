/** Names of lines stand free: inside the frame, off every line and off one another where there is room. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Box, type Course, calmPlace, isFree } from '../../src/views/plots/calm-place.ts';

const frame: Box = { left: 0, right: 600, top: 0, bottom: 300 };
const flat =
  (y: number): Course =>
  () =>
    y;
const name = { from: 0, to: 600, width: 80, height: 16 };

test('between two lines a name goes to the side that has room', () => {
  const line = flat(100);
  const crowdedAbove = calmPlace({ ...name, course: line }, [line, flat(85)], [], frame)!;
  expect(crowdedAbove.top).toBeGreaterThan(100);
  const crowdedBeneath = calmPlace({ ...name, course: line }, [line, flat(115)], [], frame)!;
  expect(crowdedBeneath.bottom).toBeLessThan(100);
});

test('a line that dips is named where nothing runs through the name', () => {
  const line = flat(150);
  const steep: Course = (x) => (x < 300 ? 135 : 20);
  const below: Course = (x) => (x < 300 ? 165 : 290);
  const box = calmPlace({ ...name, course: line }, [line, steep, below], [], frame)!;
  expect(box.left).toBeGreaterThanOrEqual(300);
});

test('a name is free where no line runs through it and no other name stands', () => {
  const box: Box = { left: 100, right: 180, top: 90, bottom: 106 };
  expect(isFree(box, [flat(80), flat(120)], [])).toBe(true);
  expect(isFree(box, [flat(100)], [])).toBe(false);
  // A line that is drawn elsewhere only.
  expect(isFree(box, [(x) => (x > 200 ? 100 : null)], [])).toBe(true);
  expect(isFree(box, [], [{ left: 170, right: 250, top: 100, bottom: 116 }])).toBe(false);
});

test('a line shorter than its name has none, and so has a name that would leave the frame', () => {
  expect(calmPlace({ ...name, to: 70, course: flat(100) }, [], [], frame)).toBeNull();
  expect(calmPlace({ ...name, course: flat(8) }, [], [], { ...frame, bottom: 20 })).toBeNull();
});

test('seeded: three names of flat lines far apart never touch a line or one another (seed 7)', () => {
  const height = fc.integer({ min: 30, max: 270 });
  fc.assert(
    fc.property(
      fc.uniqueArray(height, { minLength: 3, maxLength: 3, selector: (y) => Math.round(y / 60) }),
      (ys) => {
        const lines = ys.map(flat);
        const taken: Box[] = [];
        for (const course of lines) {
          const box = calmPlace({ ...name, course }, lines, taken, frame);
          expect(box).not.toBeNull();
          for (const y of ys) expect(y < box!.top || y > box!.bottom).toBe(true);
          for (const other of taken)
            expect(
              box!.right <= other.left ||
                other.right <= box!.left ||
                box!.bottom <= other.top ||
                other.bottom <= box!.top,
            ).toBe(true);
          taken.push(box!);
        }
      },
    ),
    { seed: 7, numRuns: 100 },
  );
});
