/** Dual comparators with open-collector outputs, as data: typical figures at 25 °C. */
import type { Amperes, Ohms, Volts } from '../quantity/units.ts';

export type ComparatorId = 'classic' | 'later';

export interface ComparatorFamily {
  readonly id: ComparatorId;
  readonly supplyVolts: { readonly min: Volts; readonly max: Volts };
  /** Inputs must stay this far below the supply (at 25 °C). */
  readonly headroomVolts: Volts;
  /** What the output does with both inputs above that: a habit of the die, not a promise. */
  readonly bothInputsHigh: 'low' | 'high';
  /** Saturation of the output transistor as a resistance. */
  readonly saturationOhms: Ohms;
  readonly sinkAmperes: Amperes;
}

// onsemi LM393/D Rev 31, TI SLCS005: 0 … V+ − 1.5 V at 25 °C; 150 mV typical at 4 mA sink; 4 mA is the current
// of the saturation test, 6 mA the guaranteed sink. Both inputs high: low on classic dies (TI LM2901B-Q1
// list), high on the later "B" dies.
const classic: ComparatorFamily = {
  id: 'classic',
  supplyVolts: { min: 2, max: 36 },
  headroomVolts: 1.5,
  bothInputsHigh: 'low',
  saturationOhms: 0.15 / 0.004,
  sinkAmperes: 0.004,
};

export const COMPARATORS: Readonly<Record<ComparatorId, ComparatorFamily>> = {
  classic,
  later: { ...classic, id: 'later', bothInputsHigh: 'high' },
};
