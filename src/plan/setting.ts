/**
 * One voice's gate seen from its threshold trimmer: the rotation at which a comparator tips for a conductance of its
 * cell, in closed form, and the light at which it tips for a rotation. The equations are those of `circuit/gate.ts`,
 * solved the other way round: input pin → wiper (less the feedback on it) → place on the trimmer, a quadratic.
 */
import { type CellSpeed, cellSpeed } from '../circuit/cell.ts';
import {
  type Gate,
  type GateState,
  gatesOf,
  loadedVolts,
  nodeVolts,
  type Pull,
  plusIsSensor,
  pullOf,
  referenceSource,
  rotationForVolts,
  stateIndex,
} from '../circuit/gate.ts';
import { railVolts } from '../circuit/supply.ts';
import { type Design, type ThresholdTrimmer, thresholdFor } from '../design/design.ts';
import { type Fraction, type Pair, pairOf, VOICES, type VoiceId, type Volts } from '../quantity/units.ts';

interface Path {
  readonly siemens: number;
  readonly volts: Volts;
}

/** A gate with the other comparator's output held low or high, and what hangs on its wiper in each state of its own. */
interface Case {
  readonly silent: GateState;
  readonly sounding: GateState;
  readonly silentPaths: readonly Path[];
  readonly soundingPaths: readonly Path[];
}

/** Everything about one voice that does not depend on the rotation of its threshold trimmer. */
export interface VoiceSetting {
  readonly voice: VoiceId;
  readonly trimmer: ThresholdTrimmer;
  readonly rail: Volts;
  readonly gate: Gate;
  readonly speed: CellSpeed;
  /** The node rises with the light (cell on top). */
  readonly nodeRises: boolean;
  /** The output is high (sounding) in light. */
  readonly soundsInLight: boolean;
  readonly plusIsSensor: boolean;
  /** Feedback against a stiff reference: pin = wiper + (out − wiper)·share. Share 0 without. */
  readonly feedback: { readonly low: Feedback; readonly high: Feedback };
  /** Two cases on a shared trimmer that carries the other voice's feedback, else one. */
  readonly cases: readonly Case[];
  /** Added to what the reference input is read as: the comparator's offset. */
  readonly offsetVolts: Volts;
}

interface Feedback {
  readonly share: number;
  readonly volts: Volts;
}

/** Both voices' gates made ready, with a comparator offset each (0 unless given). */
export function settingsFor(design: Design, offsets: Pair<Volts> = { A: 0, B: 0 }): Pair<VoiceSetting> {
  const rail = railVolts(design.supply);
  const gates = gatesOf(design, rail);
  const pulls = pairOf((voice) => pullOf(design, voice, rail));
  return pairOf((voice) => {
    const v = design.voices[voice];
    const sensor = plusIsSensor(v.divider.cell, v.polarity);
    const share = (ohms: number) =>
      sensor || v.hysteresisOhms === null ? 0 : v.inputOhms / (v.inputOhms + v.hysteresisOhms + ohms);
    const { high, low } = pulls[voice];
    return {
      voice,
      trimmer: thresholdFor(design, voice),
      rail,
      gate: gates[voice],
      speed: cellSpeed(v.cell),
      nodeRises: v.divider.cell === 'top',
      soundsInLight: v.polarity === 'light',
      plusIsSensor: sensor,
      feedback: {
        low: { share: share(low.ohms), volts: low.volts },
        high: { share: share(high.ohms), volts: high.volts },
      },
      cases: casesOf(design, voice, gates[voice], pulls),
      offsetVolts: offsets[voice],
    };
  });
}

function casesOf(design: Design, voice: VoiceId, gate: Gate, pulls: Pair<Pull>): readonly Case[] {
  const other: VoiceId = voice === 'A' ? 'B' : 'A';
  const loads = VOICES.filter((each) => {
    const v = design.voices[each];
    const sameWiper = each === voice || design.threshold.arrangement === 'shared';
    return sameWiper && v.hysteresisOhms !== null && !plusIsSensor(v.divider.cell, v.polarity);
  });
  const caseFor = (otherHigh: boolean): Case => {
    const outputs = (own: boolean): Pair<boolean> =>
      voice === 'A' ? { A: own, B: otherHigh } : { A: otherHigh, B: own };
    const paths = (own: boolean): readonly Path[] =>
      loads.map((each) => {
        const v = design.voices[each];
        const out = outputs(own)[each] ? pulls[each].high : pulls[each].low;
        return { siemens: 1 / (v.inputOhms + v.hysteresisOhms! + out.ohms), volts: out.volts };
      });
    return {
      silent: gate.states[stateIndex(outputs(false))]!,
      sounding: gate.states[stateIndex(outputs(true))]!,
      silentPaths: paths(false),
      soundingPaths: paths(true),
    };
  };
  return loads.includes(other) ? [caseFor(false), caseFor(true)] : [caseFor(false)];
}

