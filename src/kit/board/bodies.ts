/**
 * How parts sit on 2.54 mm holes: the spans their leads can take, how gladly, and the room their bodies need. Lengths
 * in holes (2.54 mm) unless they say millimetres. Body sizes are those of common leaded parts, from memory: a quarter
 * watt film resistor 6.3 × 2.4 mm, box film capacitors with leads 5, 7.5, 10 or 15 mm apart, disc and multilayer
 * ceramics with leads that can be splayed, small radial electrolytics.
 */
import type { Lie } from '../../design/batch.ts';
import type { TrimmerId } from '../../parts/trimmers.ts';
import type { Body, Part } from '../parts.ts';

export const PITCH_MILLIMETRES = 2.54;

/** Dearer than anything feasible. */
export const IMPOSSIBLE = 1000;

/** What each strip between a decoupling capacitor and its chip's supply pin costs. */
export const AWAY_COST = 2.4;

export type Stance = 'flat' | 'upright' | 'standing';

export interface TwoLeads {
  /** Cost of each span, by the number of strips between the leads; `IMPOSSIBLE` where it cannot be. */
  readonly costs: readonly number[];
  readonly stanceAt: (span: number) => Stance;
  /** Width of the body across its leads, and length along them. */
  readonly width: number;
  readonly length: number;
}

const no = IMPOSSIBLE;

/** Quarter-watt resistors and small diodes: upright over one to three strips, flat from four. */
const AXIAL_COSTS: Readonly<Record<Lie, readonly number[]>> = {
  'as they fit': [no, 0.8, 0.4, 0.4, 0, 0, 0.4, 0.9, 1.6, 3, 5, 8],
  flat: [no, no, no, no, 0, 0, 0.4, 0.9, 1.6, 3, 5, 8, 10, 12, 14, 16],
  // Flat where three strips do not reach: that would take links without end.
  upright: [no, 0.8, 0, 0, 18, 18, 18.4, 18.9, 19.6, 21, 23, 26],
};
/** Below this many strips an axial part stands on one end. */
const FLAT_FROM = 4;
const RESISTOR = (lie: Lie): TwoLeads => axial(lie, 6.3, 2.4);
const DIODE: TwoLeads = axial('as they fit', 5.2, 2.6);

function axial(lie: Lie, length: number, width: number): TwoLeads {
  return {
    costs: AXIAL_COSTS[lie],
    stanceAt: (span) => (span < FLAT_FROM ? 'upright' : 'flat'),
    width: width / PITCH_MILLIMETRES,
    length: length / PITCH_MILLIMETRES,
  };
}

function standing(costs: readonly number[], lengthMm: number, widthMm: number): TwoLeads {
  return {
    costs,
    stanceAt: () => 'standing',
    width: widthMm / PITCH_MILLIMETRES,
    length: lengthMm / PITCH_MILLIMETRES,
  };
}

/** Leads 2.5 or 5 mm apart, splayed to 10 mm at most. */
const CERAMIC = standing([no, 0.5, 0, 1, 2.5, no], 4.5, 2.6);
/** Up to which value: how it sits. Lead spacings 5 mm, or the maker's 7.5 and 10 mm versions. */
const FILM: readonly (readonly [number, TwoLeads])[] = [
  [150e-9, standing([no, no, 0, 1, 2, no], 7.2, 2.6)],
  [470e-9, standing([no, no, 0, 1, 2, no], 7.2, 4.5)],
  [1.5e-6, standing([no, no, 0, no, 1.5, no], 7.2, 6)],
  [10e-6, standing([no, no, no, no, 0, no, 0.5, no], 18, 9)],
];
/** Diameter and lead spacing of radial electrolytics of 16 to 25 V. */
const RADIAL: readonly (readonly [number, TwoLeads])[] = [
  [47e-6, standing([no, 0, 0.3, no], 5, 5)],
  [100e-6, standing([no, 0, 0.3, no], 6.3, 6.3)],
  [470e-6, standing([no, 0.3, 0, no], 8, 8)],
  [1e-3, standing([no, no, 0, no], 10, 10)],
  [10e-3, standing([no, no, 0.3, 0, no], 18, 18)],
];
/** Values that are sold with leads at all. */
const MOST_CERAMIC = 10e-6;
const LEAST_ELECTROLYTIC = 100e-9;

/** Why a body does not exist. */
export type NoBody = 'too large for film' | 'too large for ceramic' | 'too small for electrolytic';

/** How a part with two leads sits; the reason when no such part is made; null for other parts. */
export function twoLeadsOf(body: Body, lie: Lie): TwoLeads | NoBody | null {
  switch (body.kind) {
    case 'resistor':
      return RESISTOR(lie);
    case 'diode':
      return DIODE;
    case 'capacitor':
      return capacitorBody(body);
    case 'chip':
    case 'trimmer':
    case 'cell':
    case 'supply':
    case 'control lead':
    case 'jack':
    case 'test pin':
      return null;
  }
}

function capacitorBody({ farads, type }: Body & { kind: 'capacitor' }): TwoLeads | NoBody {
  // A hair above the step, so that 1 µF written as 1.0000000001e-6 is still 1 µF.
  const first = (table: readonly (readonly [number, TwoLeads])[]): TwoLeads | undefined =>
    table.find(([most]) => farads <= most * 1.001)?.[1];
  switch (type) {
    case 'ceramic':
      return farads <= MOST_CERAMIC * 1.001 ? CERAMIC : 'too large for ceramic';
    case 'film':
      return first(FILM) ?? 'too large for film';
    case 'electrolytic':
      if (farads < LEAST_ELECTROLYTIC * 0.999) return 'too small for electrolytic';
      return first(RADIAL) ?? RADIAL[RADIAL.length - 1]![1];
  }
}

/**
 * A trimmer's legs: the ends two strips apart in one column, the wiper on the strip between, some columns to one
 * side. Its box reaches from `from` to `to` columns, and `over` strips beyond the end legs; measured from the end legs' column.
 */
export interface TrimmerBody {
  readonly wiperColumns: number;
  readonly from: number;
  readonly to: number;
  readonly over: number;
}

/** Bourns 3362P and 3296W drawings; the 10 mm carbon type after Piher's PT-10: wiper 10 mm from the ends. */
export const TRIMMER_BODY: Readonly<Record<TrimmerId, TrimmerBody>> = {
  'single-turn': { wiperColumns: 1, from: -0.8, to: 1.8, over: 0.3 },
  'multi-turn': { wiperColumns: 0, from: -0.5, to: 1.4, over: 0.87 },
  carbon: { wiperColumns: 4, from: 0, to: 4, over: 1 },
};

/** A chip and its socket: seven or four strips, pin rows three holes apart, outline half a hole beyond the pins. */
export const CHIP_COLUMNS = 3;
export const CHIP_OVER = 0.5;

/** The jack's lugs are two strips apart, on the edge column; its body hangs over the edge and covers this much of the board. */
export const JACK = { span: 2, over: 1, inside: 0.6, outside: 5, widenedMillimetres: 1.5 } as const;

/** Pins of a chip on a side, from its notch down. */
export function chipStrips(part: Part): number {
  return part.body.kind === 'chip' ? part.body.pins / 2 : 0;
}
