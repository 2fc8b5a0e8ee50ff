/**
 * Where along the strips everything sits: each wing's columns are filled from the chip outward, the left-edge way:
 * things sorted by their upper strip, each in the first column where its leads and body fit. First what hangs on
 * short copper beside a chip, then the cuts behind that, then trimmers, capacitors, links, resistors, test pins;
 * leads at the edge last.
 */

import { uniformFrom } from '../quantity/random.ts';
import { type Box, bodyBox, Channel, type WingItem, type WingLead } from './board-channel.ts';
import type { Rows } from './board-cool.ts';
import { ACROSS_CHIP, type Demand, type PinDemand, type TwoLeadDemand, type Wing } from './board-demand.ts';
import { placeEdges } from './board-edges.ts';
import { Copper, linkWay, pinWay, trimmerWays, twoWays, type Way } from './board-ways.ts';

export interface WingPlan {
  readonly items: readonly WingItem[];
  /** The board's last column. */
  readonly edge: number;
  /** Cuts that end a chip's short copper. */
  readonly cuts: readonly { readonly row: number; readonly k: number }[];
}

type Placed =
  | { readonly ok: true; readonly plan: WingPlan }
  /** Nowhere to put this one: the board ends, or kept holes are in its way. */
  | { readonly ok: false; readonly ref: string };

export type BothPlaced =
  | { readonly ok: true; readonly wings: readonly [WingPlan, WingPlan] }
  | { readonly ok: false; readonly ref: string };

/** By wing: holes that must stay free. */
export type KeptInWings = readonly [readonly KeptHole[], readonly KeptHole[]];

interface KeptHole {
  readonly row: number;
  readonly k: number;
}

export interface BothTask {
  readonly demand: Demand;
  readonly rows: Rows;
  /** Last columns of the board, by wing; null = as near as may be. */
  readonly edges: readonly [number | null, number | null];
  readonly kept: KeptInWings;
}

interface WingTask {
  readonly demand: Demand;
  readonly rows: Rows;
  readonly wing: Wing;
  readonly pins: readonly { readonly ref: string; readonly net: number }[];
  /** The board's last column; null = as near as may be. */
  readonly edge: number | null;
  /** Holes that must stay free. */
  readonly kept: readonly KeptHole[];
  /** What of the other wing stands already. */
  readonly others: readonly WingItem[];
}

/** Columns tried before a wing counts as endless. */
const MOST_COLUMNS = 60;
const KEPT = 0.3;
/** Bodies may reach this far beyond the last column's holes. */
const OVERHANG = 0.6;
/** Bodies reach no further beyond the row of pins toward the other wing. */
const MIDDLE = 0.55 - ACROSS_CHIP;
/** Column of the cut between the wings, by wing. */
const CUT_AT = [-1, 1 - ACROSS_CHIP] as const;
/** What one column further from the chip weighs against a better span. */
const COLUMN_COST = 0.35;
const COLUMN_COSTS = [0.35, 1, 3];

/** Something to put once the cuts are known. */
interface Thing {
  readonly ref: string;
  readonly ways: readonly Way[];
}

/** Seed of the search for a narrower wing. */
const SEED = 1;
/** How many places further forward what stood outermost is taken, at most. */
const FORWARD = 12;

/** Fills both wings, the left first or the right, whichever makes the narrower board: the first one has the middle. */
export function placeBoth(task: BothTask, rounds: number): BothPlaced {
  const [one, other] = [placedFrom(task, 0, rounds), placedFrom(task, 1, rounds)];
  if (!one.ok || !other.ok) return one.ok ? one : other;
  const widthOf = ({ wings }: { readonly wings: readonly WingPlan[] }): number =>
    wings.reduce((sum, { edge }) => sum + edge, 0);
  return widthOf(other) < widthOf(one) ? other : one;
}

function placedFrom({ demand, rows, edges, kept }: BothTask, first: Wing, rounds: number): BothPlaced {
  const second: Wing = first === 0 ? 1 : 0;
  const wingTask = (wing: Wing, others: readonly WingItem[]): WingTask => ({
    demand,
    rows,
    wing,
    pins: demand.pins
      .filter((pin) => pinWing(pin, rows) === wing)
      .map(({ part, net }) => ({ ref: part.ref, net })),
    edge: edges[wing],
    kept: kept[wing],
    others,
  });
  const one = placeWing(wingTask(first, []), rounds);
  if (!one.ok) return one;
  const other = placeWing(wingTask(second, one.plan.items), rounds);
  if (!other.ok) return other;
  return { ok: true, wings: first === 0 ? [one.plan, other.plan] : [other.plan, one.plan] };
}

