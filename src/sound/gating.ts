/**
 * Both gates in time: cells moved by their rate equation, comparators switched at the exact moment.
 *
 * Time advances on a fixed grid of 1/3 ms, so that results do not depend on how the caller cuts time into blocks.
 * A grid step is split where the light bends, and into shorter pieces where bright light makes a cell too quick for
 * it. Within a piece the node follows a cubic through its values and slopes at both ends; noise is a straight line
 * between independent values at the grid. The comparator's response (about 1.3 µs) is neglected.
 */
import { MovingCell, steadyConductance } from '../circuit/cell.ts';
import { cellSiemens, nodeVolts, overdriveVolts } from '../circuit/gate.ts';
import { playedFrom } from '../light/playing.ts';
import { aimed, type LightProgram, meanLuxAt, nextBreak } from '../light/program.ts';
import { RippleReader } from '../light/ripple.ts';
import { gaussianFrom } from '../quantity/random.ts';
import { type Lux, type Pair, type Seconds, VOICES, type VoiceId, type Volts } from '../quantity/units.ts';
import {
  beginPiece,
  bend,
  EVEN,
  endPiece,
  firstTip,
  type MovingPiece,
  reads,
  type Side,
  seeLight,
  shiftNode,
  sideOf,
} from './gate-side.ts';
import type { EngineSettings } from './settings.ts';

/** Grid steps in a second. */
export const GRID = 3000;

/** More changes than this within one piece of a step would be noise of the arithmetic, not of the circuit. */
const MOST_CHANGES = 16;

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
      const cell = new MovingCell(speed, steadyConductance(speed.gamma, meanLuxAt(program, voice, 0)));
      return sideOf(voice, cell, settings.gates[voice], gaussianFrom(settings.noise.seed * 2 + salt));
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
        bend(A);
        bend(B);
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
      beginPiece(A, piece);
      beginPiece(B, piece);
      MovingCell.stepBoth(A.cell, B.cell, piece.to - piece.from);
      endPiece(A, piece);
      endPiece(B, piece);
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
    A.isRead = B.isRead = false;
  }

  /** Light over the piece. */
  #readLight(): void {
    const { A, B } = this.#sides;
    const program = this.#program;
    const piece = this.#piece;
    piece.middle = piece.from + (piece.to - piece.from) / 2;
    if (program.kind === 'ripple') {
      // One lamp for both sensors.
      this.#ripple.read(program, piece);
      seeLight(A, program.of, piece, this.#ripple);
      seeLight(B, program.of, piece, this.#ripple);
    } else {
      seeLight(A, program, piece, EVEN);
      seeLight(B, program, piece, EVEN);
    }
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
