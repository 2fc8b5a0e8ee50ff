/**
 * Fills a wing in a given order: its columns from the chip outward, each thing in the first column where its leads and
 * body fit. First what hangs on short copper beside a chip, then the cuts behind that, then the rest; leads at the edge
 * last.
 */
import { type Box, bodyBox, Channel, movedOut, type WingItem, type WingLead } from './channel.ts';
import type { Rows } from './cool.ts';
import { ACROSS_CHIP, type Demand, type TwoLeadDemand, type Wing } from './demand.ts';
import { lastColumnOf, placeEdges } from './edges.ts';
import { Copper, linkWay, pinWay, trimmerWays, twoWays, type Way } from './ways.ts';

export interface WingPlan {
  readonly items: readonly WingItem[];
  /** The board's last column. */
  readonly edge: number;
  /** Cuts that end a chip's short copper. */
  readonly cuts: readonly { readonly row: number; readonly k: number }[];
}

export type Placed =
  | { readonly ok: true; readonly plan: WingPlan }
  /** Nowhere to put this one: the board ends, or kept holes are in its way. */
  | { readonly ok: false; readonly ref: string };

export interface KeptHole {
  readonly row: number;
  readonly k: number;
}

export interface WingTask {
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

/** Something to put once the cuts are known. */
export interface Thing {
  readonly ref: string;
  readonly ways: readonly Way[];
}

/** A wing with all that is to stand in it, and every way it can. */
interface House {
  readonly task: WingTask;
  readonly copper: Copper;
  readonly twos: readonly (Thing & { readonly two: TwoLeadDemand })[];
  readonly trimmers: readonly Thing[];
  readonly links: readonly Way[];
  readonly pins: readonly Thing[];
  /** By what a column costs: what is the same in whatever order the rest is put. */
  readonly begun: Map<number, Begun>;
}

export function houseOf(task: WingTask): House {
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
    begun: new Map(),
    pins: task.pins.map(({ ref, net }) => ({ ref, ways: copper.outer(net).map((row) => pinWay(ref, row)) })),
  };
}

const isInner = ({ inner }: Way): boolean => inner.includes(true);
const isFor =
  (...roles: readonly string[]) =>
  ({ two }: { readonly two: TwoLeadDemand }): boolean =>
    roles.some((role) => two.part.role.endsWith(role));

/** All that may stand anywhere: trimmers, capacitors, links, the rest; within those by their rows. */
export function ordered(
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
    ).map((way) => ({ ref: way.item.ref, ways: [way] })),
    ...sortedBy(
      order,
      twos.filter(({ two }) => !two.mayBeInner),
      ({ ways }) => ways[0]?.rows ?? [0],
    ),
  ];
}

/** A wing before what may stand in any order; or the reference that found no place. */
type Begun = { readonly channel: Channel; readonly placed: ReadonlySet<string> } | string;

/** Chips, what of the other wing is there, links and capacitors on short copper, and the cuts behind that. */
function begunIn({ task, copper, twos, links }: House, columnCost: number): Begun {
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
  for (const way of links)
    if (isInner(way) && !putCheapest(channel, copper, [way], columnCost)) return way.item.ref;
  // What finds no place before the cuts are known hangs on copper beyond them.
  const placed = new Set<string>();
  for (const role of ['bypass', 'timing'])
    for (const { ref, ways } of twos.filter(isFor(role)))
      if (putCheapest(channel, copper, ways, columnCost)) placed.add(ref);
  for (const row of copper.splitRows) {
    const cut = cutBehind(channel, row);
    if (cut > channel.edge) return demand.chips[0].part.ref;
    channel.cut(row, cut);
  }
  return { channel, placed };
}

/** The wing filled in this order; given up as soon as it is sure to be wider than `widest`. */
export function placedIn(
  house: House,
  order: readonly Thing[],
  columnCost: number,
  widest = Number.POSITIVE_INFINITY,
): Placed {
  const { task, copper, pins, begun } = house;
  const first = begun.get(columnCost) ?? begunIn(house, columnCost);
  begun.set(columnCost, first);
  if (typeof first === 'string') return { ok: false, ref: first };
  const channel = first.channel.copy();
  for (const { ref, ways } of order) {
    if (first.placed.has(ref)) continue;
    if (!putCheapest(channel, copper, ways, columnCost)) return { ok: false, ref };
    if (lastColumnOf(channel.items[channel.items.length - 1]!) > widest) return { ok: false, ref };
  }
  for (const { ref, ways } of pins)
    if (!putCheapest(channel, copper, ways, columnCost)) return { ok: false, ref };
  const edged = placeEdges(task.demand, task.wing, task.edge, channel, copper);
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

/** Puts the cheapest of several ways in its first column that fits; whether there was one. */
function putCheapest(channel: Channel, copper: Copper, ways: readonly Way[], columnCost: number): boolean {
  let best: Way | null = null;
  let column = 0;
  let least = Number.POSITIVE_INFINITY;
  for (const way of ways)
    for (let k = channel.first; k <= channel.edge; k++) {
      const cost = way.cost + columnCost * Math.max(0, k);
      if (cost >= least) break;
      if (!fitsAt(channel, copper, way, k)) continue;
      best = way;
      column = k;
      least = cost;
      break;
    }
  if (best !== null) channel.put(movedOut(best.item, column));
  return best !== null;
}

function fitsAt(channel: Channel, copper: Copper, { item, rows, inner }: Way, k: number): boolean {
  // The first and the last lead of every way stand in its column.
  if (channel.isTaken(rows[0]!, k) || channel.isTaken(rows[rows.length - 1]!, k)) return false;
  const { leads, body } = item;
  for (let i = 0; i < leads.length; i++)
    if (!copper.reaches(channel, leads[i]!.row, leads[i]!.k + k, inner[i]!)) return false;
  return body.columns[1] + k <= channel.edge + OVERHANG && channel.fits(item, k);
}
