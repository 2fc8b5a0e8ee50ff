/**
 * Which net lies on which strip, and what that costs. Chip pins fix eleven strips on each side; every other net gets
 * a strip of one wing, or of both, above, between or below the chips. The comparator stands above the timer, so that
 * the pins that want the rails (discharge, control, supply; + inputs, 0 V) face each other across the rows between.
 */
import { AWAY_COST, IMPOSSIBLE, JACK } from './board-bodies.ts';
import { ACROSS_CHIP, type Demand, type Wing } from './board-demand.ts';
import { Density } from './board-density.ts';

/** Rows to choose from: free ones above, between and below the chips. What stays unused is not on the board. */
const ABOVE = 5;
const BELOW = 6;

/** How the chips stand. */
export interface Stack {
  /** Free rows between them. */
  readonly between: number;
  readonly upper: 'timer' | 'comparator';
}

const LINK = 24;
const LINK_PER_STRIP = 0.15;
const ROW = 1.6;
const HOLLOW_ROW = 3;
const CUT = 0.7;
/** What one hole of the board costs. */
const HOLE = 0.2;
const SPLIT = 1.2;
/** What no board can do costs this and a little more the further it is from possible. */
const BROKEN = 100;
const MOST_PIECES = 8;
const NO_SPAN = 40;

/** Rows in memory: by wing and row. Content is a free row's net, or that of the copper beyond a stub cut short. */
export type RowNets = readonly [Int8Array, Int8Array];

export interface LinkRows {
  readonly net: number;
  readonly wing: Wing;
  readonly from: number;
  readonly to: number;
}

export interface RowSpace {
  readonly total: number;
  /** First row of each chip, in the order of the demand's chips. */
  readonly chipRows: readonly [number, number];
  /** Net beside the chip pin; −1 where there is no chip. */
  readonly stub: RowNets;
  readonly content: RowNets;
  /** By wing and net: does a part of this wing, other than a chip, want it there. */
  readonly wanted: readonly [readonly boolean[], readonly boolean[]];
  /** Says that copper of a net has changed since the last `accept`; nothing said yet means all of it. */
  readonly touch: (net: number) => void;
  /** Cost of everything as it lies now. */
  readonly cost: () => number;
  /** Makes what lies now what changes are counted from; `refuse` forgets them. */
  readonly accept: () => void;
  readonly refuse: () => void;
  readonly netAt: (wing: Wing, row: number) => number;
  /** The links that make one of every net. */
  readonly links: () => LinkRows[];
  /** References of parts and names of nets that nothing was found for. */
  readonly broken: () => string[];
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
  // Rows of each net by wing: first the `regular` ones, that reach the edge, then those cut short at a chip.
  const rows = new Int8Array(2 * nets * MOST_PIECES);
  const regular = new Int8Array(2 * nets);
  const all = new Int8Array(2 * nets);
  const density = new Density(demand, total, (row) => stub[0][row]! >= 0);
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

  function add(key: number, row: number): void {
    const at = all[key]!;
    if (at === MOST_PIECES) return;
    rows[key * MOST_PIECES + at] = row;
    all[key] = at + 1;
  }

  function list(): void {
    all.fill(0);
    for (let wing = 0; wing < 2; wing++) {
      const stubs = stub[wing]!;
      const contents = content[wing]!;
      const start = wing * nets;
      for (let row = 0; row < total; row++) {
        const net = contents[row]! >= 0 ? contents[row]! : stubs[row]!;
        if (net >= 0) add(start + net, row);
      }
    }
    regular.set(all);
    for (let wing = 0; wing < 2; wing++)
      for (let row = 0; row < total; row++)
        if (stub[wing]![row]! >= 0 && content[wing]![row]! >= 0) add(wing * nets + stub[wing]![row]!, row);
  }

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

  // Prim's tree over the pieces of a net that lies in both wings.
  const treeTo = new Int8Array(2 * MOST_PIECES);
  const treeAway = new Float64Array(2 * MOST_PIECES);
  const treeDone = new Int8Array(2 * MOST_PIECES);

