/**
 * What a meter should show at each test point of a healthy board, from the closed forms. Voltages as a moving-coil
 * or digital meter on DC averages them; at the jack on AC, rms without DC. SI units.
 */
import { type Astable, astableOf, type Cycle, cycleOf } from '../circuit/astable.ts';
import { steadyConductance } from '../circuit/cell.ts';
import { COMBINATIONS, cellSiemens, gatesOf, nodeVolts, pullOf, stateIndex } from '../circuit/gate.ts';
import { instrumentOf, momentIn } from '../circuit/instrument.ts';
import { jackOf, readoutOf, timerOutput } from '../circuit/output.ts';
import { drainOf, railUnderLoad } from '../circuit/power.ts';
import { type Design, trimmersOf } from '../design/design.ts';
import {
  type Fraction,
  type Lux,
  type Pair,
  pairOf,
  VOICES,
  type VoiceId,
  type Volts,
} from '../quantity/units.ts';
import type { SlipLight, SlipPoint, Unit } from '../words/bench.ts';

/** Light at an open sensor and at a shaded one. */
export interface BenchLight {
  readonly lit: Lux;
  readonly shaded: Lux;
}

export interface SlipValue {
  readonly point: SlipPoint;
  /** Null = one for both voices. */
  readonly voice: VoiceId | null;
  readonly light: SlipLight;
  readonly unit: Unit;
  readonly value: number;
}

const LIGHTS: readonly SlipLight[] = ['lit', 'A shaded', 'B shaded', 'shade'];

export function luxIn(light: SlipLight, { lit, shaded }: BenchLight): Pair<Lux> {
  switch (light) {
    case 'lit':
    case 'any':
      return { A: lit, B: lit };
    case 'shade':
      return { A: shaded, B: shaded };
    case 'A shaded':
      return { A: shaded, B: lit };
    case 'B shaded':
      return { A: lit, B: shaded };
    case 'unplugged':
      return { A: 0, B: 0 };
  }
}

/** What one light does to the board. */
interface Scene extends Play {
  readonly lux: Pair<Lux>;
  readonly astables: Pair<Astable>;
  readonly cycles: Pair<Cycle>;
}

/** What each light does to a board: which voices sound, and the rail that leaves. */
export interface Play {
  readonly light: SlipLight;
  readonly rail: Volts;
  readonly sounding: Pair<boolean>;
}

/** The four lights of the bench. `railVolts`: as measured at TP1; null = what the model expects of the supply. */
export function playsOf(design: Design, bench: BenchLight, railVolts: Volts | null): readonly Play[] {
  const instrument = instrumentOf(design);
  return LIGHTS.map((light) => {
    const moment = momentIn(design, instrument, luxIn(light, bench), { A: false, B: false });
    const sounding = pairOf((voice) => moment[voice].sounding);
    return { light, sounding, rail: railVolts ?? railUnderLoad(design, sounding) };
  });
}

/** Every value of the slip. `plays`: of the board as designed; its parts may lie elsewhere in their tolerance. */
export function slipValues(design: Design, bench: BenchLight, plays: readonly Play[]): readonly SlipValue[] {
  const scenes = plays.map((play): Scene => {
    const astables = pairOf((voice) => astableOf(design, voice, play.rail));
    return {
      ...play,
      lux: luxIn(play.light, bench),
      astables,
      cycles: pairOf((voice) => cycleOf(astables[voice])),
    };
  });
  const [lit, , , shade] = scenes as [Scene, Scene, Scene, Scene];
  const out: SlipValue[] = [];
  const add = (
    point: SlipPoint,
    voice: VoiceId | null,
    where: SlipLight,
    unit: Unit,
    value: number,
  ): void => {
    out.push({ point, voice, light: where, unit, value });
  };
  add('rail', null, 'any', 'V', lit.rail);
  const shared = design.threshold.arrangement === 'shared';
  for (const voice of trimmersOf(design))
    for (const scene of [lit, shade])
      add('reference', shared ? null : voice, scene.light, 'V', referenceVolts(design, voice, scene));
  for (const voice of VOICES) {
    add('control', voice, 'any', 'V', lit.astables[voice].upperVolts);
    add('node', voice, 'unplugged', 'V', unpluggedVolts(design, voice, lit));
    for (const scene of [lit, shade]) {
      const { high, low } = pullOf(design, voice, scene.rail);
      const plays = scene.sounding[voice];
      add('node', voice, scene.light, 'V', nodeAt(design, voice, scene));
      add('gate', voice, scene.light, 'V', gateVolts(design, voice, plays ? high : low, scene));
      add('capacitor', voice, scene.light, 'V', capacitorMean(scene, voice));
      if (design.output.mixOhms !== null)
        add('out', voice, scene.light, 'V', outputMeans(design, scene.rail, highOf(scene)).out[voice]);
    }
    for (const [point, rotation] of [
      ['pitch at low end', 1],
      ['pitch at high end', 0],
      ['pitch at target', null],
    ] as const) {
      const astable = astableOf(design, voice, lit.rail, rotation ?? undefined);
      add(point, voice, 'any', 'Hz', cycleOf(astable).frequency);
    }
  }
  for (const scene of scenes) {
    const high = highOf(scene);
    add('mix', null, scene.light, 'V', outputMeans(design, scene.rail, high).mix);
    const heard = readoutOf(jackOf(design, scene.rail), high);
    add('jack ac', null, scene.light, 'V', heard.both.rmsVolts);
    if (scene === lit) add('jack dc', null, 'any', 'V', heard.dcVolts);
    add('current', null, scene.light, 'A', drainOf(design, scene.rail, scene.sounding, scene.lux).total);
  }
  return out;
}

