/** Candidates as bars of the ruler, and what is wanted as its marks. */

import { equalValues } from '../../design/entries.ts';
import type { Candidate, Target } from '../../design/pitch.ts';
import type { Assessment } from '../../plan/assess.ts';
import { nearestNote } from '../../plan/notes.ts';
import { type Hertz, type Pair, VOICES, type VoiceId } from '../../quantity/units.ts';
import { pitchWords } from '../../words/en-pitch.ts';
import { foundWords } from '../../words/en-pitch-found.ts';
import type { RulerBar, RulerTarget } from '../plots/pitch-ruler.ts';

/** A frequency as the note nearest to it, with cents where it lies beside. */
export function noteText(hertz: Hertz, a4: Hertz): string {
  const { name, cents } = nearestNote(hertz, a4);
  return pitchWords.wanted.note(name, cents);
}

export function rulerTargets(targets: Pair<Target>, a4: Hertz): readonly RulerTarget[] {
  return VOICES.map((voice) => {
    const { lowHertz, highHertz } = targets[voice];
    const low = noteText(lowHertz, a4);
    const label =
      lowHertz === highHertz
        ? foundWords.ruler.target(voice, low)
        : foundWords.ruler.targetSpan(voice, low, noteText(highHertz, a4));
    return { voice, lowHertz, highHertz, label };
  });
}

/** Both voices of the same parts are one bar, else one each. `place` counts from 1. */
export function barsOf(
  key: string,
  place: number,
  { parts }: Candidate,
  { voices }: Assessment,
  chosen: boolean,
  bench: readonly Pair<Hertz>[],
): readonly RulerBar[] {
  const alike = equalValues(parts.A, parts.B);
  return (alike ? (['A'] as const) : VOICES).map((voice) => {
    const { nominal, easyPromised } = voices[voice];
    const { capacitor, trimmer } = parts[voice];
    const shown: VoiceId | 'both' = alike ? 'both' : voice;
    const name = `${foundWords.farads(capacitor.farads)}, ${foundWords.ohms(trimmer.ohms)}`;
    const heard = alike ? VOICES : [voice];
    return {
      key,
      label: foundWords.ruler.bar(shown, place, name),
      voices: shown,
      nominal,
      sure: easyPromised,
      says: foundWords.span(nominal.lowHertz, nominal.highHertz),
      chosen,
      untuned: bench.flatMap((kit) => heard.map((id) => ({ voice: id, hertz: kit[id] }))),
    };
  });
}

/** The bars as rows of a table. */
export function barRow({ label, voices, nominal, sure }: RulerBar): readonly string[] {
  const { numberOf, ruler } = foundWords;
  return [
    label,
    voices === 'both' ? VOICES.join(', ') : voices,
    numberOf(nominal.lowHertz),
    numberOf(nominal.highHertz),
    sure ? numberOf(sure.lowHertz) : ruler.nothing,
    sure ? numberOf(sure.highHertz) : ruler.nothing,
  ];
}
