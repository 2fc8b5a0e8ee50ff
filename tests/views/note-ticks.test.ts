/** The notes along a ruler of pitches: names and frequencies as elsewhere, and none touching another. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { noteTicks } from '../../src/views/plots/note-ticks.ts';

const ruler = (low: number, high: number, width: number) => {
  const place = (hertz: number) => (width * Math.log(hertz / low)) / Math.log(high / low);
  return { place, ticks: noteTicks(low, high, 440, place, () => 40) };
};

/** The table of equal temperament as printed for A4 = 440 Hz (ISO 16), to a hundredth. */
const PRINTED: Readonly<Record<string, number>> = {
  C4: 261.63,
  'C♯4': 277.18,
  D4: 293.66,
  'D♯4': 311.13,
  E4: 329.63,
  F4: 349.23,
  'F♯4': 369.99,
  G4: 392.0,
  'G♯4': 415.3,
  A4: 440.0,
  'A♯4': 466.16,
  B4: 493.88,
  C5: 523.25,
};

test('an octave is marked with the printed table of equal temperament', () => {
  const { ticks } = ruler(261, 524, 900);
  expect(Object.fromEntries(ticks.map(({ name, hertz }) => [name, Number(hertz.toFixed(2))]))).toEqual(
    PRINTED,
  );
});

test('a ruler of seven octaves still names each C', () => {
  expect(ruler(65, 8400, 900).ticks.map(({ name }) => name)).toEqual(
    expect.arrayContaining(['C2', 'C5', 'C9']),
  );
});

test('labels never touch, and a note is left whenever two octaves have room for it (seed 11)', () => {
  const cases = fc.tuple(fc.double({ min: 20, max: 2000, noNaN: true }), fc.integer({ min: 120, max: 1500 }));
  fc.assert(
    fc.property(cases, ([low, width]) => {
      const { ticks, place } = ruler(low, 4.01 * low, width);
      expect(ticks.length).toBeGreaterThan(0);
      const places = ticks.map(({ hertz }) => place(hertz));
      for (const [i, x] of places.entries()) if (i > 0) expect(x - places[i - 1]!).toBeGreaterThanOrEqual(46);
    }),
    { seed: 11, numRuns: 300 },
  );
});
