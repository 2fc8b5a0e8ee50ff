/**
 * Both gates in time: cells moved by their rate equation, comparators switched at the exact moment.
 *
 * Time advances on a fixed grid of 1/3 ms (split where the light bends), so that results do not depend on how
 * the caller cuts time into blocks. Within a piece the node follows a cubic through its values and slopes at
 * both ends; noise is a straight line between independent values at the grid. The comparator's response
 * (about 1.3 µs) is neglected.
 */
import { conductanceSlope, steadyConductance, stepConductance } from '../circuit/cell.ts';
import {
  cellSiemens,
  type Gate,
  type GateState,
  nodeSlope,
  nodeVolts,
  overdriveVolts,
} from '../circuit/gate.ts';
import { playedFrom } from '../light/playing.ts';
import { aimed, type LightProgram, luxAt, luxBefore, meanLuxAt, nextBreak } from '../light/program.ts';
import { gaussianFrom } from '../quantity/random.ts';
import { type Lux, type Pair, type Seconds, VOICES, type VoiceId, type Volts } from '../quantity/units.ts';
import type { EngineSettings } from './settings.ts';

/** Grid steps in a second. */
export const GRID = 3000;

/** A comparator tips only when it is clearly past its point: rounding must not toggle it. */
const CLEARLY: Volts = 1e-9;

/** More changes than this within one piece of a step would be noise of the arithmetic, not of the circuit. */
const MOST_CHANGES = 16;

interface Side {
  y: number;
  noise: Volts;
  readonly gaussian: () => number;
  high: boolean;
  /** The node over the piece at hand, as a cubic in 0…1: value and slope at both ends. */
  n0: Volts;
  n1: Volts;
  m0: Volts;
  m1: Volts;
}

/** Called at each change of a reset pin: voice, time, released (true) or held (false). */
export type PinListener = (voice: VoiceId, time: Seconds, released: boolean) => void;

export class Gating {
  #settings: EngineSettings;
  #program: LightProgram;
  #step = 0;
  readonly #sides: Record<VoiceId, Side>;

  /** Starts settled in the light at time 0, silent unless that light says otherwise. */
  constructor(settings: EngineSettings, program: LightProgram) {
    this.#settings = settings;
    this.#program = program;
    const side = (voice: VoiceId, salt: number): Side => ({
      y: steadyConductance(settings.speeds[voice].gamma, meanLuxAt(program, voice, 0)),
      noise: 0,
      gaussian: gaussianFrom(settings.noise.seed * 2 + salt),
      high: false,
      n0: 0,
      n1: 0,
      m0: 0,
      m1: 0,
    });
    this.#sides = { A: side('A', 0), B: side('B', 1) };
    this.settle();
  }

  /** Time reached so far. */
  get time(): Seconds {
    return this.#step / GRID;
  }

