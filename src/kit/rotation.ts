/** Where a pitch trimmer must stand. */
import { astableOf, cycleOf } from '../circuit/astable.ts';
import type { Design } from '../design/design.ts';
import type { Fraction, Hertz, VoiceId, Volts } from '../quantity/units.ts';

/** The turn of the pitch trimmer that gives a frequency; null = out of its reach. Pitch falls clockwise. */
export function rotationFor(design: Design, voice: VoiceId, railVolts: Volts, hertz: Hertz): Fraction | null {
  const at = (rotation: Fraction): Hertz => cycleOf(astableOf(design, voice, railVolts, rotation)).frequency;
  let [low, high] = [0, 1];
  if (!(at(low) >= hertz && at(high) <= hertz)) return null;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (at(middle) >= hertz) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
