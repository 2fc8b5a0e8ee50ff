/**
 * One cell along a recording of light: followed by its rate equation only where a trip point may be passed, from some
 * 25 of its time constants before. Seconds, lux, relative conductance.
 */
import { type CellSpeed, MovingCell, steadyConductance } from '../circuit/cell.ts';
import type { Lux, Seconds } from '../quantity/units.ts';

const FORGOTTEN = 25;
/** Rows of darkness have no time constant: no further back than this. */
const MOST_BACK: Seconds = 5;
const STEP: Seconds = 1 / 3000;
/** A comparator tips only when it is clearly past its point. */
const CLEARLY = 1e-9;

/** When a voice in a state next changes it: past this light upwards or downwards, at this conductance. */
export interface Tip {
  readonly upwards: boolean;
  /** −Infinity with `upwards`: in any light; Infinity: in none; and the other way round. */
  readonly lux: Lux;
  readonly y: number;
}

export function isPast({ upwards, y: tip, lux }: Tip, y: number): boolean {
  if (!Number.isFinite(lux)) return upwards === lux < 0;
  return upwards ? y > tip * (1 + CLEARLY) : y < tip * (1 - CLEARLY);
}

/** One cell along its recording. */
export class Tracker {
  readonly #times: Float64Array;
  readonly #lux: Float64Array;
  readonly #gamma: number;
  readonly #riseTau: Seconds;
  readonly #fallTau: Seconds;
  /** Where the cell was last followed to. */
  #time: Seconds = Number.NEGATIVE_INFINITY;
  #y = 0;
  #marked: readonly [Seconds, number] = [Number.NEGATIVE_INFINITY, 0];

  constructor({ gamma, riseTau, fallTau }: CellSpeed, times: Float64Array, lux: Float64Array) {
    this.#gamma = gamma;
    this.#riseTau = riseTau;
    this.#fallTau = fallTau;
    this.#times = times;
    this.#lux = lux;
  }

  mark(): void {
    this.#marked = [this.#time, this.#y];
  }

  backToMark(): void {
    [this.#time, this.#y] = this.#marked;
  }

  /** When, from `now` to the end of the segment before `row`, the conductance first is past the tip; null = not in it. */
  crossing(tip: Tip, now: Seconds, row: number): Seconds | null {
    if (!Number.isFinite(tip.lux)) return tip.upwards === tip.lux < 0 ? now : null;
    const [t0, t1] = [this.#times[row - 1]!, this.#times[row]!];
    const [e0, e1] = [this.#lux[row - 1]!, this.#lux[row]!];
    const past = (lux: Lux) => (tip.upwards ? lux > tip.lux : lux < tip.lux);
    const here = this.#luxIn(row, Math.max(now, t0));
    if (!past(here) && !past(e1) && !past(e0)) return null;
    // The light's own passing: the cell comes later, never earlier.
    const passes =
      past(here) || e1 === e0 ? Math.max(now, t0) : t0 + ((tip.lux - e0) / (e1 - e0)) * (t1 - t0);
    if (!past(here) && !past(e1)) {
      // The light was past the tip only before: the cell may still be on its way, or already beyond.
      this.#followTo(Math.max(now, t0));
      return isPast(tip, this.#y) ? Math.max(now, t0) : null;
    }
    this.#followTo(Math.max(now, Math.min(t1, passes)));
    if (isPast(tip, this.#y)) return this.#time;
    return this.#run(t1, row, tip);
  }

  /** Stands the cell at a time, from its last place or from long enough before. */
  #followTo(time: Seconds): void {
    const start = this.#forgottenBefore(time);
    if (start > this.#time) {
      this.#time = start;
      this.#y = steadyConductance(this.#gamma, this.#luxAt(start));
    }
    if (time > this.#time) this.#run(time, this.#rowAfter(this.#time), null);
  }

  /** The latest time before which what the cell did no longer matters at `time`. */
  #forgottenBefore(time: Seconds): Seconds {
    const first = this.#times[0]!;
    let constants = 0;
    let at = time;
    const tau = Math.max(this.#riseTau, this.#fallTau);
    while (at > first && at > time - MOST_BACK && constants < FORGOTTEN) {
      const lux = Math.max(1e-3, this.#luxAt(at));
      const lag = this.#gamma * tau * (lux / 10) ** (this.#gamma - 1);
      const step = Math.min(2 * lag, at - first);
      constants += step / lag;
      at -= step;
    }
    return Math.max(first, at);
  }

  /** Follows the cell to `end`; stops at the crossing of a tip and gives its time. */
  #run(end: Seconds, firstRow: number, tip: Tip | null): Seconds | null {
    const speed = { gamma: this.#gamma, riseTau: this.#riseTau, fallTau: this.#fallTau };
    const cell = new MovingCell(speed, this.#y);
    let row = firstRow;
    while (this.#time < end) {
      while (row < this.#times.length - 1 && this.#times[row]! <= this.#time) {
        row++;
        cell.bend();
      }
      let to = Math.min(end, this.#times[row]!, this.#time + STEP);
      if (to <= this.#time) break;
      this.#setLight(cell, row, to);
      const reach = cell.reach(to - this.#time);
      if (reach < to - this.#time) {
        to = this.#time + reach;
        this.#setLight(cell, row, to);
      }
      const length = to - this.#time;
      const [y0, m0] = [cell.y, cell.startSlope * length];
      cell.step(length);
      const y1 = cell.y;
      if (tip !== null && isPast(tip, y1)) {
        const share = crossingShare(y0, y1, m0, cell.endSlope * length, tip);
        this.#time += share * length;
        this.#y = tip.y;
        return this.#time;
      }
      this.#time = to;
      this.#y = y1;
    }
    this.#y = cell.y;
    return null;
  }

  #setLight(cell: MovingCell, row: number, to: Seconds): void {
    const [start, end] = [this.#luxIn(row, this.#time), this.#luxIn(row, to)];
    cell.setLight(start, (start + end) / 2, end);
  }

  /** Light within the segment that ends at a row. */
  #luxIn(row: number, time: Seconds): Lux {
    const [t0, t1] = [this.#times[row - 1]!, this.#times[row]!];
    const [e0, e1] = [this.#lux[row - 1]!, this.#lux[row]!];
    return t1 > t0 ? e0 + ((e1 - e0) * (time - t0)) / (t1 - t0) : e1;
  }

  #luxAt(time: Seconds): Lux {
    return this.#luxIn(this.#rowAfter(time), time);
  }

  #rowAfter(time: Seconds): number {
    let low = 1;
    let high = this.#times.length - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#times[middle]! > time) high = middle;
      else low = middle + 1;
    }
    return low;
  }
}

/** Where in a step the cubic through its ends passes the tip: halved, as there is one place. */
function crossingShare(y0: number, y1: number, m0: number, m1: number, tip: Tip): number {
  let [low, high] = [0, 1];
  while (high - low > 1e-12) {
    const x = (low + high) / 2;
    const rest = 1 - x;
    const y =
      y0 * (1 + 2 * x) * rest * rest + m0 * x * rest * rest + y1 * x * x * (3 - 2 * x) - m1 * x * x * rest;
    if (tip.upwards ? y > tip.y : y < tip.y) high = x;
    else low = x;
  }
  return high;
}
