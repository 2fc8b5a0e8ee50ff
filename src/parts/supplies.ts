/** Supplies as data: nominal volts, internal resistance of a fresh one, and how long it lasts. */
import type { Ohms, Volts } from '../quantity/units.ts';

export type SupplyId = 'block-9v' | 'four-aa' | 'five-volt';

export type Chemistry = 'alkaline' | 'regulated';

export interface SupplyKind {
  readonly id: SupplyId;
  readonly chemistry: Chemistry;
  readonly volts: Volts;
  readonly sourceOhms: Ohms;
  /** Charge at the small currents of this instrument, ampere-hours; null = never runs out. */
  readonly ampereHours: number | null;
  /** Volts at the source, under load, when it counts as empty; the nominal volts where it never runs out. */
  readonly endVolts: Volts;
}

export const SUPPLIES: Readonly<Record<SupplyId, SupplyKind>> = {
  // Duracell MN1604: 9 V nominal, 1.7 Ω at 1 kHz, 550 mAh nominal (tests at 50 to 100 mA find 300 to 490 mAh).
  // Empty at 5.4 V, 0.9 V a cell: IEC test, from memory.
  'block-9v': {
    id: 'block-9v',
    chemistry: 'alkaline',
    volts: 9,
    sourceOhms: 1.7,
    ampereHours: 0.55,
    endVolts: 5.4,
  },
  // Energizer E91: 0.15 Ω a cell, four in series. 2600 mAh between published readings at 25 and 100 mA to 0.8 V a
  // cell. Empty at 0.9 V a cell: from memory.
  'four-aa': {
    id: 'four-aa',
    chemistry: 'alkaline',
    volts: 6,
    sourceOhms: 0.6,
    ampereHours: 2.6,
    endVolts: 3.6,
  },
  // Regulated; source resistance taken as none.
  'five-volt': {
    id: 'five-volt',
    chemistry: 'regulated',
    volts: 5,
    sourceOhms: 0,
    ampereHours: null,
    endVolts: 5,
  },
};
