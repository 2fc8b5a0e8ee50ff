/**
 * Light over time as plain data with one reader, so that the same program runs on the page, in the audio
 * thread and in tests. Lux at each sensor; time in seconds on the engine's own clock.
 */
import type { Lux, Pair, Seconds, VoiceId } from '../quantity/units.ts';

export type LightProgram =
  | { readonly kind: 'steady'; readonly lux: Pair<Lux> }
  /** A control or camera that moved: straight from one level to the next, then held. */
  | {
      readonly kind: 'ramp';
      readonly from: Pair<Lux>;
      readonly to: Pair<Lux>;
      readonly start: Seconds;
      readonly duration: Seconds;
    }
  /** Rows of a recording: straight between rows, held before the first and after the last. */
  | { readonly kind: 'points'; readonly times: Float64Array; readonly lux: Pair<Float64Array> };

/** Lux at a sensor at time `t`. */
export function luxAt(program: LightProgram, voice: VoiceId, t: Seconds): Lux {
  switch (program.kind) {
    case 'steady':
      return program.lux[voice];
    case 'ramp': {
      const { from, to, start, duration } = program;
      if (t >= start + duration) return to[voice];
      if (t <= start) return from[voice];
      return from[voice] + ((to[voice] - from[voice]) * (t - start)) / duration;
    }
    case 'points': {
      const { times } = program;
      const lux = program.lux[voice];
      const after = rowAfter(times, t);
      if (after === 0) return lux[0]!;
      if (after === times.length) return lux[after - 1]!;
      const t0 = times[after - 1]!;
      const lux0 = lux[after - 1]!;
      return lux0 + ((lux[after]! - lux0) * (t - t0)) / (times[after]! - t0);
    }
  }
}

/** The next time after `t` at which the program bends; Infinity when it never does again. */
export function nextBreak(program: LightProgram, t: Seconds): Seconds {
  switch (program.kind) {
    case 'steady':
      return Number.POSITIVE_INFINITY;
    case 'ramp': {
      if (t < program.start) return program.start;
      const end = program.start + program.duration;
      return t < end ? end : Number.POSITIVE_INFINITY;
    }
    case 'points':
      return program.times[rowAfter(program.times, t)] ?? Number.POSITIVE_INFINITY;
  }
}

/** Index of the first row later than `t`; the number of rows when there is none. */
function rowAfter(times: Float64Array, t: Seconds): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle]! > t) high = middle;
    else low = middle + 1;
  }
  return low;
}
