/** The rail both chips see. */
import type { Supply } from '../design/design.ts';
import { COMPARATORS, type ComparatorId } from '../parts/comparators.ts';
import { SUPPLIES } from '../parts/supplies.ts';
import { TIMERS, type TimerId } from '../parts/timers.ts';
import type { Amperes, Volts } from '../quantity/units.ts';

/** Forward drop of a small Schottky diode at a few milliamperes; from memory. */
const DIODE_VOLTS = 0.3;

/** Voltage at the rail: the source's, less what its resistance takes from a current, less the diode. */
export function railVolts(supply: Supply, amperes: Amperes = 0): Volts {
  return Math.max(0, supply.volts - amperes * supply.sourceOhms - diodeVolts(supply));
}

/** What the diode takes, if one is fitted. */
function diodeVolts(supply: Supply): Volts {
  return supply.diode ? DIODE_VOLTS : 0;
}

/**
 * How far a voice's upper level falls, for an instant, at each output edge of the other: two thirds of the dip, or
 * nothing where a voltage is forced on its control pin (TI SLFS022: the divider that makes the levels hangs on the
 * supply). First order: the dip is taken as too short to move a capacitor or a comparator.
 */
export function upperDipVolts(dipVolts: Volts, controlVolts: Volts | null): Volts {
  return controlVolts === null ? (2 / 3) * dipVolts : 0;
}

/** Least source volts at which both chips are still within their makers' range. */
export function leastSourceVolts(supply: Supply, timer: TimerId, comparator: ComparatorId): Volts {
  return (
    Math.max(TIMERS[timer].supplyVolts.min, COMPARATORS[comparator].supplyVolts.min) + diodeVolts(supply)
  );
}

/**
 * Source volts at which the instrument has had its time: where the battery counts as empty, or where a chip
 * leaves its range, whichever comes first. Never above what the source gives now.
 */
export function lastSourceVolts(supply: Supply, timer: TimerId, comparator: ComparatorId): Volts {
  const { ampereHours, endVolts } = SUPPLIES[supply.kind];
  if (ampereHours === null) return supply.volts;
  return Math.min(supply.volts, Math.max(endVolts, leastSourceVolts(supply, timer, comparator)));
}
