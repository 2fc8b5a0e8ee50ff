/**
 * Light cell, divider, reference, comparator and reset pin: from the cell's conductance to "sounding".
 *
 * The output is an open collector pulled up to the supply; feedback through the hysteresis resistor works
 * against the resistor in series with the + input. Which side the + input takes follows from what the voice
 * should do: the output must rise where the voice should sound. Where that side is the sensor node, the
 * divider's own resistance is part of the network; where it is the reference, the trimmer's is, and a shared
 * trimmer carries the feedback of both voices. SI units. Equations: Kirchhoff at each node; checked against
 * TI SNOS018 (LMV331/393) eq. 3–8 in the tests.
 */
import type { CellPosition, Design, ThresholdTrimmer } from '../design/design.ts';
import { thresholdFor } from '../design/design.ts';
import { CELLS } from '../parts/cells.ts';
import { COMPARATORS, type ComparatorFamily } from '../parts/comparators.ts';
import { TIMERS } from '../parts/timers.ts';
import { endOhms } from '../parts/trimmers.ts';
import type { Fraction, Lux, Ohms, Pair, VoiceId, Volts } from '../quantity/units.ts';
import { pairOf, VOICES } from '../quantity/units.ts';
import { cellOf, luxFor } from './cell.ts';

/** A voltage behind a resistance. */
export interface Source {
  readonly volts: Volts;
  readonly ohms: Ohms;
}

/** Comparator output of each voice: true = off, pulled high, the timer released. */
export type Outputs = Pair<boolean>;

/** Comparator output: pulled up (less what the reset pin takes), or held down. */
export interface Pull {
  readonly high: Source;
  readonly low: Source;
}

/** The reference a threshold trimmer gives, unloaded, and the resistance behind its wiper. */
export function referenceSource(part: ThresholdTrimmer, supplyVolts: Volts): Source {
  const { trimmer, topOhms, bottomOhms } = part;
  const below = bottomOhms + wiperOhms(part);
  const total = topOhms + trimmer.ohms + bottomOhms;
  return { volts: (supplyVolts * below) / total, ohms: (below * (total - below)) / total };
}

function wiperOhms({ trimmer }: ThresholdTrimmer): Ohms {
  const end = endOhms(trimmer.part, trimmer.ohms);
  return end + trimmer.rotation * (trimmer.ohms - 2 * end);
}

/** Rotation that gives a reference voltage; below 0 or above 1 when the trimmer cannot reach it. */
export function rotationForVolts(part: ThresholdTrimmer, supplyVolts: Volts, volts: Volts): Fraction {
  const { trimmer, topOhms, bottomOhms } = part;
  const end = endOhms(trimmer.part, trimmer.ohms);
  const below = (volts / supplyVolts) * (topOhms + trimmer.ohms + bottomOhms);
  return (below - bottomOhms - end) / (trimmer.ohms - 2 * end);
}

/** The comparator's output with its pull-up, feeding the reset pin. */
export function pullOf(design: Design, voice: VoiceId, supplyVolts: Volts): Pull {
  const { pullUpOhms } = design.voices[voice];
  const timer = TIMERS[design.timer];
  const { saturationOhms } = COMPARATORS[design.comparator];
  const sunk = supplyVolts / pullUpOhms + timer.resetLowAmperes;
  return {
    high: { volts: Math.max(0, supplyVolts - timer.resetHighAmperes * pullUpOhms), ohms: pullUpOhms },
    low: { volts: (saturationOhms * sunk) / (1 + saturationOhms / pullUpOhms), ohms: 0 },
  };
}

/** Feedback path as one conductance from the + side's node to the output's source; 0 = none fitted. */
function feedbackSiemens(inputOhms: Ohms, hysteresisOhms: Ohms | null, out: Source): number {
  return hysteresisOhms === null ? 0 : 1 / (inputOhms + hysteresisOhms + out.ohms);
}

/** Voltage at a + input fed by a stiff node through `inputOhms`, with feedback from the output. */
export function plusVolts(node: Volts, inputOhms: Ohms, hysteresisOhms: Ohms | null, out: Source): Volts {
  return node + (out.volts - node) * inputOhms * feedbackSiemens(inputOhms, hysteresisOhms, out);
}

