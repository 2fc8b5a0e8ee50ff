/**
 * From the two timer outputs to the jack: drive, mixing (or none), shunt, volume, coupling capacitor, load.
 * Each output is a voltage behind a resistance, different when high and low, so every pair of outputs gives
 * its own source and its own time constant. SI units. Equations: Thévenin and one pole.
 */
import type { Design } from '../design/design.ts';
import { TIMERS } from '../parts/timers.ts';
import type { Amperes, Farads, Fraction, Hertz, Ohms, Pair, Seconds, Volts } from '../quantity/units.ts';
import { pairOf } from '../quantity/units.ts';
import { COMBINATIONS, type Outputs, type Source } from './gate.ts';

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
  const sources = COMBINATIONS.map((outputs) => mixedSource(design, railVolts, outputs));
  const high = timerOutput(design, railVolts, true);
  const low = timerOutput(design, railVolts, false);
  const between = high.ohms + low.ohms + (mixOhms ? mixOhms.A + mixOhms.B : 0);
  return {
    sources,
    loadOhms,
    couplingFarads: coupling?.farads ?? null,
    boundVolts: boundOf(sources, loadOhms, coupling !== null),
    clashAmperes: Math.max(0, (high.volts - low.volts) / between),
  };
}

/**
 * The furthest the jack can be from 0 V. A coupling capacitor holds some voltage between 0 V and the highest source's;
 * what it holds shows at the jack by the share of whichever state comes next.
 */
