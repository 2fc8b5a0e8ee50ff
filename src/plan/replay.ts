/**
 * A recording through both gates, far faster than it is played and with the same result: the moments at which each
 * voice starts and stops. Seconds on the recording's clock.
 *
 * A cell's conductance can pass a trip point only while, or after, the light has been past the light that holds the
 * cell there: until then the rows need only be compared with two numbers. Where the light does pass, the cell's rate
 * equation is followed from some 25 of its time constants before, when it has long forgotten how it began, to the
 * crossing. Without noise. Under a lamp that ripples the cell's lag of some milliseconds is left out, and a light in
 * which the ripple tips the gate to and fro counts as chatter.
 */
import { MovingCell, steadyConductance } from '../circuit/cell.ts';
import { type Gate, type GateState, gatesOf, nodeVolts, overdriveVolts } from '../circuit/gate.ts';
import { railVolts } from '../circuit/supply.ts';
import { type Design, thresholdFor } from '../design/design.ts';
import type { LogPoints } from '../light/log-file.ts';
import type { Ripple } from '../light/ripple.ts';
import { type Lux, type Pair, pairOf, type Seconds, VOICES, type VoiceId } from '../quantity/units.ts';
import { settingsFor } from './setting.ts';
import { tripLuxAt } from './trip-lux.ts';

export interface Change {
  readonly voice: VoiceId;
  readonly time: Seconds;
  readonly sounding: boolean;
}

export interface Replayed {
  /** In order of time. */
  readonly changes: readonly Change[];
  /** At the first row. */
  readonly soundingAtFirst: Pair<boolean>;
  /** Time each voice spends in light in which a lamp's ripple tips it to and fro. */
  readonly chatterSeconds: Pair<Seconds>;
}

const FORGOTTEN = 25;
/** Rows of darkness have no time constant: no further back than this. */
const MOST_BACK: Seconds = 5;
const STEP: Seconds = 1 / 3000;
/** A comparator tips only when it is clearly past its point. */
const CLEARLY = 1e-9;

export function replayLog(design: Design, points: LogPoints, ripple: Ripple | null = null): Replayed {
  return ripple === null || ripple.depth === 0
    ? replaySteady(design, points)
    : replayRippled(design, points, ripple);
}

/** When a voice in a state next changes it: past this light upwards or downwards, at this conductance. */
interface Tip {
  readonly upwards: boolean;
  /** −Infinity with `upwards`: in any light; Infinity: in none; and the other way round. */
  readonly lux: Lux;
  readonly y: number;
}

function replaySteady(design: Design, { times, lux }: LogPoints): Replayed {
  const gates = gatesOf(design, railVolts(design.supply));
  const cells = pairOf((voice) => new Tracker(design, voice, times, lux[voice]));
  const tips = pairOf((voice) => tipsOf(design, voice, gates[voice]));
  const high = { A: false, B: false };
  const tipNow = (voice: VoiceId): Tip => tips[voice][(high.A ? 1 : 0) + (high.B ? 2 : 0)]!;
  const reads = (voice: VoiceId) => (high[voice] ? gates[voice].releases : !gates[voice].silences);
  const first = times[0] ?? 0;
  settle(high, (voice) =>
    isPast(tipNow(voice), steadyConductance(design.voices[voice].cell.gamma, lux[voice][0] ?? 0)),
  );
  const soundingAtFirst = pairOf(reads);
  const changes: Change[] = [];
  let now = first;
  let row = 1;
  while (row < times.length) {
    // No change before the first row in which either light is past its tip.
    const [a, b] = [tipNow('A'), tipNow('B')];
    row = firstPast(lux.A, a, lux.B, b, row);
    if (row >= times.length) break;
    const end = times[row]!;
    let best: { voice: VoiceId; time: Seconds } | null = null;
    for (const voice of VOICES) {
      cells[voice].mark();
      const time = cells[voice].crossing(voice === 'A' ? a : b, now, row);
      if (time !== null && time <= end && (best === null || time < best.time)) best = { voice, time };
    }
    if (best === null) {
      now = end;
      row++;
      continue;
    }
    // The other cell may have been followed further than this change, which can move its tip.
    cells[best.voice === 'A' ? 'B' : 'A'].backToMark();
    const before = reads(best.voice);
    high[best.voice] = !high[best.voice];
    now = best.time;
    if (reads(best.voice) !== before) changes.push({ voice: best.voice, time: best.time, sounding: !before });
  }
  return { changes, soundingAtFirst, chatterSeconds: { A: 0, B: 0 } };
}

function firstPast(luxA: Float64Array, a: Tip, luxB: Float64Array, b: Tip, from: number): number {
  // A light before the row counts too: it may be past already, and the cell on its way.
  const [la, ua, lb, ub] = [a.lux, a.upwards, b.lux, b.upwards];
  for (let i = from; i < luxA.length; i++) {
    const [a0, a1, b0, b1] = [luxA[i - 1]!, luxA[i]!, luxB[i - 1]!, luxB[i]!];
    if (ua ? a0 > la || a1 > la : a0 < la || a1 < la) return i;
    if (ub ? b0 > lb || b1 > lb : b0 < lb || b1 < lb) return i;
  }
  return luxA.length;
}

