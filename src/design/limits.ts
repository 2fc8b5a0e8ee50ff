/** What each value of a design may be: one place for fields, files and the model's own safety. */
import type { Limits } from '../quantity/parse.ts';

export const LIMITS = {
  raOhms: { min: 100, max: 10e6 },
  /** 0 = none fitted. */
  rbFixedOhms: { min: 0, max: 10e6 },
  trimmerOhms: { min: 100, max: 10e6 },
  timingFarads: { min: 100e-12, max: 100e-6 },
  cellOhms: { min: 500, max: 1e6 },
  gamma: { min: 0.4, max: 1 },
  dividerOhms: { min: 100, max: 10e6 },
  hysteresisOhms: { min: 10e3, max: 100e6 },
  inputOhms: { min: 100, max: 1e6 },
  pullUpOhms: { min: 220, max: 1e6 },
  endResistorOhms: { min: 0, max: 1e6 },
  mixOhms: { min: 100, max: 1e6 },
  shuntOhms: { min: 10, max: 1e6 },
  couplingFarads: { min: 1e-9, max: 10e-3 },
  loadOhms: { min: 8, max: 10e6 },
  supplyVolts: { min: 2, max: 18 },
  sourceOhms: { min: 0, max: 100 },
  controlVolts: { min: 0.5, max: 17 },
  dipVolts: { min: 0, max: 2 },
  noiseVolts: { min: 0, max: 0.1 },
  fraction: { min: 0, max: 1 },
  tolerance: { min: 0, max: 0.8 },
} as const satisfies Record<string, Limits>;

/** Names and notes: long enough for a label, short enough for a link. */
export const NAME_LENGTH = 80;
export const NOTES_LENGTH = 2000;
