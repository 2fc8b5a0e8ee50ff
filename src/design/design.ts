/**
 * The one document: what this instrument is. Readonly values only, SI units, nothing derived.
 * `decode.ts` reads it from anything, `commands.ts` changes it, `versions.ts` brings older files forward.
 */
import type { CapacitorKindId, DielectricId } from '../parts/capacitors.ts';
import type { CellId } from '../parts/cells.ts';
import type { ComparatorId } from '../parts/comparators.ts';
import type { SupplyId } from '../parts/supplies.ts';
import type { TimerId } from '../parts/timers.ts';
import type { TrimmerId } from '../parts/trimmers.ts';
import {
  type Farads,
  type Fraction,
  type Ohms,
  type Pair,
  VOICES,
  type VoiceId,
  type Volts,
} from '../quantity/units.ts';
import type { Batch } from './batch.ts';
import type { Pitch } from './pitch.ts';
import type { Room } from './room.ts';

export const FORMAT = 'lampnote-design';
export const VERSION = 4;

/** A trimmer as fitted: which part, its end-to-end value, and how far it is turned, 0…1. */
export interface Trimmer {
  readonly part: TrimmerId;
  readonly ohms: Ohms;
  /** Tolerance of the end-to-end value, ± fraction. */
  readonly tolerance: Fraction;
  readonly rotation: Fraction;
}

export interface TimingCapacitor {
  readonly farads: Farads;
  readonly dielectric: DielectricId;
  /** ± fraction. */
  readonly tolerance: Fraction;
}

/** A light cell as fitted: its family sets the speed and the dark limit, the two numbers place the curve. */
export interface Cell {
  readonly family: CellId;
  /** Resistance at 10 lx. */
  readonly r10Ohms: Ohms;
  /** Slope: R falls as lux to the power −gamma. */
  readonly gamma: number;
}

/** Where the cell was kept before use: makers state their figures after a time in the light. */
export type CellKept = 'light' | 'dark';

export type CellPosition = 'top' | 'bottom';
export type Polarity = 'light' | 'shade';

export interface Voice {
  /** Charge resistor RA, from the supply to the discharge pin. */
  readonly raOhms: Ohms;
  /** Fixed part of RB; 0 = none fitted. */
  readonly rbFixedOhms: Ohms;
  readonly trimmer: Trimmer;
  readonly capacitor: TimingCapacitor;
  /** A voltage forced on the control pin; null = left to the chip's own two thirds of the supply. */
  readonly controlVolts: Volts | null;
  readonly cell: Cell;
  readonly cellKept: CellKept;
  readonly divider: { readonly cell: CellPosition; readonly fixedOhms: Ohms };
  /** Sounds in light, or sounds in shade. */
  readonly polarity: Polarity;
  /** Feedback resistor from the comparator's output to its + input; null = none fitted. */
  readonly hysteresisOhms: Ohms | null;
  /** Resistor in series with the + input, against which the feedback works. */
  readonly inputOhms: Ohms;
  /** From the comparator's open collector, and the timer's reset, to the supply. */
  readonly pullUpOhms: Ohms;
}

/** The divider that makes one reference voltage: a fixed part above, the trimmer, a fixed part below. */
export interface ThresholdTrimmer {
  readonly topOhms: Ohms;
  readonly trimmer: Trimmer;
  readonly bottomOhms: Ohms;
}

export interface Threshold {
  /** One trimmer for both voices (trimmer A is then the one fitted), or one each. */
  readonly arrangement: 'shared' | 'each';
  readonly trimmers: Pair<ThresholdTrimmer>;
}

export interface Output {
  /** Resistor from each timer output to the mixing point; null = outputs joined directly. */
  readonly mixOhms: Pair<Ohms> | null;
  /** From the mixing point to 0 V; null = none fitted. */
  readonly shuntOhms: Ohms | null;
  /** A volume control from the mixing point to 0 V, its wiper feeding the jack; null = none fitted. */
  readonly volume: { readonly ohms: Ohms; readonly rotation: Fraction } | null;
  /** Between the mixing point and the jack; null = a plain wire. */
  readonly coupling: { readonly farads: Farads; readonly kind: CapacitorKindId } | null;
  /** What is plugged in. */
  readonly loadOhms: Ohms;
}

export interface Supply {
  readonly kind: SupplyId;
  /** Voltage at the source, unloaded. */
  readonly volts: Volts;
  /** Internal resistance of the source. */
  readonly sourceOhms: Ohms;
  /** A diode against reversed polarity in series. */
  readonly diode: boolean;
  /** Decoupling capacitors at both chips. */
  readonly decoupled: boolean;
  /** Dip of the shared rail at each output edge, for an instant; 0 = the voices do not see each other. */
  readonly sharedDipVolts: Volts;
}

export interface Design {
  readonly format: typeof FORMAT;
  readonly version: typeof VERSION;
  readonly name: string;
  readonly notes: string;
  readonly timer: TimerId;
  readonly comparator: ComparatorId;
  readonly supply: Supply;
  readonly voices: Pair<Voice>;
  readonly threshold: Threshold;
  readonly output: Output;
  /** Noise at each sensor node, rms, and the seed that makes it repeat. */
  readonly noise: { readonly voltsRms: Volts; readonly seed: number };
  /** Parts for notes: what is wanted, what is at hand, what was shortlisted. */
  readonly pitch: Pitch;
  /** Where it will stand. */
  readonly room: Room;
  /** Kits for other people: what is ordered, what the bench wrote down, what was asked of the board. */
  readonly batch: Batch;
}

/** The trimmer that sets this voice's reference: A's for both when one is shared. */
export function thresholdFor(design: Design, voice: VoiceId): ThresholdTrimmer {
  return design.threshold.trimmers[design.threshold.arrangement === 'shared' ? 'A' : voice];
}

/** The threshold trimmers that are fitted: one when it is shared, else two. */
export function trimmersOf(design: Design): readonly VoiceId[] {
  return design.threshold.arrangement === 'shared' ? ['A'] : VOICES;
}
