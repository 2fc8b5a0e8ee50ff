/** Supplies as data: nominal volts and internal resistance of a fresh one. */
import type { Ohms, Volts } from '../quantity/units.ts';

export type SupplyId = 'block-9v' | 'four-aa' | 'five-volt';

export interface SupplyKind {
  readonly id: SupplyId;
  readonly volts: Volts;
  readonly sourceOhms: Ohms;
}

export const SUPPLIES: Readonly<Record<SupplyId, SupplyKind>> = {
  // Duracell MN1604: 9 V nominal, 1.7 Ω at 1 kHz.
  'block-9v': { id: 'block-9v', volts: 9, sourceOhms: 1.7 },
  // Energizer E91: 0.15 Ω a cell, four in series.
  'four-aa': { id: 'four-aa', volts: 6, sourceOhms: 0.6 },
  // Regulated; source resistance taken as none.
  'five-volt': { id: 'five-volt', volts: 5, sourceOhms: 0 },
};
