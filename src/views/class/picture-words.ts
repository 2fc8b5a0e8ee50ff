/** What the picture shows, in words: short beneath each part, and in sentences for who cannot see it. */
import type { ShownGate } from '../../app/shown.ts';
import { saidOf } from '../../lesson/described.ts';
import type { StageId } from '../../lesson/lesson.ts';
import { type Amount, amountIn, filled } from '../../words/amounts.ts';
import { CLASS_WORDS } from '../../words/class-words.ts';
import type { Language } from '../../words/spoken.ts';
import type { DrawnVoice } from '../plots/stage-drawings.ts';
import { PAGE } from './lesson-words.ts';

/** A voice as drawn, with what is said of its gate: one state, held long enough to be read. */
export interface Told {
  readonly drawn: DrawnVoice;
  readonly gate: ShownGate;
}

const volts = (value: number | null): Amount => ({ kind: 'volts', value });

/** The value beneath a part. */
export function labelOf(stage: StageId, { drawn, gate }: Told, language: Language): string {
  const { picture: says } = PAGE[language];
  const { lux, ohms, compare, tone, ...rest } = drawn.picture;
  switch (stage) {
    case 'lux':
      return amountIn(language, { kind: 'lux', value: lux });
    case 'ohms':
      return amountIn(language, { kind: 'ohms', value: ohms });
    case 'volts':
      return amountIn(language, volts(rest.volts.node));
    case 'compare': {
      if (compare.tripVolts === null) return says.never;
      if (gate.kind === 'chattering') return says.crossing(amountIn(language, volts(compare.reference)));
      const trip = amountIn(language, volts(compare.tripVolts));
      return compare.nodeIs === 'above' ? says.above(trip) : says.below(trip);
    }
    case 'gate':
      return gate.kind === 'chattering' ? says.chattering(gate.perSecond) : says[gate.kind];
    case 'tone':
      return tone.note === null || gate.kind === 'silent'
        ? says.noTone
        : says.tone(
            amountIn(language, { kind: 'note', value: tone.frequency, name: tone.note.name }),
            amountIn(language, { kind: 'hertz', value: tone.frequency }),
          );
  }
}

/** The picture in sentences, voice by voice, only of what is shown. */
export function sentencesOf(
  stages: readonly StageId[],
  voices: readonly Told[],
  language: Language,
): readonly string[] {
  const { says } = CLASS_WORDS[language];
  return voices.map((told) => {
    const parts = stages.map((stage) => sentenceOf(stage, told, language));
    return [`${says.voice[told.drawn.id]}:`, ...parts].join(' ');
  });
}

function sentenceOf(stage: StageId, { drawn, gate }: Told, language: Language): string {
  const { says, amounts } = saidOf(stage, drawn.picture, gate.kind === 'chattering');
  return filled(language, CLASS_WORDS[language].says[says], amounts);
}
