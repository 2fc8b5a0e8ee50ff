/**
 * One set of states of a network, reduced to its capacitors: where they head for, how fast each mode dies, and what
 * every node and every guard makes of it. See `network.ts` for the equations.
 */
import type { Hertz, Seconds, Volts } from '../../quantity/units.ts';
import { eigenOf, factorsOf } from './algebra.ts';
import type { Compiled, Functional } from './devices.ts';

/** Every net leaks a little, or a floating one would have no voltage at all. */
const LEAK_SIEMENS = 1e-11;

/** c + Σ weight·mode. */
interface OverModes {
  readonly constant: Volts;
  readonly modes: Float64Array;
}

export interface LinearGuard {
  /** Which switch, and the state it goes to. */
  readonly at: number;
  readonly next: number;
  readonly all: readonly OverModes[];
}

export interface Linear {
  readonly rates: Float64Array;
  /** Each node's rest, and its share of each mode. */
  readonly nodes: readonly OverModes[];
  readonly guards: readonly LinearGuard[];
  /** Resistance each capacitor sees with the others open. */
  readonly capacitorOhms: Float64Array;
  readonly modesFrom: (volts: Float64Array) => Float64Array;
  readonly voltsFrom: (modes: Float64Array) => Float64Array;
  readonly drivingOhms: (node: number) => number;
  /** Room for one set of modes. */
  readonly scratch: Float64Array;
}

/** The linear circuit of one set of states; null when nothing solves it. */
export function linearOf(circuit: Compiled, state: readonly number[]): Linear | null {
  const n = circuit.nodes.length;
  const pieces = circuit.switches.map((each, at) => each.pieces[state[at]!]!);
  const matrix = Array.from({ length: n }, (_, i) => {
    const row = new Float64Array(n);
    row[i] = LEAK_SIEMENS;
    return row;
  });
  const currents = new Float64Array(n);
  for (const stamps of [circuit.stamps, ...pieces.map((piece) => piece.stamps)])
    for (const { a, b, siemens, amperes } of stamps) {
      if (a === b) continue;
      if (a >= 0) {
        matrix[a]![a]! += siemens;
        currents[a]! += amperes;
        if (b >= 0) matrix[a]![b]! -= siemens;
      }
      if (b >= 0) {
        matrix[b]![b]! += siemens;
        currents[b]! -= amperes;
        if (a >= 0) matrix[b]![a]! -= siemens;
      }
    }
  const factors = factorsOf(matrix);
  if (factors === null) return null;
  const open = factors.solve(currents);
  const { capacitors } = circuit;
  const k = capacitors.length;
  const at = (v: Float64Array, node: number): number => (node < 0 ? 0 : v[node]!);
  // Columns of G⁻¹·E, and R = Eᵀ·G⁻¹·E.
  const columns = capacitors.map(({ a, b }) => {
    const e = new Float64Array(n);
    if (a >= 0) e[a] = 1;
    if (b >= 0) e[b] = -1;
    return factors.solve(e);
  });
  const across = (v: Float64Array): Float64Array =>
    Float64Array.from(capacitors, ({ a, b }) => at(v, a) - at(v, b));
  const rest = across(open);
  const resistances = Array.from({ length: k }, () => new Float64Array(k));
  for (let j = 0; j < k; j++) {
    const column = across(columns[j]!);
    for (let i = 0; i < k; i++) resistances[i]![j] = column[i]!;
  }
  const capacitorOhms = Float64Array.from(resistances, (row, i) => row[i]!);
  const modal = modesOf(resistances, capacitors);
  if (modal === null) return null;
  const { rates, toVolts, toModes } = modal;
  // v = v∞ − G⁻¹·E·i with i = C·du/dt, and du/dt of a mode is −rate times its share.
  const nodes = Array.from({ length: n }, (_, node): OverModes => {
    const modes = new Float64Array(k);
    for (let m = 0; m < k; m++) {
      let sum = 0;
      for (let i = 0; i < k; i++) sum += columns[i]![node]! * capacitors[i]!.farads * toVolts[i]![m]!;
      modes[m] = sum * rates[m]!;
    }
    return { constant: open[node]!, modes };
  });
  const overModes = ({ nodes: where, weights, constant }: Functional): OverModes => {
    const modes = new Float64Array(k);
    let c = constant;
    where.forEach((node, i) => {
      if (node < 0) return;
      const { constant: restVolts, modes: shares } = nodes[node]!;
      c += weights[i]! * restVolts;
      for (let m = 0; m < k; m++) modes[m]! += weights[i]! * shares[m]!;
    });
    return { constant: c, modes };
  };
  return {
    rates,
    nodes,
    guards: pieces.flatMap(({ guards }, which) =>
      guards.map(({ all, to }) => ({ at: which, next: to, all: all.map(overModes) })),
    ),
    capacitorOhms,
    scratch: new Float64Array(k),
    modesFrom: (volts) =>
      rows(k, (m) => {
        let sum = 0;
        for (let i = 0; i < k; i++) sum += toModes[m]![i]! * (volts[i]! - rest[i]!);
        return sum;
      }),
    voltsFrom: (modes) =>
      rows(k, (i) => {
        let sum = rest[i]!;
        for (let m = 0; m < k; m++) sum += toVolts[i]![m]! * modes[m]!;
        return sum;
      }),
    drivingOhms: (node) => {
      const e = new Float64Array(n);
      e[node] = 1;
      return factors.solve(e)[node]!;
    },
  };
}

