/**
 * The cheapest pairs of two voices' parts, exactly, without looking at every pair.
 *
 * A pair costs what its voices cost, less a saving for each part both use. For every set of parts that two voices
 * can have in common, the candidates of both are put into buckets by those parts; within a bucket the pairs are
 * taken in rising order of cost, and one heap takes the cheapest over all buckets. A pair counts only in the bucket of
 * exactly the parts it shares, where its cost is right, so each is met once and in the order of its cost. A bound from
 * a few good pairs leaves out beforehand what cannot be among them. Costs are whole numbers, hence sums and their order are exact; equal costs go by the places of the parts.
 */
import { type Codes, type Places, placesOf, type VoiceFits } from './search-voice.ts';

export interface FoundPair {
  readonly a: number;
  readonly b: number;
  /** In units, with the saving for shared parts taken off. */
  readonly cost: number;
}

/** One voice's candidates by rising cost. */
interface Sorted {
  readonly codes: Float64Array;
  readonly costs: Float64Array;
}

/** Candidates of one voice are told apart by less than this many. */
const MOST = 2 ** 26;

function sorted({ codes, costs }: Sorted): Sorted {
  if (codes.length >= MOST) throw new RangeError('More candidates than can be told apart.');
  const keys = Float64Array.from(costs, (cost, i) => cost * MOST + i).sort();
  const order = keys.map((key) => key % MOST);
  return { codes: order.map((i) => codes[i]!), costs: order.map((i) => costs[i]!) };
}

/** Parts two voices have in common: so many resistor values, the trimmer, the capacitor. */
interface Common {
  readonly resistors: 0 | 1 | 2;
  readonly trimmer: boolean;
  readonly capacitor: boolean;
}

const COMMONS: readonly Common[] = ([0, 1, 2] as const).flatMap((resistors) =>
  [false, true].flatMap((trimmer) => [false, true].map((capacitor) => ({ resistors, trimmer, capacitor }))),
);

const sizeOf = (common: Common): number =>
  common.resistors + Number(common.trimmer) + Number(common.capacitor);

/** How many different parts two voices have in common. */
export function sharedParts(a: Places, b: Places): number {
  const first = a[0] === b[0] || a[0] === b[1] ? 1 : 0;
  const second = a[1] !== a[0] && (a[1] === b[0] || a[1] === b[1]) ? 1 : 0;
  return first + second + Number(a[2] === b[2]) + Number(a[3] === b[3]);
}

/** The buckets a candidate belongs to, for one set of common parts. */
function keysOf(common: Common, [ra, rb, p, c]: Places, n: Codes): readonly number[] {
  const rest = (common.trimmer ? p : 0) * n.capacitors + (common.capacitor ? c : 0);
  const of = (resistors: number) => resistors * n.trimmers * n.capacitors + rest;
  switch (common.resistors) {
    case 0:
      return [of(0)];
    case 1:
      return ra === rb ? [of(ra)] : [of(ra), of(rb)];
    case 2:
      return ra === rb ? [] : [of(Math.min(ra, rb) * n.resistors + Math.max(ra, rb))];
  }
}

/** The pairs of one bucket still to be taken: places in the two sorted lists. */
interface Stream {
  readonly a: ArrayLike<number>;
  readonly b: ArrayLike<number>;
  readonly shared: number;
}

interface Entry extends FoundPair {
  readonly stream: Stream;
  /** Places in the stream. */
  readonly p: number;
  readonly q: number;
}

const before = (x: Entry, y: Entry): boolean =>
  x.cost !== y.cost ? x.cost < y.cost : x.a !== y.a ? x.a < y.a : x.b < y.b;

/**
 * The `most` cheapest pairs that `allowed` lets pass, cheapest first. Yields now and then, with how many are found.
 */
