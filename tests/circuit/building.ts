/** Designs for tests: the default one with some values changed. */
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import type { Design, ThresholdTrimmer, Voice } from '../../src/design/design.ts';
import { pairOf, type VoiceId } from '../../src/quantity/units.ts';

export interface Changes {
  /** For both voices. */
  readonly voices?: Partial<Voice>;
  readonly A?: Partial<Voice>;
  readonly B?: Partial<Voice>;
  readonly output?: Partial<Design['output']>;
  readonly supply?: Partial<Design['supply']>;
  readonly noise?: Partial<Design['noise']>;
  readonly threshold?: Partial<Design['threshold']>;
  readonly timer?: Design['timer'];
  readonly comparator?: Design['comparator'];
}

/** The default design with some values changed. Without noise unless a change brings some. */
export function designWith(changes: Changes = {}): Design {
  return {
    ...DEFAULT_DESIGN,
    timer: changes.timer ?? DEFAULT_DESIGN.timer,
    comparator: changes.comparator ?? DEFAULT_DESIGN.comparator,
    voices: pairOf((id) => ({ ...DEFAULT_DESIGN.voices[id], ...changes.voices, ...changes[id] })),
    output: { ...DEFAULT_DESIGN.output, ...changes.output },
    supply: { ...DEFAULT_DESIGN.supply, ...changes.supply },
    threshold: { ...DEFAULT_DESIGN.threshold, ...changes.threshold },
    noise: { ...DEFAULT_DESIGN.noise, voltsRms: 0, ...changes.noise },
  };
}

/** A voice's divider, with the cell on top or at the bottom. */
export const cellAt = (cell: 'top' | 'bottom', fixedOhms = 12_000) => ({ divider: { cell, fixedOhms } });

/** A threshold trimmer of the default design, turned. */
export function thresholdTurned(rotation: number, change: Partial<ThresholdTrimmer> = {}): ThresholdTrimmer {
  const part = { ...DEFAULT_DESIGN.threshold.trimmers.A, ...change };
  return { ...part, trimmer: { ...part.trimmer, rotation } };
}

/** A pitch trimmer of the default design, turned. */
export const pitchTurned = (id: VoiceId, rotation: number) => ({
  trimmer: { ...DEFAULT_DESIGN.voices[id].trimmer, rotation },
});
