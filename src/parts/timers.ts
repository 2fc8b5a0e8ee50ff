/**
 * Dual timers as data: typical figures at 25 °C from the makers' sheets named at each line.
 * Where a sheet prints single timers, a dual is two of them.
 */
import type { Amperes, Fraction, Hertz, Ohms, Volts } from '../quantity/units.ts';

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
  /** The same two at the sheet's limits. */
  readonly resetHighMostAmperes: Amperes;
  readonly resetLowMostAmperes: Amperes;
  /** Smallest RA in the sheet's accuracy conditions, and the frequency above which the formula is not claimed. */
  readonly raMinOhms: Ohms;
  readonly formulaMaxHertz: Hertz;
  /** Greatest threshold current; sets the largest RA + RB as (V/6) / current, the stricter makers' rule. */
  readonly thresholdAmperes: Amperes;
  /** Supply current of one timer without load, output low and high; straight between points, [V, A]. */
  readonly supplyAmperes: {
    readonly low: readonly (readonly [Volts, Amperes])[];
    readonly high: readonly (readonly [Volts, Amperes])[];
  };
  /** How far a new one's astable period lies from the formula's, ± share: typical, and at most. */
  readonly accuracy: { readonly typical: Fraction; readonly most: Fraction };
  /** Drift of the astable frequency, typical, share per °C and per volt of supply. */
  readonly driftPerDegree: Fraction;
  readonly driftPerVolt: Fraction;
  /** Current through the output stage while it switches, with both transistors on; 0 = none worth naming. */
  readonly spikeAmperes: Amperes;
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
  // TI SLFS023: 0.4 mA and 1.5 mA at most.
  resetHighMostAmperes: 0.0004,
  resetLowMostAmperes: 0.0015,
  raMinOhms: 1000,
  formulaMaxHertz: 100_000,
  thresholdAmperes: 250e-9,
  // TI SLFS023 (NE556), both timers: output low 6 mA at 5 V and 20 mA at 15 V, output high 4 and 18 mA, typical.
  supplyAmperes: {
    low: [
      [5, 0.003],
      [15, 0.01],
    ],
    high: [
      [5, 0.002],
      [15, 0.009],
    ],
  },
  // TI SLFS023: 2.25 % typical, against the mean of a sample; Philips NE/SA556: 13 % at most, against the formula.
  accuracy: { typical: 0.0225, most: 0.13 },
  // TI SLFS023: 150 ppm/°C and 0.3 %/V (Philips: 400 ppm/°C typical).
  driftPerDegree: 150e-6,
  driftPerVolt: 0.003,
  // EDN Asia, "The NE555 current spike": about 300 mA for 100 to 200 ns; 200 mA is the smaller common figure.
  spikeAmperes: 0.2,
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
  // TI SLFS043F: 75 to 150 pA at the highest temperature.
  resetHighMostAmperes: 150e-12,
  resetLowMostAmperes: 150e-12,
  raMinOhms: 1000,
  formulaMaxHertz: 100_000,
  thresholdAmperes: 75e-12,
  // TI SLFS043F (TLC555): 170 µA at 5 V, 360 µA at 15 V, typical, whatever the output does.
  supplyAmperes: {
    low: [
      [5, 170e-6],
      [15, 360e-6],
    ],
    high: [
      [5, 170e-6],
      [15, 360e-6],
    ],
  },
  // TI SLFS043F: 1 % typical, 3 % at most; 0.1 %/V typical. 75 ppm/°C: TI SNAS558 (LMC555).
  accuracy: { typical: 0.01, most: 0.03 },
  driftPerDegree: 75e-6,
  driftPerVolt: 0.001,
  // Philips ICM7555 sheet: no overlap of the output transistors.
  spikeAmperes: 0,
};

export const TIMERS: Readonly<Record<TimerId, TimerFamily>> = { bipolar, cmos };
