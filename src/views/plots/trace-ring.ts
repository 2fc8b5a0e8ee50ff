/**
 * The last seconds of both voices: node volts and shown gate states, in typed arrays that are filled round and round, so
 * that 30 or 60 frames a second make no rubbish. `copyWindow` lays the newest stretch out in order for drawing.
 */
import type { Pair, Seconds, Volts } from '../../quantity/units.ts';
import { GateHold } from './gate-hold.ts';

/** One report of the running instrument. */
export interface TraceFrame {
  /** On a clock that runs with the sound; only differences matter. */
  readonly seconds: Seconds;
  readonly volts: Pair<Volts>;
  readonly sounding: Pair<boolean>;
}

/** A stretch of trace, oldest first; `ago` ends at 0. Only the first `length` entries count. */
export interface TraceWindow {
  length: number;
  /** Seconds before the newest frame, negative. */
  readonly ago: Float64Array;
  readonly voltsA: Float64Array;
  readonly voltsB: Float64Array;
  readonly soundingA: Uint8Array;
  readonly soundingB: Uint8Array;
}

export function emptyWindow(capacity: number): TraceWindow {
  return {
    length: 0,
    ago: new Float64Array(capacity),
    voltsA: new Float64Array(capacity),
    voltsB: new Float64Array(capacity),
    soundingA: new Uint8Array(capacity),
    soundingB: new Uint8Array(capacity),
  };
}

export class TraceRing {
  readonly capacity: number;
  readonly #times: Float64Array;
  readonly #window: TraceWindow;
  readonly #holds = { A: new GateHold(), B: new GateHold() };
  /** Where the next frame goes. */
  #next = 0;
  #count = 0;

  constructor(capacity: number) {
    this.capacity = capacity;
    this.#times = new Float64Array(capacity);
    this.#window = emptyWindow(capacity);
  }

  push(frame: TraceFrame): void {
    const newest = this.#newest();
    // A clock that starts again (sound switched off and on) starts another trace.
    if (newest !== null && frame.seconds < newest) this.clear();
    else if (newest === frame.seconds) return;
    const at = this.#next;
    this.#times[at] = frame.seconds;
    this.#window.voltsA[at] = frame.volts.A;
    this.#window.voltsB[at] = frame.volts.B;
    this.#window.soundingA[at] = this.#holds.A.next(frame.seconds, frame.sounding.A) ? 1 : 0;
    this.#window.soundingB[at] = this.#holds.B.next(frame.seconds, frame.sounding.B) ? 1 : 0;
    this.#next = (at + 1) % this.capacity;
    this.#count = Math.min(this.#count + 1, this.capacity);
  }

  clear(): void {
    this.#next = 0;
    this.#count = 0;
  }

  /**
   * Copies the frames of the last `span` seconds into `into` (made by `emptyWindow` with this capacity), with one frame
   * more at the far end, so that lines run to the edge.
   */
  copyWindow(span: Seconds, into: TraceWindow): void {
    const newest = this.#newest() ?? 0;
    let first = this.#count - 1;
    while (first > 0 && newest - this.#timeAt(first) < span) first--;
    into.length = 0;
    for (let index = Math.max(0, first); index < this.#count; index++) {
      const from = this.#slot(index);
      const to = into.length++;
      into.ago[to] = this.#timeAt(index) - newest;
      into.voltsA[to] = this.#window.voltsA[from] ?? 0;
      into.voltsB[to] = this.#window.voltsB[from] ?? 0;
      into.soundingA[to] = this.#window.soundingA[from] ?? 0;
      into.soundingB[to] = this.#window.soundingB[from] ?? 0;
    }
  }

  #newest(): Seconds | null {
    return this.#count === 0 ? null : this.#timeAt(this.#count - 1);
  }

  #slot(index: number): number {
    return (this.#next - this.#count + index + this.capacity) % this.capacity;
  }

  #timeAt(index: number): Seconds {
    return this.#times[this.#slot(index)] ?? 0;
  }
}

/** One moment of a window. */
export interface TraceSample {
  readonly ago: Seconds;
  readonly volts: Pair<Volts>;
  readonly sounding: Pair<boolean>;
}

/** The frame nearest to a moment (`ago` negative or 0); null when the window is empty. */
export function sampleAt(window: TraceWindow, ago: Seconds): TraceSample | null {
  let best = -1;
  let distance = Number.POSITIVE_INFINITY;
  for (let index = 0; index < window.length; index++) {
    const away = Math.abs((window.ago[index] ?? 0) - ago);
    if (away < distance) {
      best = index;
      distance = away;
    }
  }
  if (best < 0) return null;
  return {
    ago: window.ago[best] ?? 0,
    volts: { A: window.voltsA[best] ?? 0, B: window.voltsB[best] ?? 0 },
    sounding: { A: window.soundingA[best] === 1, B: window.soundingB[best] === 1 },
  };
}

/** Up to `count` frames spread evenly over the window, oldest first. */
export function sampled(window: TraceWindow, count: number): TraceSample[] {
  if (window.length === 0) return [];
  const start = window.ago[0] ?? 0;
  const wanted = Math.min(count, window.length);
  const samples = new Map<Seconds, TraceSample>();
  for (let n = 0; n < wanted; n++) {
    const sample = sampleAt(window, wanted === 1 ? 0 : start - (start * n) / (wanted - 1));
    if (sample !== null) samples.set(sample.ago, sample);
  }
  return [...samples.values()];
}

/** The stretches in which a voice is shown as sounding, as pairs of seconds ago. */
export function soundingStretches(window: TraceWindow, voice: 'A' | 'B'): [Seconds, Seconds][] {
  const states = voice === 'A' ? window.soundingA : window.soundingB;
  const found: [Seconds, Seconds][] = [];
  let from: Seconds | null = null;
  for (let index = 0; index < window.length; index++) {
    const at = window.ago[index] ?? 0;
    if (states[index] === 1 && from === null) from = at;
    if (states[index] !== 1 && from !== null) {
      found.push([from, at]);
      from = null;
    }
  }
  if (from !== null) found.push([from, 0]);
  return found;
}
