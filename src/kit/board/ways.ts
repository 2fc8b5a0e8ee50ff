/** The ways a thing can lie in a wing: on which strips, how gladly, and what it is then in any column. */
import { AWAY_COST, IMPOSSIBLE } from './bodies.ts';
import { bodyBox, type Channel, type WingItem, wireBox } from './channel.ts';
import type { Rows } from './cool.ts';
import type { TrimmerDemand, TwoLeadDemand, Wing } from './demand.ts';

const PIN = 0.3;
/** Copper cut short beside a chip is used where nothing else is as near. */
const INNER_COST = 0.4;

/** A way to lie: an item as it is in column 0, and what it costs in whatever column. */
export interface Way {
  readonly item: WingItem;
  readonly cost: number;
  readonly rows: readonly number[];
  /** By lead: is it on the chip's side of copper that is cut short. */
  readonly inner: readonly boolean[];
}

/** Which rows carry which net in this wing, and which are cut short beside a chip. */
export class Copper {
  readonly #rows: Rows;
  readonly #wing: Wing;
  readonly #isSplit: readonly boolean[];
  readonly splitRows: readonly number[];
  readonly #outer = new Map<number, readonly number[]>();
  readonly #inner = new Map<number, readonly number[]>();
  readonly #pairs = new Map<string, readonly (readonly [number, number])[]>();

  constructor(rows: Rows, wing: Wing) {
    this.#rows = rows;
    this.#wing = wing;
    this.#isSplit = Array.from(
      { length: rows.count },
      (_, row) => rows.stub[wing][row]! >= 0 && rows.content[wing][row]! >= 0,
    );
    this.splitRows = indicesOf(this.#isSplit, true);
  }

  /** First row of a chip, where its supply pin is. */
  chipRow(chip: 0 | 1): number {
    return this.#rows.chipRows[chip];
  }

  isSplit(row: number): boolean {
    return this.#isSplit[row]!;
  }

  /** Rows whose copper toward the edge is this net. */
  outer(net: number): readonly number[] {
    return remembered(this.#outer, net, () => {
      const [stub, content] = [this.#rows.stub[this.#wing], this.#rows.content[this.#wing]];
      return indicesOf(content, net).concat(indicesOf(stub, net).filter((row) => content[row]! < 0));
    });
  }

  /** Rows whose copper beside the chip is this net, and is cut short. */
  inner(net: number): readonly number[] {
    return remembered(this.#inner, net, () =>
      indicesOf(this.#rows.stub[this.#wing], net).filter((row) => this.isSplit(row)),
    );
  }

  /** Rows of two nets toward the edge, those nearest to each other first. */
  pairs(net: number, other: number): readonly (readonly [number, number])[] {
    return remembered(this.#pairs, `${net} ${other}`, () =>
      this.outer(net)
        .flatMap((a) => this.outer(other).map((b): readonly [number, number] => [a, b]))
        .sort((one, two) => Math.abs(one[0] - one[1]) - Math.abs(two[0] - two[1])),
    );
  }

  /** Whether copper on a row at a column carries the wanted side of the cut. */
  reaches(channel: Channel, row: number, k: number, inner: boolean): boolean {
    if (!this.isSplit(row)) return true;
    const cut = channel.cutAt(row);
    if (cut === null) return inner;
    return inner ? k < cut : k > cut;
  }
}

function remembered<Key, T>(known: Map<Key, T>, key: Key, make: () => T): T {
  const found = known.get(key) ?? make();
  known.set(key, found);
  return found;
}

function indicesOf<T>(values: readonly T[], value: T): number[] {
  return values.flatMap((each, i) => (each === value ? [i] : []));
}

/** Leads outward, then on short copper where the part may. */
export function twoWays({ part, nets, body, mayBeInner, decouples }: TwoLeadDemand, copper: Copper): Way[] {
  const rowsOf = (net: number): [number, boolean][] => [
    ...copper.outer(net).map((row): [number, boolean] => [row, false]),
    ...(mayBeInner ? copper.inner(net).map((row): [number, boolean] => [row, true]) : []),
  ];
  const ways: Way[] = [];
  for (const [a, innerA] of rowsOf(nets[0]))
    for (const [b, innerB] of rowsOf(nets[1])) {
      const span = Math.abs(a - b);
      const cost = body.costs[span] ?? IMPOSSIBLE;
      if (cost >= IMPOSSIBLE) continue;
      const stance = body.stanceAt(span);
      // An upright part stands on its first lead.
      const box =
        stance === 'upright'
          ? bodyBox(a, 0, body.width, body.width)
          : bodyBox((a + b) / 2, 0, body.length, body.width);
      const item: WingItem = {
        kind: 'part',
        ref: part.ref,
        stance,
        leads: [
          { name: part.leads[0]!.name, row: a, k: 0 },
          { name: part.leads[1]!.name, row: b, k: 0 },
        ],
        body: box,
        taken: [box, wireBox(a, b, 0)],
      };
      const inner = (innerA ? INNER_COST : 0) + (innerB ? INNER_COST : 0);
      const away = decouples === null ? 0 : AWAY_COST * Math.abs(a - copper.chipRow(decouples));
      ways.push({ item, cost: cost + inner + away, rows: [a, b], inner: [innerA, innerB] });
    }
  return ways.sort((one, other) => one.cost - other.cost);
}

export function trimmerWays({ part, nets, body }: TrimmerDemand, copper: Copper): Way[] {
  const [first, last] = [copper.outer(nets[0]), copper.outer(nets[2])];
  const ways: Way[] = [];
  for (const row of copper.outer(nets[1]))
    for (const turned of [1, -1]) {
      const [one, three] = [row - turned, row + turned];
      if (!first.includes(one) || !last.includes(three)) continue;
      // The box may lie to either side of its legs.
      for (const side of [1, -1]) {
        const columns = [side * body.from, side * body.to].sort((a, b) => a - b);
        const box = {
          rows: [row - 1 - body.over, row + 1 + body.over],
          columns: [columns[0]!, columns[1]!],
        } as const;
        const item: WingItem = {
          kind: 'part',
          ref: part.ref,
          stance: 'standing',
          leads: [
            { name: part.leads[0]!.name, row: one, k: 0 },
            { name: part.leads[1]!.name, row, k: side * body.wiperColumns },
            { name: part.leads[2]!.name, row: three, k: 0 },
          ],
          body: box,
          taken: [box],
        };
        ways.push({ item, cost: 0, rows: [one, row, three], inner: [false, false, false] });
      }
    }
  return ways;
}

export function linkWay(ref: string, net: number, from: number, to: number, copper: Copper): Way {
  const inner = [from, to].map((row) => copper.inner(net).includes(row));
  const box = wireBox(from, to, 0);
  const leads = [
    { name: '1', row: from, k: 0 },
    { name: '2', row: to, k: 0 },
  ];
  const item: WingItem = { kind: 'link', ref, stance: 'link', leads, body: box, taken: [box] };
  return { item, cost: 0, rows: [from, to], inner };
}

export function pinWay(ref: string, row: number): Way {
  const box = bodyBox(row, 0, 2 * PIN, 2 * PIN);
  const leads = [{ name: '1', row, k: 0 }];
  return {
    item: { kind: 'part', ref, stance: 'pin', leads, body: box, taken: [box] },
    cost: 0,
    rows: [row],
    inner: [false],
  };
}