export function* cheapestPairs(
  fitsA: VoiceFits,
  fitsB: VoiceFits,
  n: Codes,
  perPart: number,
  most: number,
  allowed: (a: Places, b: Places) => boolean,
): Generator<number, readonly FoundPair[]> {
  if (fitsA.codes.length === 0 || fitsB.codes.length === 0 || most === 0) return [];
  const [placesA, placesB]: [Places, Places] = [
    [0, 0, 0, 0],
    [0, 0, 0, 0],
  ];
  const look = (codeA: number, codeB: number): number => {
    placesOf(codeA, n, placesA);
    placesOf(codeB, n, placesB);
    return sharedParts(placesA, placesB);
  };
  const passes = () => allowed(placesA, placesB);
  const costOf: CostOf = (i, j) => {
    const shared = look(fitsA.codes[i]!, fitsB.codes[j]!);
    return passes() ? fitsA.costs[i]! + fitsB.costs[j]! - perPart * shared : Number.POSITIVE_INFINITY;
  };
  const boundOfLeast = amongLeast(fitsA, fitsB, most, costOf);
  yield 0;
  const bound = Math.min(boundOfLeast, amongAlike(fitsA, fitsB, most, costOf));
  yield 0;

  // A kit has at least the different parts of either voice, so no pair of a candidate costs less than its own cost and
  // the other voice's least one without its parts.
  const [leastA, leastB] = [leastOwn(fitsA, n, perPart), leastOwn(fitsB, n, perPart)];
  yield 0;
  const a = sorted(within(fitsA, bound - leastB));
  yield 0;
  const b = sorted(within(fitsB, bound - leastA));
  yield 0;

  const heap = new Heap(a, b, perPart);
  for (const common of perPart === 0 ? COMMONS.slice(0, 1) : COMMONS) {
    const buckets = bucketsOf(common, a, b, n, perPart, bound);
    let step = buckets.next();
    for (; !step.done; step = buckets.next()) yield 0;
    for (const stream of step.value) heap.open(stream);
  }
  const cheapest: FoundPair[] = [];
  for (let step = 1, entry = heap.next(); entry && cheapest.length < most; entry = heap.next(), step++) {
    const shared = look(entry.a, entry.b);
    if ((perPart === 0 || shared === entry.stream.shared) && passes())
      cheapest.push({ a: entry.a, b: entry.b, cost: entry.cost });
    if (step % 4096 === 0) yield cheapest.length;
  }
  return cheapest;
}

/** True cost of the pair at two places of the voices' lists; infinite when it is not allowed. */
type CostOf = (i: number, j: number) => number;

/** So many of each voice's least costs are paired to begin with. */
const FIRST = 64;

/** The `most`-th cost among the pairs of each voice's cheapest: no less than the `most`-th of all pairs. */
function amongLeast(a: VoiceFits, b: VoiceFits, most: number, costOf: CostOf): number {
  const [firstA, firstB] = [leastPlaces(a.costs), leastPlaces(b.costs)];
  return nth(
    firstA.flatMap((i) => firstB.map((j) => costOf(i, j))),
    most,
  );
}

/** The `most`-th cost among the pairs that have all their parts in common: no less than the `most`-th of all pairs. */
function amongAlike(a: VoiceFits, b: VoiceFits, most: number, costOf: CostOf): number {
  const costs: number[] = [];
  for (let i = 0, j = 0; i < a.codes.length && j < b.codes.length; ) {
    const [codeA, codeB] = [a.codes[i]!, b.codes[j]!];
    if (codeA === codeB) costs.push(costOf(i, j));
    if (codeA <= codeB) i++;
    if (codeB <= codeA) j++;
  }
  return nth(costs, most);
}

function nth(costs: readonly number[], most: number): number {
  return costs.length < most ? Number.POSITIVE_INFINITY : Float64Array.from(costs).sort()[most - 1]!;
}

/** Places of the smallest costs, a few. */
function leastPlaces(costs: Float64Array): readonly number[] {
  const few: number[] = [];
  for (let i = 0; i < costs.length; i++) {
    if (few.length === FIRST && costs[i]! >= costs[few[FIRST - 1]!]!) continue;
    let at = few.length;
    while (at > 0 && costs[few[at - 1]!]! > costs[i]!) at--;
    few.splice(at, 0, i);
    if (few.length > FIRST) few.pop();
  }
  return few;
}