function isPast({ upwards, y: tip, lux }: Tip, y: number): boolean {
  if (!Number.isFinite(lux)) return upwards === lux < 0;
  return upwards ? y > tip * (1 + CLEARLY) : y < tip * (1 - CLEARLY);
}

function settle(high: { A: boolean; B: boolean }, past: (voice: VoiceId) => boolean): void {
  for (let turn = 0; turn < 4; turn++) {
    let changed = false;
    for (const voice of VOICES)
      if (past(voice)) {
        high[voice] = !high[voice];
        changed = true;
      }
    if (!changed) return;
  }
}

/** The tip of a voice in each of the four states of both outputs. */
function tipsOf(design: Design, voice: VoiceId, gate: Gate): readonly Tip[] {
  const { gamma } = design.voices[voice].cell;
  return gate.states.map((state, index) => {
    const isHigh = ((index >> (voice === 'A' ? 0 : 1)) & 1) === 1;
    // Wrong where it stands: an output that is low while its overdrive is above 0, or high while it is not.
    const wrongAt = (siemens: number) => overdriveVolts(state, nodeVolts(state, siemens)) > 0 !== isHigh;
    const [inDark, inLight] = [wrongAt(gate.darkSiemens), wrongAt(1e3)];
    if (inDark === inLight)
      return { upwards: true, lux: inDark ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY, y: 0 };
    const y = tipSiemens(state) * gate.r10Ohms;
    return { upwards: inLight, lux: 10 * y ** (1 / gamma), y };
  });
}

function tipSiemens({ n0, n1, d0, tripVolts }: GateState): number {
  return (n0 - tripVolts * d0) / (tripVolts - n1);
}

/** One cell along its recording. */
class Tracker {
  readonly #times: Float64Array;
  readonly #lux: Float64Array;
  readonly #gamma: number;
  readonly #riseTau: Seconds;
  readonly #fallTau: Seconds;
  /** Where the cell was last followed to. */
  #time: Seconds = Number.NEGATIVE_INFINITY;
  #y = 0;
  #marked: readonly [Seconds, number] = [Number.NEGATIVE_INFINITY, 0];

  constructor(design: Design, voice: VoiceId, times: Float64Array, lux: Float64Array) {
    const { gamma, riseTau, fallTau } = settingsFor(design)[voice].speed;
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
      const [y0, m0] = [cell.y, cell.slope(cell.lux0) * length];
      cell.step(length);
      const y1 = cell.y;
      if (tip !== null && isPast(tip, y1)) {
        const share = crossingShare(y0, y1, m0, cell.slope(cell.lux1) * length, tip);
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
    cell.lux0 = this.#luxIn(row, this.#time);
    cell.lux1 = this.#luxIn(row, to);
    cell.luxMiddle = (cell.lux0 + cell.lux1) / 2;
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

/** Mean light against the levels past which ripple leaves no doubt. */
function replayRippled(design: Design, { times, lux }: LogPoints, ripple: Ripple): Replayed {
  const changes: Change[] = [];
  const chatterSeconds = { A: 0, B: 0 };
  const soundingAtFirst = pairOf((voice) => {
    const setting = settingsFor(design)[voice];
    const { rotation } = thresholdFor(design, voice).trimmer;
    const demands = { ripple, noiseVolts: 0 };
    const { upper, lower } = tripLuxAt(setting, rotation, demands);
    const smooth = tripLuxAt(setting, rotation, { ripple: null, noiseVolts: 0 });
    // Ripple widens what lies between: more than the hysteresis leaves, and the gate goes to and fro in it.
    const chatters = upper / lower > (smooth.upper / smooth.lower) * (1 + 1e-9) && upper > smooth.upper;
    const values = lux[voice];
    let isLit = values[0]! >= Math.sqrt(upper * lower);
    const first = isLit;
    for (let i = 1; i < times.length; i++) {
      const [e0, e1] = [values[i - 1]!, values[i]!];
      const [t0, length] = [times[i - 1]!, times[i]! - times[i - 1]!];
      const at = (level: Lux) => t0 + ((level - e0) / (e1 - e0)) * length;
      if (isLit ? e1 < lower : e1 > upper) {
        isLit = !isLit;
        const level = isLit ? upper : lower;
        const time = (isLit ? e0 > upper : e0 < lower) ? t0 : at(level);
        changes.push({ voice, time, sounding: isLit === setting.soundsInLight });
      }
      if (chatters) chatterSeconds[voice] += shareBetween(e0, e1, lower, upper) * length;
    }
    return first === setting.soundsInLight;
  });
  changes.sort((a, b) => a.time - b.time);
  return { changes, soundingAtFirst, chatterSeconds };
}

/** Share of a straight way from one value to another that lies between two levels. */
function shareBetween(from: number, to: number, low: number, high: number): number {
  if (from === to) return from > low && from < high ? 1 : 0;
  const [least, most] = [Math.min(from, to), Math.max(from, to)];
  return Math.max(0, Math.min(most, high) - Math.max(least, low)) / (most - least);
}
