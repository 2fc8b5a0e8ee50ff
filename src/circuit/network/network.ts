/**
 * A board in time, for boards that are not as they should be: up to 40 nets of resistors, capacitors, sources,
 * diodes, and the timer and comparator as they behave. Between two events the circuit is linear, and its capacitor
 * voltages are sums of exponentials found from a symmetric eigenproblem: exact, so nothing drifts and no step size
 * decides. Events are roots of guards, closed in on to rounding. SI units.
 *
 * Equations: nodal analysis, G·v + E·i = J with Eᵀ·v = u and C·du/dt = i. R = Eᵀ·G⁻¹·E is symmetric, so with
 * y = √C·(u − u∞) the circuit is dy/dt = −S·y, S = C^−½·R⁻¹·C^−½, whose eigenvalues are real and above 0.
 */
import type { Hertz, Pair, Seconds, VoiceId, Volts } from '../../quantity/units.ts';
import { pairOf, VOICES } from '../../quantity/units.ts';
import { type Compiled, compiled, HALF } from './devices.ts';
import { type Gathered, type Linear, linearOf, Segment } from './linear.ts';
import type { Netlist } from './netlist.ts';
import { sampledVolts } from './wave.ts';

/** What a run may be told. */
export interface RunOptions {
  /** Time before anything is measured, and time measured. */
  readonly settleSeconds: Seconds;
  readonly measureSeconds: Seconds;
  /** Where an earlier run ended: capacitors and chips carry on from there. */
  readonly from?: Carried | undefined;
}

/** Capacitor voltages and states by name: what one light leaves for the next. */
export interface Carried {
  readonly volts: ReadonlyMap<string, Volts>;
  readonly states: ReadonlyMap<string, number>;
}

export type NetworkRun =
  | Computed
  | {
      readonly kind: 'not computed';
      /** Too many nets; no voltages solve it; states that never agree. */
      readonly reason: 'size' | 'singular' | 'no agreement';
    };

export interface HalfRun {
  /** Rising edges of the output counted. */
  readonly edges: number;
  /** From first to last rising edge; null with fewer than two. */
  readonly frequency: Hertz | null;
  readonly firstEdge: Seconds;
  readonly lastEdge: Seconds;
}

export interface Computed {
  readonly kind: 'computed';
  /** Time really measured: shorter than asked where a board switches faster than can be followed so long. */
  readonly seconds: Seconds;
  readonly halves: Pair<HalfRun>;
  /** Mean of a net over whole cycles of one half, or over all the time measured; null = no such net. */
  readonly meanOf: (net: string, half?: VoiceId) => Volts | null;
  /** Peak amplitude of a net at a frequency, through a raised-cosine window; 0 V for no such net. */
  readonly amplitudeOf: (net: string, hertz: Hertz) => Volts;
  /** A net's voltage as so many samples a second, without aliases to speak of; none for no such net. */
  readonly samplesOf: (net: string, rate: Hertz) => Float32Array<ArrayBuffer>;
  /** Mean current out of the source `supply`. */
  readonly supplyAmperes: number;
  /** What a probe sees of a net at the end, ohms: a floating one shows as millions. Null = no such net. */
  readonly drivingOhms: (net: string) => number | null;
  readonly end: Carried;
}

const MOST_NODES = 40;
/** Events followed in one run. */
const MOST_EVENTS = 4000;
/**
 * A board that has switched so often, and so fast, is supersonic: from then on its chips are taken to be slower, so
 * that the rest of the board is still followed. Its own frequency and current are then of the right order at best.
 */
const SUPERSONIC_EVENTS = 200;
/** Two healthy voices of 20 kHz switch 80 000 times a second. */
const SUPERSONIC_RATE: Hertz = 120_000;
const SLOWER: Seconds = 12e-6;
/** Switches that may follow each other at one moment. */
const MOST_AT_ONCE = 60;
/** A guard must be passed by this much to count at once, volts. */
const PASSED: Volts = 1e-7;
/** Rising edges a half must show before its frequency is believed; until then the run goes on, so much longer. */
const LONGER = 6;

/** Runs a netlist. Pure. */
export function runNetwork(netlist: Netlist, options: RunOptions): NetworkRun {
  const circuit = compiled(netlist);
  if (circuit.nodes.length > MOST_NODES) return { kind: 'not computed', reason: 'size' };
  const run = new Run(circuit, options.from);
  run.forward(options.settleSeconds);
  if (run.trouble) return { kind: 'not computed', reason: run.trouble };
  run.evenOut(options.settleSeconds);
  run.startMeasuring();
  run.forward(options.measureSeconds);
  if (run.turnsSlowly()) run.forward(LONGER * options.measureSeconds);
  if (run.trouble) return { kind: 'not computed', reason: run.trouble };
  return run.result();
}

