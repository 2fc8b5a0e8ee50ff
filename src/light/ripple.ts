/**
 * Ripple of a lamp: a periodic factor around 1 that the light is multiplied by. The mean stays as it is.
 * Depth (percent flicker, modulation) is (max − min)/(max + min); the flicker index is the area above the mean
 * as a share of the whole area of a cycle (both after the IES Lighting Handbook's definitions). Time in seconds.
 */
import type { Fraction, Hertz, Seconds } from '../quantity/units.ts';

/**
 * `rectified` follows |sin|, one hump a cycle: a lamp on rectified mains with nothing that stores energy.
 * `pulse` is bright for a share of the cycle and dim for the rest.
 */
export type RippleShape = 'sine' | 'rectified' | 'triangle' | 'pulse';

type SmoothShape = Exclude<RippleShape, 'pulse'>;

export interface Ripple {
  /** Cycles of the light, twice the mains frequency. */
  readonly hertz: Hertz;
  readonly depth: Fraction;
  readonly shape: RippleShape;
  /** Bright share of the cycle, only of a `pulse`; one half unless given. */
  readonly duty?: Fraction;
}

/** Above 500 Hz a cycle would have too few of the engine's steps. */
export const RIPPLE_LIMITS = {
  hertz: { min: 40, max: 500 },
  depth: { min: 0, max: 1 },
  duty: { min: 0.05, max: 0.95 },
} as const;

/** Smooth shapes are cut into pieces of at most this much of a cycle, so that integration keeps its order. */
const PIECES = 20;

/** Mean of each shape, drawn from 0 to 1. */
function meanOf({ shape, duty = 0.5 }: Ripple): Fraction {
  switch (shape) {
    case 'sine':
    case 'triangle':
      return 0.5;
    case 'rectified':
      return 2 / Math.PI;
    case 'pulse':
      return duty;
  }
}

/** What a shape drawn from 0 to 1 is stretched by, so that mean 1 and the depth come out. */
function stretch(ripple: Ripple): number {
  return (2 * ripple.depth) / (1 - ripple.depth * (1 - 2 * meanOf(ripple)));
}

/** The factor at time `t`, mean 1; at a jump of a pulse, the value after it. */
export function rippleAt(ripple: Ripple, t: Seconds): number {
  const { hertz, shape, duty = 0.5 } = ripple;
  const cycle = cycleAt(hertz, t);
  const drawn = shape === 'pulse' ? (t < (cycle + duty) / hertz ? 1 : 0) : smooth(shape, hertz * t - cycle);
  return 1 + stretch(ripple) * (drawn - meanOf(ripple));
}

/** The factor just before `t`: differs from `rippleAt` only where a pulse jumps. */
export function rippleBefore(ripple: Ripple, t: Seconds): number {
  const { hertz, shape, duty = 0.5 } = ripple;
  if (shape !== 'pulse') return rippleAt(ripple, t);
  let cycle = cycleAt(hertz, t);
  if (cycle / hertz >= t) cycle--;
  const drawn = t <= (cycle + duty) / hertz ? 1 : 0;
  return 1 + stretch(ripple) * (drawn - meanOf(ripple));
}

/** The next time after `t` at which integration has to start anew: a kink, a jump, or long enough a piece. */
export function rippleBreak(ripple: Ripple, t: Seconds): Seconds {
  const { hertz, shape, duty = 0.5 } = ripple;
  // At mains frequencies the engine's own steps are shorter than these pieces: only the kinks matter there.
  const wholeSteps = hertz <= 150;
  if (shape === 'sine' && wholeSteps) return Number.POSITIVE_INFINITY;
  const cycle = cycleAt(hertz, t);
  const next = (cycle + 1) / hertz;
  if (shape === 'pulse') {
    const fall = (cycle + duty) / hertz;
    return fall > t ? fall : next;
  }
  if (wholeSteps) {
    const half = (cycle + 0.5) / hertz;
    return shape === 'triangle' && half > t ? half : next;
  }
  let piece = Math.floor((hertz * t - cycle) * PIECES) + 1;
  while (piece < PIECES && (cycle + piece / PIECES) / hertz <= t) piece++;
  return piece < PIECES ? (cycle + piece / PIECES) / hertz : next;
}

