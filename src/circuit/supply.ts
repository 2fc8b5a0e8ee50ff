/** The rail both chips see. */
import type { Supply } from '../design/design.ts';
import type { Volts } from '../quantity/units.ts';

/** Forward drop of a small Schottky diode at a few milliamperes; from memory. */
const DIODE_VOLTS = 0.3;

/** Voltage at the rail, before any sag under load. */
export function railVolts(supply: Supply): Volts {
  return Math.max(0, supply.volts - (supply.diode ? DIODE_VOLTS : 0));
}