/** The least cost of a voice's candidates without that of their different parts. */
function leastOwn({ codes, costs }: VoiceFits, n: Codes, perPart: number): number {
  let least = Number.POSITIVE_INFINITY;
  const places: Places = [0, 0, 0, 0];
  for (let i = 0; i < codes.length; i++) {
    if (costs[i]! - 4 * perPart >= least) continue;
    placesOf(codes[i]!, n, places);
    least = Math.min(least, costs[i]! - perPart * (places[0] === places[1] ? 3 : 4));
  }
  return least;
}

/** The candidates that cost no more. */
function within({ codes, costs }: VoiceFits, most: number): Sorted {
  return { codes: codes.filter((_, i) => costs[i]! <= most), costs: costs.filter((cost) => cost <= most) };
}

/** Candidates of both voices by their common parts, as far as the bound lets any pair of them count. */
function* bucketsOf(
  common: Common,
  a: Sorted,
  b: Sorted,
  n: Codes,
  perPart: number,
  bound: number,
): Generator<void, Iterable<Stream>> {
  const shared = sizeOf(common);
  const saved = perPart * shared;
  const buckets = new Map<number, { a: number[]; b: number[]; shared: number }>();
  const places: Places = [0, 0, 0, 0];
  for (let i = 0; i < a.codes.length && a.costs[i]! + b.costs[0]! - saved <= bound; i++) {
    for (const key of keysOf(common, placesOf(a.codes[i]!, n, places), n)) {
      const bucket = buckets.get(key);
      if (bucket) bucket.a.push(i);
      else buckets.set(key, { a: [i], b: [], shared });
    }
    if (i % 16384 === 16383) yield;
  }
  for (let j = 0; j < b.codes.length && a.costs[0]! + b.costs[j]! - saved <= bound; j++) {
    for (const key of keysOf(common, placesOf(b.codes[j]!, n, places), n)) buckets.get(key)?.b.push(j);
    if (j % 16384 === 16383) yield;
  }
  return buckets.values();
}

/** Takes the pairs of many streams in rising order of cost. */
class Heap {
  readonly #entries: Entry[] = [];
  readonly #a: Sorted;
  readonly #b: Sorted;
  readonly #perPart: number;

  constructor(a: Sorted, b: Sorted, perPart: number) {
    this.#a = a;
    this.#b = b;
    this.#perPart = perPart;
  }

  open(stream: Stream): void {
    this.#push(stream, 0, 0);
  }

  /** The cheapest pair not yet taken; its neighbours in the stream come in its stead. */
  next(): Entry | null {
    const top = this.#entries[0];
    if (top === undefined) return null;
    const last = this.#entries.pop()!;
    if (this.#entries.length > 0) this.#sink(last);
    this.#push(top.stream, top.p, top.q + 1);
    if (top.q === 0) this.#push(top.stream, top.p + 1, 0);
    return top;
  }

  #push(stream: Stream, p: number, q: number): void {
    if (p >= stream.a.length || q >= stream.b.length) return;
    const [i, j] = [stream.a[p]!, stream.b[q]!];
    const entry: Entry = {
      stream,
      p,
      q,
      a: this.#a.codes[i]!,
      b: this.#b.codes[j]!,
      cost: this.#a.costs[i]! + this.#b.costs[j]! - this.#perPart * stream.shared,
    };
    const entries = this.#entries;
    let at = entries.length;
    while (at > 0) {
      const above = (at - 1) >> 1;
      if (!before(entry, entries[above]!)) break;
      entries[at] = entries[above]!;
      at = above;
    }
    entries[at] = entry;
  }

  #sink(entry: Entry): void {
    const entries = this.#entries;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= entries.length) break;
      if (child + 1 < entries.length && before(entries[child + 1]!, entries[child]!)) child++;
      if (!before(entries[child]!, entry)) break;
      entries[at] = entries[child]!;
      at = child;
    }
    entries[at] = entry;
  }
}
