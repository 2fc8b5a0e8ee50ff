/**
 * How wide a wing must be for what stands in it: everything with leads on two strips takes columns on all strips
 * between them, so that no wing is narrower than the most of it that lies side by side on one strip. Rows; columns.
 */
import { JACK } from './bodies.ts';
import type { Demand } from './demand.ts';

/** Links of one net that are kept track of. */
const MOST_LINKS = 5;
/** Half of what stands in the next column. */
const BESIDE = 0.47;

/** Columns of each wing that lie between and beside the chips, where there are no pins. */
const MIDDLE = 2;

/** What each thing takes, by its place: twos, trimmers, then links net by net. Nothing where `to` is before `from`. */
export interface Spans {
  readonly from: Int8Array;
  readonly to: Int8Array;
  readonly wing: Int8Array;
  /** Links by net. */
  readonly links: Int8Array;
}

export class Density {
  readonly now: Spans;
  readonly #kept: Spans;
  readonly #columns: Float64Array;
  readonly #over: Int8Array;
  readonly #bodies: number;
  readonly #leads: number;
  readonly #links: number;
  readonly #rows: number;
  readonly #change: Float64Array;
  readonly #spare: Float64Array;

  constructor({ twos, trimmers, edges, jack, nets }: Demand, rows: number, isChip: (row: number) => boolean) {
    this.#bodies = twos.length;
    this.#leads = this.#bodies + trimmers.length + 1;
    this.#links = this.#leads + 2 * edges.length;
    const count = this.#links + nets.length * MOST_LINKS;
    const spans = (): Spans => ({
      from: new Int8Array(count),
      to: new Int8Array(count).fill(-1),
      wing: new Int8Array(count),
      links: new Int8Array(nets.length),
    });
    this.now = spans();
    this.#kept = spans();
    this.#columns = new Float64Array(count).fill(1);
    this.#over = new Int8Array(count);
    for (const [i, { wing, body }] of twos.entries()) {
      this.now.wing[i] = wing;
      this.#columns[i] = Math.max(1, body.width);
    }
    for (const [i, { wing, body }] of trimmers.entries()) {
      const at = this.#bodies + i;
      this.now.wing[at] = wing;
      this.#columns[at] = Math.floor(body.to + BESIDE) - Math.ceil(body.from - BESIDE) + 1;
      this.#over[at] = Math.round(body.over - 0.3);
    }
    this.now.wing[this.#leads - 1] = jack.wing;
    this.#over[this.#leads - 1] = JACK.over;
    for (const [i, { wing }] of edges.entries())
      this.now.wing.fill(wing, this.#leads + 2 * i, this.#leads + 2 * i + 2);
    this.#rows = rows;
    this.#spare = Float64Array.from({ length: rows }, (_, row) => (isChip(row) ? 0 : MIDDLE));
    this.#change = new Float64Array(2 * (rows + 1));
    this.accept();
  }

  two(i: number, one: number, other: number): void {
    this.now.from[i] = Math.min(one, other);
    this.now.to[i] = Math.max(one, other);
  }

  /** A trimmer's legs, or the jack's lugs, which come last; none when it lies nowhere. */
  body(i: number, from: number, to: number): void {
    this.now.from[this.#bodies + i] = from;
    this.now.to[this.#bodies + i] = to;
  }

  /** Flying leads of one part. */
  edge(i: number, one: number, other: number): void {
    const at = this.#leads + 2 * i;
    this.now.from[at] = one;
    this.now.to[at] = one;
    this.now.from[at + 1] = other;
    this.now.to[at + 1] = other;
  }

  noLinks(net: number): void {
    this.now.links[net] = 0;
  }

  /** One more link of a net. */
  link(net: number, wing: number, one: number, other: number): void {
    const { from, to, wing: wings, links } = this.now;
    const count = links[net]!;
    if (count === MOST_LINKS) return;
    const at = this.#links + net * MOST_LINKS + count;
    links[net] = count + 1;
    wings[at] = wing;
    from[at] = Math.min(one, other);
    to[at] = Math.max(one, other);
  }

  accept(): void {
    copy(this.now, this.#kept);
  }

  refuse(): void {
    copy(this.#kept, this.now);
  }

  /** Columns of both wings together. */
  columns(): number {
    const { links } = this.now;
    const rows = this.#rows;
    const change = this.#change;
    change.fill(0);
    this.#count(0, this.#links);
    for (let net = 0; net < links.length; net++) {
      const first = this.#links + net * MOST_LINKS;
      this.#count(first, first + links[net]!);
    }
    const spare = this.#spare;
    let sum = 0;
    for (let side = 0; side < 2; side++) {
      const start = side * (rows + 1);
      let most = 0;
      let here = 0;
      for (let row = 0; row < rows; row++) {
        here += change[start + row]!;
        const needs = here - spare[row]!;
        if (needs > most) most = needs;
      }
      sum += most;
    }
    return sum;
  }

  /** The things from `first` to before `end`: how many columns more, or fewer, from each row on. */
  #count(first: number, end: number): void {
    const { from, to, wing } = this.now;
    const rows = this.#rows;
    const change = this.#change;
    const overs = this.#over;
    const widths = this.#columns;
    for (let i = first; i < end; i++) {
      const top = from[i]!;
      const bottom = to[i]!;
      if (bottom < top) continue;
      const start = wing[i]! * (rows + 1);
      const over = overs[i]!;
      const columns = widths[i]!;
      change[start + Math.max(0, top - over)]! += columns;
      change[start + Math.min(rows, bottom + over + 1)]! -= columns;
    }
  }
}

function copy(from: Spans, to: Spans): void {
  to.from.set(from.from);
  to.to.set(from.to);
  to.wing.set(from.wing);
  to.links.set(from.links);
}
