/** Notes and cents beyond the published rows. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { centsBetween, frequencyOfNote, nearestNote, noteNumberOf } from '../../src/plan/notes.ts';

const hertz = fc.double({ min: 1, max: 20_000, noNaN: true });

test('a note number and its frequency undo each other', () => {
  fc.assert(
    fc.property(hertz, fc.double({ min: 400, max: 480, noNaN: true }), (frequency, a4) => {
      expect(frequencyOfNote(noteNumberOf(frequency, a4), a4) / frequency).toBeCloseTo(1, 12);
    }),
    { seed: 1 },
  );
});

test('the nearest note is never more than half a semitone away, and its cents lead back', () => {
  fc.assert(
    fc.property(hertz, (frequency) => {
      const { cents } = nearestNote(frequency);
      expect(Math.abs(cents)).toBeLessThanOrEqual(50);
      const note = noteNumberOf(frequency) - cents / 100;
      expect(note).toBeCloseTo(Math.round(note), 9);
    }),
    { seed: 2 },
  );
});

test('cents there and back cancel', () => {
  fc.assert(
    fc.property(hertz, hertz, (a, b) => {
      expect(centsBetween(a, b) + centsBetween(b, a)).toBeCloseTo(0, 8);
    }),
    { seed: 3 },
  );
});

test('octaves change at C, also below the lowest C', () => {
  expect(nearestNote(261.63).name).toBe('C4');
  expect(nearestNote(246.94).name).toBe('B3');
  expect(nearestNote(16.35).name).toBe('C0');
  expect(nearestNote(15.43).name).toBe('B-1');
  expect(nearestNote(233.08).name).toBe('A♯3');
});

test('another A4 moves every note with it', () => {
  expect(nearestNote(442, 442)).toEqual({ name: 'A4', cents: 0 });
  expect(nearestNote(440, 442).cents).toBeCloseTo(-7.8514, 3);
});
