/**
 * Notes, intervals and cents. Equal temperament: f = A4·2^((n − 69)/12), ISO 16 for A4 = 440 Hz. Just intervals are
 * the usual ratios of small numbers (five-limit). English note names: C to B, with ♯ or ♭ and an octave.
 */
import { INTERVAL_NAMES, type IntervalName } from '../design/pitch.ts';
import { SHARPS } from '../quantity/note-signs.ts';
import type { Hertz } from '../quantity/units.ts';

const A4: Hertz = 440;

const NAMES = ['C', 'C♯', 'D', 'D♯', 'E', 'F', 'F♯', 'G', 'G♯', 'A', 'A♯', 'B'] as const;

/** Note number with A4 = 69; fractions are hundredths of a semitone. Frequency above 0. */
export function noteNumberOf(frequency: Hertz, a4: Hertz = A4): number {
  return 69 + 12 * Math.log2(frequency / a4);
}

/** Frequency of a note number. */
export function frequencyOfNote(noteNumber: number, a4: Hertz = A4): Hertz {
  return a4 * 2 ** ((noteNumber - 69) / 12);
}

/** Interval from one frequency to another, cents. */
export function centsBetween(from: Hertz, to: Hertz): number {
  return 1200 * Math.log2(to / from);
}

export interface NearestNote {
  /** Letter with its octave, C4 = middle C: `A♯3`. */
  readonly name: string;
  /** How far the frequency lies above (+) or below (−) that note. */
  readonly cents: number;
}

/** The nearest note of a frequency above 0. */
export function nearestNote(frequency: Hertz, a4: Hertz = A4): NearestNote {
  const exact = noteNumberOf(frequency, a4);
  const whole = Math.round(exact);
  return { name: nameOfNote(whole), cents: (exact - whole) * 100 };
}

/** Name of a whole note number: `A♯3`. */
export function nameOfNote(noteNumber: number): string {
  const octave = Math.floor(noteNumber / 12) - 1;
  return `${NAMES[((noteNumber % 12) + 12) % 12]!}${octave}`;
}

export type NoteReading =
  /** Note number, fractions from cents. */
  { readonly ok: true; readonly noteNumber: number } | { readonly ok: false; readonly problem: NoteProblem };

export type NoteProblem =
  | { readonly kind: 'nothing typed' }
  /** No note name; `nearest` is one that resembles it, if any does. */
  | { readonly kind: 'no note'; readonly read: string; readonly nearest: string | null }
  /** A letter without its octave; `nearest` has the octave of middle C. */
  | { readonly kind: 'no octave'; readonly read: string; readonly nearest: string };

const SEMITONES: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

/** Octaves a person may type; what can be built of them is another question. */
const OCTAVES = { least: -1, most: 10 };

/** Cents a note may be typed away from its name: an octave. */
const MOST_CENTS = 1200;

/** Reads `C4`, `f#3`, `F♯3`, `Bb2`, `A♭3`, `A4 +12 c`, `A4 +12`, `E4 −5 cents`. */
export function parseNote(text: string): NoteReading {
  const read = text.trim();
  if (read === '') return { ok: false, problem: { kind: 'nothing typed' } };
  const tidy = read.replaceAll(/[\u2212\u2013]/g, '-').replaceAll(/[\s\u00A0\u202F]+/g, '');
  const match =
    /^([A-Ga-g])(##|♯♯|bb|♭♭|[#♯b♭♮x]?)(-?\d{1,2})?(?:([+-]\d+(?:[.,]\d+)?)(?:c|ct|cents?)?)?$/.exec(tidy);
  if (!match) return { ok: false, problem: { kind: 'no note', read, nearest: resembling(tidy) } };
  const [, letter = '', sign = '', octave, cents] = match;
  const name = `${letter.toUpperCase()}${sign}`;
  const semitone = SEMITONES[letter.toUpperCase()]! + SHARPS[sign]!;
  if (octave === undefined) return { ok: false, problem: { kind: 'no octave', read, nearest: `${name}4` } };
  const number = Number(octave);
  if (number < OCTAVES.least || number > OCTAVES.most) {
    const within = Math.min(OCTAVES.most, Math.max(OCTAVES.least, number));
    return { ok: false, problem: { kind: 'no note', read, nearest: `${name}${within}` } };
  }
  const away = cents === undefined ? 0 : Number(cents.replace(',', '.'));
  if (Math.abs(away) > MOST_CENTS)
    return { ok: false, problem: { kind: 'no note', read, nearest: `${name}${number}` } };
  return { ok: true, noteNumber: 12 * (number + 1) + semitone + away / 100 };
}

/** A note whose letter and octave occur in a text, in that order; null when none does. */
function resembling(text: string): string | null {
  const letter = /[A-Ga-g]/.exec(text)?.[0]?.toUpperCase();
  if (letter === undefined) return null;
  const octave = /\d/.exec(text)?.[0] ?? '4';
  return `${letter}${octave}`;
}

/** Ratios of the just intervals, five-limit (common practice; the minor seventh is the larger one). */
const JUST: Readonly<Record<IntervalName, readonly [number, number]>> = {
  unison: [1, 1],
  'minor second': [16, 15],
  'major second': [9, 8],
  'minor third': [6, 5],
  'major third': [5, 4],
  fourth: [4, 3],
  tritone: [45, 32],
  fifth: [3, 2],
  'minor sixth': [8, 5],
  'major sixth': [5, 3],
  'minor seventh': [9, 5],
  'major seventh': [15, 8],
  octave: [2, 1],
};

/** The just ratio of an interval, upper to lower. */
export function justRatio(name: IntervalName): readonly [number, number] {
  return JUST[name];
}

/** Width of an interval by name, cents, above 0. */
export function intervalCents(name: IntervalName, temperament: 'equal' | 'just'): number {
  if (temperament === 'equal') return 100 * INTERVAL_NAMES.indexOf(name);
  const [upper, lower] = JUST[name];
  return centsBetween(lower, upper);
}

/** Width of any whole number of semitones, up or down, cents: just ones are an interval above so many octaves. */
export function stepsCents(semitones: number, temperament: 'equal' | 'just'): number {
  const size = Math.abs(semitones);
  const octaves = Math.floor(size / 12);
  const cents = 1200 * octaves + intervalCents(INTERVAL_NAMES[size % 12]!, temperament);
  return semitones < 0 ? -cents : cents;
}
