/**
 * From the two timer outputs to the jack: drive, mixing (or none), shunt, volume, coupling capacitor, load.
 * Each output is a voltage behind a resistance, different when high and low, so every pair of outputs gives
 * its own source and its own time constant. SI units. Equations: Thévenin and one pole.
 */
import type { Design } from '../design/design.ts';
import { TIMERS } from '../parts/timers.ts';
import type { Amperes, Farads, Hertz, Ohms, Volts } from '../quantity/units.ts';
import type { Outputs, Source } from './gate.ts';

/** What the jack sees behind the coupling capacitor, for each pair of timer outputs (index as `stateIndex`). */
export interface Jack {
  readonly sources: readonly Source[];
  readonly loadOhms: Ohms;
  /** Coupling capacitor; null = a plain wire. */
  readonly couplingFarads: Farads | null;
  /** No voltage at the jack can exceed this, capacitor charged or empty. */
  readonly boundVolts: Volts;
  /** Greatest current out of one timer output into the other, when they are joined and disagree. */
  readonly clashAmperes: Amperes;
}

/** The jack of a design at a rail voltage. */
export function jackOf(design: Design, railVolts: Volts): Jack {
  const { mixOhms, loadOhms, coupling } = design.output;
  const combos: Outputs[] = [0, 1, 2, 3].map((i) => ({ A: (i & 1) === 1, B: (i & 2) === 2 }));
  const sources = combos.map((outputs) => mixedSource(design, railVolts, outputs));
  const peak = Math.max(...sources.map((s) => (s.volts * loadOhms) / (s.ohms + loadOhms)));
  const high = timerOutput(design, railVolts, true);
  const low = timerOutput(design, railVolts, false);
  const between = high.ohms + low.ohms + (mixOhms ? mixOhms.A + mixOhms.B : 0);
  return {
    sources,
    loadOhms,
    couplingFarads: coupling?.farads ?? null,
    boundVolts: peak,
    clashAmperes: Math.max(0, (high.volts - low.volts) / between),
  };
}

/** One timer output, high or low. */
export function timerOutput(design: Design, railVolts: Volts, high: boolean): Source {
  const { outputHigh, outputLow } = TIMERS[design.timer];
  return high
    ? { volts: Math.max(0, railVolts - outputHigh.dropVolts), ohms: outputHigh.ohms }
    : { volts: Math.min(outputLow.volts, railVolts), ohms: outputLow.ohms };
}

function mixedSource(design: Design, railVolts: Volts, outputs: Outputs): Source {
  const { mixOhms, shuntOhms, volume } = design.output;
  const a = timerOutput(design, railVolts, outputs.A);
  const b = timerOutput(design, railVolts, outputs.B);
  const ga = 1 / (a.ohms + (mixOhms?.A ?? 0));
  const gb = 1 / (b.ohms + (mixOhms?.B ?? 0));
  const siemens = ga + gb + (shuntOhms === null ? 0 : 1 / shuntOhms);
  const mixed = { volts: (a.volts * ga + b.volts * gb) / siemens, ohms: 1 / siemens };
  if (volume === null) return mixed;
  const below = volume.rotation * volume.ohms;
  const total = mixed.ohms + volume.ohms;
  return { volts: (mixed.volts * below) / total, ohms: ((total - below) * below) / total };
}

/** Share of a source's voltage that reaches the load while the capacitor holds none. */
export function loadShare(jack: Jack, source: Source): number {
  return jack.loadOhms / (source.ohms + jack.loadOhms);
}

/** Corner of the coupling capacitor, 1/(2π·R·C) with everything in its path; null = none fitted. */
export function cornerHertz(jack: Jack): Hertz | null {
  if (jack.couplingFarads === null) return null;
  // Both outputs low: the state the jack rests in.
  return 1 / (2 * Math.PI * (jack.sources[0]!.ohms + jack.loadOhms) * jack.couplingFarads);
}