  function between(net: number, left: number, i: number, j: number): number {
    const one = rowOf(net, left, i);
    const other = rowOf(net, left, j);
    if (i < left === j < left) return LINK + LINK_PER_STRIP * Math.abs(one - other);
    // Left and right of a free row with one net are one piece; no link crosses the chips.
    return one === other && stub[0][one]! < 0 ? 0 : IMPOSSIBLE;
  }

  function rowOf(net: number, left: number, i: number): number {
    return i < left ? rows[net * MOST_PIECES + i]! : rows[(nets + net) * MOST_PIECES + i - left]!;
  }

  function linkCost(net: number, out: LinkRows[] | null): number {
    density.noLinks(net);
    const left = all[net]!;
    const count = left + all[nets + net]!;
    if (count < 2) return 0;
    if (out === null && (left === 0 || left === count))
      return oneWingLinks(left === 0 ? nets + net : net, count);
    for (let i = 0; i < count; i++) {
      treeTo[i] = 0;
      treeAway[i] = between(net, left, 0, i);
      treeDone[i] = i === 0 ? 1 : 0;
    }
    let cost = 0;
    for (let step = 1; step < count; step++) {
      let next = -1;
      for (let i = 0; i < count; i++)
        if (treeDone[i] === 0 && (next < 0 || treeAway[i]! < treeAway[next]!)) next = i;
      treeDone[next] = 1;
      const away = treeAway[next]!;
      cost += away >= IMPOSSIBLE ? BROKEN + 20 : away;
      if (away > 0 && away < IMPOSSIBLE) {
        const wing = next < left ? 0 : 1;
        const [from, to] = [rowOf(net, left, treeTo[next]!), rowOf(net, left, next)];
        density.link(net, wing, from, to);
        out?.push({ net, wing, from, to });
      }
      for (let i = 0; i < count; i++) {
        if (treeDone[i] !== 0) continue;
        const other = between(net, left, next, i);
        if (other < treeAway[i]!) {
          treeTo[i] = next;
          treeAway[i] = other;
        }
      }
    }
    return cost;
  }

  /** Rows on a line need one link fewer than there are, together as long as they reach. */
  function oneWingLinks(key: number, count: number): number {
    let first = total;
    let last = 0;
    for (let i = 0; i < count; i++) {
      const row = rows[key * MOST_PIECES + i]!;
      if (row < first) first = row;
      if (row > last) last = row;
    }
    const wing = key < nets ? 0 : 1;
    // Rows are in order: each link from one to the next.
    for (let i = 1; i < count; i++)
      density.link(key - wing * nets, wing, rows[key * MOST_PIECES + i - 1]!, rows[key * MOST_PIECES + i]!);
    return (count - 1) * LINK + LINK_PER_STRIP * (last - first);
  }

  // What each part and each net's links cost: as last accepted, and as it lies now.
  const twoKept = new Float64Array(twoA.length);
  const twoNow = new Float64Array(twoA.length);
  const linkKept = new Float64Array(nets);
  const linkNow = new Float64Array(nets);
  const twosOf = demand.nets.map((_, net) =>
    demand.twos.flatMap((two, i) => (two.nets.includes(net) ? [i] : [])),
  );
  const touched = new Uint8Array(nets).fill(1);

  function cost(): number {
    list();
    twoNow.set(twoKept);
    linkNow.set(linkKept);
    for (let net = 0; net < nets; net++) {
      if (touched[net] === 0) continue;
      linkNow[net] = linkCost(net, null);
      for (const i of twosOf[net]!) twoNow[i] = twoCost(i);
    }
    let sum = jackCost();
    for (let i = 0; i < twoNow.length; i++) sum += twoNow[i]!;
    for (let net = 0; net < nets; net++) sum += linkNow[net]!;
    for (let i = 0; i < demand.trimmers.length; i++) sum += trimmerCost(i);
    for (let i = 0; i < demand.edges.length; i++) sum += edgeCost(i);
    return sum + shapeCost();
  }

  return {
    total,
    chipRows: [timerRow, comparatorRow],
    stub,
    content,
    wanted: [wantedIn(demand, 0), wantedIn(demand, 1)],
    cost,
    touch: (net) => {
      if (net >= 0) touched[net] = 1;
    },
    accept: () => {
      density.accept();
      twoKept.set(twoNow);
      linkKept.set(linkNow);
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