function boundOf(sources: readonly Source[], loadOhms: Ohms, coupled: boolean): Volts {
  const volts = sources.map((source) => source.volts);
  const [least, most] = coupled ? [Math.min(0, ...volts), Math.max(0, ...volts)] : [0, 0];
  return Math.max(
    ...sources.map(
      (source) => loadShare({ loadOhms }, source) * Math.max(source.volts - least, most - source.volts),
    ),
  );
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
export function loadShare(jack: Pick<Jack, 'loadOhms'>, source: Source): number {
  return jack.loadOhms / (source.ohms + jack.loadOhms);
}

/** Corner of the coupling capacitor, 1/(2π·R·C) with everything in its path; null = none fitted. */
export function cornerHertz(jack: Jack): Hertz | null {
  if (jack.couplingFarads === null) return null;
  // Both outputs low: the state the jack rests in.
  return 1 / (2 * Math.PI * (jack.sources[0]!.ohms + jack.loadOhms) * jack.couplingFarads);
}

/** Power at which makers state a headphone's level, and the middle of what they state (88 to 120 dB). */
const REFERENCE_WATTS = 0.001;
export const HEADPHONE_DB_PER_MILLIWATT = 100;

/** Loads up to this are taken for headphones (portable ones 16 to 32 Ω, studio ones up to 600 Ω). */
export const HEADPHONE_MOST_OHMS: Ohms = 600;

/** dB re 1 V rms; null = no voltage. */
export function dbvOf(rmsVolts: Volts): number | null {
  return rmsVolts > 0 ? 20 * Math.log10(rmsVolts) : null;
}

/** dB re the voltage of 1 mW in 600 Ω, 0.7746 V rms; null = no voltage. */
export function dbuOf(rmsVolts: Volts): number | null {
  return rmsVolts > 0 ? 10 * Math.log10((rmsVolts * rmsVolts) / 600 / REFERENCE_WATTS) : null;
}

/** What a headphone makes of a voltage across it. A rough guide: ± 12 dB between makes, more between ears. */
export interface HeadphoneLevel {
  readonly watts: number;
  /** dB SPL, with a headphone of `HEADPHONE_DB_PER_MILLIWATT`; null = silence. */
  readonly decibels: number | null;
  /** Hours a week at that level; null = silence. */
  readonly weeklyHours: number | null;
}

export function headphoneLevel(rmsVolts: Volts, ohms: Ohms): HeadphoneLevel {
  const watts = (rmsVolts * rmsVolts) / ohms;
  const decibels = watts > 0 ? HEADPHONE_DB_PER_MILLIWATT + 10 * Math.log10(watts / REFERENCE_WATTS) : null;
  return { watts, decibels, weeklyHours: decibels === null ? null : weeklyHoursAt(decibels) };
}

/** Hours a week an adult can take a level, dB: 40 h at 80 dB, halved by every 3 dB (WHO and ITU, 2019). */
export function weeklyHoursAt(decibels: number): number {
  return Math.min(168, 40 * 2 ** ((80 - decibels) / 3));
}

/** A sound at the jack, well above the coupling capacitor's corner. */
export interface Level {
  readonly peakToPeakVolts: Volts;
  /** Without any DC: for one voice Vpp·√(d·(1 − d)). */
  readonly rmsVolts: Volts;
  readonly dbv: number | null;
  readonly dbu: number | null;
}

export interface JackReadout {
  /** Each voice alone, and both together (their phases taken as independent). */
  readonly voices: Pair<Level>;
  readonly both: Level;
  /** DC at the jack with both sounding: 0 with a coupling capacitor. */
  readonly dcVolts: Volts;
  /**
   * DC that the coupling capacitor settles to, both sounding; its timers' side is the positive one, so that is
   * where a polarised part has its plus leg. Null = no capacitor.
   */
  readonly couplingVolts: Volts | null;
  /** How long the thump of a starting or stopping voice takes to fall to 37 %; null = no capacitor. */
  readonly thumpSeconds: Seconds | null;
  /** The step that makes it: the change of DC at the jack when the louder voice starts. */
  readonly thumpVolts: Volts;
  /** Both sounding into a load of 600 Ω or less; null = no headphone. */
  readonly headphones: HeadphoneLevel | null;
}

/** Share of the time in each pair of outputs, for two independent voices high for these shares of their time. */
function sharesOf(high: Pair<Fraction>): readonly Fraction[] {
  return COMBINATIONS.map(({ A, B }) => (A ? high.A : 1 - high.A) * (B ? high.B : 1 - high.B));
}

/** DC at which no mean current flows through the coupling capacitor; 0 for a plain wire. */
function heldVolts(jack: Jack, shares: readonly Fraction[]): Volts {
  if (jack.couplingFarads === null) return 0;
  let amperes = 0;
  let siemens = 0;
  for (const [i, source] of jack.sources.entries()) {
    const weight = shares[i]! / (source.ohms + jack.loadOhms);
    amperes += weight * source.volts;
    siemens += weight;
  }
  return amperes / siemens;
}

/** Level and mean at the load, for shares of time in each pair of outputs. */
function heard(jack: Jack, shares: readonly Fraction[]): { level: Level; mean: Volts; held: Volts } {
  const held = heldVolts(jack, shares);
  const volts = jack.sources.map((source) => (source.volts - held) * loadShare(jack, source));
  const used = volts.filter((_, i) => shares[i]! > 0);
  const mean = volts.reduce((sum, v, i) => sum + shares[i]! * v, 0);
  const rmsVolts = Math.sqrt(volts.reduce((sum, v, i) => sum + shares[i]! * (v - mean) ** 2, 0));
  const peakToPeakVolts = Math.max(...used) - Math.min(...used);
  return { level: { peakToPeakVolts, rmsVolts, dbv: dbvOf(rmsVolts), dbu: dbuOf(rmsVolts) }, mean, held };
}

/** What can be measured at a jack. `dutyCycles`: share of its period each voice's output is high. */
export function readoutOf(jack: Jack, dutyCycles: Pair<Fraction>): JackReadout {
  const both = heard(jack, sharesOf(dutyCycles));
  const alone = pairOf((voice) => heard(jack, sharesOf({ A: 0, B: 0, [voice]: dutyCycles[voice] })));
  const rest = jack.sources[0]!;
  const step = (voice: 'A' | 'B') => {
    const start = jack.sources[voice === 'A' ? 1 : 2]!;
    const mean = start.volts * loadShare(jack, start) - rest.volts * loadShare(jack, rest);
    return Math.abs(mean * dutyCycles[voice]);
  };
  return {
    voices: pairOf((voice) => alone[voice].level),
    both: both.level,
    dcVolts: jack.couplingFarads === null ? both.mean : 0,
    couplingVolts: jack.couplingFarads === null ? null : both.held,
    thumpSeconds: jack.couplingFarads === null ? null : (rest.ohms + jack.loadOhms) * jack.couplingFarads,
    thumpVolts: Math.max(step('A'), step('B')),
    headphones:
      jack.loadOhms <= HEADPHONE_MOST_OHMS ? headphoneLevel(both.level.rmsVolts, jack.loadOhms) : null,
  };
}

/** What the timer outputs draw from the rail into mixer, volume, load and each other. */
export interface OutputDraw {
  /** Mean over the time, both voices, A. */
  readonly meanAmperes: Amperes;
  /** Greatest out of one output, either way. */
  readonly peakAmperes: Amperes;
}

/** `high`: share of the time each output is high; 0 for a silent voice. */
export function outputDraw(design: Design, railVolts: Volts, high: Pair<Fraction>): OutputDraw {
  const { mixOhms, shuntOhms, volume, loadOhms } = design.output;
  const jack = jackOf(design, railVolts);
  const shares = sharesOf(high);
  const held = heldVolts(jack, shares);
  // Everything after the mixing point as one voltage behind one resistance.
  const below = volume === null ? Number.POSITIVE_INFINITY : volume.rotation * volume.ohms;
  const tap = Number.isFinite(below) ? below / (below + loadOhms) : 1;
  const onward = {
    volts: held * tap,
    ohms: loadOhms * tap + (volume === null ? 0 : volume.ohms * (1 - volume.rotation)),
  };
  let meanAmperes = 0;
  let peakAmperes = 0;
  for (const [i, outputs] of COMBINATIONS.entries()) {
    const drives = (['A', 'B'] as const).map((voice) => {
      const { volts, ohms } = timerOutput(design, railVolts, outputs[voice]);
      return { high: outputs[voice], volts, siemens: 1 / (ohms + (mixOhms?.[voice] ?? 0)) };
    });
    const siemens =
      drives.reduce((sum, d) => sum + d.siemens, 1 / onward.ohms) + (shuntOhms ? 1 / shuntOhms : 0);
    const mixed = drives.reduce((sum, d) => sum + d.siemens * d.volts, onward.volts / onward.ohms) / siemens;
    for (const drive of drives) {
      const amperes = (drive.volts - mixed) * drive.siemens;
      if (drive.high) meanAmperes += shares[i]! * Math.max(0, amperes);
      if (shares[i]! > 0) peakAmperes = Math.max(peakAmperes, Math.abs(amperes));
    }
  }
  return { meanAmperes, peakAmperes };
}