/** Share of the time each output is high. */
function highOf({ sounding, cycles }: Scene): Pair<Fraction> {
  return pairOf((voice) => (sounding[voice] ? cycles[voice].dutyCycle : 0));
}

function nodeAt(design: Design, voice: VoiceId, { rail, sounding, lux }: Scene): Volts {
  const gate = gatesOf(design, rail)[voice];
  const siemens = cellSiemens(gate, steadyConductance(design.voices[voice].cell.gamma, lux[voice]));
  return nodeVolts(gate.states[stateIndex(sounding)]!, siemens);
}

/** With the cell's lead off, only the fixed resistor and the feedback hold the node. */
function unpluggedVolts(design: Design, voice: VoiceId, { rail, sounding }: Scene): Volts {
  return nodeVolts(gatesOf(design, rail)[voice].states[stateIndex(sounding)]!, 0);
}

/** The wiper with the feedback that hangs on it: the input the node is weighed against, less the feedback's step. */
function referenceVolts(design: Design, voice: VoiceId, { rail, sounding }: Scene): Volts {
  const { hysteresisOhms, inputOhms } = design.voices[voice];
  const state = gatesOf(design, rail)[voice].states[stateIndex(sounding)]!;
  if (state.direction === 1 || hysteresisOhms === null) return state.otherVolts;
  const { high, low } = pullOf(design, voice, rail);
  const out = sounding[voice] ? high : low;
  const share = inputOhms / (inputOhms + hysteresisOhms + out.ohms);
  return (state.otherVolts - out.volts * share) / (1 - share);
}

/** The gate, loaded by its hysteresis resistor. */
function gateVolts(
  design: Design,
  voice: VoiceId,
  out: { readonly volts: Volts; readonly ohms: number },
  scene: Scene,
): Volts {
  const { hysteresisOhms, inputOhms } = design.voices[voice];
  if (hysteresisOhms === null || out.ohms === 0) return out.volts;
  const state = gatesOf(design, scene.rail)[voice].states[stateIndex(scene.sounding)]!;
  const behind = state.direction === 1 ? nodeAt(design, voice, scene) : referenceVolts(design, voice, scene);
  const amperes = (out.volts - behind) / (out.ohms + hysteresisOhms + inputOhms);
  return out.volts - amperes * out.ohms;
}

/** Mean of the capacitor: each exponential's own integral over the steady cycle. */
function capacitorMean(scene: Scene, voice: VoiceId): Volts {
  const a = scene.astables[voice];
  const { highSeconds, lowSeconds, frequency } = scene.cycles[voice];
  if (!scene.sounding[voice]) return a.sinkVolts;
  if (frequency === 0) return a.chargeVolts;
  const swing = a.upperVolts - a.lowerVolts;
  const rise = a.chargeVolts * highSeconds - a.chargeOhms * a.farads * swing;
  const fall = a.sinkVolts * lowSeconds + a.sinkOhms * a.farads * swing;
  return (rise + fall) * frequency;
}

/** Means behind the timers' outputs. */
interface OutputMeans {
  readonly mix: Volts;
  readonly out: Pair<Volts>;
}

/**
 * Means at the outputs and the mixing point, for voices independent of each other and high these shares of their
 * time; a coupling capacitor lets no direct current past.
 */
function outputMeans(design: Design, rail: Volts, high: Pair<Fraction>): OutputMeans {
  const { mixOhms, shuntOhms, volume, coupling, loadOhms } = design.output;
  let onward = shuntOhms === null ? 0 : 1 / shuntOhms;
  if (volume !== null) {
    const below = volume.rotation * volume.ohms;
    const loaded = coupling === null ? (below * loadOhms) / (below + loadOhms) : below;
    onward += 1 / (volume.ohms - below + loaded);
  } else if (coupling === null) onward += 1 / loadOhms;
  let mix = 0;
  const out = { A: 0, B: 0 };
  for (const outputs of COMBINATIONS) {
    const share = VOICES.reduce((all, voice) => all * (outputs[voice] ? high[voice] : 1 - high[voice]), 1);
    const drives = pairOf((voice) => {
      const { volts, ohms } = timerOutput(design, rail, outputs[voice]);
      return { volts, ohms, siemens: 1 / (ohms + (mixOhms?.[voice] ?? 0)) };
    });
    const siemens = drives.A.siemens + drives.B.siemens + onward;
    const mixed = (drives.A.volts * drives.A.siemens + drives.B.volts * drives.B.siemens) / siemens;
    mix += share * mixed;
    for (const voice of VOICES) {
      const { volts, ohms, siemens: own } = drives[voice];
      out[voice] += share * (volts - (volts - mixed) * own * ohms);
    }
  }
  return { mix, out };
}
