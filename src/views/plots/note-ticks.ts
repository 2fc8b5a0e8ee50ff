/** Which notes stand along a line of pitches: the most that fit beside one another. Hertz and px. */
import { frequencyOfNote, nameOfNote, noteNumberOf } from '../../plan/notes.ts';
import type { Hertz } from '../../quantity/units.ts';

export interface NoteTick {
  readonly name: string;
  readonly hertz: Hertz;
}

/** From all notes to one an octave: steps within the octave, C = 0. */
const SETS: readonly (readonly number[])[] = [
  [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11],
  [0, 2, 4, 5, 7, 9, 11],
  [0, 4, 9],
  [0, 9],
  [0],
];

/** Whole notes from `low` to `high`, both above 0, of one set of steps. */
function notesWithin(low: Hertz, high: Hertz, a4: Hertz, steps: readonly number[], every = 1): NoteTick[] {
  const found: NoteTick[] = [];
  const last = Math.floor(noteNumberOf(high, a4) + 1e-9);
  for (let n = Math.ceil(noteNumberOf(low, a4) - 1e-9); n <= last; n++) {
    const octave = Math.floor(n / 12);
    if (steps.includes(n - 12 * octave) && octave % every === 0)
      found.push({ name: nameOfNote(n), hertz: frequencyOfNote(n, a4) });
  }
  return found;
}

/** The fullest set whose labels do not touch; sparser and sparser, at last a note every third octave. */
export function noteTicks(
  low: Hertz,
  high: Hertz,
  a4: Hertz,
  place: (hertz: Hertz) => number,
  widthOf: (tick: NoteTick) => number,
  gap = 6,
): readonly NoteTick[] {
  const sets = [
    ...SETS.map((steps) => notesWithin(low, high, a4, steps)),
    notesWithin(low, high, a4, [0], 3),
  ];
  const apart = (ticks: readonly NoteTick[]) =>
    ticks.every((tick, i) => {
      const next = ticks[i + 1];
      if (next === undefined) return true;
      const room = (widthOf(tick) + widthOf(next)) / 2 + gap;
      return place(next.hertz) - place(tick.hertz) >= room;
    });
  return sets.find(apart) ?? [];
}