/** Voltage at a node with a source of its own and feedback paths hanging on it. */
export function loadedVolts(
  source: Source,
  paths: readonly { readonly siemens: number; readonly volts: Volts }[],
): Volts {
  // Written with the source's ohms as a factor so that a stiff source (0 Ω) needs no special case.
  let siemens = 1;
  let amperes = source.volts;
  for (const path of paths) {
    siemens += source.ohms * path.siemens;
    amperes += source.ohms * path.siemens * path.volts;
  }
  return amperes / siemens;
}

/** Whether the + input takes the sensor node (true) or the reference (false). */
export function plusIsSensor(cell: CellPosition, polarity: 'light' | 'shade'): boolean {
  return (cell === 'top') === (polarity === 'light');
}

/**
 * One voice's gate for one pair of comparator outputs, reduced to constants: node volts from the cell's
 * conductance g are (n0 + n1·g)/(d0 + g).
 */
export interface GateState {
  readonly n0: number;
  readonly n1: number;
  readonly d0: number;
  /** +1: the output is high while the node is above `tripVolts`; −1: while it is below. */
  readonly direction: 1 | -1;
  /** Node voltage at which this state tips; Infinity when no voltage does it. */
  readonly tripVolts: Volts;
  /** The sensor's input pin from its node: node·plusShare + plusOffset. */
  readonly plusShare: number;
  readonly plusOffset: Volts;
  /** The input the sensor is weighed against: the − input, or the + input with its feedback. */
  readonly otherVolts: Volts;
  /** Inputs above this are outside the comparator's common-mode range. */
  readonly limitVolts: Volts;
}

/** One voice's gate: the four states (both comparators' outputs), and how the reset pin reads them. */
export interface Gate {
  readonly r10Ohms: Ohms;
  readonly darkSiemens: number;
  /** Index: (A high ? 1 : 0) + (B high ? 2 : 0). */
  readonly states: readonly GateState[];
  /** Does a high output release the timer, and does a low one silence it? */
  readonly releases: boolean;
  readonly silences: boolean;
}

/** The four pairs of outputs, in the order of `stateIndex`. */
export const COMBINATIONS: readonly Outputs[] = [0, 1, 2, 3].map((i) => ({
  A: (i & 1) === 1,
  B: (i & 2) === 2,
}));

/** Index of a pair of outputs in `Gate.states`. */
export function stateIndex(outputs: Outputs): number {
  return (outputs.A ? 1 : 0) + (outputs.B ? 2 : 0);
}

/** Both gates of a design at a supply voltage. */
export function gatesOf(design: Design, supplyVolts: Volts): Pair<Gate> {
  const pulls = pairOf((voice) => pullOf(design, voice, supplyVolts));
  return pairOf((voice) => {
    const cell = cellOf(design.voices[voice]);
    const reset = TIMERS[design.timer].resetVolts.typical;
    return {
      r10Ohms: cell.r10Ohms,
      darkSiemens: 1 / CELLS[cell.family].darkOhms,
      states: COMBINATIONS.map((outputs) => gateState(design, voice, supplyVolts, pulls, outputs)),
      releases: pulls[voice].high.volts > reset,
      silences: pulls[voice].low.volts < reset,
    };
  });
}

function gateState(
  design: Design,
  voice: VoiceId,
  supplyVolts: Volts,
  pulls: Pair<Pull>,
  outputs: Outputs,
): GateState {
  const v = design.voices[voice];
  const family = COMPARATORS[design.comparator];
  const out = pullFor(pulls[voice], outputs[voice]);
  const sensor = plusIsSensor(v.divider.cell, v.polarity);
  const path = sensor ? feedbackSiemens(v.inputOhms, v.hysteresisOhms, out) : 0;
  const fixed = 1 / v.divider.fixedOhms;
  const onTop = v.divider.cell === 'top';
  const wiper = wiperVolts(design, voice, supplyVolts, pulls, outputs);
  const plusShare = 1 - v.inputOhms * path;
  const plusOffset = out.volts * v.inputOhms * path;
  const otherVolts = sensor ? wiper : plusVolts(wiper, v.inputOhms, v.hysteresisOhms, out);
  const limitVolts = supplyVolts - family.headroomVolts;
  return {
    n0: (onTop ? 0 : supplyVolts * fixed) + out.volts * path,
    n1: onTop ? supplyVolts : 0,
    d0: fixed + path,
    direction: sensor ? 1 : -1,
    tripVolts: (inputTripVolts(sensor, otherVolts, limitVolts, family) - plusOffset) / plusShare,
    plusShare,
    plusOffset,
    otherVolts,
    limitVolts,
  };
}

