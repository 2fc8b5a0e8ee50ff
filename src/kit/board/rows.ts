/**
 * Which net lies on which strip, and what that costs. Chip pins fix eleven strips on each side; every other net gets
 * a strip of one wing, or of both, above, between or below the chips. The comparator stands above the timer, so that
 * the pins that want the rails (discharge, control, supply; + inputs, 0 V) face each other across the rows between.
 */
import { AWAY_COST, IMPOSSIBLE, JACK } from './bodies.ts';
import { ACROSS_CHIP, type Demand, type Wing } from './demand.ts';
import { Density } from './density.ts';
import { BROKEN, type LinkRows, netLinks } from './links.ts';
import { MOST_PIECES, type RowNets, rowLists } from './row-lists.ts';

/** Rows to choose from: free ones above, between and below the chips. What stays unused is not on the board. */
const ABOVE = 5;
const BELOW = 6;

/** How the chips stand. */
export interface Stack {
  /** Free rows between them. */
  readonly between: number;
  readonly upper: 'timer' | 'comparator';
}

const ROW = 1.6;
const HOLLOW_ROW = 3;
const CUT = 0.7;
/** What one hole of the board costs. */
const HOLE = 0.2;
const SPLIT = 1.2;
const NO_SPAN = 40;

export interface RowSpace {
  readonly total: number;
  /** First row of each chip, in the order of the demand's chips. */
  readonly chipRows: readonly [number, number];
  /** Net beside the chip pin; −1 where there is no chip. */
  readonly stub: RowNets;
  readonly content: RowNets;
  /** Puts a net on a row of a wing; −1 takes away what lies there. */
  readonly put: (wing: Wing, row: number, net: number) => void;
  /** All of the content at once, as it lay before. */
  readonly putAll: (content: RowNets) => void;
  /** By wing and net: does a part of this wing, other than a chip, want it there. */
  readonly wanted: readonly [readonly boolean[], readonly boolean[]];
  /** Cost of everything as it lies now; Infinity once what it costs at least is told to be too dear. */
  readonly cost: (isTooDear?: (atLeast: number) => boolean) => number;
  /** Makes what lies now what changes are counted from; `refuse` forgets them. */
  readonly accept: () => void;
  readonly refuse: () => void;
  readonly netAt: (wing: Wing, row: number) => number;
  /** The links that make one of every net. */
  readonly links: () => LinkRows[];
  /** References of parts and names of nets that nothing was found for. */
  readonly broken: () => string[];
}

/** A part, or the links of a net: it costs the same as long as its nets lie as they do. */
interface Thing {
  readonly nets: readonly number[];
  readonly cost: () => number;
}

