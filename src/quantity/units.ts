/** Names for numbers with a unit. SI everywhere inside; prefixes only where people read and type. */
export type Ohms = number;
export type Farads = number;
export type Volts = number;
export type Amperes = number;
export type Seconds = number;
export type Hertz = number;
export type Lux = number;
/** Luminous intensity, cd. */
export type Candela = number;
export type Metres = number;
/** A share of a whole, 0…1. */
export type Fraction = number;

/** The two voices, and the two sensors that gate them. */
export type VoiceId = 'A' | 'B';
export const VOICES: readonly VoiceId[] = ['A', 'B'];

/** One value for each voice. */
export type Pair<T> = Readonly<Record<VoiceId, T>>;

/** Builds a pair from a function of the voice. */
export function pairOf<T>(make: (voice: VoiceId) => T): Pair<T> {
  return { A: make('A'), B: make('B') };
}
