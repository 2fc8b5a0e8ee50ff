/**
 * Reads the ways people write component values: `4k7`, `4,7k`, `4700`, `100n`, `0µ1`, `104`, `47 %`, `1.54 V`.
 * Letter codes after IEC 60062 (R, k, M; p, n, µ as decimal marks); a bare three-figure number for a capacitor
 * is its printed code in picofarads. Problems are values; `words` turns them into sentences.
 */

export type QuantityKind =
  | 'resistance'
  | 'capacitance'
  | 'voltage'
  | 'illuminance'
  | 'length'
  | 'share'
  | 'number';

export interface Limits {
  readonly min: number;
  readonly max: number;
}

export type ReadProblem =
  | { readonly kind: 'unreadable'; readonly read: string; readonly quantity: QuantityKind }
  /** A comma with three figures after it: thousands in one country, decimals in another. */
  | { readonly kind: 'ambiguous comma'; readonly read: string; readonly quantity: QuantityKind }
  | {
      readonly kind: 'other unit';
      readonly read: string;
      readonly quantity: QuantityKind;
      readonly unit: string;
    }
  | {
      readonly kind: 'outside';
      readonly read: string;
      readonly quantity: QuantityKind;
      readonly value: number;
      readonly limits: Limits;
    };

export type Reading =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly problem: ReadProblem };

/** Unit signs each quantity answers to (compared without case), and the prefixes people use with it. */
const SPELLING: Readonly<Record<QuantityKind, { units: readonly string[]; prefixes: string }>> = {
  resistance: { units: ['Ω', 'ohm', 'ohms', 'r'], prefixes: 'mkKMG' },
  capacitance: { units: ['F'], prefixes: 'pnuµm' },
  voltage: { units: ['V'], prefixes: 'uµmk' },
  illuminance: { units: ['lx', 'lux'], prefixes: 'mk' },
  length: { units: ['m'], prefixes: 'mc' },
  share: { units: ['%'], prefixes: '' },
  number: { units: [], prefixes: '' },
};

const SCALE: Readonly<Record<string, number>> = {
  p: 1e-12,
  n: 1e-9,
  u: 1e-6,
  µ: 1e-6,
  m: 1e-3,
  c: 1e-2,
  k: 1e3,
  K: 1e3,
  M: 1e6,
  G: 1e9,
};

/** Decimal exponent of each prefix: "4k7" becomes the text "4.7e3", so that no rounding is added. */
const EXPONENT = Object.fromEntries(
  Object.entries(SCALE).map(([prefix, scale]) => [prefix, Math.round(Math.log10(scale))]),
);

/** A quantity as typed. The value is in SI units, a share as a fraction of 1. */
export function parseQuantity(text: string, quantity: QuantityKind, limits?: Limits): Reading {
  const read = text.trim();
  const tidy = read
    .replaceAll('\u03BC', 'µ')
    .replaceAll('\u2126', 'Ω')
    .replaceAll('\u2212', '-')
    .replace(/[\s\u00A0\u202F]+/g, '');
  if (/^-?\d{1,3},\d{3}\D*$/.test(tidy) && !tidy.startsWith('0'))
    return { ok: false, problem: { kind: 'ambiguous comma', read, quantity } };
  const value = letterCode(tidy, quantity) ?? printedCode(tidy, quantity) ?? plain(tidy, quantity);
  if (value === null) {
    const unit = otherUnit(tidy, quantity);
    return {
      ok: false,
      problem: unit ? { kind: 'other unit', read, quantity, unit } : { kind: 'unreadable', read, quantity },
    };
  }
  if (limits && !(value >= limits.min && value <= limits.max))
    return { ok: false, problem: { kind: 'outside', read, quantity, value, limits } };
  return { ok: true, value };
}

/** `4k7`, `4R7`, `0µ1`, `4V5`: a letter in the place of the decimal mark. */
function letterCode(text: string, quantity: QuantityKind): number | null {
  const match = /^(\d+)([A-Za-zµΩ])(\d+)(.*)$/.exec(text);
  if (!match) return null;
  const [, whole, letter, part, rest] = match as unknown as [string, string, string, string, string];
  const { units, prefixes } = SPELLING[quantity];
  const isUnit = units.some((unit) => same(unit, letter));
  if ((!isUnit && !prefixes.includes(letter)) || /[eE]/.test(letter)) return null;
  if (rest !== '' && !units.some((unit) => same(unit, rest))) return null;
  return number(`${whole}.${part}`, isUnit ? 0 : EXPONENT[letter]!);
}

/**
 * A capacitor's printed code in pF: `104`, `473K` (two figures and the count of zeros, then a tolerance
 * letter), `2A104K` (with a voltage code before it), `47K` (two figures alone need the letter), `4R7C`.
 */
function printedCode(text: string, quantity: QuantityKind): number | null {
  if (quantity !== 'capacitance') return null;
  const zeros = /^(?:\d[A-HJ-Z])?([1-9]\d)(\d)[FGJKMZ]?$/i.exec(text);
  if (zeros) return number(zeros[1]!, Number(zeros[2]) - 12);
  const figures = /^([1-9]\d)[GJKMZ]$/.exec(text);
  if (figures) return number(figures[1]!, -12);
  const point = /^(\d)R(\d)[BCDF]?$/i.exec(text);
  return point ? number(`${point[1]}.${point[2]}`, -12) : null;
}

/** `4700`, `4.7k`, `4,7 kΩ`, `1e-7 F`, `47 %`. */
function plain(text: string, quantity: QuantityKind): number | null {
  const match = /^(-?(?:\d+[.,]?\d*|[.,]\d+))(?:[eE]([+-]?\d{1,3}))?(.*)$/.exec(text);
  if (!match) return null;
  const digits = match[1]!.replace(',', '.');
  const exponent = Number(match[2] ?? 0);
  const tail = match[3]!;
  const { units, prefixes } = SPELLING[quantity];
  if (quantity === 'share') return tail === '%' ? number(digits, exponent - 2) : null;
  if (tail === '') return quantity === 'capacitance' && !match[2] ? null : number(digits, exponent);
  if (units.some((unit) => same(unit, tail))) return number(digits, exponent);
  const prefix = tail[0]!;
  const unit = tail.slice(1);
  if (!prefixes.includes(prefix)) return null;
  if (unit !== '' && !units.some((known) => same(known, unit))) return null;
  return number(digits, exponent + EXPONENT[prefix]!);
}

/** The unit of another quantity at the end of the text, if there is one. */
function otherUnit(text: string, quantity: QuantityKind): string | null {
  for (const [kind, { units, prefixes }] of Object.entries(SPELLING)) {
    if (kind === quantity) continue;
    for (const unit of units) {
      if (unit === 'r' || unit === 'm') continue;
      if (new RegExp(`^-?[\\d.,]+[${prefixes}]?${unit}$`, 'i').test(text)) return unit;
    }
  }
  return null;
}

function number(digits: string, exponent: number): number | null {
  const value = Number(`${digits}e${exponent}`);
  return Number.isFinite(value) ? value : null;
}

function same(a: string, b: string): boolean {
  return a.toLowerCase() === b.toLowerCase();
}
