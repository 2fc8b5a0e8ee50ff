/**
 * Colours on resistors and figures on capacitors, written and read. IEC 60062: colours of figures, multipliers and
 * tolerances; temperature coefficients as printed by Vishay. Capacitor codes are read in `quantity/parse.ts`.
 */
import { parseQuantity } from '../quantity/parse.ts';
import type { Farads, Fraction, Ohms } from '../quantity/units.ts';
import { type BandColour, colourWords } from '../words/bench.ts';

interface Meaning {
  readonly figure: number | null;
  /** Power of ten. */
  readonly exponent: number | null;
  readonly tolerance: Fraction | null;
  /** Temperature coefficient, per kelvin. */
  readonly perKelvin: number | null;
}

const meaning = (
  figure: number | null,
  exponent: number | null,
  percent: number | null,
  ppm: number | null,
): Meaning => ({
  figure,
  exponent,
  tolerance: percent === null ? null : percent / 100,
  perKelvin: ppm === null ? null : ppm * 1e-6,
});

export const BANDS: Readonly<Record<BandColour, Meaning>> = {
  black: meaning(0, 0, null, 250),
  brown: meaning(1, 1, 1, 100),
  red: meaning(2, 2, 2, 50),
  orange: meaning(3, 3, 0.05, 15),
  yellow: meaning(4, 4, 0.02, 25),
  green: meaning(5, 5, 0.5, 20),
  blue: meaning(6, 6, 0.25, 10),
  violet: meaning(7, 7, 0.1, 5),
  grey: meaning(8, 8, 0.01, 1),
  white: meaning(9, 9, null, null),
  gold: meaning(null, -1, 5, null),
  silver: meaning(null, -2, 10, null),
  pink: meaning(null, -3, null, null),
};

const COLOURS = Object.keys(BANDS) as BandColour[];

export interface Marked {
  readonly ohms: Ohms;
  readonly tolerance: Fraction;
  /** Sixth band; null = none. */
  readonly perKelvin: number | null;
}

export type BandProblem =
  | { readonly kind: 'not a colour'; readonly read: string }
  | { readonly kind: 'band count'; readonly count: number }
  /** This colour means nothing at this place, counted from 1. */
  | { readonly kind: 'misplaced'; readonly colour: BandColour; readonly place: number };

export type BandReading =
  | {
      readonly ok: true;
      readonly value: Marked;
      /** The value with the bands read from the other end, when that makes one too. */
      readonly reversed: Marked | null;
    }
  | { readonly ok: false; readonly problem: BandProblem };

/** Bands by their English names or those of the language spoken, from the end the first is nearest to: three (no tolerance band, ± 20 %) to six. */
export function readBands(words: string | readonly string[]): BandReading {
  const names = typeof words === 'string' ? words.trim().split(/[\s,;–-]+/) : words;
  const bands: BandColour[] = [];
  for (const name of names) {
    const colour = colourNamed(name);
    if (colour === null) return { ok: false, problem: { kind: 'not a colour', read: name } };
    bands.push(colour);
  }
  const read = marked(bands);
  if ('kind' in read) return { ok: false, problem: read };
  const other = marked(bands.toReversed());
  return { ok: true, value: read, reversed: 'kind' in other ? null : other };
}

/** Other spellings people use, in either language. */
const SPELLINGS: Readonly<Record<string, BandColour>> = {
  gray: 'grey',
  purple: 'violet',
  lila: 'violet',
  gruen: 'green',
  weiss: 'white',
  silbern: 'silver',
  golden: 'gold',
};

function colourNamed(name: string): BandColour | null {
  const tidy = name.trim().toLowerCase();
  return SPELLINGS[tidy] ?? COLOURS.find((colour) => colour === tidy || colourWords[colour] === tidy) ?? null;
}

function marked(bands: readonly BandColour[]): Marked | BandProblem {
  const { length } = bands;
  if (length < 3 || length > 6) return { kind: 'band count', count: length };
  const figures = length <= 4 ? 2 : 3;
  let digits = 0;
  for (let i = 0; i < figures; i++) {
    const { figure } = BANDS[bands[i]!];
    if (figure === null || (i === 0 && figure === 0))
      return { kind: 'misplaced', colour: bands[i]!, place: i + 1 };
    digits = 10 * digits + figure;
  }
  const { exponent } = BANDS[bands[figures]!];
  if (exponent === null) return { kind: 'misplaced', colour: bands[figures]!, place: figures + 1 };
  const toleranceBand = bands[figures + 1];
  const tolerance = toleranceBand === undefined ? 0.2 : BANDS[toleranceBand].tolerance;
  if (tolerance === null) return { kind: 'misplaced', colour: toleranceBand!, place: figures + 2 };
  const heat = bands[figures + 2];
  if (heat !== undefined && BANDS[heat].perKelvin === null)
    return { kind: 'misplaced', colour: heat, place: figures + 3 };
  return {
    // As text, so that no rounding is added.
    ohms: Number(`${digits}e${exponent}`),
    tolerance,
    perKelvin: heat === undefined ? null : BANDS[heat].perKelvin,
  };
}

