/** The signs behind a note's letter, as they are typed and printed, and the semitones by which each raises the note. */
export const SHARPS: Readonly<Record<string, number>> = {
  '': 0,
  '♮': 0,
  '♯': 1,
  '#': 1,
  '♭': -1,
  b: -1,
  '##': 2,
  '♯♯': 2,
  x: 2,
  bb: -2,
  '♭♭': -2,
};