/** A piece of time, and the moment in its middle. */
export interface Piece {
  readonly from: Seconds;
  readonly middle: Seconds;
  readonly to: Seconds;
}

/** Reads the factor over pieces that follow each other: each end is the next beginning, unless a pulse jumps there. */
export class RippleReader {
  #ripple: Ripple | null = null;
  #readUntil: Seconds = 0;
  #stretch = 0;
  #mean = 0;
  /** The cycle at hand, and when it begins and ends. */
  #cycle = 0;
  #begins: Seconds = 0;
  #ends: Seconds = 0;
  /** The factor at the piece's start, in its middle, and just before its end. */
  start = 1;
  middle = 1;
  end = 1;

  read(ripple: Ripple, piece: Piece): void {
    const { shape } = ripple;
    const known = this.#ripple === ripple && this.#readUntil === piece.from && shape !== 'pulse';
    if (this.#ripple !== ripple) {
      this.#ripple = ripple;
      this.#stretch = stretch(ripple);
      this.#mean = meanOf(ripple);
      this.#ends = this.#begins;
    }
    this.#readUntil = piece.to;
    if (shape === 'pulse') {
      this.start = rippleAt(ripple, piece.from);
      this.middle = rippleAt(ripple, piece.middle);
      this.end = rippleBefore(ripple, piece.to);
      return;
    }
    this.start = known ? this.end : this.#smoothAt(ripple.hertz, shape, piece.from);
    this.middle = this.#smoothAt(ripple.hertz, shape, piece.middle);
    this.end = this.#smoothAt(ripple.hertz, shape, piece.to);
  }

  /** As `rippleAt`, without working out again what stays for a cycle. */
  #smoothAt(hertz: Hertz, shape: SmoothShape, t: Seconds): number {
    if (!(t >= this.#begins && t < this.#ends)) {
      this.#cycle = cycleAt(hertz, t);
      this.#begins = this.#cycle / hertz;
      this.#ends = (this.#cycle + 1) / hertz;
    }
    const phase = hertz * t - this.#cycle;
    const drawn = shape === 'sine' ? raisedSine(phase) : smooth(shape, phase);
    return 1 + this.#stretch * (drawn - this.#mean);
  }
}

/** Area above the mean as a share of the whole, 0…1. */
export function flickerIndexOf(ripple: Ripple): Fraction {
  return stretch(ripple) * areaAboveMean(ripple);
}

/** Area above the mean in one cycle of the shape drawn from 0 to 1. */
function areaAboveMean({ shape, duty = 0.5 }: Ripple): Fraction {
  switch (shape) {
    case 'sine':
      return 1 / (2 * Math.PI);
    case 'triangle':
      return 1 / 8;
    case 'rectified': {
      const crossing = Math.asin(2 / Math.PI);
      return (2 * Math.cos(crossing) - (2 / Math.PI) * (Math.PI - 2 * crossing)) / Math.PI;
    }
    case 'pulse':
      return duty * (1 - duty);
  }
}

const raisedSine = (phase: Fraction): Fraction => (1 + Math.sin(2 * Math.PI * phase)) / 2;

function smooth(shape: SmoothShape, phase: Fraction): Fraction {
  switch (shape) {
    case 'sine':
      return raisedSine(phase);
    case 'rectified':
      return Math.abs(Math.sin(Math.PI * phase));
    case 'triangle':
      return 1 - Math.abs(2 * phase - 1);
  }
}

/** The cycle that holds `t`, the last whose start is not later. Compared as times, so that rounding cannot slip. */
function cycleAt(hertz: Hertz, t: Seconds): number {
  const cycle = Math.floor(hertz * t);
  if ((cycle + 1) / hertz <= t) return cycle + 1;
  return cycle / hertz > t ? cycle - 1 : cycle;
}
