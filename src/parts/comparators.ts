/** Dual comparators with open-collector outputs, as data: typical figures at 25 °C unless a line says otherwise. */
import type { Amperes, Ohms, Volts } from '../quantity/units.ts';

export type ComparatorId = 'classic' | 'later';

export interface ComparatorFamily {
  readonly id: ComparatorId;
  readonly supplyVolts: { readonly min: Volts; readonly max: Volts };
  /** Inputs must stay this far below the supply (at 25 °C). */
  readonly headroomVolts: Volts;
  /** What the output does with both inputs above that: a habit of the die, not a promise. */
  readonly bothInputsHigh: 'low' | 'high';
  /** Saturation of the output transistor as a resistance: typical, and at the sheet's limit. */
  readonly saturationOhms: Ohms;
  readonly worstSaturationOhms: Ohms;
  readonly sinkAmperes: Amperes;
  /** The output transistor takes no more than this, however hard it is pulled up. */
  readonly mostSinkAmperes: Amperes;
  /** Supply current of both comparators together, outputs unloaded. */
  readonly supplyAmperes: Amperes;
}

// onsemi LM393/D Rev 31, TI SLCS005: 0 … V+ − 1.5 V at 25 °C; 150 mV typical and 400 mV at most at 4 mA sink;
// 4 mA is the current of the saturation test, 6 mA the guaranteed sink and 16 mA the typical one, both at an output of 1.5 V. Both inputs high: low on classic dies
// (TI LM2901B-Q1 list), high on the later "B" dies. Supply: the middle of the 0.4 to 0.8 mA
// that sheets give as typical at 5 V for both.
const classic: ComparatorFamily = {
  id: 'classic',
  supplyVolts: { min: 2, max: 36 },
  headroomVolts: 1.5,
  bothInputsHigh: 'low',
  saturationOhms: 0.15 / 0.004,
  worstSaturationOhms: 0.4 / 0.004,
  sinkAmperes: 0.004,
  mostSinkAmperes: 0.016,
  supplyAmperes: 0.0006,
};

export const COMPARATORS: Readonly<Record<ComparatorId, ComparatorFamily>> = {
  classic,
  // Supply current of the later die, 0.2 mA a comparator: from memory.
  later: { ...classic, id: 'later', bothInputsHigh: 'high', supplyAmperes: 0.0004 },
};