/** What a comparator is asked: its own output now, and the conductance (S) of the cell, node noise added. */
export interface Question {
  readonly high: boolean;
  readonly siemens: number;
  /** Added to the node, V. */
  readonly shift: Volts;
}

/** Rotation at which the comparator just tips; outside 0…1 where the trimmer does not reach. One for each case. */
export function tippingRotations(
  setting: VoiceSetting,
  { high, siemens, shift }: Question,
): readonly Fraction[] {
  return setting.cases.map((each) => {
    const state = high ? each.sounding : each.silent;
    const pin = (nodeVolts(state, siemens) + shift) * state.plusShare + state.plusOffset;
    return rotationAtPin(
      setting,
      high,
      high ? each.soundingPaths : each.silentPaths,
      pin - setting.offsetVolts,
    );
  });
}

/** The rotation up to which the reference input stays inside the comparator's common-mode range in every state. */
export function commonModeRotation(setting: VoiceSetting): Fraction {
  const { limitVolts } = setting.cases[0]!.silent;
  const places = setting.cases.flatMap(({ silentPaths, soundingPaths }) => [
    rotationAtPin(setting, false, silentPaths, limitVolts),
    rotationAtPin(setting, true, soundingPaths, limitVolts),
  ]);
  return Math.min(...places);
}

/** Conductances of the cell (S) at which the comparator tips at a rotation, one for each case; null where none does. */
export function tippingSiemens(
  setting: VoiceSetting,
  rotation: Fraction,
  high: boolean,
  shift: Volts,
): readonly (number | 'always above' | 'never above')[] {
  return setting.cases.map((each) => {
    const state = high ? each.sounding : each.silent;
    const pin = pinAt(setting, rotation, high, high ? each.soundingPaths : each.silentPaths);
    const node = (pin + setting.offsetVolts - state.plusOffset) / state.plusShare - shift;
    const siemens = (state.n0 - node * state.d0) / (node - state.n1);
    if (siemens > 0 && Number.isFinite(siemens)) return siemens;
    // Beyond what any light gives: the node is above that volt always or never.
    return nodeVolts(state, 0) > node && nodeVolts(state, 1) > node ? 'always above' : 'never above';
  });
}

/** The reference pin at a rotation, for the voice's own output. */
function pinAt(setting: VoiceSetting, rotation: Fraction, high: boolean, paths: readonly Path[]): Volts {
  const { trimmer, rail, feedback } = setting;
  const turned = { ...trimmer, trimmer: { ...trimmer.trimmer, rotation } };
  const wiper = loadedVolts(referenceSource(turned, rail), paths);
  const { share, volts } = high ? feedback.high : feedback.low;
  return wiper + (volts - wiper) * share;
}

function rotationAtPin(
  { trimmer, rail, feedback }: VoiceSetting,
  high: boolean,
  paths: readonly Path[],
  pin: Volts,
): Fraction {
  const { share, volts } = high ? feedback.high : feedback.low;
  const wiper = (pin - volts * share) / (1 - share);
  let siemens = 0;
  let amperes = 0;
  for (const path of paths) {
    siemens += path.siemens;
    amperes += path.siemens * path.volts;
  }
  // wiper·(1 + S·b(T − b)/T) = V·b/T + Q·b(T − b)/T for the ohms b below the wiper; the smaller root is the one wanted.
  const total = trimmer.topOhms + trimmer.trimmer.ohms + trimmer.bottomOhms;
  const pulled = amperes - wiper * siemens;
  const linear = rail + pulled * total;
  const root = Math.sqrt(Math.max(0, linear * linear - 4 * pulled * wiper * total));
  const below = (2 * wiper * total) / (linear + root);
  return rotationForVolts(trimmer, rail, (rail * below) / total);
}

/** What a meter reads on the wiper, with both comparators' outputs as given. */
export function testPointVolts(
  design: Design,
  trimmer: VoiceId,
  rotation: Fraction,
  outputs: Pair<boolean>,
): Volts {
  const settings = settingsFor(design);
  const setting = settings[trimmer];
  const other: VoiceId = trimmer === 'A' ? 'B' : 'A';
  const each = setting.cases[setting.cases.length > 1 && outputs[other] ? 1 : 0]!;
  const paths = outputs[trimmer] ? each.soundingPaths : each.silentPaths;
  const turned = {
    ...setting.trimmer,
    trimmer: { ...setting.trimmer.trimmer, rotation },
  };
  return loadedVolts(referenceSource(turned, setting.rail), paths);
}
