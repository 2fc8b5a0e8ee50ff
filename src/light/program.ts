/**
 * Light over time as plain data with one reader, so that the same program runs on the page, in the audio
 * thread and in tests. Lux at each sensor; time in seconds on the engine's own clock.
 */
import type { Lux, Pair, Seconds, VoiceId } from '../quantity/units.ts';
import { type Ripple, rippleAt, rippleBefore, rippleBreak } from './ripple.ts';
import { type Scene, sceneBreak, sceneLux } from './scene.ts';

/**
 * Rows of a recording: straight between rows, held before the first and after the last. Two rows of one time
 * are a jump.
 */
export interface PointsProgram {
  readonly kind: 'points';
  readonly times: Float64Array;
  readonly lux: Pair<Float64Array>;
  /** When, on the engine's clock, the recording's time 0 is played; 0 unless given. */
  readonly startsAt?: Seconds;
  /** After the last row at once the first again, for ever. */
  readonly loop?: boolean;
}

/** A program without the ripple of a lamp. */
export type SmoothProgram =
  | { readonly kind: 'steady'; readonly lux: Pair<Lux> }
  /** A control or camera that moved: straight from one level to the next, then held. */
  | {
      readonly kind: 'ramp';
      readonly from: Pair<Lux>;
      readonly to: Pair<Lux>;
      readonly start: Seconds;
      readonly duration: Seconds;
    }
  | PointsProgram
  /** A scene that begins at `startsAt`; 0 unless given. */
  | { readonly kind: 'scene'; readonly scene: Scene; readonly startsAt?: Seconds };

/** Any program seen in the light of a lamp that ripples; its mean over a cycle stays. */
export interface RippleProgram extends Ripple {
  readonly kind: 'ripple';
  readonly of: SmoothProgram;
}

export type LightProgram = SmoothProgram | RippleProgram;

/** Lux at a sensor at time `t`; where the light jumps, the value after the jump. */
export function luxAt(program: LightProgram, voice: VoiceId, t: Seconds): Lux {
  switch (program.kind) {
    case 'ripple':
      return luxAt(program.of, voice, t) * rippleAt(program, t);
    case 'steady':
      return program.lux[voice];
    case 'ramp': {
      const { from, to, start, duration } = program;
      if (t >= start + duration) return to[voice];
      if (t <= start) return from[voice];
      return from[voice] + ((to[voice] - from[voice]) * (t - start)) / duration;
    }
    case 'points': {
      const shift = shiftAt(program, t, false);
      return between(program, voice, rowAfter(program.times, t, shift, false), t, shift);
    }
    case 'scene':
      return sceneLux(program.scene, voice, t - (program.startsAt ?? 0));
  }
}

/** Lux just before `t`: the limit from the left. Differs from `luxAt` only where the light jumps. */
export function luxBefore(program: LightProgram, voice: VoiceId, t: Seconds): Lux {
  switch (program.kind) {
    case 'ripple':
      return luxBefore(program.of, voice, t) * rippleBefore(program, t);
    case 'ramp':
      return t <= program.start ? program.from[voice] : luxAt(program, voice, t);
    case 'points': {
      const shift = shiftAt(program, t, true);
      return between(program, voice, rowAfter(program.times, t, shift, true), t, shift);
    }
    case 'steady':
    case 'scene':
      return luxAt(program, voice, t);
  }
}

/** Lux without the ripple of the lamp: the mean over its cycle, as a light meter reads. */
export function meanLuxAt(program: LightProgram, voice: VoiceId, t: Seconds): Lux {
  return luxAt(program.kind === 'ripple' ? program.of : program, voice, t);
}

/** The next time after `t` at which the program bends or jumps, always later than `t`; Infinity when never again. */
export function nextBreak(program: LightProgram, t: Seconds): Seconds {
  switch (program.kind) {
    case 'ripple':
      return Math.min(nextBreak(program.of, t), rippleBreak(program, t));
    case 'steady':
      return Number.POSITIVE_INFINITY;
    case 'ramp': {
      if (t < program.start) return program.start;
      const end = program.start + program.duration;
      return t < end ? end : Number.POSITIVE_INFINITY;
    }
    case 'points': {
      const { times } = program;
      const shift = shiftAt(program, t, false);
      const row = times[rowAfter(times, t, shift, false)];
      const own = row === undefined ? Number.POSITIVE_INFINITY : row + shift;
      return loops(program) ? Math.min(own, times[0]! + shiftAfter(program, shift)) : own;
    }
    case 'scene': {
      const { scene, startsAt = 0 } = program;
      let own = sceneBreak(scene, t - startsAt);
      // Rounding can put a break of the scene's own clock at t itself: then the one after it.
      while (own + startsAt <= t) own = sceneBreak(scene, own);
      return own + startsAt;
    }
  }
}

