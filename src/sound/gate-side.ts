/**
 * One voice's side of the gating: its cell, the node as a cubic over the piece of time at hand, its comparator and how
 * the reset pin reads it.
 */
import type { MovingCell } from '../circuit/cell.ts';
import { cellSiemens, type Gate, type GateState, nodeSlope, nodeVolts } from '../circuit/gate.ts';
import { luxAt, luxBefore, type SmoothProgram } from '../light/program.ts';
import type { Piece, RippleReader } from '../light/ripple.ts';
import type { Seconds, VoiceId, Volts } from '../quantity/units.ts';
import { firstPast } from './cubic.ts';

/** Factors that the light is multiplied by over a piece. */
type Lamp = Pick<RippleReader, 'start' | 'middle' | 'end'>;
export const EVEN: Lamp = { start: 1, middle: 1, end: 1 };

export interface MovingPiece extends Piece {
  from: Seconds;
  middle: Seconds;
  to: Seconds;
  /** Share of the grid step that is over at its end. */
  share: number;
}

export interface Side {
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
  /** By how much the noise rises over the piece at hand. */
  rise: Volts;
  /** The node and its slope, both without noise, where they were last read. */
  node: Volts;
  slope: number;
  /** Whether that is how they are still. */
  isRead: boolean;
  /** The node over the piece, as a cubic in 0…1: value and slope at both ends. */
  n0: Volts;
  n1: Volts;
  m0: Volts;
  m1: Volts;
}

/** A side at rest, its output low. */
export function sideOf(voice: VoiceId, cell: MovingCell, gate: Gate, gaussian: () => number): Side {
  return {
    voice,
    cell,
    gaussian,
    gate,
    state: gate.states[0]!,
    high: false,
    noise: 0,
    noise0: 0,
    noise1: 0,
    rise: 0,
    node: 0,
    slope: 0,
    isRead: false,
    n0: 0,
    n1: 0,
    m0: 0,
    m1: 0,
  };
}

/** Light at a sensor over a piece, under the lamp's factors; at its end the value just before a possible jump counts. */
export function seeLight(
  { cell, voice }: Side,
  program: SmoothProgram,
  { from, middle, to }: Piece,
  lamp: Lamp,
): void {
  if (program.kind === 'steady') {
    const lux = program.lux[voice];
    cell.setLight(lux * lamp.start, lux * lamp.middle, lux * lamp.end);
    return;
  }
  cell.setLight(
    luxAt(program, voice, from) * lamp.start,
    luxAt(program, voice, middle) * lamp.middle,
    luxBefore(program, voice, to) * lamp.end,
  );
}

/** The light bends or jumps here. */
export function bend(side: Side): void {
  side.cell.bend();
  side.isRead = false;
}

/** The node's cubic at the piece's start, before its cell moves. */
export function beginPiece(side: Side, { from, to, share }: MovingPiece): void {
  const noise = side.noise0 + (side.noise1 - side.noise0) * share;
  side.rise = noise - side.noise;
  if (!side.isRead) readNode(side, side.cell.startSlope);
  side.n0 = side.node + side.noise;
  side.m0 = (to - from) * side.slope + side.rise;
  side.noise = noise;
}

/** And at its end, the cell having moved. */
export function endPiece(side: Side, { from, to }: MovingPiece): void {
  readNode(side, side.cell.endSlope);
  side.n1 = side.node + side.noise;
  side.m1 = (to - from) * side.slope + side.rise;
}

/** The node without noise, and how fast it moves, V/s, while the cell's conductance does at this rate. */
function readNode(side: Side, conductanceSlope: number): void {
  const { cell, gate, state } = side;
  const siemens = cellSiemens(gate, cell.y);
  side.node = nodeVolts(state, siemens);
  side.slope = siemens > gate.darkSiemens ? (nodeSlope(state, siemens) * conductanceSlope) / gate.r10Ohms : 0;
  side.isRead = true;
}

/** Feedback into a sensor node moves that node when the output switches. */
export function shiftNode(side: Side, before: GateState): void {
  const after = side.state;
  if (after.n0 === before.n0) return;
  const siemens = cellSiemens(side.gate, side.cell.y);
  const shift = nodeVolts(after, siemens) - nodeVolts(before, siemens);
  side.n0 += shift;
  side.n1 += shift;
}

/** Where in the piece (0…1), from `at` on, this comparator first tips; 2 when it does not. */
export function firstTip(side: Side, at: number): number {
  const { direction, tripVolts } = side.state;
  return firstPast(side, at, side.high ? (-direction as 1 | -1) : direction, tripVolts);
}

/** Whether the reset pin is released, for an output of the comparator. */
export function reads(gate: Gate, high: boolean): boolean {
  return high ? gate.releases : !gate.silences;
}
