/**
 * Cadmium-sulphide light cells as data. Makers define: R at 10 lx under a 2856 K lamp after soaking in light;
 * slope gamma between 10 and 100 lx; rise to 63 % and fall to 37 % of the final conductance at 10 lx.
 */
import type { Ohms, Seconds } from '../quantity/units.ts';

export type CellId = 'cds-8-20k';

export interface CellFamily {
  readonly id: CellId;
  /** Band of R at 10 lx within one grade, and the value used when nothing was measured. */
  readonly r10Ohms: { readonly min: Ohms; readonly usual: Ohms; readonly max: Ohms };
  /** Slope, and its published spread (±). */
  readonly gamma: { readonly usual: number; readonly spread: number };
  /** Resistance 10 s after the light went, at least. */
  readonly darkOhms: Ohms;
  readonly riseSeconds: Seconds;
  readonly fallSeconds: Seconds;
}

export const CELLS: Readonly<Record<CellId, CellFamily>> = {
  // GL5528 class: 8 to 20 kΩ, dark ≥ 1 MΩ, 20/30 ms at 10 lx (distributors' tables); gamma ± 0.1 (Token
  // Electronics, photoresistor notes). Usual gamma 0.7 and 12 kΩ: typical of 5 mm cells' sheets
  // (PDV-P8001, Hamamatsu P1114: 0.6 to 0.8).
  'cds-8-20k': {
    id: 'cds-8-20k',
    r10Ohms: { min: 8000, usual: 12_000, max: 20_000 },
    gamma: { usual: 0.7, spread: 0.1 },
    darkOhms: 1e6,
    riseSeconds: 0.02,
    fallSeconds: 0.03,
  },
};
