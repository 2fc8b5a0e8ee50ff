/** Capacitors as data: what the dielectric does to a pitch, and which kinds have a polarity. */
import type { Fraction } from '../quantity/units.ts';

export type DielectricId = 'polyester' | 'polypropylene' | 'c0g' | 'x7r' | 'y5v' | 'electrolytic';
export type CapacitorKindId = 'film' | 'ceramic' | 'electrolytic';

/** How a part's capacitance shrinks as it gets older. */
export type Ageing =
  /** Class 2 ceramic: this share less with every tenfold time since it was last soldered. */
  | { readonly kind: 'per decade'; readonly share: Fraction }
  /** This share at most, either way, in two years. */
  | { readonly kind: 'in two years'; readonly share: Fraction };

export interface Dielectric {
  readonly id: DielectricId;
  readonly kind: CapacitorKindId;
  /** Largest change over the rated temperature range, [fall, rise]. */
  readonly overTemperature: readonly [Fraction, Fraction];
  /** Change of capacitance for one degree more, near room temperature: the least and the most to expect. */
  readonly perDegree: readonly [Fraction, Fraction];
  readonly ageing: Ageing;
  readonly tolerance: Fraction;
  /** Tolerances it is commonly sold in, the closest first. */
  readonly tolerances: readonly Fraction[];
  readonly polarised: boolean;
}

/**
 * WIMA film comparison table (tolerances, change over temperature, ageing of X7R); EIA letter codes as printed by
 * Holy Stone; RCD's ageing figures (X7R 2 %, Y5V 7 % a decade of hours, C0G none); ICEL: polyester drifts 2 to 3 %
 * at most in two years; Nichicon MA for electrolytics.
 */
export const DIELECTRICS: Readonly<Record<DielectricId, Dielectric>> = {
  // Rises by 400 to 600 ppm a degree: from memory.
  polyester: {
    id: 'polyester',
    kind: 'film',
    overTemperature: [-0.05, 0.05],
    perDegree: [400e-6, 600e-6],
    ageing: { kind: 'in two years', share: 0.03 },
    tolerance: 0.1,
    tolerances: [0.05, 0.1, 0.2],
    polarised: false,
  },
  // Falls by about 200 ppm a degree, and drifts by 1 % in two years: from memory.
  polypropylene: {
    id: 'polypropylene',
    kind: 'film',
    overTemperature: [-0.025, 0.025],
    perDegree: [-300e-6, -100e-6],
    ageing: { kind: 'in two years', share: 0.01 },
    tolerance: 0.05,
    tolerances: [0.01, 0.025, 0.05, 0.1],
    polarised: false,
  },
  // EIA: 0 ± 30 ppm a degree.
  c0g: {
    id: 'c0g',
    kind: 'ceramic',
    overTemperature: [-0.003, 0.003],
    perDegree: [-30e-6, 30e-6],
    ageing: { kind: 'per decade', share: 0 },
    tolerance: 0.05,
    tolerances: [0.05, 0.1],
    polarised: false,
  },
  // The letter allows 15 % over the 100 degrees from 25 °C up, either way: taken as straight, an inference.
  x7r: {
    id: 'x7r',
    kind: 'ceramic',
    overTemperature: [-0.15, 0.15],
    perDegree: [-0.0015, 0.0015],
    ageing: { kind: 'per decade', share: 0.02 },
    tolerance: 0.1,
    tolerances: [0.1, 0.2],
    polarised: false,
  },
  // 82 % less over the 60 degrees from 25 °C up: taken as straight, an inference. It peaks near room temperature.
  y5v: {
    id: 'y5v',
    kind: 'ceramic',
    overTemperature: [-0.82, 0.22],
    perDegree: [-0.82 / 60, 0],
    ageing: { kind: 'per decade', share: 0.07 },
    tolerance: 0.2,
    tolerances: [0.2],
    polarised: false,
  },
  // Change over temperature, for one degree, and in two years: common practice, makers print impedance ratios.
  electrolytic: {
    id: 'electrolytic',
    kind: 'electrolytic',
    overTemperature: [-0.2, 0.2],
    perDegree: [0.001, 0.003],
    ageing: { kind: 'in two years', share: 0.1 },
    tolerance: 0.2,
    tolerances: [0.2],
    polarised: true,
  },
};

/** The share of capacitance left at a time since soldering, of what there was at an earlier one (hours, above 0). */
export function agedShare(ageing: Ageing, fromHours: number, toHours: number): Fraction {
  const TWO_YEARS = 17_532;
  return ageing.kind === 'per decade'
    ? 1 - ageing.share * Math.log10(toHours / fromHours)
    : 1 - (ageing.share * (toHours - fromHours)) / TWO_YEARS;
}
