/**
 * How far a tuned pitch moves afterwards, cents: a warm room, a cold van, a thumb on the capacitor, a year, an
 * emptying battery. Each is a range, since the sign of most coefficients is not known beforehand. To first order:
 * coefficients times degrees; the battery by the circuit's own astable and the maker's figure.
 */
import { railVolts } from '../circuit/supply.ts';
import type { VoiceParts } from '../design/pitch.ts';
import { agedShare, DIELECTRICS } from '../parts/capacitors.ts';
import { SUPPLIES, type SupplyId } from '../parts/supplies.ts';
import { TIMERS } from '../parts/timers.ts';
import { TRIMMERS } from '../parts/trimmers.ts';
import type { Fraction, Volts } from '../quantity/units.ts';
import { type Chip, lawOf, rbAt } from './timing.ts';

export interface DriftRange {
  /** Cents, lowest and highest pitch; both 0 = nothing moves. */
  readonly lowCents: number;
  readonly highCents: number;
}

export interface Drift {
  /** Ten degrees warmer than where it was tuned. */
  readonly warmRoom: DriftRange;
  /** Twenty degrees colder. */
  readonly coldVan: DriftRange;
  /** A thumb on the capacitor alone: eight degrees. */
  readonly thumb: DriftRange;
  /** From a day after soldering to a year. */
  readonly year: DriftRange;
  /** From a fresh battery to an empty one; null where the supply is regulated. */
  readonly battery: (DriftRange & { readonly fromVolts: Volts; readonly toVolts: Volts }) | null;
}

const WARM = 10;
const COLD = -20;
/** A fingertip is some ten degrees warmer than a room; a small part follows most of the way (from memory). */
const THUMB = 8;
/** Metal film resistors: ± 100 ppm a degree (common practice). */
const RESISTOR_PER_DEGREE = 100e-6;
const DAY_HOURS = 24;
const YEAR_HOURS = 8766;

/** Volts of a fresh battery and of an empty one: alkaline blocks at most 9.6 V, 1.6 V a cell; empty as in the table. */
const FRESH: Readonly<Record<SupplyId, Volts | null>> = {
  'block-9v': 9.6,
  'four-aa': 6.4,
  'five-volt': null,
};

/** Cents of pitch for a period of this share. */
const centsOf = (periodShare: number): number => -1200 * Math.log2(periodShare);

const rangeOf = (one: number, other: number): DriftRange => ({
  lowCents: Math.min(centsOf(one), centsOf(other)),
  highCents: Math.max(centsOf(one), centsOf(other)),
});

/** Drift of one voice at a rotation; null where it never runs. */
export function driftOf(
  chip: Chip,
  controlVolts: Volts | null,
  parts: VoiceParts,
  rotation: Fraction,
): Drift | null {
  const law = lawOf(chip, controlVolts, parts.ra.ohms);
  if (law === null) return null;
  const dielectric = DIELECTRICS[parts.capacitor.dielectric];
  const [least, most] = dielectric.perDegree;
  const rb = rbAt(parts, rotation);
  const sum = law.ownOhms + law.factor * rb;
  const trimmed = law.factor * (rb - parts.rbFixed.ohms);
  const others =
    ((sum - trimmed) * RESISTOR_PER_DEGREE + trimmed * TRIMMERS[parts.trimmer.part].perDegree) / sum +
    TIMERS[chip.timer].driftPerDegree;
  const warmed = (degrees: number): DriftRange => {
    const [a, b] = [least * degrees, most * degrees];
    const rest = others * Math.abs(degrees);
    return rangeOf(1 + Math.min(a, b) - rest, 1 + Math.max(a, b) + rest);
  };
  return {
    warmRoom: warmed(WARM),
    coldVan: warmed(COLD),
    thumb: rangeOf(1 + THUMB * least, 1 + THUMB * most),
    year: yearOf(dielectric.ageing),
    battery: batteryOf(chip, controlVolts, parts, rotation),
  };
}

function yearOf(ageing: (typeof DIELECTRICS)['x7r']['ageing']): DriftRange {
  const share = agedShare(ageing, DAY_HOURS, YEAR_HOURS);
  // Class 2 ceramics only ever lose; films go either way.
  return rangeOf(share, ageing.kind === 'per decade' ? 1 : 2 - share);
}

function batteryOf(
  chip: Chip,
  controlVolts: Volts | null,
  parts: VoiceParts,
  rotation: Fraction,
): Drift['battery'] {
  const fromVolts = FRESH[chip.supply.kind];
  if (fromVolts === null) return null;
  const toVolts = SUPPLIES[chip.supply.kind].endVolts;
  const sumAt = (volts: Volts): number => {
    const there = lawOf(
      { ...chip, railVolts: railVolts({ ...chip.supply, volts }) },
      controlVolts,
      parts.ra.ohms,
    );
    return there === null ? Number.NaN : there.ownOhms + there.factor * rbAt(parts, rotation);
  };
  const share = sumAt(toVolts) / sumAt(fromVolts);
  // A control voltage above the rail of the empty battery: the voice stops, and has no pitch to tell of.
  if (!Number.isFinite(share)) return null;
  const own = TIMERS[chip.timer].driftPerVolt * (fromVolts - toVolts);
  return { ...rangeOf(share * (1 - own), share * (1 + own)), fromVolts, toVolts };
}
