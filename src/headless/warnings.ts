/** What a take's report warns of: each warning of the design, with its reason and remedy in words. */
import type { Instrument } from '../circuit/instrument.ts';
import { type Warning, warningsOf } from '../circuit/warnings.ts';
import type { Design } from '../design/design.ts';
import type { VoiceId } from '../quantity/units.ts';
import { warningWords } from '../words/warnings.ts';

export interface TakeWarning {
  readonly id: Warning['id'];
  /** Null = the whole instrument. */
  readonly voice: VoiceId | null;
  readonly severity: Warning['severity'];
  readonly reason: string;
  readonly remedy: string;
  /** What the limit rests on. */
  readonly source: string;
}

/** Worst first. */
export function takeWarnings(design: Design, instrument: Instrument): readonly TakeWarning[] {
  return warningsOf(design, instrument).map((warning) => {
    const { reason, remedy, source } = warningWords(warning);
    const { id, voice, severity } = warning;
    return { id, voice, severity, reason, remedy, source };
  });
}
