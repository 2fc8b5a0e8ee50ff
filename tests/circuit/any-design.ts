/** Designs drawn by a seed from everything the document allows. */
import type { Design, Voice } from '../../src/design/design.ts';
import { LIMITS } from '../../src/design/limits.ts';
import { uniformFrom } from '../../src/quantity/random.ts';
import { cellAt, designWith, thresholdTurned } from './building.ts';

export function seededDesigns(seed: number) {
  const uniform = uniformFrom(seed);

  /** Within limits, spread over decades where the range spans them. */
  const between = ({ min, max }: { readonly min: number; readonly max: number }): number => {
    const low = Math.max(min, max * 1e-7);
    return Math.min(max, Math.max(min, low * (max / low) ** uniform()));
  };
  const pick = <T>(...options: readonly T[]): T => options[Math.floor(uniform() * options.length)]!;

  const anyVoice = (): Partial<Voice> => ({
    raOhms: between(LIMITS.raOhms),
    rbFixedOhms: pick(0, between(LIMITS.rbFixedOhms)),
    trimmer: {
      part: pick('single-turn', 'multi-turn', 'carbon'),
      ohms: between(LIMITS.trimmerOhms),
      tolerance: 0.1,
      rotation: uniform(),
    },
    capacitor: { farads: between(LIMITS.timingFarads), dielectric: 'polyester', tolerance: 0.1 },
    controlVolts: pick(null, null, between(LIMITS.controlVolts)),
    cell: { family: 'cds-8-20k', r10Ohms: between(LIMITS.cellOhms), gamma: 0.4 + 0.6 * uniform() },
    cellKept: pick('light', 'dark'),
    ...cellAt(pick('top', 'bottom'), between(LIMITS.dividerOhms)),
    polarity: pick('light', 'shade'),
    hysteresisOhms: pick(null, between(LIMITS.hysteresisOhms)),
    inputOhms: between(LIMITS.inputOhms),
    pullUpOhms: between(LIMITS.pullUpOhms),
  });

  const anyDesign = (): Design =>
    designWith({
      timer: pick('bipolar', 'cmos'),
      comparator: pick('classic', 'later'),
      A: anyVoice(),
      B: anyVoice(),
      supply: { volts: between(LIMITS.supplyVolts), diode: pick(true, false) },
      threshold: {
        arrangement: pick('shared', 'each'),
        trimmers: { A: thresholdTurned(uniform()), B: thresholdTurned(uniform()) },
      },
      output: {
        mixOhms: pick(null, { A: between(LIMITS.mixOhms), B: between(LIMITS.mixOhms) }),
        shuntOhms: pick(null, between(LIMITS.shuntOhms)),
        volume: pick(null, { ohms: between(LIMITS.trimmerOhms), rotation: uniform() }),
        coupling: pick(null, { farads: between(LIMITS.couplingFarads), kind: 'film' as const }),
        loadOhms: between(LIMITS.loadOhms),
      },
      noise: { voltsRms: pick(0, between(LIMITS.noiseVolts)), seed: Math.floor(uniform() * 1e9) },
    });

  return { uniform, between, anyDesign };
}
