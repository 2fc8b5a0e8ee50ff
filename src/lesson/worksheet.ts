/** Hand-outs: a sheet for each pupil number with values of its own, and the answers by the model. SI units. */
import { astableOf, cycleOf } from '../circuit/astable.ts';
import { cellOhms } from '../circuit/cell.ts';
import {
  type GateState,
  gatesOf,
  nodeVolts,
  overdriveVolts,
  referenceSource,
  stateIndex,
} from '../circuit/gate.ts';
import { railVolts } from '../circuit/supply.ts';
import { type Design, type ThresholdTrimmer, thresholdFor, type Voice } from '../design/design.ts';
import { endOhms } from '../parts/trimmers.ts';
import { type Fraction, type Lux, type Ohms, pairOf } from '../quantity/units.ts';
import type { Amount } from '../words/amounts.ts';
import { type Chosen, chosenFor } from './sheet-values.ts';

/** How an answer is rounded, and how far off it still counts. */
export interface Rounding {
  readonly by: 'figures' | 'decimals';
  readonly n: number;
  readonly accept: Fraction;
}

export type SheetAnswer =
  | {
      readonly kind: 'number';
      /** As the model has it. */
      readonly exact: Amount;
      /** As it stands on the answer sheet. */
      readonly rounded: Amount;
      readonly rounding: Rounding;
    }
  | { readonly kind: 'choice'; readonly option: 'rises' | 'falls' | 'sounding' | 'silent' };

export interface SheetQuestion {
  /** Names its sentence in the words. */
  readonly id: SheetQuestionId;
  /** Filled into the sentence. */
  readonly given: Readonly<Record<string, Amount>>;
  readonly answer: SheetAnswer;
}

export type SheetQuestionId =
  | 'cell-ohms'
  | 'half-light'
  | 'node-volts-bottom'
  | 'node-volts-top'
  | 'which-way-bottom'
  | 'which-way-top'
  | 'reference'
  | 'sounding-below'
  | 'sounding-above'
  | 'frequency'
  | 'duty'
  | 'first-high';

export interface Worksheet {
  readonly number: number;
  readonly seed: number;
  /** What the sheet's instrument is: the answers are this design's own. */
  readonly design: Design;
  readonly questions: readonly SheetQuestion[];
}

/** A plain instrument with the sheet's values: no hysteresis, and a timer that keeps to the handbook's formula. */
function sheetDesign(base: Design, chosen: Chosen): Design {
  const { r10Ohms, gamma, fixedOhms, cell, belowOhms, raOhms, rbOhms, farads } = chosen;
  const trimmer = { ...base.voices.A.trimmer, rotation: 0 };
  const end = endOhms(trimmer.part, trimmer.ohms);
  const voice: Voice = {
    ...base.voices.A,
    raOhms,
    // The sheet tells RB as one value: what the trimmer leaves at its end is part of it.
    rbFixedOhms: rbOhms - end,
    trimmer,
    capacitor: { ...base.voices.A.capacitor, farads },
    controlVolts: null,
    cell: { ...base.voices.A.cell, r10Ohms, gamma },
    cellKept: 'light',
    divider: { cell, fixedOhms },
    polarity: 'light',
    hysteresisOhms: null,
  };
  const threshold: ThresholdTrimmer = {
    topOhms: 0,
    bottomOhms: 0,
    trimmer: { ...base.threshold.trimmers.A.trimmer, rotation: rotationFor(belowOhms, base) },
  };
  return {
    ...base,
    timer: 'cmos',
    supply: { ...base.supply, diode: false },
    voices: pairOf(() => voice),
    threshold: { arrangement: 'shared', trimmers: pairOf(() => threshold) },
    noise: { ...base.noise, voltsRms: 0 },
  };
}

function rotationFor(belowOhms: Ohms, base: Design): Fraction {
  const { part, ohms } = base.threshold.trimmers.A.trimmer;
  const end = endOhms(part, ohms);
  return (belowOhms - end) / (ohms - 2 * end);
}

const ROUNDING = {
  ohms: { by: 'figures', n: 3, accept: 0.02 },
  factor: { by: 'figures', n: 3, accept: 0.02 },
  volts: { by: 'decimals', n: 2, accept: 0.02 },
  hertz: { by: 'figures', n: 3, accept: 0.02 },
  share: { by: 'decimals', n: 2, accept: 0.02 },
  seconds: { by: 'figures', n: 3, accept: 0.02 },
} as const satisfies Record<string, Rounding>;

/** A value as it is rounded on the answer sheet. A share is rounded as a fraction: 0.57, printed 57 %. */
export function rounded(value: number, { by, n }: Rounding): number {
  return Number(by === 'figures' ? value.toPrecision(n) : value.toFixed(n));
}

