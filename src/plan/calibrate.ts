/**
 * The real cell from two or more readings: R = R10·(E/10)^−gamma is a straight line in the logarithms, fitted by least
 * squares. Uncertainty is one standard deviation of each value; of two readings, which any line fits, and of more that
 * agree too well, it comes from how well a lux meter reads.
 */
import { gatesOf, nodeVolts, overdriveVolts, stateIndex } from '../circuit/gate.ts';
import { railVolts } from '../circuit/supply.ts';
import { setCell } from '../design/commands.ts';
import type { Design } from '../design/design.ts';
import { LIMITS } from '../design/limits.ts';
import type { CellReading, Room } from '../design/room.ts';
import { CELLS } from '../parts/cells.ts';
import type { Fraction, Lux, Ohms, VoiceId } from '../quantity/units.ts';

/** One deviation of a hand-held meter's reading, as a share; common practice for inexpensive ones. */
const METER_SHARE: Fraction = 0.05;

export interface CellFit {
  readonly r10Ohms: Ohms;
  readonly gamma: number;
  /** One standard deviation: of R10 as a share of it, of gamma as it is. */
  readonly r10Share: Fraction;
  readonly gammaDeviation: number;
  /** Root mean square of what the line leaves, as a share of the ohms; null of two readings. */
  readonly residualShare: Fraction | null;
  readonly uncertaintyFrom: 'residuals' | 'meter';
}

export type Calibration =
  | { readonly kind: 'fitted'; readonly fit: CellFit; readonly insideGrade: boolean }
  | { readonly kind: 'too few'; readonly readings: number }
  /** All in one light, or as good as that: R at that light is known, the slope is not. */
  | { readonly kind: 'one light'; readonly lux: Lux; readonly ohms: Ohms }
  /** Brighter light read with more ohms: interchanged readings or leads. */
  | { readonly kind: 'wrong way'; readonly gamma: number }
  /** A node at or beyond the rails, or beyond what any cell gives. */
  | { readonly kind: 'impossible reading'; readonly index: number };

/** Fits one voice's cell from the room's readings of it. */
export function calibrate(design: Design, room: Pick<Room, 'cellReadings'>, voice: VoiceId): Calibration {
  const readings = room.cellReadings[voice];
  if (readings.length < 2) return { kind: 'too few', readings: readings.length };
  const points: { readonly lux: Lux; readonly ohms: Ohms }[] = [];
  for (const [index, reading] of readings.entries()) {
    const ohms = ohmsOf(design, voice, reading);
    if (ohms === null || reading.lux <= 0) return { kind: 'impossible reading', index };
    points.push({ lux: reading.lux, ohms });
  }
  const [first] = points;
  const oneLight = { kind: 'one light', lux: first!.lux, ohms: first!.ohms } as const;
  if (points.every(({ lux }) => Math.abs(Math.log(lux / first!.lux)) < 0.05)) return oneLight;
  const fit = fitCell(points);
  // So near to each other that the line through them reaches no number at 10 lx.
  if (!(fit.r10Ohms > 0 && Number.isFinite(fit.r10Ohms))) return oneLight;
  if (fit.gamma <= 0) return { kind: 'wrong way', gamma: fit.gamma };
  const grade = CELLS[design.voices[voice].cell.family].r10Ohms;
  return { kind: 'fitted', fit, insideGrade: fit.r10Ohms >= grade.min && fit.r10Ohms <= grade.max };
}

/** Least squares of ln R against ln(E/10); at least two different lights. */
export function fitCell(points: readonly { readonly lux: Lux; readonly ohms: Ohms }[]): CellFit {
  const count = points.length;
  const xs = points.map(({ lux }) => Math.log(lux / 10));
  const ys = points.map(({ ohms }) => Math.log(ohms));
  const meanX = xs.reduce((sum, x) => sum + x, 0) / count;
  const meanY = ys.reduce((sum, y) => sum + y, 0) / count;
  const spreadX = xs.reduce((sum, x) => sum + (x - meanX) ** 2, 0);
  const slope = xs.reduce((sum, x, i) => sum + (x - meanX) * (ys[i]! - meanY), 0) / spreadX;
  const atTen = meanY - slope * meanX;
  const left = xs.reduce((sum, x, i) => sum + (ys[i]! - atTen - slope * x) ** 2, 0);
  const scatter = count > 2 ? Math.sqrt(left / (count - 2)) : null;
  // A share of the lux read is gamma times that share of the ohms.
  const meter = Math.abs(slope) * METER_SHARE;
  const fromResiduals = scatter !== null && scatter >= meter / 2;
  const deviation = fromResiduals ? scatter : meter;
  return {
    r10Ohms: Math.exp(atTen),
    gamma: -slope,
    r10Share: deviation * Math.sqrt(1 / count + meanX ** 2 / spreadX),
    gammaDeviation: deviation / Math.sqrt(spreadX),
    residualShare: scatter,
    uncertaintyFrom: fromResiduals ? 'residuals' : 'meter',
  };
}

/** The design with the fitted cell, within what a design may hold. */
export function calibrated(design: Design, voice: VoiceId, { r10Ohms, gamma }: CellFit): Design {
  const within = (value: number, { min, max }: { min: number; max: number }) =>
    Math.min(max, Math.max(min, value));
  return setCell(voice, {
    r10Ohms: within(r10Ohms, LIMITS.cellOhms),
    gamma: within(gamma, LIMITS.gamma),
  })(design);
}

/** Ohms of the cell from a reading; a node's volts through the divider, with the feedback that hangs on it. */
function ohmsOf(design: Design, voice: VoiceId, reading: CellReading): Ohms | null {
  if (reading.kind === 'ohms') return reading.ohms > 0 ? reading.ohms : null;
  const gate = gatesOf(design, railVolts(design.supply))[voice];
  // The output that goes with this node; where both would (within the hysteresis), the silent one.
  for (const high of [false, true]) {
    const state = gate.states[stateIndex({ A: voice === 'A' && high, B: voice === 'B' && high })]!;
    const siemens = (state.n0 - reading.volts * state.d0) / (reading.volts - state.n1);
    if (!(siemens > 0 && Number.isFinite(siemens))) continue;
    if (overdriveVolts(state, nodeVolts(state, siemens)) > 0 === high) return 1 / siemens;
  }
  return null;
}
