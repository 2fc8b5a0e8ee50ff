/** Typed notes against a general-purpose music library, and intervals against just ratios. */
import { freq, get, midi } from '@tonaljs/note';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { INTERVAL_NAMES } from '../../src/design/pitch.ts';
import {
  frequencyOfNote,
  intervalCents,
  justRatio,
  nameOfNote,
  nearestNote,
  parseNote,
  stepsCents,
} from '../../src/plan/notes.ts';

const noteNumber = (text: string): number => {
  const reading = parseNote(text);
  if (!reading.ok) throw new Error(`${text}: ${JSON.stringify(reading.problem)}`);
  return reading.noteNumber;
};

describe('every note of nine octaves, as tonal reads it', () => {
  const signs = [
    ['', ''],
    ['#', '♯'],
    ['b', '♭'],
    ['##', '♯♯'],
    ['bb', '♭♭'],
  ] as const;
  test.each([0, 1, 2, 3, 4, 5, 6, 7, 8])('octave %d', (octave) => {
    for (const letter of 'CDEFGAB')
      for (const [plain, sign] of signs) {
        const name = `${letter}${plain}${octave}`;
        expect(get(name).empty).toBe(false);
        expect(noteNumber(name), name).toBe(midi(name));
        expect(noteNumber(`${letter.toLowerCase()}${sign}${octave}`), name).toBe(midi(name));
        expect(frequencyOfNote(noteNumber(name)) / freq(name)!).toBeCloseTo(1, 12);
      }
  });
});

test('cents are added in whatever way they are written', () => {
  for (const text of ['A4 +12 c', 'a4+12c', 'A4 +12 cents', ' A4\u00A0+12 ', 'A4 +12,0 ct'])
    expect(noteNumber(text), text).toBeCloseTo(69.12, 12);
  expect(noteNumber('E4 \u22125 c')).toBeCloseTo(63.95, 12);
});

test.each([
  ['', { kind: 'nothing typed' }],
  ['  ', { kind: 'nothing typed' }],
  ['H4', { kind: 'no note', read: 'H4', nearest: null }],
  ['Es4', { kind: 'no note', read: 'Es4', nearest: 'E4' }],
  ['C', { kind: 'no octave', read: 'C', nearest: 'C4' }],
  ['f#', { kind: 'no octave', read: 'f#', nearest: 'F#4' }],
  ['C44', { kind: 'no note', read: 'C44', nearest: 'C10' }],
  ['C-9', { kind: 'no note', read: 'C-9', nearest: 'C-1' }],
  ['A4 +1300 c', { kind: 'no note', read: 'A4 +1300 c', nearest: 'A4' }],
  ['A4 12', { kind: 'no note', read: 'A4 12', nearest: 'A4' }],
  ['440', { kind: 'no note', read: '440', nearest: null }],
])('%j is told to be what it is, with a note near it', (text, problem) => {
  expect(parseNote(text)).toEqual({ ok: false, problem });
  const nearest = 'nearest' in problem ? problem.nearest : null;
  if (nearest) expect(parseNote(nearest).ok).toBe(true);
});

test('nothing typed makes it throw, and what is read has a frequency (seed 4)', () => {
  fc.assert(
    fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[A-G][#b]?-?\d{1,2} ?[+-]?\d*$/)), (text) => {
      const reading = parseNote(text);
      if (reading.ok) expect(frequencyOfNote(reading.noteNumber)).toBeGreaterThan(0);
    }),
    { seed: 4 },
  );
});

test('a name and its number undo each other', () => {
  for (let note = 0; note <= 127; note++) {
    expect(noteNumber(nameOfNote(note))).toBe(note);
    expect(nearestNote(frequencyOfNote(note)).name).toBe(nameOfNote(note));
  }
});

test('just intervals are ratios of small numbers, a few cents from equal ones (ls:P4)', () => {
  // Five-limit ratios and their cents as tables of just intonation print them.
  const printed: Readonly<Record<string, number>> = {
    unison: 0,
    'minor second': 111.731,
    'major second': 203.91,
    'minor third': 315.641,
    'major third': 386.314,
    fourth: 498.045,
    tritone: 590.224,
    fifth: 701.955,
    'minor sixth': 813.686,
    'major sixth': 884.359,
    'minor seventh': 1017.596,
    'major seventh': 1088.269,
    octave: 1200,
  };
  for (const name of INTERVAL_NAMES) {
    expect(intervalCents(name, 'just'), name).toBeCloseTo(printed[name]!, 3);
    expect(Math.abs(intervalCents(name, 'just') - intervalCents(name, 'equal'))).toBeLessThan(18);
  }
  expect(justRatio('fifth')).toEqual([3, 2]);
});

test('semitones up and down, and more than an octave of them', () => {
  expect(stepsCents(7, 'just')).toBeCloseTo(701.955, 3);
  expect(stepsCents(-7, 'just')).toBeCloseTo(-701.955, 3);
  expect(stepsCents(19, 'just')).toBeCloseTo(1901.955, 3);
  for (const n of [-25, -12, 0, 5, 31]) expect(stepsCents(n, 'equal')).toBe(100 * n);
});
