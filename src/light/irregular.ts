/**
 * Small unevenness of scenes: seeded, and read at any time without a memory, so that a scene can be entered
 * anywhere and still repeats. Nothing here allocates: scenes run on the audio thread.
 */
import type { Fraction, Lux, Seconds } from '../quantity/units.ts';

/** A number in [0, 1) that belongs to a seed, a running number and a purpose; as good as independent. */
export function chance(seed: number, index: number, purpose: number): Fraction {
  let h =
    Math.imul(seed | 0, 0x9e3779b1) ^ Math.imul((index | 0) + 1, 0x85ebca77) ^ Math.imul(purpose, 0xc2b2ae3d);
  // Multiply and fold, three times, until every bit depends on every other.
  h = Math.imul(h ^ (h >>> 16), 0x7feb352d);
  h = Math.imul(h ^ (h >>> 15), 0x846ca68b);
  h = Math.imul(h ^ (h >>> 16), 0x9e3779b1);
  return ((h ^ (h >>> 15)) >>> 0) / 0x1_0000_0000;
}

/** Something that comes past again and again, one pass in each period. */
export interface Passing {
  /** From one pass to the next; longer where a pass would not fit. */
  readonly everySeconds: Seconds;
  /** 0 = like clockwork, 1 = as uneven as hands and people are. */
  readonly irregular: Fraction;
  readonly seed: number;
}

const PURPOSE = { start: 1, pace: 2 } as const;

/** Paces differ by up to this share either way. */
const PACE_SPREAD = 0.4;

/** Pace of a pass relative to the usual one. */
export function paceOf({ irregular, seed }: Passing, pass: number): number {
  return 1 + PACE_SPREAD * irregular * (2 * chance(seed, pass, PURPOSE.pace) - 1);
}

/** Period of the passes, for a pass that usually takes this long: even the slowest one fits with room. */
export function periodOf(passing: Passing, usualSeconds: Seconds): Seconds {
  return Math.max(passing.everySeconds, (1.1 * usualSeconds) / (1 - PACE_SPREAD * passing.irregular));
}

/** When a pass that takes `length` begins: in the middle of its period, give or take. */
export function startOf(passing: Passing, pass: number, period: Seconds, length: Seconds): Seconds {
  const shift = 0.8 * passing.irregular * (chance(passing.seed, pass, PURPOSE.start) - 0.5);
  return pass * period + (period - length) * (0.5 + shift);
}

/** The pass whose period holds `t`. */
export function passAt(t: Seconds, period: Seconds): number {
  return Math.max(0, Math.floor(t / period));
}

/** Keeps the earlier of two times, if the new one is later than `t`. */
export function sooner(best: Seconds, time: Seconds, t: Seconds): Seconds {
  return time > t && time < best ? time : best;
}

/** From one level to another by a share; never outside the two, whatever rounding does to the share. */
export function mixed(from: Lux, to: Lux, share: Fraction): Lux {
  const part = Math.min(1, Math.max(0, share));
  return from * (1 - part) + to * part;
}
