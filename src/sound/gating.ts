/**
 * Both gates in time: cells moved by their rate equation, comparators switched at the exact moment.
 *
 * Time advances on a fixed grid of 1/3 ms, so that results do not depend on how the caller cuts time into blocks.
 * A grid step is split where the light bends, and into shorter pieces where bright light makes a cell too quick for
 * it. Within a piece the node follows a cubic through its values and slopes at both ends; noise is a straight line
 * between independent values at the grid. The comparator's response (about 1.3 µs) is neglected.
 */
import { MovingCell, steadyConductance } from '../circuit/cell.ts';
import {
  cellSiemens,
  type Gate,
  type GateState,
  nodeSlope,
  nodeVolts,
  overdriveVolts,
} from '../circuit/gate.ts';
import { playedFrom } from '../light/playing.ts';
import {
  aimed,
  type LightProgram,
  luxAt,
  luxBefore,
  meanLuxAt,
  nextBreak,
  type SmoothProgram,
} from '../light/program.ts';
import { type Piece, RippleReader } from '../light/ripple.ts';
import { gaussianFrom } from '../quantity/random.ts';
import { type Lux, type Pair, type Seconds, VOICES, type VoiceId, type Volts } from '../quantity/units.ts';
import type { EngineSettings } from './settings.ts';

/** Grid steps in a second. */
export const GRID = 3000;

/** A comparator tips only when it is clearly past its point: rounding must not toggle it. */
const CLEARLY: Volts = 1e-9;

/** More changes than this within one piece of a step would be noise of the arithmetic, not of the circuit. */
const MOST_CHANGES = 16;

interface MovingPiece extends Piece {
  from: Seconds;
  middle: Seconds;
  to: Seconds;
  /** Share of the grid step that is over at its end. */
  share: number;
}

interface Side {
  readonly voice: VoiceId;
  readonly cell: MovingCell;
  readonly gaussian: () => number;
  gate: Gate;
  /** The gate as both outputs are now. */
  state: GateState;
  high: boolean;
  noise: Volts;
  /** Noise at both ends of the grid step at hand. */
  noise0: Volts;
  noise1: Volts;
  /** The node and its slope, both without noise, where they were last read. */
  node: Volts;
  slope: number;
  /** The node over the piece, as a cubic in 0…1: value and slope at both ends. */
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
  /** Where the program next bends or jumps. */
  #bend: Seconds = 0;
  readonly #ripple = new RippleReader();
  /** The piece at hand. Kept in one object, as numbers handed from function to function may be allocated anew. */
  readonly #piece: MovingPiece = { from: 0, middle: 0, to: 0, share: 0 };

  /** Starts settled in the light at time 0, silent unless that light says otherwise. */
  constructor(settings: EngineSettings, program: LightProgram) {
    this.#settings = settings;
    this.#program = program;
    const side = (voice: VoiceId, salt: number): Side => {
      const speed = settings.speeds[voice];
      const gate = settings.gates[voice];
      return {
        voice,
        cell: new MovingCell(speed, steadyConductance(speed.gamma, meanLuxAt(program, voice, 0))),
        gaussian: gaussianFrom(settings.noise.seed * 2 + salt),
        gate,
        state: gate.states[0]!,
        high: false,
        noise: 0,
        noise0: 0,
        noise1: 0,
        node: 0,
        slope: 0,
        n0: 0,
        n1: 0,
        m0: 0,
        m1: 0,
      };
    };
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
    return this.#sides[voice].cell.y;
  }

  /** Volts at a sensor's node, noise included. */
  node(voice: VoiceId): Volts {
    const { cell, gate, state, noise } = this.#sides[voice];
    return nodeVolts(state, cellSiemens(gate, cell.y)) + noise;
  }

  /** Whether a reset pin is released: the comparator's output, as the pin reads it. */
  released(voice: VoiceId): boolean {
    const { gate, high } = this.#sides[voice];
    return reads(gate, high);
  }

  setSettings(settings: EngineSettings): void {
    this.#settings = settings;
    for (const voice of VOICES) {
      const side = this.#sides[voice];
      side.gate = settings.gates[voice];
      side.cell.setSpeed(settings.speeds[voice]);
    }
    this.#readStates();
  }

  /** Plays a program from now on, `place` seconds into it. */
  play(program: LightProgram, place: Seconds): void {
    this.#setProgram(playedFrom(program, this.time, place));
  }

  /** From the present light straight to another; a lamp's ripple stays. */
  aim(lux: Pair<Lux>, duration: Seconds): void {
    this.#setProgram(aimed(this.#program, this.time, lux, duration));
  }

