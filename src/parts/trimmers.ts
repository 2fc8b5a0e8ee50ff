/** Trimmers as data: end resistance, travel and how finely they can be set, from the makers' sheets. */
import type { Fraction, Ohms } from '../quantity/units.ts';

export type TrimmerId = 'single-turn' | 'multi-turn' | 'carbon';

export interface TrimmerKind {
  readonly id: TrimmerId;
  /** Turns from stop to stop. */
  readonly turns: number;
  /** Degrees of travel from stop to stop. */
  readonly degrees: number;
  readonly tolerance: Fraction;
  /** Resistance left at the end stop: a share of the value, but never below `endMinOhms`. */
  readonly endShare: Fraction;
  readonly endMinOhms: Ohms;
}

export const TRIMMERS: Readonly<Record<TrimmerId, TrimmerKind>> = {
  // Bourns 3362: ±10 %, end resistance 1 % or 2 Ω, 240° nominal.
  'single-turn': { id: 'single-turn', turns: 1, degrees: 240, tolerance: 0.1, endShare: 0.01, endMinOhms: 2 },
  // Bourns 3296: ±10 %, 1 % or 2 Ω, 25 turns nominal.
  'multi-turn': { id: 'multi-turn', turns: 25, degrees: 9000, tolerance: 0.1, endShare: 0.01, endMinOhms: 2 },
  // Piher PT-10: ±20 % up to 1 MΩ, end resistance at most 0.5 %, 5 Ω least, 220° electrical.
  carbon: { id: 'carbon', turns: 1, degrees: 220, tolerance: 0.2, endShare: 0.005, endMinOhms: 5 },
};

/** Resistance left between wiper and end stop, for an end-to-end value. */
export function endOhms(part: TrimmerId, ohms: Ohms): Ohms {
  const kind = TRIMMERS[part];
  return Math.min(ohms, Math.max(kind.endShare * ohms, kind.endMinOhms));
}
