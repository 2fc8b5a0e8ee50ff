/**
 * What is heard and measured on one board, healthy or not: three lights one after the other, the board carrying its
 * state along, all from the network; and what only moving light shows, from the closed forms. SI units.
 */
import { astableOf, cycleOf } from '../circuit/astable.ts';
import { gatesOf, tripLux } from '../circuit/gate.ts';
import { jackNet, netlistOf, testNets } from '../circuit/network/design-netlist.ts';
import { type Computed, type NetworkRun, runNetwork } from '../circuit/network/network.ts';
import { railVolts } from '../circuit/supply.ts';
import { type Design, trimmersOf } from '../design/design.ts';
import { TIMERS } from '../parts/timers.ts';
import { type Steps, wholeOf } from '../plan/slices.ts';
import { type Hertz, type Pair, pairOf, VOICES, type VoiceId } from '../quantity/units.ts';
import type { Unit } from '../words/bench.ts';
import type { Hearing, PitchHeard, StartHeard, SweepHeard } from '../words/faults.ts';
import type { Fault } from './faults.ts';
import { type BenchLight, luxIn } from './slip-values.ts';

export const LIGHTS = ['lit', 'A shaded', 'B shaded'] as const;
export type FinderLight = (typeof LIGHTS)[number];

/** Where the meter is put, and in what light. */
export interface Reading {
  readonly id: string;
  readonly net: string | null;
  readonly voice: VoiceId | null;
  readonly point:
    | 'rail'
    | 'node'
    | 'reference'
    | 'plus'
    | 'gate'
    | 'capacitor'
    | 'control'
    | 'out'
    | 'mix'
    | 'current';
  readonly light: FinderLight;
  readonly unit: Unit;
}

/** Every reading a helper may be asked for. */
export function readingsOf(design: Design): readonly Reading[] {
  const out: Reading[] = [];
  const add = (
    point: Reading['point'],
    net: string | null,
    voice: VoiceId | null,
    light: FinderLight,
  ): void => {
    const unit = point === 'current' ? 'A' : 'V';
    out.push({
      id: `${point}${voice === null ? '' : ` ${voice}`}, ${light}`,
      net,
      voice,
      point,
      light,
      unit,
    });
  };
  add('rail', 'rail', null, 'lit');
  for (const light of LIGHTS) add('current', null, null, light);
  const shared = design.threshold.arrangement === 'shared';
  for (const voice of trimmersOf(design))
    add('reference', testNets(design, voice).reference, shared ? null : voice, 'lit');
  for (const voice of VOICES) {
    const nets = testNets(design, voice);
    const shaded = voice === 'A' ? 'A shaded' : 'B shaded';
    for (const light of ['lit', shaded] as const) {
      add('node', nets.node, voice, light);
      add('gate', nets.gate, voice, light);
      add('out', nets.out, design.output.mixOhms === null ? null : voice, light);
    }
    add('capacitor', nets.capacitor, voice, 'lit');
    add('control', nets.control, voice, 'lit');
    if (design.voices[voice].hysteresisOhms !== null) add('plus', `plus ${voice}`, voice, 'lit');
  }
  add('mix', 'mix', null, 'lit');
  return out.filter(({ id }, i) => out.findIndex((other) => other.id === id) === i);
}

export interface Ear {
  readonly heard: Readonly<Record<FinderLight, Pair<Hearing>>>;
  readonly pitch: Pair<PitchHeard>;
  readonly sweep: Pair<SweepHeard>;
  readonly start: StartHeard;
}

export interface Observed {
  readonly ear: Ear;
  /** By id; null = not computed, or no such point on this board. */
  readonly meter: ReadonlyMap<string, number | null>;
  /** Lights in which the network came to no answer. */
  readonly notComputed: readonly FinderLight[];
}

/** What a healthy board of a design does: the measure of loudness and pitch. */
export interface Healthy {
  readonly hertz: Pair<Hertz>;
  readonly amplitude: Pair<number>;
  readonly seconds: number;
}

/** Cycles of the slower voice before measuring, and measured. */
const SETTLE_CYCLES = 2.5;
const MEASURE_CYCLES = 6;

export function healthyOf(design: Design, bench: BenchLight): Healthy {
  const rail = railVolts(design.supply);
  const hertz = pairOf((voice) => cycleOf(astableOf(design, voice, rail)).frequency);
  const slow = Math.min(...VOICES.map((voice) => (hertz[voice] > 0 ? hertz[voice] : 100)));
  const seconds = 1 / Math.max(20, slow);
  // The light in which each voice sounds.
  const amplitude = pairOf((voice) => {
    const light = design.voices[voice].polarity === 'light' ? 'lit' : 'shade';
    const run = runNetwork(netlistOf(design, luxIn(light, bench)), {
      settleSeconds: SETTLE_CYCLES * seconds,
      measureSeconds: MEASURE_CYCLES * seconds,
    });
    return run.kind === 'computed' ? loudnessOf(run, jackNet(design), hertz[voice]) : 0;
  });
  return { hertz, amplitude, seconds };
}