function rows(length: number, of: (i: number) => number): Float64Array {
  const out = new Float64Array(length);
  for (let i = 0; i < length; i++) out[i] = of(i);
  return out;
}

/** Rates, and the ways from capacitor volts to modes and back. */
function modesOf(
  resistances: readonly Float64Array[],
  capacitors: Compiled['capacitors'],
): {
  readonly rates: Float64Array;
  readonly toVolts: readonly Float64Array[];
  readonly toModes: readonly Float64Array[];
} | null {
  const k = capacitors.length;
  const roots = capacitors.map(({ farads }) => Math.sqrt(farads));
  // The inverse, √C·R·√C, has the same vectors; its eigenvalues are the time constants.
  const scaled = resistances.map((row, i) =>
    Float64Array.from(row, (r, j) => (roots[i]! * roots[j]! * (r + resistances[j]![i]!)) / 2),
  );
  const { values, vectors } = eigenOf(scaled);
  if (!values.every((tau) => tau > 0 && Number.isFinite(tau))) return null;
  return {
    rates: Float64Array.from(values, (tau) => 1 / tau),
    toVolts: Array.from({ length: k }, (_, i) => Float64Array.from(vectors[i]!, (q) => q / roots[i]!)),
    toModes: Array.from({ length: k }, (_, m) =>
      Float64Array.from({ length: k }, (__, i) => vectors[i]![m]! * roots[i]!),
    ),
  };
}

export interface Passing {
  readonly at: number;
  readonly next: number;
  readonly after: Seconds;
}

/** Time spent in one linear circuit, and the integral of each mode over it. */
export interface Gathered {
  seconds: Seconds;
  readonly modes: Float64Array;
}

/** Steps between looks at the guards, in time constants of the fastest mode still alive. */
const LOOK = 0.3;
/** A mode that moves a guard by less is not looked for, volts. */
const UNSEEN: Volts = 1e-6;
/** A mode below this is over, volts. */
const OVER: Volts = 1e-9;

/** A stretch of time in one linear circuit. Thousands are made in a run: only the modes are its own. */
export class Segment {
  readonly linear: Linear;
  readonly start: Seconds;
  seconds: Seconds = 0;
  readonly #modes: Float64Array;
  /** The modes so long after the start; shared by all segments of one linear circuit. */
  readonly #decayed: Float64Array;

  constructor(linear: Linear, volts: Float64Array, start: Seconds) {
    this.linear = linear;
    this.start = start;
    this.#modes = linear.modesFrom(volts);
    this.#decayed = linear.scratch;
  }