/** A pin for both voices goes left if its net lies there. */
function pinWing({ wing, net }: PinDemand, { content }: Rows): Wing {
  return wing ?? (content[0].includes(net) ? 0 : 1);
}

/**
 * Left-edge order, and the longest first: whichever gives the narrower wing. Then, so many rounds, what stands
 * outermost is put earlier, and the order kept if the wing is no wider.
 */
function placeWing(task: WingTask, rounds: number): Placed {
  const house = houseOf(task);
  const byRow = ordered(house, (rows) => Math.min(...rows) * 100 + Math.max(...rows));
  const byLength = ordered(house, (rows) => Math.min(...rows) - Math.max(...rows));
  let [best, order] = [placedIn(house, byRow, COLUMN_COST), byRow];
  const other = placedIn(house, byLength, COLUMN_COST);
  if (edgeOf(other) < edgeOf(best)) [best, order] = [other, byLength];
  let current = edgeOf(best);
  const uniform = uniformFrom(SEED);
  for (let round = 0; round < rounds && !(best.ok && task.edge !== null); round++) {
    const next = forwarded(order, best, uniform);
    const placed = placedIn(house, next, COLUMN_COSTS[round % COLUMN_COSTS.length]!);
    if (edgeOf(placed) > current) continue;
    [current, order] = [edgeOf(placed), next];
    if (edgeOf(placed) <= edgeOf(best)) best = placed;
  }
  return best;
}

const edgeOf = (placed: Placed): number => (placed.ok ? placed.plan.edge : Number.POSITIVE_INFINITY);

/** One of the things in the last two columns, or the one that found no place, further forward; and one at random. */
function forwarded(order: readonly Thing[], placed: Placed, uniform: () => number): readonly Thing[] {
  const next = [...order];
  const outermost = next.filter(({ ref }) => isOutermost(ref, placed));
  const pick = <T>(from: readonly T[]): T | undefined => from[Math.floor(uniform() * from.length)];
  for (const thing of [pick(outermost), uniform() < 0.5 ? pick(next) : undefined]) {
    if (thing === undefined) continue;
    const at = next.indexOf(thing);
    next.splice(at, 1);
    next.splice(Math.max(0, at - 1 - Math.floor(uniform() * FORWARD)), 0, thing);
  }
  return next;
}

function isOutermost(ref: string, placed: Placed): boolean {
  if (!placed.ok) return ref === placed.ref;
  const { items, edge } = placed.plan;
  return items.some((item) => item.ref === ref && item.leads.some(({ k }) => k >= edge - 1));
}

/** A wing with all that is to stand in it, and every way it can. */
interface House {
  readonly task: WingTask;
  readonly copper: Copper;
  readonly twos: readonly (Thing & { readonly two: TwoLeadDemand })[];
  readonly trimmers: readonly Thing[];
  readonly links: readonly Way[];
  readonly pins: readonly Thing[];
}

function houseOf(task: WingTask): House {
  const { demand, rows, wing } = task;
  const copper = new Copper(rows, wing);
  const isHere = (each: { readonly wing: Wing }): boolean => each.wing === wing;
  return {
    task,
    copper,
    twos: demand.twos.filter(isHere).map((two) => ({ two, ref: two.part.ref, ways: twoWays(two, copper) })),
    trimmers: demand.trimmers
      .filter(isHere)
      .map((trimmer) => ({ ref: trimmer.part.ref, ways: trimmerWays(trimmer, copper) })),
    links: rows.links
      .filter(isHere)
      .map(({ net, from, to }) => linkWay(demand.nets[net]!, net, from, to, copper)),
    pins: task.pins.map(({ ref, net }) => ({ ref, ways: copper.outer(net).map((row) => pinWay(ref, row)) })),
  };
}

const isInner = ({ inner }: Way): boolean => inner.includes(true);
const isFor =
  (...roles: readonly string[]) =>
  ({ two }: { readonly two: TwoLeadDemand }): boolean =>
    roles.some((role) => two.part.role.endsWith(role));

/** All that may stand anywhere: trimmers, capacitors, links, the rest; within those by their rows. */
function ordered(
  { twos, trimmers, links }: House,
  order: (rows: readonly number[]) => number,
): readonly Thing[] {
  const isNear = isFor('bypass', 'timing');
  return [
    ...trimmers,
    ...twos.filter(isFor('bypass')),
    ...twos.filter(isFor('timing')),
    ...twos.filter((each) => each.two.mayBeInner && !isNear(each)),
    ...sortedBy(
      order,
      links.filter((way) => !isInner(way)),
      ({ rows }) => rows,
    ).map((way) => ({ ref: way.at(0).ref, ways: [way] })),
    ...sortedBy(
      order,
      twos.filter(({ two }) => !two.mayBeInner),
      ({ ways }) => ways[0]?.rows ?? [0],
    ),
  ];
}