  /** Lets the comparators answer to the present node voltages, without passing time. */
  settle(): void {
    for (let turn = 0; turn < 4; turn++) {
      let changed = false;
      for (const voice of VOICES) {
        const side = this.#sides[voice];
        const high = overdriveVolts(side.state, this.node(voice)) > 0;
        changed ||= high !== side.high;
        side.high = high;
        this.#readStates();
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
    A.noise0 = A.noise;
    B.noise0 = B.noise;
    A.noise1 = rms > 0 ? rms * A.gaussian() : 0;
    B.noise1 = rms > 0 ? rms * B.gaussian() : 0;
    const piece = this.#piece;
    piece.from = start;
    while (piece.from < end) {
      if (piece.from >= this.#bend) {
        this.#bend = nextBreak(this.#program, piece.from);
        A.cell.bend();
        B.cell.bend();
      }
      piece.to = Math.min(end, this.#bend);
      this.#readLight();
      const whole = piece.to - piece.from;
      const reach = Math.min(A.cell.reach(whole), B.cell.reach(whole));
      if (reach < whole) {
        piece.to = piece.from + reach;
        this.#readLight();
      }
      piece.share = (piece.to - start) * GRID;
      layPiece(A, piece);
      layPiece(B, piece);
      this.#switch(onPin);
      piece.from = piece.to;
    }
    this.#step++;
  }

  #setProgram(program: LightProgram): void {
    this.#program = program;
    this.#bend = 0;
  }

  /** Which state each gate is in depends on both outputs. */
  #readStates(): void {
    const { A, B } = this.#sides;
    const index = (A.high ? 1 : 0) + (B.high ? 2 : 0);
    A.state = A.gate.states[index]!;
    B.state = B.gate.states[index]!;
  }

  /** Light over the piece. */
  #readLight(): void {
    const { A, B } = this.#sides;
    const program = this.#program;
    const piece = this.#piece;
    piece.middle = piece.from + (piece.to - piece.from) / 2;
    const smooth = program.kind === 'ripple' ? program.of : program;
    readSmooth(A, smooth, piece);
    readSmooth(B, smooth, piece);
    if (program.kind !== 'ripple') return;
    // One lamp for both sensors.
    this.#ripple.read(program, piece);
    rippled(A, this.#ripple);
    rippled(B, this.#ripple);
  }

  /** Switches the comparators within a piece, the earlier one first. */
  #switch(onPin: PinListener): void {
    const { A, B } = this.#sides;
    const { from, to } = this.#piece;
    let at = 0;
    for (let change = 0; change < MOST_CHANGES; change++) {
      const a = firstTip(A, at);
      const b = firstTip(B, at);
      if (a > 1 && b > 1) return;
      const side = a <= b ? A : B;
      at = Math.min(a, b);
      const before = side.state;
      side.high = !side.high;
      this.#readStates();
      shiftNode(side, before);
      const released = reads(side.gate, side.high);
      if (released !== reads(side.gate, !side.high)) onPin(side.voice, from + at * (to - from), released);
    }
  }
}

/** At the end of a piece the value just before a possible jump counts. */
function readSmooth({ cell, voice }: Side, program: SmoothProgram, { from, middle, to }: Piece): void {
  if (program.kind === 'steady') {
    cell.lux0 = cell.luxMiddle = cell.lux1 = program.lux[voice];
    return;
  }
  cell.lux0 = luxAt(program, voice, from);
  cell.luxMiddle = luxAt(program, voice, middle);
  cell.lux1 = luxBefore(program, voice, to);
}

function rippled({ cell }: Side, { start, middle, end }: RippleReader): void {
  cell.lux0 *= start;
  cell.luxMiddle *= middle;
  cell.lux1 *= end;
}

/** Moves a cell over a piece and lays the node's cubic over it. */
function layPiece(side: Side, { from, to, share }: MovingPiece): void {
  const { cell } = side;
  const length = to - from;
  const noise = side.noise0 + (side.noise1 - side.noise0) * share;
  const rise = noise - side.noise;
  readNode(side, cell.lux0);
  side.n0 = side.node + side.noise;
  side.m0 = length * side.slope + rise;
  cell.step(length);
  readNode(side, cell.lux1);
  side.n1 = side.node + noise;
  side.m1 = length * side.slope + rise;
  side.noise = noise;
}

/** The node without noise, and how fast the light moves it, V/s. */
function readNode(side: Side, lux: Lux): void {
  const { cell, gate, state } = side;
  const siemens = cellSiemens(gate, cell.y);
  side.node = nodeVolts(state, siemens);
  side.slope = siemens > gate.darkSiemens ? (nodeSlope(state, siemens) * cell.slope(lux)) / gate.r10Ohms : 0;
}

/** Feedback into a sensor node moves that node when the output switches. */
function shiftNode(side: Side, before: GateState): void {
  const after = side.state;
  if (after.n0 === before.n0) return;
  const siemens = cellSiemens(side.gate, side.cell.y);
  const shift = nodeVolts(after, siemens) - nodeVolts(before, siemens);
  side.n0 += shift;
  side.n1 += shift;
}

/** Where in the piece (0…1), from `at` on, this comparator first tips; 2 when it does not. */
function firstTip(side: Side, at: number): number {
  if (staysClear(side)) return 2;
  if (wrongBy(side, at) > CLEARLY) return at;
  const turns = turningPoints(side);
  let low = at;
  for (let i = 0; i < turns.length; i++) {
    const high = turns[i]!;
    if (high <= low) continue;
    if (wrongBy(side, high) > CLEARLY) {
      // Monotonic between turning points: halving finds the only root.
      let right = high;
      while (right - low > 1e-12) {
        const middle = (low + right) / 2;
        if (wrongBy(side, middle) > 0) right = middle;
        else low = middle;
      }
      return right;
    }
    low = high;
  }
  return 2;
}

/** Whether the whole piece is on the side where the output may stay: a cubic keeps within its four control points. */
function staysClear({ n0, n1, m0, m1, high, state }: Side): boolean {
  const sign = high ? -state.direction : state.direction;
  const trip = state.tripVolts;
  return (
    sign * (n0 - trip) <= CLEARLY &&
    sign * (n0 + m0 / 3 - trip) <= CLEARLY &&
    sign * (n1 - m1 / 3 - trip) <= CLEARLY &&
    sign * (n1 - trip) <= CLEARLY
  );
}

/** How far the node is on the side of the trip point where this output may not stay; negative = it may. */
function wrongBy(side: Side, x: number): Volts {
  const overdrive = overdriveVolts(side.state, cubic(side, x));
  return side.high ? -overdrive : overdrive;
}

/** Whether the reset pin is released, for an output of the comparator. */
function reads(gate: Gate, high: boolean): boolean {
  return high ? gate.releases : !gate.silences;
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