/** What a board with a fault shows. `readings` as of the design. */
export function observe(...board: Parameters<typeof observeSteps>): Observed {
  return wholeOf(observeSteps(...board));
}

/** The same in steps, one for each light. */
export function* observeSteps(
  design: Design,
  fault: Fault,
  bench: BenchLight,
  healthy: Healthy,
  readings: readonly Reading[],
): Steps<Observed> {
  const changed = fault.onDesign(design);
  const runs = new Map<FinderLight, NetworkRun>();
  const times = {
    settleSeconds: SETTLE_CYCLES * healthy.seconds,
    measureSeconds: MEASURE_CYCLES * healthy.seconds,
  };
  for (const light of LIGHTS) {
    const lit = runs.get('lit');
    const from = lit?.kind === 'computed' ? lit.end : undefined;
    runs.set(light, runNetwork(fault.onBoard(netlistOf(changed, luxIn(light, bench))), { ...times, from }));
    yield;
  }
  const computed = (light: FinderLight): Computed | null => {
    const run = runs.get(light);
    return run?.kind === 'computed' ? run : null;
  };
  const jack = jackNet(design);
  const loud = (light: FinderLight, voice: VoiceId): boolean => {
    const run = computed(light);
    const hertz = run?.halves[voice].frequency ?? null;
    if (run === null || hertz === null || hertz < 15 || hertz > 16_000) return false;
    return loudnessOf(run, jack, hertz) > (hertz < WHISTLE ? AUDIBLE : PIERCING) * healthy.amplitude[voice];
  };
  const hearing = (light: FinderLight) =>
    pairOf((voice): Hearing => (loud(light, voice) ? 'sounds' : 'silent'));
  const lit = hearing('lit');
  yield;
  const heard = { lit, 'A shaded': hearing('A shaded'), 'B shaded': hearing('B shaded') };
  yield;
  const meter = new Map(
    readings.map((reading) => [reading.id, readingFrom(computed(reading.light), reading)]),
  );
  return {
    ear: {
      heard,
      pitch: pairOf((voice) => pitchHeard(voice, heard, computed, healthy)),
      sweep: pairOf((voice) => sweepHeard(changed, fault, voice, heard)),
      start:
        !changed.supply.decoupled && TIMERS[changed.timer].spikeAmperes > 0 && heard.lit.A === 'sounds'
          ? 'jumps'
          : 'steady',
    },
    meter,
    notComputed: LIGHTS.filter((light) => computed(light) === null),
  };
}

/** A voice 22 dB weaker than it should be is taken for silent. */
const AUDIBLE = 0.08;

/** Thin pulses at some kilohertz pierce: ears are keenest there, and every overtone is as strong as the first. */
const PIERCING = 0.01;

/** From here on a thin pulse's first overtone is weak, and its next ones are heard with it. */
const WHISTLE: Hertz = 3000;

function loudnessOf(run: Computed, net: string, hertz: Hertz): number {
  const overtones = hertz < WHISTLE ? [1] : [1, 2, 3, 4];
  return Math.hypot(...overtones.map((k) => run.amplitudeOf(net, k * hertz)));
}

function readingFrom(run: Computed | null, reading: Reading): number | null {
  if (run === null) return null;
  if (reading.point === 'current') return run.supplyAmperes;
  return run.meanOf(reading.net ?? '', reading.voice ?? undefined);
}

function pitchHeard(
  voice: VoiceId,
  heard: Ear['heard'],
  computed: (light: FinderLight) => Computed | null,
  healthy: Healthy,
): PitchHeard {
  const light = LIGHTS.find((each) => heard[each][voice] === 'sounds');
  const hertz = light === undefined ? null : (computed(light)?.halves[voice].frequency ?? null);
  if (hertz === null || healthy.hertz[voice] === 0) return 'none';
  const ratio = hertz / healthy.hertz[voice];
  if (ratio < 1 / 3) return 'far lower';
  if (ratio < 1 / 1.3) return 'lower';
  if (ratio > 3) return 'far higher';
  return ratio > 1.3 ? 'higher' : 'right';
}

/** Light to go on over light to go off, from which on a hand's shadow hardly does it. */
const WIDE = 2.5;

/** A slow pass of light through the switching point. */
function sweepHeard(design: Design, fault: Fault, voice: VoiceId, heard: Ear['heard']): SweepHeard {
  const own = voice === 'A' ? 'A shaded' : 'B shaded';
  if (heard.lit[voice] === heard[own][voice] && fault.kind !== 'hysteresis a tenth') return 'none';
  if (fault.hum && fault.voice === voice) return 'rough';
  if (design.voices[voice].hysteresisOhms === null) return 'stutters';
  const { states } = gatesOf(design, railVolts(design.supply))[voice];
  const [on, off] = [tripLux(design, voice, states[0]!), tripLux(design, voice, states[3]!)];
  if (on !== null && off !== null && Math.max(on / off, off / on) > WIDE) return 'wide';
  return 'clean';
}