export function rowSpace(demand: Demand, mostRows: number, { between: gap, upper }: Stack): RowSpace {
  const [timer, comparator] = demand.chips;
  const isTimerUpper = upper === 'timer';
  const timerRow = isTimerUpper ? ABOVE : ABOVE + comparator.strips + gap;
  const comparatorRow = isTimerUpper ? ABOVE + timer.strips + gap : ABOVE;
  const total = ABOVE + timer.strips + gap + comparator.strips + BELOW;
  const blank = (): Int8Array => new Int8Array(total).fill(-1);
  const stub: RowNets = [blank(), blank()];
  const content: RowNets = [blank(), blank()];
  for (const wing of [0, 1] as const) {
    stub[wing].set(comparator.pins[wing], comparatorRow);
    stub[wing].set(timer.pins[wing], timerRow);
  }
  const nets = demand.nets.length;
  const lists = rowLists(stub, content, nets);
  const { rows, regular, all, touched, usedBits, list, put, putAll } = lists;
  const density = new Density(demand, total, (row) => stub[0][row]! >= 0);
  const linkCost = netLinks(lists, density, nets);
  // Demands as flat numbers: net keys `wing · nets + net`.
  const keyOf = (wing: Wing, net: number): number => wing * nets + net;
  const twoA = Int16Array.from(demand.twos, ({ wing, nets: its }) => keyOf(wing, its[0]));
  const twoB = Int16Array.from(demand.twos, ({ wing, nets: its }) => keyOf(wing, its[1]));
  const twoCounts = demand.twos.map(({ mayBeInner }) => (mayBeInner ? all : regular));
  const twoCosts = demand.twos.map(({ body }) =>
    Float64Array.from({ length: NO_SPAN }, (_, span) => body.costs[span] ?? IMPOSSIBLE),
  );

  // Both chips have their supply pin on their first row.
  const twoNear = Int16Array.from(demand.twos, ({ decouples }) =>
    decouples === null ? -1 : decouples === 0 ? timerRow : comparatorRow,
  );

  const netAt = (wing: Wing, row: number): number => {
    if (row < 0 || row >= total) return -1;
    const net = content[wing][row]!;
    return net >= 0 ? net : stub[wing][row]!;
  };

  function twoCost(i: number): number {
    const a = twoA[i]! * MOST_PIECES;
    const b = twoB[i]! * MOST_PIECES;
    const counts = twoCounts[i]!;
    const costs = twoCosts[i]!;
    const near = twoNear[i]!;
    const endA = a + counts[twoA[i]!]!;
    const endB = b + counts[twoB[i]!]!;
    let best: number = IMPOSSIBLE;
    let nearest = NO_SPAN;
    let [one, other] = [1, 0];
    for (let x = a; x < endA; x++)
      for (let y = b; y < endB; y++) {
        const span = Math.abs(rows[x]! - rows[y]!);
        const cost = near < 0 ? costs[span]! : costs[span]! + AWAY_COST * Math.abs(rows[x]! - near);
        if (cost < best) {
          best = cost;
          one = rows[x]!;
          other = rows[y]!;
        }
        if (span < nearest) nearest = span;
      }
    if (best < IMPOSSIBLE) density.two(i, one, other);
    return best < IMPOSSIBLE ? best : BROKEN + nearest;
  }

  function trimmerCost(i: number): number {
    const { wing, nets: its } = demand.trimmers[i]!;
    const key = keyOf(wing, its[1]);
    let met = 0;
    density.body(i, 0, -1);
    for (let at = 0; at < regular[key]!; at++) {
      const row = rows[key * MOST_PIECES + at]!;
      const above = netAt(wing, row - 1);
      const below = netAt(wing, row + 1);
      if ((above === its[0] && below === its[2]) || (above === its[2] && below === its[0])) {
        density.body(i, row - 1, row + 1);
        return 0;
      }
      if (above === its[0] || below === its[2] || above === its[2] || below === its[0]) met = 1;
    }
    return BROKEN * (1.5 - met * 0.5);
  }

  /** The pair of edge rows whose distance is nearest to a wanted one; its first is −1 when one net is nowhere. */
  const pair = [0, 0];
  function nearest(wing: Wing, a: number, b: number, wanted: number): number {
    const ka = keyOf(wing, a);
    const kb = keyOf(wing, b);
    let best = -1;
    for (let i = 0; i < regular[ka]!; i++)
      for (let j = 0; j < regular[kb]!; j++) {
        const one = rows[ka * MOST_PIECES + i]!;
        const other = rows[kb * MOST_PIECES + j]!;
        const away = Math.abs(Math.abs(one - other) - wanted);
        if (best < 0 || away < best) {
          best = away;
          pair[0] = one;
          pair[1] = other;
        }
      }
    return best;
  }

  function edgeCost(i: number): number {
    const { wing, nets: its } = demand.edges[i]!;
    if (its.length === 1) return regular[keyOf(wing, its[0]!)]! > 0 ? 0 : BROKEN;
    const away = nearest(wing, its[0]!, its[1]!, 0);
    if (away < 0) return BROKEN;
    density.edge(i, pair[0]!, pair[1]!);
    return 0.2 * away;
  }

  function jackCost(): number {
    const { wing, nets: its } = demand.jack;
    const away = nearest(wing, its[0]!, its[1]!, JACK.span);
    if (away !== 0) return BROKEN + Math.abs(away);
    density.body(demand.trimmers.length, Math.min(pair[0]!, pair[1]!), Math.max(pair[0]!, pair[1]!));
    return 0;
  }

  /** Rows in use, hollow rows between them, cuts in the middle, stubs cut short. */
  function shapeCost(): number {
    const left = content[0];
    const right = content[1];
    let cost = 0;
    let first = ABOVE;
    let last = total - BELOW - 1;
    for (let row = 0; row < total; row++) {
      const l = left[row]!;
      const r = right[row]!;
      if (l < 0 && r < 0) continue;
      if (row < first) first = row;
      if (row > last) last = row;
      if (stub[0][row]! >= 0) cost += (l >= 0 ? SPLIT : 0) + (r >= 0 ? SPLIT : 0);
      else if (l >= 0 && r >= 0 && l !== r) cost += CUT;
    }
    for (let row = first; row <= last; row++)
      if (left[row]! < 0 && right[row]! < 0 && stub[0][row]! < 0) cost += HOLLOW_ROW;
    const count = last - first + 1;
    const holes = count * (density.columns() + ACROSS_CHIP + 1);
    return cost + ROW * count + HOLE * holes + Math.max(0, count - mostRows) * BROKEN;
  }

  /** Of the shape's cost, what the number of rows alone makes sure of. */
  function leastShapeCost(): number {
    const both = usedBits[0]! | usedBits[1]!;
    const first = both === 0 ? ABOVE : Math.min(ABOVE, 31 - Math.clz32(both & -both));
    const last = both === 0 ? 0 : 31 - Math.clz32(both);
    const count = Math.max(total - BELOW - 1, last) - first + 1;
    return count * (ROW + HOLE * (ACROSS_CHIP + 1));
  }

  const things: readonly Thing[] = [
    { nets: demand.jack.nets, cost: jackCost },
    ...demand.twos.map(({ nets: its }, i) => ({ nets: its, cost: () => twoCost(i) })),
    ...demand.nets.map((_, net) => ({ nets: [net], cost: () => linkCost(net, null) })),
    ...demand.trimmers.map(({ nets: its }, i) => ({ nets: its, cost: () => trimmerCost(i) })),
    ...demand.edges.map(({ nets: its }, i) => ({ nets: its, cost: () => edgeCost(i) })),
  ];
  const thingsOf = demand.nets.map((_, net) =>
    Int16Array.from(things.flatMap((thing, i) => (thing.nets.includes(net) ? [i] : []))),
  );
  /** What each thing costs: as last accepted, and as it lies now. */
  const kept = new Float64Array(things.length);
  const now = new Float64Array(things.length);
  let keptSum = 0;
  /** Things to be reckoned anew, so many as there are, and which they are. */
  const stale = new Int16Array(things.length);
  const isStale = new Uint8Array(things.length);

  function sumOf(costs: Float64Array): number {
    let sum = 0;
    for (let i = 0; i < costs.length; i++) sum += costs[i]!;
    return sum;
  }

  function cost(isTooDear: (atLeast: number) => boolean = () => false): number {
    list();
    now.set(kept);
    let atLeast = keptSum + leastShapeCost();
    let count = 0;
    for (let net = 0; net < nets; net++) {
      if (touched[net] === 0) continue;
      const its = thingsOf[net]!;
      for (let i = 0; i < its.length; i++) {
        const thing = its[i]!;
        if (isStale[thing] === 1) continue;
        isStale[thing] = 1;
        stale[count++] = thing;
        atLeast -= kept[thing]!;
      }
    }
    let isGiven = false;
    for (let i = 0; i < count; i++) {
      const thing = stale[i]!;
      isStale[thing] = 0;
      if (isGiven) continue;
      now[thing] = things[thing]!.cost();
      atLeast += now[thing]!;
      isGiven = isTooDear(atLeast);
    }
    return isGiven ? Number.POSITIVE_INFINITY : sumOf(now) + shapeCost();
  }

  return {
    total,
    chipRows: [timerRow, comparatorRow],
    stub,
    content,
    wanted: [wantedIn(demand, 0), wantedIn(demand, 1)],
    put,
    putAll,
    cost,
    accept: () => {
      density.accept();
      kept.set(now);
      keptSum = sumOf(kept);
      touched.fill(0);
    },
    refuse: () => {
      density.refuse();
      touched.fill(0);
    },
    netAt,
    links: () => {
      list();
      const out: LinkRows[] = [];
      for (let net = 0; net < nets; net++) linkCost(net, out);
      return out;
    },
    broken: () => {
      list();
      return [
        ...demand.twos.filter((_, i) => twoCost(i) >= BROKEN).map(({ part }) => part.ref),
        ...demand.trimmers.filter((_, i) => trimmerCost(i) > 0).map(({ part }) => part.ref),
        ...demand.edges.filter((_, i) => edgeCost(i) >= BROKEN).map(({ part }) => part.ref),
        ...(jackCost() > 0 ? [demand.jack.part.ref] : []),
        ...demand.nets.filter((_, net) => linkCost(net, []) >= BROKEN),
      ];
    },
  };
}

function wantedIn(demand: Demand, wing: Wing): boolean[] {
  const wanted = demand.nets.map(() => false);
  for (const each of [...demand.twos, ...demand.trimmers, ...demand.edges, demand.jack])
    if (each.wing === wing) for (const net of each.nets) wanted[net] = true;
  for (const pin of demand.pins) if (pin.wing === wing) wanted[pin.net] = true;
  return wanted;
}
