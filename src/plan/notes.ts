/** Notes and cents. Equal temperament: f = A4·2^((n − 69)/12), ISO 16 for A4 = 440 Hz. */
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
  const octave = Math.floor(whole / 12) - 1;
  const name = NAMES[((whole % 12) + 12) % 12]!;
  return { name: `${name}${octave}`, cents: (exact - whole) * 100 };
}