/** From the light at time `t` straight to another, under the lamp there is. */
export function aimed(program: LightProgram, t: Seconds, lux: Pair<Lux>, duration: Seconds): LightProgram {
  const from = { A: meanLuxAt(program, 'A', t), B: meanLuxAt(program, 'B', t) };
  return underLamp({ kind: 'ramp', from, to: lux, start: t, duration }, rippleOf(program));
}

/** A program in the light of a lamp that ripples, or of none that does. */
export function underLamp(program: LightProgram, ripple: Ripple | null): LightProgram {
  const of = program.kind === 'ripple' ? program.of : program;
  if (ripple === null || ripple.depth === 0) return of;
  const { hertz, depth, shape, duty } = ripple;
  return { kind: 'ripple', of, hertz, depth, shape, ...(duty === undefined ? {} : { duty }) };
}

function rippleOf(program: LightProgram): Ripple | null {
  return program.kind === 'ripple' ? program : null;
}

/** How far into a recording the engine is at time `t`: seconds from its first row, within its length. */
export function playhead(program: PointsProgram, t: Seconds): Seconds {
  const { times } = program;
  const place = t - shiftAt(program, t, false) - (times[0] ?? 0);
  return Math.min(lengthOf(times), Math.max(0, place));
}

/** The recording set so that at time `t` it is `place` seconds past its first row. */
export function scrubbed(program: PointsProgram, t: Seconds, place: Seconds): PointsProgram {
  return { ...program, startsAt: t - place - (program.times[0] ?? 0) };
}

/** From the first row to the last. */
export function lengthOf(times: Float64Array): Seconds {
  return times.length === 0 ? 0 : times[times.length - 1]! - times[0]!;
}

/** A recording shorter than a millisecond is held, not looped. */
function loops({ loop = false, times }: PointsProgram): boolean {
  return loop && lengthOf(times) >= 1e-3;
}

/**
 * What is added to a row's time to have it on the engine's clock, in the round that holds `t`. The moment from
 * one round to the next belongs to the earlier one when asked from the left.
 */
function shiftAt(program: PointsProgram, t: Seconds, fromLeft: boolean): Seconds {
  const { times, startsAt = 0 } = program;
  if (!loops(program)) return startsAt;
  const first = times[0]!;
  const length = lengthOf(times);
  let round = Math.max(0, Math.floor((t - startsAt - first) / length));
  // Compared as times, so that rounding cannot put t outside its round.
  const next = first + (startsAt + (round + 1) * length);
  if (next < t || (next === t && !fromLeft)) round++;
  else {
    const begin = first + (startsAt + round * length);
    if (round > 0 && (begin > t || (begin === t && fromLeft))) round--;
  }
  return startsAt + round * length;
}

/** The shift of the next round. Built as in `shiftAt`, so that both agree to the last bit. */
function shiftAfter({ times, startsAt = 0 }: PointsProgram, shift: Seconds): Seconds {
  const length = lengthOf(times);
  return startsAt + (Math.round((shift - startsAt) / length) + 1) * length;
}

/** Light between the row before `after` and that row; held outside. */
function between(program: PointsProgram, voice: VoiceId, after: number, t: Seconds, shift: Seconds): Lux {
  const { times } = program;
  const lux = program.lux[voice];
  if (after === 0) return lux[0] ?? 0;
  const lux0 = lux[after - 1]!;
  if (after === times.length) return lux0;
  const t0 = times[after - 1]! + shift;
  return lux0 + ((lux[after]! - lux0) * (t - t0)) / (times[after]! + shift - t0);
}

/** Index of the first row later than `t` (from the left: not earlier than it); the number of rows when none is. */
function rowAfter(times: Float64Array, t: Seconds, shift: Seconds, fromLeft: boolean): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const time = times[middle]! + shift;
    if (time > t || (fromLeft && time === t)) high = middle;
    else low = middle + 1;
  }
  return low;
}