export type Bands =
  | { readonly ok: true; readonly bands: readonly BandColour[] }
  /** A value that so many figures cannot say, or a tolerance no colour stands for. */
  | { readonly ok: false; readonly reason: 'figures' | 'size' | 'tolerance' | 'temperature' };

/** The bands of a value: two figures on four bands, three on five; six with a temperature coefficient. */
export function bandsOf(
  ohms: Ohms,
  count: 4 | 5 | 6,
  tolerance: Fraction,
  perKelvin: number | null = null,
): Bands {
  const figures = count === 4 ? 2 : 3;
  const [digits, exponent] = split(ohms, figures);
  if (Math.abs(Number(`${digits}e${exponent}`) / ohms - 1) > 1e-9) return { ok: false, reason: 'figures' };
  const multiplier = COLOURS.find((colour) => BANDS[colour].exponent === exponent);
  if (multiplier === undefined) return { ok: false, reason: 'size' };
  const last = COLOURS.find((colour) => near(BANDS[colour].tolerance, tolerance));
  if (last === undefined) return { ok: false, reason: 'tolerance' };
  const bands = [...String(digits)].map((digit) => COLOURS[Number(digit)]!);
  bands.push(multiplier, last);
  if (count < 6) return { ok: true, bands };
  const heat = COLOURS.find((colour) => near(BANDS[colour].perKelvin, perKelvin ?? Number.NaN));
  return heat === undefined ? { ok: false, reason: 'temperature' } : { ok: true, bands: [...bands, heat] };
}

function near(a: number | null, b: number): boolean {
  return a !== null && Math.abs(a / b - 1) < 1e-6;
}

/** So many figures, and the power of ten behind them. */
function split(value: number, figures: number): readonly [number, number] {
  const [mantissa = '0', power = '0'] = value.toExponential(figures - 1).split('e');
  return [Number(mantissa.replace('.', '')), Number(power) - (figures - 1)];
}

/** Tolerance letters on capacitors of 10 pF and more (IEC 60062). */
const LETTERS: readonly (readonly [string, Fraction])[] = [
  ['F', 0.01],
  ['G', 0.02],
  ['J', 0.05],
  ['K', 0.1],
  ['M', 0.2],
];

/** The three-figure code of a capacitor, with its letter where the tolerance has one; null when it has no code. */
export function capacitorCode(farads: Farads, tolerance: Fraction | null = null): string | null {
  const picofarads = farads * 1e12;
  const letter = tolerance === null ? '' : (LETTERS.find(([, t]) => near(t, tolerance))?.[0] ?? '');
  if (picofarads < 9.95) {
    const [whole, part] = picofarads.toFixed(1).split('.');
    return picofarads >= 0.1 && near(Number(`${whole}.${part}`), picofarads) ? `${whole}R${part}` : null;
  }
  const [digits, zeros] = split(picofarads, 2);
  if (zeros > 9 || zeros < 0 || !near(Number(`${digits}e${zeros}`), picofarads)) return null;
  return `${digits}${zeros}${letter}`;
}

/** What a capacitor's printing means, F; null when it is no code. */
export function readCapacitorCode(code: string): Farads | null {
  const reading = parseQuantity(code, 'capacitance');
  return reading.ok ? reading.value : null;
}

/** The tolerance letter at the end of a printed code of 10 pF and more; null = none, or one of no fixed share. */
export function codeTolerance(code: string): Fraction | null {
  const letter = /\d([A-Z])$/i.exec(code.trim())?.[1]?.toUpperCase();
  return LETTERS.find(([known]) => known === letter)?.[1] ?? null;
}

export type ValueCheck =
  | { readonly kind: 'matches' }
  /** Right once the bands are read from the other end. */
  | { readonly kind: 'other end'; readonly ohms: Ohms }
  /** Wrong by a power of ten: the commonest slip. */
  | { readonly kind: 'decades'; readonly decades: number }
  | { readonly kind: 'other value'; readonly ratio: number };

/** Is the resistor in the hand the one that is wanted? */
export function checkResistor(wanted: Ohms, reading: BandReading & { ok: true }): ValueCheck {
  const { value, reversed } = reading;
  if (near(value.ohms, wanted)) return { kind: 'matches' };
  if (reversed !== null && near(reversed.ohms, wanted)) return { kind: 'other end', ohms: reversed.ohms };
  return checkValue(wanted, value.ohms);
}

/** Is this value the one that is wanted? For printed codes. */
export function checkValue(wanted: number, found: number): ValueCheck {
  if (near(found, wanted)) return { kind: 'matches' };
  const decades = Math.log10(found / wanted);
  return Math.abs(decades - Math.round(decades)) < 1e-6
    ? { kind: 'decades', decades: Math.round(decades) }
    : { kind: 'other value', ratio: found / wanted };
}
