/**
 * The whole signal path of one design, in order: light, divider, comparator, astable, output. Everything the
 * page says about a voice comes from here, and the sound is made from the same parts.
 */
import type { Design } from '../design/design.ts';
import { thresholdFor } from '../design/design.ts';
import type { Fraction, Hertz, Lux, Pair, VoiceId, Volts } from '../quantity/units.ts';
import { pairOf } from '../quantity/units.ts';
import { type Astable, astableOf, type Cycle, cycleOf } from './astable.ts';
import { type CellSpeed, cellSpeed, steadyConductance } from './cell.ts';
import {
  type CommonMode,
  cellSiemens,
  commonModeOf,
  type Gate,
  gatesOf,
  nodeVolts,
  overdriveVolts,
  pullOf,
  referenceSource,
  stateIndex,
  tripLux,
} from './gate.ts';
import { cornerHertz, type Jack, type JackReadout, jackOf, readoutOf } from './output.ts';
import { type Power, powerOf } from './power.ts';
import { railVolts, upperDipVolts } from './supply.ts';

/** What the light must do to change a voice, slowly and without noise. Null = no light does it. */
export interface TripPoints<T> {
  /** A silent voice starts here. */
  readonly on: T | null;
  /** A sounding voice stops here. */
  readonly off: T | null;
}

export interface VoiceBehaviour {
  readonly cycle: Cycle;
  /** Frequency at the two ends of the pitch trimmer: turned to 0, turned to 1. */
  readonly endHertz: readonly [Hertz, Hertz];
  /** Cents of pitch for one per cent of turn, here; null when the voice does not run. */
  readonly centsPerPercent: number | null;
  readonly referenceVolts: Volts;
  readonly tripLux: TripPoints<Lux>;
  readonly tripVolts: TripPoints<Volts>;
  /** Reset pin with the comparator's output high and low. */
  readonly gateVolts: { readonly high: Volts; readonly low: Volts };
  /** False when the pull-up starves the reset pin: the voice can never sound. */
  readonly releases: boolean;
  /** False when the reset pin is not pulled low enough: the voice can never be silenced. */
  readonly silences: boolean;
}

export interface Instrument {
  /** Unloaded; what the instrument's own current takes from it is told in `power`. */
  readonly railVolts: Volts;
  readonly astables: Pair<Astable>;
  /** How far a voice's upper level falls for an instant at the other's output edges. */
  readonly upperDips: Pair<Volts>;
  readonly speeds: Pair<CellSpeed>;
  readonly gates: Pair<Gate>;
  readonly jack: Jack;
  /** Below this the coupling capacitor takes the sound away (−3 dB); null = none fitted. */
  readonly jackCornerHertz: Hertz | null;
  /** Levels, DC and headphone power at the jack. */
  readonly level: JackReadout;
  /** Supply current, sag and hours for each state of the gates. */
  readonly power: Power;
  readonly voices: Pair<VoiceBehaviour>;
}

/**
 * Behaviour of a design. Pure: the same design gives equal values. Everything but `power` is for the unloaded
 * rail: the sag of a fresh supply is some tens of millivolts, both the levels and the references are shares of
 * the rail, and a rail that depended on the gates would make every readout depend on the light.
 */
export function instrumentOf(design: Design): Instrument {
  const rail = railVolts(design.supply);
  const gates = gatesOf(design, rail);
  const astables = pairOf((voice) => astableOf(design, voice, rail));
  const jack = jackOf(design, rail);
  const voices = pairOf((voice) => behaviourOf(design, voice, rail, gates[voice], astables[voice]));
  return {
    railVolts: rail,
    astables,
    upperDips: pairOf((voice) =>
      upperDipVolts(design.supply.sharedDipVolts, design.voices[voice].controlVolts),
    ),
    speeds: pairOf((voice) => cellSpeed(design.voices[voice].cell)),
    gates,
    jack,
    jackCornerHertz: cornerHertz(jack),
    level: readoutOf(
      jack,
      pairOf((voice) => voices[voice].cycle.dutyCycle),
    ),
    power: powerOf(design),
    voices,
  };
}

function behaviourOf(
  design: Design,
  voice: VoiceId,
  rail: Volts,
  gate: Gate,
  astable: Astable,
): VoiceBehaviour {
  const pull = pullOf(design, voice, rail);
  // Trip points are told for both voices in one light: the other comparator does the same as this one.
  const silent = gate.states[stateIndex({ A: false, B: false })]!;
  const sounding = gate.states[stateIndex({ A: true, B: true })]!;
  const hertzAt = (rotation: Fraction) => cycleOf(astableOf(design, voice, rail, rotation)).frequency;
  return {
    cycle: cycleOf(astable),
    endHertz: [hertzAt(0), hertzAt(1)],
    centsPerPercent: centsPerPercent(design.voices[voice].trimmer.rotation, hertzAt),
    referenceVolts: referenceSource(thresholdFor(design, voice), rail).volts,
    tripLux: { on: tripLux(design, voice, silent), off: tripLux(design, voice, sounding) },
    tripVolts: { on: finiteOrNull(silent.tripVolts), off: finiteOrNull(sounding.tripVolts) },
    gateVolts: { high: pull.high.volts, low: pull.low.volts },
    releases: gate.releases,
    silences: gate.silences,
  };
}

function finiteOrNull(volts: Volts): Volts | null {
  return Number.isFinite(volts) ? volts : null;
}

function centsPerPercent(rotation: Fraction, hertzAt: (rotation: Fraction) => Hertz): number | null {
  const from = Math.max(0, rotation - 0.005);
  const to = Math.min(1, rotation + 0.005);
  const [low, high] = [hertzAt(from), hertzAt(to)];
  return low > 0 && high > 0 ? (1200 * Math.log2(low / high)) / ((to - from) * 100) : null;
}

/** What one voice does in a steady light, remembering (hysteresis) what it did before. */
export interface Moment {
  readonly nodeVolts: Volts;
  readonly sounding: boolean;
  readonly commonMode: CommonMode;
}

/** Both voices in a steady light. `before` decides between the trip points. */
export function momentIn(
  design: Design,
  instrument: Instrument,
  lux: Pair<Lux>,
  before: Pair<boolean>,
): Pair<Moment> {
  let outputs = before;
  const siemens = pairOf((voice) =>
    cellSiemens(instrument.gates[voice], steadyConductance(design.voices[voice].cell.gamma, lux[voice])),
  );
  const node = (voice: VoiceId) =>
    nodeVolts(instrument.gates[voice].states[stateIndex(outputs)]!, siemens[voice]);
  // Each change can move the other voice's reference, so settle in turns; feedback is positive, so it settles.
  for (let turn = 0; turn < 4; turn++) {
    const current = outputs;
    outputs = pairOf(
      (voice) => overdriveVolts(instrument.gates[voice].states[stateIndex(current)]!, node(voice)) > 0,
    );
    if (outputs.A === current.A && outputs.B === current.B) break;
  }
  return pairOf((voice) => {
    const gate = instrument.gates[voice];
    return {
      nodeVolts: node(voice),
      sounding: outputs[voice] ? gate.releases : !gate.silences,
      commonMode: commonModeOf(gate.states[stateIndex(outputs)]!, node(voice)),
    };
  });
}
