/** Writes down the light at both sensors while it is played, so that it can be replayed, saved, or rendered. */
import type { PointsProgram } from '../light/program.ts';
import type { Lux, Pair, Seconds } from '../quantity/units.ts';
import { STRICT_HEADER } from '../words/light-log.ts';

/** Longer recordings stop by themselves: half an hour at thirty rows a second. */
const MOST_ROWS = 54_000;

export class LightRecorder {
  readonly #times: number[] = [];
  readonly #a: number[] = [];
  readonly #b: number[] = [];
  #start: Seconds | null = null;

  /** Takes one moment; times must rise. Returns false once it is full. */
  take(time: Seconds, lux: Pair<Lux>): boolean {
    this.#start ??= time;
    const at = time - this.#start;
    if (this.#times.length > 0 && at <= this.#times.at(-1)!) return true;
    if (this.#times.length >= MOST_ROWS) return false;
    this.#times.push(at);
    this.#a.push(lux.A);
    this.#b.push(lux.B);
    return true;
  }

  get seconds(): Seconds {
    return this.#times.at(-1) ?? 0;
  }

  /** The light from the first moment on. */
  get rows(): PointsProgram {
    return {
      kind: 'points',
      times: Float64Array.from(this.#times),
      lux: { A: Float64Array.from(this.#a), B: Float64Array.from(this.#b) },
    };
  }
}

/** A recording as the text of a light log, which reads back as it was. */
export function logText({ times, lux }: PointsProgram): string {
  const row = (t: number, a: number, b: number) => `${t.toFixed(4)},${exact(a)},${exact(b)}`;
  return `${STRICT_HEADER}\n${Array.from(times, (t, i) => row(t, lux.A[i]!, lux.B[i]!)).join('\n')}\n`;
}

/** Six figures: far finer than any meter, and short. */
function exact(lux: Lux): string {
  return String(Number(lux.toPrecision(6)));
}