  #decayTo(after: Seconds): void {
    const { rates } = this.linear;
    const modes = this.#modes;
    const decayed = this.#decayed;
    if (after === 0) decayed.set(modes);
    else for (let m = 0; m < modes.length; m++) decayed[m] = modes[m]! * Math.exp(-rates[m]! * after);
  }

  /** Least of some functionals, where the modes have decayed to. */
  #least(all: readonly OverModes[]): Volts {
    const decayed = this.#decayed;
    let least = Number.POSITIVE_INFINITY;
    for (const { constant, modes: shares } of all) {
      let value = constant;
      for (let m = 0; m < decayed.length; m++) value += shares[m]! * decayed[m]!;
      if (value < least) least = value;
      if (least <= 0) break;
    }
    return least;
  }

  /** The guard furthest past its point right at the start, of the switches that are ready; null = none by so much. */
  due(by: Volts, ready: (at: number) => boolean): LinearGuard | null {
    this.#decayTo(0);
    let [most, found]: [Volts, LinearGuard | null] = [by, null];
    for (const guard of this.linear.guards) {
      if (!ready(guard.at)) continue;
      const value = this.#least(guard.all);
      if (value > most) [most, found] = [value, guard];
    }
    return found;
  }

  capacitorVolts(after: Seconds): Float64Array {
    this.#decayTo(after);
    return this.linear.voltsFrom(this.#decayed);
  }

  /** A guard one of whose functionals can never rise above 0 in this segment need not be watched. */
  #canPass({ all }: LinearGuard): boolean {
    const modes = this.#modes;
    for (const { constant, modes: shares } of all) {
      let most = constant;
      for (let m = 0; m < modes.length; m++) most += Math.max(0, shares[m]! * modes[m]!);
      if (most <= 0) return false;
    }
    return true;
  }

  /** The first guard passed within a time, of the switches that are ready. */
  firstPassed(within: Seconds, ready: (at: number) => boolean): Passing | null {
    const watched: LinearGuard[] = [];
    for (const guard of this.linear.guards) if (ready(guard.at) && this.#canPass(guard)) watched.push(guard);
    if (watched.length === 0) return null;
    this.#decayTo(0);
    // What is past its point already counts once it has been back.
    const past = watched.map(({ all }) => this.#least(all) > 0);
    const reach = this.#reachOf(watched);
    for (let from = 0; from < within; ) {
      const to = Math.min(within, this.#nextLook(from, reach));
      this.#decayTo(to);
      let found: Passing | null = null;
      for (const [i, { all, at, next }] of watched.entries()) {
        if (this.#least(all) <= 0) {
          past[i] = false;
          continue;
        }
        if (past[i]) continue;
        const after = this.#rootOf(all, from, found?.after ?? to);
        if (found === null || after < found.after) found = { at, next, after };
        this.#decayTo(found.after);
      }
      if (found !== null) return found;
      from = to;
    }
    return null;
  }

  /** How far each mode moves any of these guards, volts. */
  #reachOf(watched: readonly LinearGuard[]): Float64Array {
    const modes = this.#modes;
    const reach = new Float64Array(modes.length);
    for (const { all } of watched)
      for (const { modes: shares } of all)
        for (let m = 0; m < modes.length; m++)
          reach[m] = Math.max(reach[m]!, Math.abs(shares[m]! * modes[m]!));
    return reach;
  }

  /** When to look next: by the fastest mode that still moves a guard. */
  #nextLook(after: Seconds, reach: Float64Array): Seconds {
    const { rates } = this.linear;
    let step = Number.POSITIVE_INFINITY;
    for (let m = 0; m < rates.length; m++)
      if (LOOK / rates[m]! < step && reach[m]! * Math.exp(-rates[m]! * after) > UNSEEN)
        step = LOOK / rates[m]!;
    // A mode that has just begun is looked at more closely than one well on its way.
    return after + Math.min(step, Math.max(after * 0.5, step * 0.05));
  }

  /** Where the least of functionals, ≤ 0 at `from` and > 0 at `to`, passes 0; the end above 0. */
  #rootOf(all: readonly OverModes[], from: Seconds, to: Seconds): Seconds {
    const value = (t: Seconds): Volts => {
      this.#decayTo(t);
      return this.#least(all);
    };
    let [low, high] = [from, to];
    let [atLow, atHigh] = [value(low), value(high)];
    for (let i = 0; i < 80 && high - low > 1e-15 + 1e-14 * high; i++) {
      const share = i % 3 === 2 || !(atHigh > atLow) ? 0.5 : -atLow / (atHigh - atLow);
      const middle = low + Math.min(0.999, Math.max(0.001, share)) * (high - low);
      if (middle <= low || middle >= high) break;
      const at = value(middle);
      if (at > 0) [high, atHigh] = [middle, at];
      else [low, atLow] = [middle, at];
    }
    return high;
  }

  /** Adds the part of this segment between two times to what its linear circuit has gathered. */
  gather(into: Gathered, from: Seconds, to: Seconds): void {
    const [begin, end] = clipped(this.start, this.seconds, from, to);
    if (end <= begin) return;
    into.seconds += end - begin;
    const { rates } = this.linear;
    for (let m = 0; m < rates.length; m++) {
      const rate = rates[m]!;
      into.modes[m]! +=
        (this.#modes[m]! * Math.exp(-rate * begin) * -Math.expm1(-rate * (end - begin))) / rate;
    }
  }

  /** ∫ v dt of a node between two times of this segment, seconds after its start. */
  integral(node: number, begin: Seconds, end: Seconds): number {
    const { rates, nodes } = this.linear;
    const { constant, modes: shares } = nodes[node]!;
    let sum = constant * (end - begin);
    for (let m = 0; m < rates.length; m++) {
      const [rate, size] = [rates[m]!, shares[m]! * this.#modes[m]!];
      if (Math.abs(size) > OVER)
        sum += (size * Math.exp(-rate * begin) * -Math.expm1(-rate * (end - begin))) / rate;
    }
    return sum;
  }

  /** ∫ v·e^(−iω(t − from)) dt of a node over the part of this segment from a time on: real, imaginary. */
  fourier(node: number, from: Seconds, hertz: Hertz): readonly [number, number] {
    const [begin, end] = clipped(this.start, this.seconds, from, Number.POSITIVE_INFINITY);
    if (end <= begin) return [0, 0];
    const { rates, nodes } = this.linear;
    const { constant, modes: shares } = nodes[node]!;
    let [re, im] = exponentialIntegral(0, hertz, this.start - from, begin, end);
    re *= constant;
    im *= constant;
    for (let m = 0; m < rates.length; m++) {
      const size = shares[m]! * this.#modes[m]!;
      if (Math.abs(size) < OVER) continue;
      const part = exponentialIntegral(rates[m]!, hertz, this.start - from, begin, end);
      re += size * part[0];
      im += size * part[1];
    }
    return [re, im];
  }
}

/** Part of a segment between two times, seconds after its start. */
function clipped(start: Seconds, seconds: Seconds, from: Seconds, to: Seconds): readonly [Seconds, Seconds] {
  return [Math.max(0, from - start), Math.min(seconds, to - start)];
}

/** ∫ e^(−rate·τ)·e^(−iω(start + τ)) dτ from begin to end. */
function exponentialIntegral(
  rate: number,
  hertz: Hertz,
  start: Seconds,
  begin: Seconds,
  end: Seconds,
): readonly [number, number] {
  const omega = 2 * Math.PI * hertz;
  const size = rate * rate + omega * omega;
  const at = (t: Seconds): readonly [number, number] => {
    // e^(−rate·t − iω(start + t))·(−1)/(rate + iω)
    const decay = Math.exp(-rate * t);
    const [c, s] = [decay * Math.cos(omega * (start + t)), -decay * Math.sin(omega * (start + t))];
    return [(-c * rate - s * omega) / size, (c * omega - s * rate) / size];
  };
  const [r0, i0] = at(begin);
  const [r1, i1] = at(end);
  return [r1 - r0, i1 - i0];
}