class Run {
  trouble: 'singular' | 'no agreement' | null = null;
  readonly #circuit: Compiled;
  readonly #state: number[];
  readonly #readyAt: Float64Array;
  readonly #linears = new Map<number, Linear | null>();
  #volts: Float64Array;
  #time = 0;
  #events = 0;
  #supersonic = false;
  /** How often each half has switched since the run began. */
  readonly #turns = { A: 0, B: 0 };
  #before = 0;
  #segments: Segment[] = [];
  #from = 0;
  readonly #edges: Pair<number[]> = { A: [], B: [] };
  readonly #halfAt: Pair<number>;

  constructor(circuit: Compiled, from: Carried | undefined) {
    this.#circuit = circuit;
    this.#state = circuit.switches.map(({ name, start }) => from?.states.get(name) ?? start);
    this.#readyAt = new Float64Array(circuit.switches.length);
    this.#volts = Float64Array.from(circuit.capacitors, ({ name }) => from?.volts.get(name) ?? 0);
    this.#halfAt = pairOf((half) => circuit.switches.findIndex(({ name }) => name === `timer ${half}`));
    if (from === undefined) this.#powerUp();
    this.#agree();
  }

  /** The supply's own capacitor is full at once. */
  #powerUp(): void {
    const supply = this.#circuit.sources.find(({ name }) => name === 'supply');
    const reservoir = this.#circuit.capacitors.findIndex(({ name }) => name === 'reservoir');
    const fed = supply !== undefined && !this.#circuit.nodes[supply.a]?.startsWith('open');
    if (fed && reservoir >= 0) this.#volts[reservoir] = supply.volts;
  }

  readonly #ready = (at: number): boolean => this.#readyAt[at]! <= this.#time;

  #linear(): Linear | null {
    // No switch has more than four states.
    let key = 0;
    for (const state of this.#state) key = 4 * key + state;
    let linear = this.#linears.get(key);
    if (linear === undefined) {
      linear = linearOf(this.#circuit, this.#state);
      this.#linears.set(key, linear);
    }
    if (linear === null) this.trouble ??= 'singular';
    return linear;
  }

  /** Switches whatever is due at this very moment, one at a time, the furthest past its guard first. */
  #agree(): void {
    for (let turn = 0; turn < MOST_AT_ONCE; turn++) {
      const linear = this.#linear();
      if (linear === null) return;
      const now = new Segment(linear, this.#volts, this.#time);
      const due = now.due(PASSED, this.#ready);
      if (due === null) return;
      this.#flip(due.at, due.next);
    }
    this.trouble ??= 'no agreement';
  }

  #flip(at: number, to: number): void {
    for (const half of ['A', 'B'] as const) {
      if (at !== this.#halfAt[half]) continue;
      this.#turns[half]++;
      if (to === HALF.high) this.#edges[half].push(this.#time);
    }
    this.#state[at] = to;
    this.#events++;
    const { dwell } = this.#circuit.switches[at]!;
    const slowed = this.#supersonic ? Math.max(dwell, SLOWER) : dwell;
    if (dwell > 0) this.#readyAt[at] = this.#time + slowed;
  }

  /** Lets time pass. */
  forward(seconds: Seconds): void {
    const until = this.#time + seconds;
    const most = this.#events + MOST_EVENTS;
    const [eventsBefore, timeBefore] = [this.#events, this.#time];
    while (this.#time < until && this.trouble === null && this.#events < most) {
      const linear = this.#linear();
      if (linear === null) return;
      const segment = new Segment(linear, this.#volts, this.#time);
      let end = until;
      for (const ready of this.#readyAt) if (ready > this.#time && ready < end) end = ready;
      const event = segment.firstPassed(end - this.#time, this.#ready);
      segment.seconds = event === null ? end - this.#time : event.after;
      this.#volts = segment.capacitorVolts(segment.seconds);
      this.#time = event === null ? end : this.#time + event.after;
      this.#segments.push(segment);
      if (event !== null) this.#flip(event.at, event.next);
      this.#agree();
      const events = this.#events - eventsBefore;
      if (events > SUPERSONIC_EVENTS && events > SUPERSONIC_RATE * (this.#time - timeBefore))
        this.#supersonic = true;
    }
  }

  /**
   * Capacitors far slower than the run are set where no mean current flows: the mean of the time just run, times
   * the resistance each sees. A timing capacitor that swings is where it is, however slowly it does.
   */
  evenOut(seconds: Seconds): void {
    const last = this.#segments.at(-1);
    if (last === undefined) return;
    const half = this.#time - seconds / 2;
    const swings = (name: string): boolean =>
      VOICES.some((voice) => name === `timing ${voice}` && this.#turns[voice] > 0);
    for (const [k, { name, farads }] of this.#circuit.capacitors.entries()) {
      if (swings(name)) continue;
      const ohms = last.linear.capacitorOhms[k]!;
      if (ohms * farads < seconds / 3) continue;
      const begun = this.#segments.find(({ start }) => start >= half);
      if (begun === undefined) continue;
      const rise = this.#volts[k]! - begun.capacitorVolts(0)[k]!;
      const span = this.#time - begun.start;
      if (span > 0) this.#volts[k]! += (rise / span) * farads * ohms;
    }
    this.#agree();
  }

  startMeasuring(): void {
    this.#segments = [];
    this.#edges.A.length = 0;
    this.#edges.B.length = 0;
    this.#from = this.#time;
    this.#before = this.#events;
  }

  /** A half has turned, but too seldom to tell its frequency. */
  turnsSlowly(): boolean {
    return (
      this.#events - this.#before < MOST_EVENTS / 2 &&
      (['A', 'B'] as const).some((half) => this.#turns[half] > 0 && this.#edges[half].length < 3)
    );
  }

  result(): Computed {
    const segments = this.#segments;
    const until = this.#time;
    const { nodes, sources } = this.#circuit;
    const halves = pairOf((half) => halfOf(this.#edges[half]));
    const windows = new Map<string, ReadonlyMap<Linear, Gathered>>();
    const gathered = (from: Seconds, to: Seconds): ReadonlyMap<Linear, Gathered> => {
      const key = `${from} ${to}`;
      const known = windows.get(key);
      if (known !== undefined) return known;
      const all = new Map<Linear, Gathered>();
      for (const segment of segments) {
        const { linear } = segment;
        const own = all.get(linear) ?? { seconds: 0, modes: new Float64Array(linear.rates.length) };
        all.set(linear, own);
        segment.gather(own, from, to);
      }
      windows.set(key, all);
      return all;
    };
    const mean = (node: number, from: Seconds, to: Seconds): Volts => {
      if (node < 0 || to <= from) return 0;
      let sum = 0;
      for (const [linear, { seconds, modes }] of gathered(from, to)) {
        const { constant, modes: shares } = linear.nodes[node]!;
        sum += constant * seconds;
        for (let m = 0; m < modes.length; m++) sum += shares[m]! * modes[m]!;
      }
      return sum / (to - from);
    };
    const nodeOf = (net: string): number => nodes.indexOf(net);
    const supply = sources.find(({ name }) => name === 'supply');
    const plus = supply ? mean(supply.a, this.#from, until) - mean(supply.b, this.#from, until) : 0;
    const last = segments.at(-1)?.linear ?? null;
    return {
      kind: 'computed',
      seconds: until - this.#from,
      halves,
      meanOf: (net, half) => {
        const node = nodeOf(net);
        if (node < 0) return net === 'ground' ? 0 : null;
        const own = half === undefined ? null : halves[half];
        return own !== null && own.edges >= 2
          ? mean(node, own.firstEdge, own.lastEdge)
          : mean(node, this.#from, until);
      },
      amplitudeOf: (net, hertz) => {
        const node = nodeOf(net);
        const from = this.#from;
        const span = until - from;
        if (node < 0 || span <= 0) return 0;
        // A raised cosine over the whole run, so that one voice hardly leaks into the other: ½X(f) − ¼X(f ± 1/T).
        let [re, im] = [0, 0];
        for (const [shift, weight] of [
          [0, 0.5],
          [-1, -0.25],
          [1, -0.25],
        ] as const)
          for (const segment of segments) {
            const part = segment.fourier(node, from, hertz + shift / span);
            re += weight * part[0];
            im += weight * part[1];
          }
        return (4 * Math.hypot(re, im)) / span;
      },
      samplesOf: (net, rate) => {
        const node = nodeOf(net);
        return node < 0 ? new Float32Array(0) : sampledVolts(segments, node, this.#from, until, rate);
      },
      supplyAmperes: supply ? (supply.volts - plus) / supply.ohms : 0,
      drivingOhms: (net) => {
        const node = nodeOf(net);
        return node < 0 || last === null ? null : last.drivingOhms(node);
      },
      end: {
        volts: new Map(this.#circuit.capacitors.map(({ name }, k) => [name, this.#volts[k]!])),
        states: new Map(this.#circuit.switches.map(({ name }, k) => [name, this.#state[k]!])),
      },
    };
  }
}

function halfOf(edges: readonly Seconds[]): HalfRun {
  const [firstEdge, lastEdge] = [edges[0] ?? 0, edges.at(-1) ?? 0];
  const frequency = edges.length >= 2 ? (edges.length - 1) / (lastEdge - firstEdge) : null;
  return { edges: edges.length, frequency, firstEdge, lastEdge };
}
