/** Rows about the jack: coupling, mixing, levels, headphones, and how long a level may be heard. */
import {
  dbuOf,
  dbvOf,
  headphoneLevel,
  type Jack,
  jackOf,
  loadShare,
  readoutOf,
  timerOutput,
  weeklyHoursAt,
} from '../../src/circuit/output.ts';
import { renderTake } from '../../src/sound/render.ts';
import { designWith } from '../circuit/building.ts';
import { DARK, ONLY_A, pulseSettings, steady } from '../sound/playing.ts';
import type { Evaluators, Inputs } from './rows.ts';

/** A single voltage behind a resistance, a capacitor, a load: the step at time 0 and how it decays, as sound. */
function couplingTau(inputs: Inputs): number {
  const jack: Jack = {
    ...ONLY_A,
    sources: [0, 1, 2, 3].map(() => ({ volts: 1, ohms: inputs.number('sourceOhms') })),
    loadOhms: inputs.number('loadOhms'),
    couplingFarads: inputs.number('farads'),
  };
  const rate = 192_000;
  const { samples } = renderTake(pulseSettings(100, 0.5, jack), steady(DARK, DARK), 1, rate);
  const first = 40;
  // Until about a third is left, so that the rounding of single precision does not count.
  const last = samples.findIndex((value, i) => i > first && value < samples[first]! * 0.4);
  const end = last < 0 ? samples.length - 1 : last;
  return (end - first) / rate / Math.log(samples[first]! / samples[end]!);
}

/** A square wave of voice A between 0 V and a voltage, behind a resistance, into a load. */
function squareInto(inputs: Inputs): { jack: Jack; loadOhms: number } {
  const [volts, ohms] = [inputs.number('peakToPeakVolts'), inputs.numberOr('sourceOhms', 0)];
  const loadOhms = inputs.numberOr('loadOhms', 1e4);
  const sources = ONLY_A.sources.map((source) => ({ volts: source.volts * volts, ohms }));
  return { jack: { ...ONLY_A, sources, loadOhms, boundVolts: volts }, loadOhms };
}

export const jack: Evaluators = {
  'coupling corner': (inputs) => ({ hertz: 1 / (2 * Math.PI * couplingTau(inputs)) }),

  'coupling time constant': (inputs) => ({ seconds: couplingTau(inputs) }),

  'mix share': (inputs) => {
    const ohms = inputs.number('mixOhms');
    const load = inputs.numberOr('loadOhms', null);
    const design = designWith({
      output: {
        mixOhms: { A: ohms, B: ohms },
        shuntOhms: inputs.numberOr('shuntOhms', null),
        coupling: null,
        loadOhms: load ?? 1e6,
      },
    });
    const jack = jackOf(design, 9);
    const [none, onlyA] = jack.sources;
    const share = (source: typeof none) => (load === null ? 1 : loadShare(jack, source!));
    const swing = timerOutput(design, 9, true).volts - timerOutput(design, 9, false).volts;
    return { share: (onlyA!.volts * share(onlyA) - none!.volts * share(none)) / swing };
  },

  'level of volts': (inputs) => {
    const volts = inputs.number('rmsVolts');
    return { dbv: dbvOf(volts)!, dbu: dbuOf(volts)! };
  },

  'square wave': (inputs) => {
    const { rmsVolts, dbv } = readoutOf(squareInto(inputs).jack, { A: 0.5, B: 0 }).voices.A;
    return { rmsVolts, dbv: dbv! };
  },

  'square in headphones': (inputs) => {
    const { jack: wired, loadOhms } = squareInto(inputs);
    const { rmsVolts } = readoutOf(wired, { A: 0.5, B: 0 }).voices.A;
    const { watts, decibels } = headphoneLevel(rmsVolts, loadOhms);
    return { rmsVolts, watts, decibels: decibels! };
  },

  'weekly hours': (inputs) => ({ hours: weeklyHoursAt(inputs.number('decibels')) }),
};