function number(kind: Amount['kind'], value: number, rounding: Rounding): SheetAnswer {
  return {
    kind: 'number',
    exact: { kind, value },
    rounded: { kind, value: rounded(value, rounding) },
    rounding,
  };
}

/** Nearer to the reference than this share a node is not asked about: the trade rounds. */
const CLEAR = 0.1;
const REFERENCE_LUX: Lux = 10;

/**
 * The sheet of a pupil. `number` from 1; `seed` is the class's, so that another class, or next year's, has others.
 * `base` gives supply and kinds of part.
 */
export function worksheetOf(pupil: number, seed: number, base: Design): Worksheet {
  const chosen = chosenFor(pupil, seed);
  const design = sheetDesign(base, chosen);
  const supplyVolts = railVolts(design.supply);
  const { lux, raOhms, rbOhms, farads, cell, fixedOhms } = chosen;
  const voice = design.voices.A;
  const ohms = cellOhms(voice.cell, lux);
  // Without hysteresis the gate has one trip point, whatever it did before.
  const state = gatesOf(design, supplyVolts).A.states[stateIndex({ A: false, B: false })]!;
  const shown = rounded(ohms, ROUNDING.ohms);
  const referenceVolts = referenceSource(thresholdFor(design, 'A'), supplyVolts).volts;
  // Another light than before, or the sheet would answer itself.
  const asked = clearLight(voice, state, lux / 4, referenceVolts);
  const askedVolts = nodeVolts(state, 1 / cellOhms(voice.cell, asked));
  const cycle = cycleOf(astableOf(design, 'A', supplyVolts));
  const bottom = cell === 'bottom';
  const ohm = (value: Ohms): Amount => ({ kind: 'ohms', value });
  const rail: Amount = { kind: 'volts', value: supplyVolts };
  const question = (
    id: SheetQuestionId,
    given: SheetQuestion['given'],
    answer: SheetAnswer,
  ): SheetQuestion => ({ id, given, answer });
  const darker = nodeVolts(state, 1 / cellOhms(voice.cell, lux / 10));
  const node = nodeVolts(state, 1 / ohms);
  return {
    number: pupil,
    seed,
    design,
    questions: [
      question(
        'cell-ohms',
        {
          r10: ohm(voice.cell.r10Ohms),
          reference: { kind: 'lux', value: REFERENCE_LUX },
          slope: { kind: 'number', value: voice.cell.gamma },
          lux: { kind: 'lux', value: lux },
        },
        number('ohms', ohms, ROUNDING.ohms),
      ),
      question('half-light', {}, number('ratio', cellOhms(voice.cell, lux / 2) / ohms, ROUNDING.factor)),
      question(
        bottom ? 'node-volts-bottom' : 'node-volts-top',
        { fixed: ohm(fixedOhms), cell: ohm(shown), rail },
        number('volts', node, ROUNDING.volts),
      ),
      question(
        bottom ? 'which-way-bottom' : 'which-way-top',
        {},
        { kind: 'choice', option: darker > node ? 'rises' : 'falls' },
      ),
      question(
        'reference',
        { above: ohm(trimmerOhms(design) - chosen.belowOhms), below: ohm(chosen.belowOhms), rail },
        number('volts', referenceVolts, ROUNDING.volts),
      ),
      question(
        // Sounds in light: a cell at the bottom then holds its node down.
        bottom ? 'sounding-below' : 'sounding-above',
        {
          lux: { kind: 'lux', value: asked },
          node: { kind: 'volts', value: rounded(askedVolts, ROUNDING.volts) },
        },
        { kind: 'choice', option: overdriveVolts(state, askedVolts) > 0 ? 'sounding' : 'silent' },
      ),
      question(
        'frequency',
        { ra: ohm(raOhms), rb: ohm(rbOhms), farads: { kind: 'farads', value: farads } },
        number('hertz', cycle.frequency, ROUNDING.hertz),
      ),
      question('duty', {}, number('share', cycle.dutyCycle, ROUNDING.share)),
      question(
        'first-high',
        { high: { kind: 'seconds', value: rounded(cycle.highSeconds, ROUNDING.seconds) } },
        number('seconds', cycle.firstHighSeconds, ROUNDING.seconds),
      ),
    ],
  };
}

function trimmerOhms(design: Design): Ohms {
  return design.threshold.trimmers.A.trimmer.ohms;
}

/** A light, or the first darker one in which the node is clear of the reference. */
function clearLight({ cell }: Voice, state: GateState, lux: Lux, reference: number): Lux {
  const off = (light: Lux) => Math.abs(nodeVolts(state, 1 / cellOhms(cell, light)) / reference - 1);
  let light = lux;
  while (off(light) < CLEAR && light > lux / 16) light /= 2;
  return light;
}
