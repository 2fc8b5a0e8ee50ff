/** The timing parts a voice of the design has now, as a candidate would have them. */
import type { Design } from '../design/design.ts';
import type { VoiceParts } from '../design/pitch.ts';
import type { Fraction, VoiceId } from '../quantity/units.ts';

/** Fixed resistors of a common build (metal film); the design does not state their tolerance. */
const RESISTOR_TOLERANCE: Fraction = 0.01;

export function fittedParts(design: Design, voice: VoiceId): VoiceParts {
  const { raOhms, rbFixedOhms, trimmer, capacitor } = design.voices[voice];
  return {
    ra: { ohms: raOhms, tolerance: RESISTOR_TOLERANCE },
    rbFixed: { ohms: rbFixedOhms, tolerance: RESISTOR_TOLERANCE },
    trimmer: { part: trimmer.part, ohms: trimmer.ohms, tolerance: trimmer.tolerance },
    capacitor,
  };
}
