/**
 * Where a slowed voice is on its drawn first cycles: once along all of them from the moment it is let go, then round and
 * round the last, which is the steady one. Seconds of the circuit, not of watching.
 */
import type { CyclePoint } from '../../lesson/picture.ts';
import type { Seconds } from '../../quantity/units.ts';

/** Cycles drawn after a release; the last stands for all that follow. */
export const SLOW_CYCLES = 3;

/** The drawn point after so long; null when nothing is drawn. */
export function placeOn(points: readonly CyclePoint[], time: Seconds): CyclePoint | null {
  const last = points.at(-1);
  if (last === undefined) return null;
  const within = time < last.time ? Math.max(0, time) : looped(points, time, last.time);
  const next = points.findIndex((point) => point.time > within);
  const [from, to] = [points[next - 1], points[next]];
  if (from === undefined || to === undefined) return last;
  const share = (within - from.time) / (to.time - from.time);
  return { time: within, volts: from.volts + share * (to.volts - from.volts), high: from.high };
}

function looped(points: readonly CyclePoint[], time: Seconds, end: Seconds): Seconds {
  const start = lastRise(points);
  return start + ((time - start) % (end - start));
}

/** Where the output rises for the last time. */
function lastRise(points: readonly CyclePoint[]): Seconds {
  const at = points.findLastIndex((point, i) => point.high && points[i - 1]?.high === false);
  return points[at]?.time ?? 0;
}

/** Moments in which one slowed cycle is stepped through. */
const MOMENTS = 12;

/** How long a slowed voice has been watched since it was let go. */
export class SlowClock {
  #last: Seconds = 0;
  #since: Seconds | null = null;

  /** At a moment of the page's clock; gives seconds of the circuit since the release, null while held in reset. */
  next(time: Seconds, sounding: boolean, running: boolean, factor: number): Seconds | null {
    const passed = Math.max(0, time - this.#last);
    this.#last = time;
    if (!sounding) this.#since = null;
    else if (this.#since === null) this.#since = 0;
    else if (running) this.#since += passed / factor;
    return this.#since;
  }

  /** One moment on. */
  nudge(frequency: number): void {
    if (this.#since !== null && frequency > 0) this.#since += 1 / frequency / MOMENTS;
  }
}