function placedIn(
  { task, copper, twos, links, pins }: House,
  order: readonly Thing[],
  columnCost: number,
): Placed {
  const { demand, rows, wing, kept } = task;
  const edge = task.edge ?? MOST_COLUMNS;
  const channel = new Channel(edge, 1 - ACROSS_CHIP, MIDDLE);
  blockChips(channel, demand, rows, wing);
  for (const { taken, leads } of task.others) {
    for (const box of taken) channel.block(across(box));
    channel.take(leads.map(leadAcross));
  }
  // A wing's copper ends at the cut in the middle.
  for (let row = 0; row < rows.count; row++)
    if (isCutInMiddle(rows, row))
      for (let k = CUT_AT[wing]; k >= channel.first; k--) channel.take([{ row, k }]);
  for (const { row, k } of kept) channel.block(bodyBox(row, k, KEPT, KEPT), [{ row, k }]);
  const place = (ways: readonly Way[]): boolean => {
    const found = cheapest(channel, copper, ways, columnCost);
    if (found !== null) channel.put(found);
    return found !== null;
  };

  for (const way of links) if (isInner(way) && !place([way])) return { ok: false, ref: way.at(0).ref };
  // What finds no place before the cuts are known hangs on copper beyond them.
  const near = new Set<string>();
  for (const role of ['bypass', 'timing'])
    for (const { ref, ways } of twos.filter(isFor(role))) if (place(ways)) near.add(ref);
  for (const row of copper.splitRows) {
    const cut = cutBehind(channel, row);
    if (cut > channel.edge) return { ok: false, ref: demand.chips[0].part.ref };
    channel.cut(row, cut);
  }
  for (const { ref, ways } of [...order.filter((each) => !near.has(each.ref)), ...pins])
    if (!place(ways)) return { ok: false, ref };
  const edged = placeEdges(demand, wing, task.edge, channel, copper);
  if (!edged.ok) return edged;
  return { ok: true, plan: { items: channel.items, edge: edged.edge, cuts: channel.cuts } };
}

function sortedBy<T>(
  order: (rows: readonly number[]) => number,
  all: readonly T[],
  rowsOf: (each: T) => readonly number[],
): T[] {
  return [...all].sort((a, b) => order(rowsOf(a)) - order(rowsOf(b)));
}

/** Two nets on one row between, above or below the chips. */
function isCutInMiddle({ stub, content }: Rows, row: number): boolean {
  const [left, right] = [content[0][row]!, content[1][row]!];
  return stub[0][row]! < 0 && left >= 0 && right >= 0 && left !== right;
}

/** A column of one wing as the other counts it. */
const columnAcross = (k: number): number => -ACROSS_CHIP - k;
const leadAcross = (lead: WingLead): WingLead => ({ ...lead, k: columnAcross(lead.k) });
const across = ({ rows, columns }: Box): Box => ({
  rows,
  columns: [columnAcross(columns[1]), columnAcross(columns[0])],
});

function blockChips(channel: Channel, demand: Demand, rows: Rows, wing: Wing): void {
  for (const [i, chip] of demand.chips.entries()) {
    const first = rows.chipRows[i]!;
    const pins = chip.pins[wing].map((_, strip) => ({ row: first + strip, k: 0 }));
    channel.block({ rows: [first - 0.5, first + chip.strips - 0.5], columns: [-2, 0.5] }, pins);
  }
}

/** One past the last lead on a chip's copper. */
function cutBehind(channel: Channel, row: number): number {
  let k = 1;
  for (const item of channel.items)
    for (const lead of item.leads) if (lead.row === row) k = Math.max(k, lead.k + 1);
  while (channel.isTaken(row, k)) k++;
  return k;
}

/** The cheapest of several ways in its first column that fits. */
function cheapest(
  channel: Channel,
  copper: Copper,
  ways: readonly Way[],
  columnCost: number,
): WingItem | null {
  let best: WingItem | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const way of ways)
    for (let k = channel.first; k <= channel.edge; k++) {
      const cost = way.cost + columnCost * Math.max(0, k);
      if (cost >= least) break;
      // The first and the last lead of every way stand in its column.
      if (channel.isTaken(way.rows[0]!, k) || channel.isTaken(way.rows[way.rows.length - 1]!, k)) continue;
      const item = way.at(k);
      if (!item.leads.every((lead, i) => copper.reaches(channel, lead.row, lead.k, way.inner[i]!))) continue;
      if (item.body.columns[1] > channel.edge + OVERHANG || !channel.fits(item)) continue;
      best = item;
      least = cost;
      break;
    }
  return best;
}
