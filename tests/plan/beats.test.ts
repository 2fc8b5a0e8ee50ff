/** Beats of two tones against the figures piano tuners use. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { beatsOf } from '../../src/plan/beats.ts';
import { frequencyOfNote } from '../../src/plan/notes.ts';

const C4 = 60;
const pair = (low: number, high: number) => ({ A: frequencyOfNote(high), B: frequencyOfNote(low) });

// Beat rates of equal temperament at A4 = 440 Hz, as printed in tables for piano tuners.
test.each([
  ['C4 to E4, a major third', C4, 64, [5, 4], 13.69, 10.38],
  ['C4 to G4, a fifth', C4, 67, [3, 2], -1.96, 0.89],
  ['C4 to F4, a fourth', C4, 65, [4, 3], 1.96, 1.18],
  ['A3 to C4, a minor third', 57, C4, [6, 5], -15.64, 11.86],
] as const)('%s: beats as tuners count them', (_title, low, high, ratio, cents, hertz) => {
  const beats = beatsOf(pair(low, high))!;
  expect(beats.ratio).toEqual(ratio);
  expect(beats.apartCents).toBeCloseTo(cents, 1);
  expect(beats.hertz).toBeCloseTo(hertz, 1);
});

test('two tones a trace apart beat at their difference; an octave and a twelfth are found beyond the octave', () => {
  expect(beatsOf({ A: 440, B: 441.5 })).toMatchObject({ ratio: [1, 1], hertz: 1.5 });
  expect(beatsOf({ A: 440, B: 220 })).toMatchObject({ ratio: [2, 1], hertz: 0 });
  expect(beatsOf({ A: 330, B: 110 })).toMatchObject({ ratio: [3, 1], hertz: 0 });
});

test('an interval near no small ratio has no beats to tell, and which voice is higher does not matter (seed 2)', () => {
  expect(beatsOf(pair(C4, 66))).toBeNull();
  const hertz = fc.double({ min: 50, max: 2000, noNaN: true });
  fc.assert(
    fc.property(hertz, hertz, (A, B) => {
      expect(beatsOf({ A, B })).toEqual(beatsOf({ A: B, B: A }));
    }),
    { seed: 2 },
  );
});