  /** Light at a sensor now, as a meter reads it: without the ripple of a lamp. */
  lux(voice: VoiceId): Lux {
    return meanLuxAt(this.#program, voice, this.time);
  }

  /** Relative conductance of a cell. */
  conductance(voice: VoiceId): number {
    return this.#sides[voice].y;
  }

  /** Volts at a sensor's node, noise included. */
  node(voice: VoiceId): Volts {
    const side = this.#sides[voice];
    return this.#nodeAt(voice, side.y) + side.noise;
  }

  /** Whether a reset pin is released: the comparator's output, as the pin reads it. */
  released(voice: VoiceId): boolean {
    return reads(this.#settings.gates[voice], this.#sides[voice].high);
  }

  setSettings(settings: EngineSettings): void {
    this.#settings = settings;
  }

  /** Plays a program from now on, `place` seconds into it. */
  play(program: LightProgram, place: Seconds): void {
    this.#program = playedFrom(program, this.time, place);
  }

  /** From the present light straight to another; a lamp's ripple stays. */
  aim(lux: Pair<Lux>, duration: Seconds): void {
    this.#program = aimed(this.#program, this.time, lux, duration);
  }

  /** Lets the comparators answer to the present node voltages, without passing time. */
  settle(): void {
    for (let turn = 0; turn < 4; turn++) {
      let changed = false;
      for (const voice of VOICES) {
        const side = this.#sides[voice];
        const high = overdriveVolts(this.#state(voice), this.node(voice)) > 0;
        changed ||= high !== side.high;
        side.high = high;
      }
      if (!changed) return;
    }
  }

  /** One grid step. Changes of the reset pins are told in order of time. */
  advance(onPin: PinListener): void {
    const start = this.#step / GRID;
    const end = (this.#step + 1) / GRID;
    const { A, B } = this.#sides;
    const rms = this.#settings.noise.voltsRms;
    const nextA = rms > 0 ? rms * A.gaussian() : 0;
    const nextB = rms > 0 ? rms * B.gaussian() : 0;
    const noiseA = A.noise;
    const noiseB = B.noise;
    let from = start;
    while (from < end) {
      const to = Math.min(end, nextBreak(this.#program, from));
      const share = (to - start) * GRID;
      this.#prepare('A', from, to, noiseA + (nextA - noiseA) * share);
      this.#prepare('B', from, to, noiseB + (nextB - noiseB) * share);
      this.#switch(from, to, onPin);
      from = to;
    }
    this.#step++;
  }

  #state(voice: VoiceId): GateState {
    const { A, B } = this.#sides;
    return this.#settings.gates[voice].states[(A.high ? 1 : 0) + (B.high ? 2 : 0)]!;
  }

  #nodeAt(voice: VoiceId, y: number): Volts {
    return nodeVolts(this.#state(voice), cellSiemens(this.#settings.gates[voice], y));
  }

  /** Moves a cell from `from` to `to` and lays the node's cubic over that piece. */
  #prepare(voice: VoiceId, from: Seconds, to: Seconds, noise1: Volts): void {
    const side = this.#sides[voice];
    const speed = this.#settings.speeds[voice];
    const length = to - from;
    // At the end of a piece the value just before a possible jump counts.
    const lux0 = luxAt(this.#program, voice, from);
    const middle = luxAt(this.#program, voice, from + length / 2);
    const lux1 = luxBefore(this.#program, voice, to);
    const y0 = side.y;
    const y1 = stepConductance(speed, y0, length, lux0, middle, lux1);
    const slope = (noise1 - side.noise) / length;
    side.n0 = this.#nodeAt(voice, y0) + side.noise;
    side.n1 = this.#nodeAt(voice, y1) + noise1;
    side.m0 = length * (this.#slopeAt(voice, y0, lux0) + slope);
    side.m1 = length * (this.#slopeAt(voice, y1, lux1) + slope);
    side.y = y1;
    side.noise = noise1;
  }

  #slopeAt(voice: VoiceId, y: number, lux: Lux): number {
    const gate = this.#settings.gates[voice];
    const siemens = y / gate.r10Ohms;
    if (siemens <= gate.darkSiemens) return 0;
    const dy = conductanceSlope(this.#settings.speeds[voice], y, lux);
    return (nodeSlope(this.#state(voice), siemens) * dy) / gate.r10Ohms;
  }

  /** Switches the comparators within a piece, the earlier one first. */
  #switch(from: Seconds, to: Seconds, onPin: PinListener): void {
    let at = 0;
    for (let change = 0; change < MOST_CHANGES; change++) {
      const a = this.#firstTip('A', at);
      const b = this.#firstTip('B', at);
      if (a > 1 && b > 1) return;
      const voice: VoiceId = a <= b ? 'A' : 'B';
      at = Math.min(a, b);
      const side = this.#sides[voice];
      const gate = this.#settings.gates[voice];
      const before = this.#state(voice);
      side.high = !side.high;
      this.#shiftNode(voice, before);
      const released = reads(gate, side.high);
      if (released !== reads(gate, !side.high)) onPin(voice, from + at * (to - from), released);
    }
  }

  /** Feedback into a sensor node moves that node when the output switches. */
  #shiftNode(voice: VoiceId, before: GateState): void {
    const after = this.#state(voice);
    if (after.n0 === before.n0) return;
    const side = this.#sides[voice];
    const siemens = cellSiemens(this.#settings.gates[voice], side.y);
    const shift = nodeVolts(after, siemens) - nodeVolts(before, siemens);
    side.n0 += shift;
    side.n1 += shift;
  }

  /** Where in the piece (0…1), from `at` on, this comparator first tips; 2 when it does not. */
  #firstTip(voice: VoiceId, at: number): number {
    const side = this.#sides[voice];
    const state = this.#state(voice);
    if (wrongBy(side, state, at) > CLEARLY) return at;
    const turns = turningPoints(side);
    let low = at;
    for (let i = 0; i < turns.length; i++) {
      const high = turns[i]!;
      if (high <= low) continue;
      if (wrongBy(side, state, high) > CLEARLY) {
        // Monotonic between turning points: halving finds the only root.
        let right = high;
        while (right - low > 1e-12) {
          const middle = (low + right) / 2;
          if (wrongBy(side, state, middle) > 0) right = middle;
          else low = middle;
        }
        return right;
      }
      low = high;
    }
    return 2;
  }
}

/** Whether the reset pin is released, for an output of the comparator. */
function reads(gate: Gate, high: boolean): boolean {
  return high ? gate.releases : !gate.silences;
}

/** How far the node is on the side of the trip point where this output may not stay; negative = it may. */
function wrongBy(side: Side, state: GateState, x: number): Volts {
  const overdrive = overdriveVolts(state, cubic(side, x));
  return side.high ? -overdrive : overdrive;
}

function cubic({ n0, n1, m0, m1 }: Side, x: number): Volts {
  const rest = 1 - x;
  return n0 * (1 + 2 * x) * rest * rest + m0 * x * rest * rest + n1 * x * x * (3 - 2 * x) - m1 * x * x * rest;
}

const turns: [number, number, number] = [1, 1, 1];

/** The cubic's turning points within 0…1 in order, then 1. One array, reused: the audio thread must not allocate. */
function turningPoints({ n0, n1, m0, m1 }: Side): readonly number[] {
  const a = 3 * (2 * n0 + m0 - 2 * n1 + m1);
  const b = 2 * (-3 * n0 - 2 * m0 + 3 * n1 - m1);
  const c = m0;
  const disc = b * b - 4 * a * c;
  turns[0] = turns[1] = 1;
  if (disc <= 0) return turns;
  const q = -(b + Math.sign(b || 1) * Math.sqrt(disc)) / 2;
  const first = a === 0 ? Number.NaN : q / a;
  const second = q === 0 ? Number.NaN : c / q;
  const x0 = first > 0 && first < 1 ? first : 1;
  const x1 = second > 0 && second < 1 ? second : 1;
  turns[0] = Math.min(x0, x1);
  turns[1] = Math.max(x0, x1);
  return turns;
}
