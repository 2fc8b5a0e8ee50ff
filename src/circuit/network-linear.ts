/**
 * One set of states of a network, reduced to its capacitors: where they head for, how fast each mode dies, and what
 * every node and every guard makes of it. See `network.ts` for the equations.
 */
import type { Hertz, Seconds, Volts } from '../quantity/units.ts';
import { eigenOf, factorsOf } from './network-algebra.ts';
import type { Compiled, Functional } from './network-devices.ts';

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
    modesFrom: (volts) =>
      Float64Array.from({ length: k }, (_, m) => {
        let sum = 0;
        for (let i = 0; i < k; i++) sum += toModes[m]![i]! * (volts[i]! - rest[i]!);
        return sum;
      }),
    voltsFrom: (modes) =>
      Float64Array.from({ length: k }, (_, i) => {
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

/** A stretch of time in one linear circuit. */
export interface Segment {
  readonly linear: Linear;
  readonly start: Seconds;
  seconds: Seconds;
  /** The guard furthest past its point right at the start, of the switches that are ready; null = none by so much. */
  readonly due: (by: Volts, ready: (at: number) => boolean) => LinearGuard | null;
  readonly capacitorVolts: (after: Seconds) => Float64Array;
  /** The first guard passed within a time, of the switches that are ready. */
  readonly firstPassed: (within: Seconds, ready: (at: number) => boolean) => Passing | null;
  /** Adds the part of this segment between two times to what its linear circuit has gathered. */
  readonly gather: (into: Gathered, from: Seconds, to: Seconds) => void;
  /** ∫ v·e^(−iωt) dt of a node over the part of this segment from a time on: real, imaginary. */
  readonly fourier: (node: number, from: Seconds, hertz: Hertz) => readonly [number, number];
}

/** Steps between looks at the guards, in time constants of the fastest mode still alive. */
const LOOK = 0.3;
/** A mode that moves a guard by less is not looked for, volts. */
const UNSEEN: Volts = 1e-6;
/** A mode below this is over, volts. */
const OVER: Volts = 1e-9;

export function segmentFrom(linear: Linear, volts: Float64Array, start: Seconds): Segment {
  const { rates, nodes, guards } = linear;
  const modes = linear.modesFrom(volts);
  const k = rates.length;
  const decayed = new Float64Array(k);
  const decayTo = (after: Seconds): void => {
    if (after === 0) decayed.set(modes);
    else for (let m = 0; m < k; m++) decayed[m] = modes[m]! * Math.exp(-rates[m]! * after);
  };
  const valueNow = ({ constant, modes: shares }: OverModes): Volts => {
    let sum = constant;
    for (let m = 0; m < k; m++) sum += shares[m]! * decayed[m]!;
    return sum;
  };
  const leastNow = (all: readonly OverModes[]): Volts => {
    let least = Number.POSITIVE_INFINITY;
    for (const each of all) {
      const value = valueNow(each);
      if (value < least) least = value;
      if (least <= 0) break;
    }
    return least;
  };
  const least = (all: readonly OverModes[], after: Seconds): Volts => {
    decayTo(after);
    return leastNow(all);
  };
  /** A guard one of whose functionals can never rise above 0 in this segment need not be watched. */
  const canPass = ({ all }: LinearGuard): boolean =>
    all.every(({ constant, modes: shares }) => {
      let most = constant;
      for (let m = 0; m < k; m++) most += Math.max(0, shares[m]! * modes[m]!);
      return most > 0;
    });
  /** When to look next: by the fastest mode that still moves one of these guards. */
  const looksAt = (watched: readonly LinearGuard[]): ((after: Seconds) => Seconds) => {
    const reach = new Float64Array(k);
    for (const { all } of watched)
      for (const { modes: shares } of all)
        for (let m = 0; m < k; m++) reach[m] = Math.max(reach[m]!, Math.abs(shares[m]! * modes[m]!));
    return (after) => {
      let step = Number.POSITIVE_INFINITY;
      for (let m = 0; m < k; m++)
        if (reach[m]! * Math.exp(-rates[m]! * after) > UNSEEN) step = Math.min(step, LOOK / rates[m]!);
      // A mode that has just begun is looked at more closely than one well on its way.
      return after + Math.min(step, Math.max(after * 0.5, step * 0.05));
    };
  };
  const segment: Segment = {
    linear,
    start,
    seconds: 0,
    due: (by, ready) => {
      decayTo(0);
      let [most, found]: [Volts, LinearGuard | null] = [by, null];
      for (const guard of guards) {
        if (!ready(guard.at)) continue;
        const value = leastNow(guard.all);
        if (value > most) [most, found] = [value, guard];
      }
      return found;
    },
    capacitorVolts: (after) => {
      decayTo(after);
      return linear.voltsFrom(decayed);
    },
    firstPassed: (within, ready) => {
      const watched = guards.filter((guard) => ready(guard.at) && canPass(guard));
      const before = new Set<LinearGuard>();
      decayTo(0);
      for (const guard of watched) if (leastNow(guard.all) > 0) before.add(guard);
      if (watched.length === 0) return null;
      const nextLook = looksAt(watched);
      let from = 0;
      while (from < within) {
        const to = Math.min(within, nextLook(from));
        decayTo(to);
        let found: Passing | null = null;
        for (const guard of watched) {
          if (leastNow(guard.all) <= 0) {
            before.delete(guard);
            continue;
          }
          if (before.has(guard)) continue;
          const after = rootOf((t) => least(guard.all, t), from, found?.after ?? to);
          if (found === null || after < found.after) found = { at: guard.at, next: guard.next, after };
          decayTo(found.after);
        }
        if (found !== null) return found;
        if (to >= within) return null;
        from = to;
      }
      return null;
    },
    gather: (into, from, to) => {
      const [begin, end] = clipped(start, segment.seconds, from, to);
      if (end <= begin) return;
      into.seconds += end - begin;
      for (let m = 0; m < k; m++) {
        const rate = rates[m]!;
        into.modes[m]! += (modes[m]! * Math.exp(-rate * begin) * -Math.expm1(-rate * (end - begin))) / rate;
      }
    },
    fourier: (node, from, hertz) => {
      const [begin, end] = clipped(start, segment.seconds, from, Number.POSITIVE_INFINITY);
      if (end <= begin) return [0, 0];
      const { constant, modes: shares } = nodes[node]!;
      let [re, im] = exponentialIntegral(0, hertz, start, begin, end);
      re *= constant;
      im *= constant;
      for (let m = 0; m < k; m++) {
        const size = shares[m]! * modes[m]!;
        if (Math.abs(size) < OVER) continue;
        const part = exponentialIntegral(rates[m]!, hertz, start, begin, end);
        re += size * part[0];
        im += size * part[1];
      }
      return [re, im];
    },
  };
  return segment;
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

/** Where a function that is ≤ 0 at `from` and > 0 at `to` passes 0; the end above 0. */
function rootOf(f: (t: Seconds) => Volts, from: Seconds, to: Seconds): Seconds {
  let [low, high] = [from, to];
  let [atLow, atHigh] = [f(low), f(high)];
  for (let i = 0; i < 80 && high - low > 1e-15 + 1e-14 * high; i++) {
    const share = i % 3 === 2 || !(atHigh > atLow) ? 0.5 : -atLow / (atHigh - atLow);
    const middle = low + Math.min(0.999, Math.max(0.001, share)) * (high - low);
    if (middle <= low || middle >= high) break;
    const value = f(middle);
    if (value > 0) [high, atHigh] = [middle, value];
    else [low, atLow] = [middle, value];
  }
  return high;
}