/**
 * Voltage at the sensor's pin at which the output tips. One input outside the common-mode range still
 * compares rightly; with both outside the die has its own habit, low or high, and the range's edge takes the
 * place of the comparison, or nothing tips it at all (Infinity).
 */
function inputTripVolts(
  plusIsTheSensor: boolean,
  otherVolts: Volts,
  limitVolts: Volts,
  family: ComparatorFamily,
): Volts {
  if (otherVolts < limitVolts) return otherVolts;
  const staysAsItIs = plusIsTheSensor === (family.bothInputsHigh === 'low');
  return staysAsItIs ? Number.POSITIVE_INFINITY : limitVolts;
}

/** The wiper of this voice's trimmer, carrying the feedback of every voice that returns it there. */
function wiperVolts(
  design: Design,
  voice: VoiceId,
  supplyVolts: Volts,
  pulls: Pair<Pull>,
  outputs: Outputs,
): Volts {
  const onThisWiper = VOICES.filter((other) => {
    const v = design.voices[other];
    const sameWiper = other === voice || design.threshold.arrangement === 'shared';
    return sameWiper && v.hysteresisOhms !== null && !plusIsSensor(v.divider.cell, v.polarity);
  });
  return loadedVolts(
    referenceSource(thresholdFor(design, voice), supplyVolts),
    onThisWiper.map((other) => {
      const v = design.voices[other];
      const out = pullFor(pulls[other], outputs[other]);
      return { siemens: feedbackSiemens(v.inputOhms, v.hysteresisOhms, out), volts: out.volts };
    }),
  );
}

function pullFor(pull: Pull, high: boolean): Source {
  return high ? pull.high : pull.low;
}

/** Conductance of the cell as the divider sees it, from its relative conductance. */
export function cellSiemens(gate: Gate, y: number): number {
  return Math.max(gate.darkSiemens, y / gate.r10Ohms);
}

/** Volts at the sensor node for a conductance of the cell. */
export function nodeVolts(state: GateState, siemens: number): Volts {
  return (state.n0 + state.n1 * siemens) / (state.d0 + siemens);
}

/** Rate of change of the node with the conductance, V/S. */
export function nodeSlope(state: GateState, siemens: number): number {
  const d = state.d0 + siemens;
  return (state.n1 * state.d0 - state.n0) / (d * d);
}

/**
 * How far the comparator is from switching, in volts of the node: above 0 its output is (or goes) high.
 */
export function overdriveVolts(state: GateState, node: Volts): Volts {
  return state.direction * (node - state.tripVolts);
}

/** Which inputs are above the common-mode range. */
export type CommonMode = 'inside' | 'one above' | 'both above';

export function commonModeOf(state: GateState, node: Volts): CommonMode {
  const sensorInput = node * state.plusShare + state.plusOffset;
  const above = Number(sensorInput > state.limitVolts) + Number(state.otherVolts > state.limitVolts);
  return above === 2 ? 'both above' : above === 1 ? 'one above' : 'inside';
}

/** The steady light at which this state's comparison tips; null when no light does it. */
export function tripLux(design: Design, voice: VoiceId, state: GateState): Lux | null {
  const node = state.tripVolts;
  const siemens = (state.n0 - node * state.d0) / (node - state.n1);
  return siemens > 0 && Number.isFinite(siemens) ? luxFor(cellOf(design.voices[voice]), 1 / siemens) : null;
}
