/**
 * Dual timers as data: typical figures at 25 °C from the makers' sheets named at each line.
 * Where a sheet prints single timers, a dual is two of them.
 */
import type { Amperes, Hertz, Ohms, Volts } from '../quantity/units.ts';

export type TimerId = 'bipolar' | 'cmos';

/** The transistor at the discharge pin while it conducts. */
export type Discharge =
  /** Bipolar: a saturation voltage that grows with the current; straight between points, [A, V]. */
  | { readonly kind: 'saturation'; readonly points: readonly (readonly [Amperes, Volts])[] }
  /** CMOS: an on-resistance. */
  | { readonly kind: 'resistance'; readonly ohms: Ohms };

export interface TimerFamily {
  readonly id: TimerId;
  readonly supplyVolts: { readonly min: Volts; readonly max: Volts };
  readonly discharge: Discharge;
  /** Output as a straight line: volts lost at no load, and the resistance behind it. */
  readonly outputHigh: { readonly dropVolts: Volts; readonly ohms: Ohms };
  readonly outputLow: { readonly volts: Volts; readonly ohms: Ohms };
  /** Rated output current, either way. */
  readonly outputAmperes: Amperes;
  readonly resetVolts: { readonly min: Volts; readonly typical: Volts; readonly max: Volts };
  /** Current into the reset pin when high, and out of it when low. */
  readonly resetHighAmperes: Amperes;
  readonly resetLowAmperes: Amperes;
  /** Smallest RA in the sheet's accuracy conditions, and the frequency above which the formula is not claimed. */
  readonly raMinOhms: Ohms;
  readonly formulaMaxHertz: Hertz;
  /** Greatest threshold current; sets the largest RA + RB as (V/6) / current, the stricter makers' rule. */
  readonly thresholdAmperes: Amperes;
}

const bipolar: TimerFamily = {
  id: 'bipolar',
  // TI SLFS023 (NE556): 4.5 to 16 V.
  supplyVolts: { min: 4.5, max: 16 },
  // ST Doc ID 2182: 80 mV typical at 4.5 mA (5 V), 180 mV at 15 mA (15 V). Both sheets give no light-current
  // point: 20 mV at none is an inference, marked so wherever it matters.
  discharge: {
    kind: 'saturation',
    points: [
      [0, 0.02],
      [0.0045, 0.08],
      [0.015, 0.18],
    ],
  },
  // TI SLFS022/SLFS023: 13.3 V typical at 100 mA and 12.5 V at 200 mA from 15 V; about 1.3 V lost at light
  // load is from memory. One line through the light-load figure and the 200 mA point.
  outputHigh: { dropVolts: 1.3, ohms: 6 },
  // TI SLFS022: 0.1 V at 10 mA, 2.5 V at 200 mA.
  outputLow: { volts: 0.02, ohms: 12 },
  outputAmperes: 0.2,
  // TI SLFS023: 0.3 / 0.7 / 1 V; 0.1 mA typical at V+, 0.4 mA typical out of the pin at 0 V.
  resetVolts: { min: 0.3, typical: 0.7, max: 1 },
  resetHighAmperes: 0.0001,
  resetLowAmperes: 0.0004,
  raMinOhms: 1000,
  formulaMaxHertz: 100_000,
  thresholdAmperes: 250e-9,
};

const cmos: TimerFamily = {
  id: 'cmos',
  // TI SLFS043F / SLFS047B (TLC555, TLC556): 2 to 15 V.
  supplyVolts: { min: 2, max: 15 },
  // TI SLFS043F: 0.14 V at 10 mA.
  discharge: { kind: 'resistance', ohms: 14 },
  // TI SLFS043F at 5 V: 4.8 V at 1 mA; 15 V: 14.2 V at 10 mA. The weaker, 5 V, figure: 200 Ω.
  outputHigh: { dropVolts: 0, ohms: 200 },
  // TI SLFS043F at 5 V: 0.21 V at 8 mA.
  outputLow: { volts: 0, ohms: 26 },
  // TI SLFS043F: 100 mA sink is the largest tabulated load; 10 mA source. The smaller limits.
  outputAmperes: 0.01,
  // TI SLFS043F: 0.4 / 1.1 / 1.5 V; 10 pA class.
  resetVolts: { min: 0.4, typical: 1.1, max: 1.5 },
  resetHighAmperes: 10e-12,
  resetLowAmperes: 10e-12,
  raMinOhms: 1000,
  formulaMaxHertz: 100_000,
  thresholdAmperes: 75e-12,
};

export const TIMERS: Readonly<Record<TimerId, TimerFamily>> = { bipolar, cmos };
