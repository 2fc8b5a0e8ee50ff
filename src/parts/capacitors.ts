/** Capacitors as data: what the dielectric does to a pitch, and which kinds have a polarity. */
import type { Fraction } from '../quantity/units.ts';

export type DielectricId = 'polyester' | 'polypropylene' | 'c0g' | 'x7r' | 'y5v' | 'electrolytic';
export type CapacitorKindId = 'film' | 'ceramic' | 'electrolytic';

export interface Dielectric {
  readonly id: DielectricId;
  readonly kind: CapacitorKindId;
  /** Largest change over the rated temperature range, [fall, rise]. */
  readonly overTemperature: readonly [Fraction, Fraction];
  readonly tolerance: Fraction;
  readonly polarised: boolean;
}

/** WIMA film comparison table; EIA letter codes as printed by Holy Stone; Nichicon MA for electrolytics. */
export const DIELECTRICS: Readonly<Record<DielectricId, Dielectric>> = {
  polyester: {
    id: 'polyester',
    kind: 'film',
    overTemperature: [-0.05, 0.05],
    tolerance: 0.1,
    polarised: false,
  },
  polypropylene: {
    id: 'polypropylene',
    kind: 'film',
    overTemperature: [-0.025, 0.025],
    tolerance: 0.05,
    polarised: false,
  },
  c0g: { id: 'c0g', kind: 'ceramic', overTemperature: [-0.003, 0.003], tolerance: 0.05, polarised: false },
  x7r: { id: 'x7r', kind: 'ceramic', overTemperature: [-0.15, 0.15], tolerance: 0.1, polarised: false },
  y5v: { id: 'y5v', kind: 'ceramic', overTemperature: [-0.82, 0.22], tolerance: 0.2, polarised: false },
  // Change over temperature: common practice, makers print impedance ratios instead.
  electrolytic: {
    id: 'electrolytic',
    kind: 'electrolytic',
    overTemperature: [-0.2, 0.2],
    tolerance: 0.2,
    polarised: true,
  },
};
