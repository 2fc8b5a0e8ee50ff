/** What a take's report warns of, with a reason and a remedy in words. */
import type { Instrument } from '../circuit/instrument.ts';
import { VOICES, type VoiceId } from '../quantity/units.ts';
import { takeWords } from '../words/take.ts';

export interface TakeWarning {
  readonly kind: string;
  /** Null = the whole instrument. */
  readonly voice: VoiceId | null;
  readonly reason: string;
  readonly remedy: string;
}

export function takeWarnings(instrument: Instrument): readonly TakeWarning[] {
  return VOICES.filter((voice) => instrument.voices[voice].cycle.frequency === 0).map((voice) => ({
    kind: 'never swings',
    voice,
    reason: takeWords.swings.reason(voice),
    remedy: takeWords.swings.remedy,
  }));
}
