/**
 * Cadmium-sulphide light cells as data. Makers define: R at 10 lx under a 2856 K lamp after soaking in light;
 * slope gamma between 10 and 100 lx; rise to 63 % and fall to 37 % of the final conductance at 10 lx.
 * The usual R at 10 lx is the middle of the band by ratio, unless the line says otherwise. Sellers' tables of the
 * 5 mm cells differ: take the band and gamma ± 0.1 (Token Electronics, photoresistor notes) as what is known.
 */
import type { Ohms, Seconds, Volts } from '../quantity/units.ts';

export type CellId =
  | 'cds-8-20k'
  | 'cds-2-6k'
  | 'cds-5-10k'
  | 'cds-16-50k'
  | 'cds-30-90k'
  | 'cds-dual-5-15k'
  | 'cds-2k5-7k5'
  | 'cds-50-150k'
  | 'cds-9k';

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
  /** Ratings at 25 to 30 °C: volts across the cell, and heat in it, W. */
  readonly mostVolts: Volts;
  readonly mostWatts: number;
}

/**
 * Resistance at 10 lx of a cell kept in the light, over that of one kept in the dark: 1.2 for the steadiest kind of
 * sensitive layer, 1.5 for the least steady (PerkinElmer's photoconductive cell handbook, table of light history at
 * 1 fc; from memory). Minutes in the light undo it.
 */
export const LIGHT_HISTORY = 1.2;

export const CELLS: Readonly<Record<CellId, CellFamily>> = {
  // GL5528 class: 8 to 20 kΩ, dark ≥ 1 MΩ, 20/30 ms at 10 lx, 150 V, 100 mW (distributors' tables). Usual gamma
  // 0.7 and 12 kΩ: typical of 5 mm cells' sheets (PDV-P8001, Hamamatsu P1114: 0.6 to 0.8).
  'cds-8-20k': {
    id: 'cds-8-20k',
    r10Ohms: { min: 8000, usual: 12_000, max: 20_000 },
    gamma: { usual: 0.7, spread: 0.1 },
    darkOhms: 1e6,
    riseSeconds: 0.02,
    fallSeconds: 0.03,
    mostVolts: 150,
    mostWatts: 0.1,
  },
  // GL5506 class: 2 to 6 kΩ, dark ≥ 0.15 MΩ (distributors' tables); 100 V, 90 mW (Globe Technology). Gamma and
  // 30/40 ms: from memory.
  'cds-2-6k': {
    id: 'cds-2-6k',
    r10Ohms: { min: 2000, usual: 3500, max: 6000 },
    gamma: { usual: 0.6, spread: 0.1 },
    darkOhms: 150e3,
    riseSeconds: 0.03,
    fallSeconds: 0.04,
    mostVolts: 100,
    mostWatts: 0.09,
  },
  // GL5516 class: 5 to 10 kΩ, dark ≥ 0.5 MΩ, 90 mW (distributors' tables); 100 V (Globe Technology, the smaller
  // figure). 7.5 kΩ and gamma 0.6: the open GL55xx library's fit of the sheet's curve. 30/30 ms: from memory.
  'cds-5-10k': {
    id: 'cds-5-10k',
    r10Ohms: { min: 5000, usual: 7500, max: 10_000 },
    gamma: { usual: 0.6, spread: 0.1 },
    darkOhms: 500e3,
    riseSeconds: 0.03,
    fallSeconds: 0.03,
    mostVolts: 100,
    mostWatts: 0.09,
  },
  // GL5537-1 class: 16 to 50 kΩ, dark ≥ 2 MΩ, 150 V, 100 mW (distributors' tables). 24 kΩ and gamma 0.67: the
  // open GL55xx library's fit of the sheet's curve. 20/30 ms: from memory.
  'cds-16-50k': {
    id: 'cds-16-50k',
    r10Ohms: { min: 16_000, usual: 24_000, max: 50_000 },
    gamma: { usual: 0.67, spread: 0.1 },
    darkOhms: 2e6,
    riseSeconds: 0.02,
    fallSeconds: 0.03,
    mostVolts: 150,
    mostWatts: 0.1,
  },
  // GL5539 class: 30 to 90 kΩ, dark ≥ 5 MΩ, 150 V, 100 mW (distributors' tables). Gamma 0.67: the open GL55xx
  // library's fit (tables say 0.8, from memory). 20/30 ms: from memory.
  'cds-30-90k': {
    id: 'cds-30-90k',
    r10Ohms: { min: 30_000, usual: 52_000, max: 90_000 },
    gamma: { usual: 0.67, spread: 0.1 },
    darkOhms: 5e6,
    riseSeconds: 0.02,
    fallSeconds: 0.03,
    mostVolts: 150,
    mostWatts: 0.1,
  },
  // Hamamatsu P1395-01 (5R, two cells in one moulding): 5 to 15 kΩ, 0.1 MΩ, gamma 0.60, 120/250 ms, 50 V, 25 mW.
  'cds-dual-5-15k': {
    id: 'cds-dual-5-15k',
    r10Ohms: { min: 5000, usual: 8700, max: 15_000 },
    gamma: { usual: 0.6, spread: 0.1 },
    darkOhms: 100e3,
    riseSeconds: 0.12,
    fallSeconds: 0.25,
    mostVolts: 50,
    mostWatts: 0.025,
  },
  // Hamamatsu P722-7R: 2.5 to 7.5 kΩ, 0.5 MΩ, gamma 0.70, 50/40 ms, 100 V, 150 mW.
  'cds-2k5-7k5': {
    id: 'cds-2k5-7k5',
    r10Ohms: { min: 2500, usual: 4300, max: 7500 },
    gamma: { usual: 0.7, spread: 0.1 },
    darkOhms: 500e3,
    riseSeconds: 0.05,
    fallSeconds: 0.04,
    mostVolts: 100,
    mostWatts: 0.15,
  },
  // Hamamatsu P1195 (7R): 50 to 150 kΩ, 20 MΩ, gamma 0.90, 40/10 ms, 200 V, 100 mW.
  'cds-50-150k': {
    id: 'cds-50-150k',
    r10Ohms: { min: 50_000, usual: 87_000, max: 150_000 },
    gamma: { usual: 0.9, spread: 0.1 },
    darkOhms: 20e6,
    riseSeconds: 0.04,
    fallSeconds: 0.01,
    mostVolts: 200,
    mostWatts: 0.1,
  },
  // RS data sheet 232-3816 (NORP12, NSL19-M51): 9 kΩ at 10 lx and 400 Ω at 1000 lx, typical (gamma 0.676 between
  // them), dark ≥ 1 MΩ, 18/120 ms at 10 lx, 320 V, 250 mW. The sheet prints no band: ± 50 % is common practice.
  'cds-9k': {
    id: 'cds-9k',
    r10Ohms: { min: 4500, usual: 9000, max: 13_500 },
    gamma: { usual: 0.676, spread: 0.1 },
    darkOhms: 1e6,
    riseSeconds: 0.018,
    fallSeconds: 0.12,
    mostVolts: 320,
    mostWatts: 0.25,
  },
};
