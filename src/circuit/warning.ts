/** One warning as a value. Its words are in `words/warnings.ts`; what decides it is in the files beside this one. */
import type { VoiceId } from '../quantity/units.ts';
import type { Severity, WarningFacts, WarningId } from '../words/warning-facts.ts';

/** One warning; `facts` belong to its `id`. */
export type Warning = {
  readonly [K in WarningId]: {
    readonly id: K;
    readonly voice: VoiceId | null;
    readonly severity: Severity;
    readonly facts: WarningFacts[K];
  };
}[WarningId];

/** Builds a warning whose facts fit its id. */
export function warn<K extends WarningId>(
  id: K,
  voice: VoiceId | null,
  severity: Severity,
  facts: WarningFacts[K],
): Warning {
  return { id, voice, severity, facts } as Warning;
}
