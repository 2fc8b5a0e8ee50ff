/** The picture for those who cannot see it: which sentence tells a part, and the amounts that go into it. */
import type { Amount } from '../words/amounts.ts';
import type { StageId } from './lesson.ts';
import type { CyclePoint, VoicePicture } from './picture.ts';

/** Names of the sentences, as in `says` of the words. */
export type SaidId =
  | 'lux'
  | 'ohms'
  | 'volts'
  | 'compareAbove'
  | 'compareBelow'
  | 'compareNever'
  | 'sounding'
  | 'silent'
  | 'chattering'
  | 'tone'
  | 'waiting'
  | 'noTone'
  | 'high'
  | 'low';

export interface Said {
  readonly says: SaidId;
  readonly amounts: Readonly<Record<string, Amount>>;
}

/** One part of the picture as a sentence to be filled in. `chattering` comes from what the eye is shown of the gate. */
export function saidOf(stage: StageId, picture: VoicePicture, chattering = false): Said {
  const { lux, ohms, volts, compare, gate, tone } = picture;
  switch (stage) {
    case 'lux':
      return { says: 'lux', amounts: { lux: { kind: 'lux', value: lux } } };
    case 'ohms':
      return { says: 'ohms', amounts: { ohms: { kind: 'ohms', value: ohms } } };
    case 'volts':
      return {
        says: 'volts',
        amounts: { node: { kind: 'volts', value: volts.node }, rail: { kind: 'volts', value: volts.rail } },
      };
    case 'compare':
      if (compare.tripVolts === null) return { says: 'compareNever', amounts: {} };
      return {
        says: compare.nodeIs === 'above' ? 'compareAbove' : 'compareBelow',
        amounts: { trip: { kind: 'volts', value: compare.tripVolts } },
      };
    case 'gate':
      if (chattering) return { says: 'chattering', amounts: {} };
      return {
        says: gate.sounding ? 'sounding' : 'silent',
        amounts: { reset: { kind: 'volts', value: gate.resetVolts } },
      };
    case 'tone': {
      const { note, frequency, dutyCycle } = tone;
      if (note === null) return { says: 'noTone', amounts: {} };
      return {
        says: gate.sounding ? 'tone' : 'waiting',
        amounts: {
          note: { kind: 'note', value: frequency, name: note.name },
          frequency: { kind: 'hertz', value: frequency },
          duty: { kind: 'share', value: dutyCycle },
        },
      };
    }
  }
}

/** The slowed cycle as a sentence. */
export function cycleSaid({ high, volts }: CyclePoint): Said {
  return { says: high ? 'high' : 'low', amounts: { capacitor: { kind: 'volts', value: volts } } };
}
