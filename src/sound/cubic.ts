/** The sensor's node over a piece of time as a cubic in 0…1, and where it first passes a trip point. */
import type { Volts } from '../quantity/units.ts';

/** Values and slopes at both ends; the slopes are per piece, not per second. */
export interface Cubic {
  readonly n0: Volts;
  readonly n1: Volts;
  readonly m0: Volts;
  readonly m1: Volts;
}

/** A comparator tips only when it is clearly past its point: rounding must not toggle it. */
const CLEARLY: Volts = 1e-9;

/** Where the halving of a bracket ends. */
const CLOSE = 1e-12;

/** The cubic's turning points within 0…1 in order, then 1. One array, reused: the audio thread must not allocate. */
const turns: [number, number, number] = [1, 1, 1];

/**
 * Where in 0…1, from `at` on, the cubic is first clearly on the far side of a trip point; 2 when nowhere.
 * `sign`: +1 where above is the far side, −1 where below is.
 */
export function firstPast(cubic: Cubic, at: number, sign: 1 | -1, trip: Volts): number {
  if (staysShort(cubic, sign, trip)) return 2;
  if (pastBy(cubic, at, sign, trip) > CLEARLY) return at;
  readTurns(cubic);
  let low = at;
  for (let i = 0; i < turns.length; i++) {
    const high = turns[i]!;
    if (high <= low) continue;
    if (pastBy(cubic, high, sign, trip) > CLEARLY) {
      // Monotonic between turning points: halving finds the only root.
      let right = high;
      while (right - low > CLOSE) {
        const middle = (low + right) / 2;
        if (pastBy(cubic, middle, sign, trip) > 0) right = middle;
        else low = middle;
      }
      return right;
    }
    low = high;
  }
  return 2;
}

/** Whether the whole piece keeps to the near side: a cubic keeps within its four control points. */
function staysShort({ n0, n1, m0, m1 }: Cubic, sign: 1 | -1, trip: Volts): boolean {
  return (
    sign * (n0 - trip) <= CLEARLY &&
    sign * (n0 + m0 / 3 - trip) <= CLEARLY &&
    sign * (n1 - m1 / 3 - trip) <= CLEARLY &&
    sign * (n1 - trip) <= CLEARLY
  );
}

function pastBy({ n0, n1, m0, m1 }: Cubic, x: number, sign: 1 | -1, trip: Volts): Volts {
  const rest = 1 - x;
  const value =
    n0 * (1 + 2 * x) * rest * rest + m0 * x * rest * rest + n1 * x * x * (3 - 2 * x) - m1 * x * x * rest;
  return sign * (value - trip);
}

function readTurns({ n0, n1, m0, m1 }: Cubic): void {
  const a = 3 * (2 * n0 + m0 - 2 * n1 + m1);
  const b = 2 * (-3 * n0 - 2 * m0 + 3 * n1 - m1);
  const c = m0;
  const disc = b * b - 4 * a * c;
  turns[0] = turns[1] = 1;
  if (disc <= 0) return;
  const q = -(b + Math.sign(b || 1) * Math.sqrt(disc)) / 2;
  const first = a === 0 ? Number.NaN : q / a;
  const second = q === 0 ? Number.NaN : c / q;
  const x0 = first > 0 && first < 1 ? first : 1;
  const x1 = second > 0 && second < 1 ? second : 1;
  turns[0] = Math.min(x0, x1);
  turns[1] = Math.max(x0, x1);
}
