/** Trimmers as data: end resistance, travel and how finely they can be set, from the makers' sheets. */
import type { Fraction, Ohms } from '../quantity/units.ts';

export type TrimmerId = 'single-turn' | 'multi-turn' | 'carbon';

export interface TrimmerKind {
  readonly id: TrimmerId;
  /** Turns from stop to stop. */
  readonly turns: number;
  /** Degrees of travel over which the wiper moves along its path. */
  readonly degrees: number;
  /** Degrees the screw turns from stop to stop. */
  readonly stopDegrees: number;
  readonly tolerance: Fraction;
  /** Resistance left at the end stop: a share of the value, but never below `endMinOhms`. */
  readonly endShare: Fraction;
  readonly endMinOhms: Ohms;
  /** How closely a hand can set it, ± share: of the voltage as a divider, of the value as a resistor. */
  readonly settable: { readonly divider: Fraction; readonly rheostat: Fraction };
  /** Change of the value for one degree more, either way. */
  readonly perDegree: Fraction;
}

export const TRIMMERS: Readonly<Record<TrimmerId, TrimmerKind>> = {
  // Bourns 3362: ±10 %, end resistance 1 % or 2 Ω, 240° nominal; adjustability ±0.05 % and ±0.15 %; ±100 ppm/°C.
  'single-turn': {
    id: 'single-turn',
    turns: 1,
    degrees: 240,
    stopDegrees: 240,
    tolerance: 0.1,
    endShare: 0.01,
    endMinOhms: 2,
    settable: { divider: 0.0005, rheostat: 0.0015 },
    perDegree: 100e-6,
  },
  // Bourns 3296: ±10 %, 1 % or 2 Ω, 25 turns nominal; adjustability ±0.01 % and ±0.05 %;
  // ±100 ppm/°C.
  'multi-turn': {
    id: 'multi-turn',
    turns: 25,
    degrees: 9000,
    stopDegrees: 9000,
    tolerance: 0.1,
    endShare: 0.01,
    endMinOhms: 2,
    settable: { divider: 0.0001, rheostat: 0.0005 },
    perDegree: 100e-6,
  },
  // Piher PT-10: ±20 % up to 1 MΩ, end resistance at most 0.5 %, 5 Ω least, 220 ± 20° electrical, 235 ± 5° from stop
  // to stop. The sheet gives no adjustability: one degree of the travel is common practice; 500 ppm/°C of carbon is
  // from memory.
  carbon: {
    id: 'carbon',
    turns: 1,
    degrees: 220,
    stopDegrees: 235,
    tolerance: 0.2,
    endShare: 0.005,
    endMinOhms: 5,
    settable: { divider: 1 / 220, rheostat: 1 / 220 },
    perDegree: 500e-6,
  },
};

/** Resistance left between wiper and end stop, for an end-to-end value. */
export function endOhms(part: TrimmerId, ohms: Ohms): Ohms {
  const kind = TRIMMERS[part];
  return Math.min(ohms, Math.max(kind.endShare * ohms, kind.endMinOhms));
}
