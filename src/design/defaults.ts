/** The design a new document starts from: a careful build whose values hang together. */
import type { Farads, Fraction } from '../quantity/units.ts';
import type { Design, ThresholdTrimmer, Voice } from './design.ts';
import { FORMAT, VERSION } from './design.ts';

const threshold: ThresholdTrimmer = {
  topOhms: 8200,
  trimmer: { part: 'single-turn', ohms: 10_000, tolerance: 0.1, rotation: 0.27 },
  bottomOhms: 470,
};

function voice(farads: Farads, rotation: Fraction): Voice {
  return {
    raOhms: 3900,
    rbFixedOhms: 12_000,
    trimmer: { part: 'single-turn', ohms: 50_000, tolerance: 0.1, rotation },
    capacitor: { farads, dielectric: 'polyester', tolerance: 0.1 },
    controlVolts: null,
    cell: { family: 'cds-8-20k', r10Ohms: 12_000, gamma: 0.7 },
    divider: { cell: 'bottom', fixedOhms: 12_000 },
    polarity: 'light',
    hysteresisOhms: 680_000,
    inputOhms: 10_000,
    pullUpOhms: 6800,
  };
}

export const DEFAULT_DESIGN: Design = {
  format: FORMAT,
  version: VERSION,
  name: 'Lantern on the landing stage',
  notes: 'Two notes a fifth apart. Passing hands and boats silence them one at a time.',
  timer: 'bipolar',
  comparator: 'classic',
  supply: {
    kind: 'block-9v',
    volts: 9,
    sourceOhms: 1.7,
    diode: false,
    decoupled: true,
    sharedDipVolts: 0,
  },
  voices: { A: voice(82e-9, 0.55), B: voice(68e-9, 0.35) },
  threshold: { arrangement: 'each', trimmers: { A: threshold, B: threshold } },
  output: {
    mixOhms: { A: 47_000, B: 47_000 },
    shuntOhms: 4700,
    volume: null,
    coupling: { farads: 1e-6, kind: 'film' },
    loadOhms: 10_000,
  },
  noise: { voltsRms: 0.001, seed: 1 },
};
