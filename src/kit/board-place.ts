/**
 * Where along the strips everything sits: each wing's columns are filled from the chip outward, the left-edge way:
 * things sorted by their upper strip, each in the first column where its leads and body fit. First what hangs on
 * short copper beside a chip, then the cuts behind that, then trimmers, capacitors, links, resistors, test pins;
 * leads at the edge last.
 */
import { bodyBox, Channel, type WingItem } from './board-channel.ts';
import type { Rows } from './board-cool.ts';
import { ACROSS_CHIP, type Demand, type TwoLeadDemand, type Wing } from './board-demand.ts';
import { placeEdges } from './board-edges.ts';
import { Copper, linkWay, pinWay, trimmerWays, twoWays, type Way } from './board-ways.ts';

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

export interface WingTask {
  readonly demand: Demand;
  readonly rows: Rows;
  readonly wing: Wing;
  readonly pins: readonly { readonly ref: string; readonly net: number }[];
  /** The board's last column; null = as near as may be. */
  readonly edge: number | null;
  /** Holes that must stay free. */
  readonly kept: readonly { readonly row: number; readonly k: number }[];
}

/** Columns tried before a wing counts as endless. */
const MOST_COLUMNS = 60;
const KEPT = 0.3;
/** Bodies may reach this far beyond the last column's holes. */
const OVERHANG = 0.6;
/** Where the wings meet, in columns from the left row of pins. */
const MIDDLE = 1.4;
/** What one column further from the chip weighs against a better span. */
const COLUMN_COST = 0.35;

/** Left-edge order, and the longest first: whichever gives the narrower wing. */
export function placeWing(task: WingTask): Placed {
  const byRow = placedBy(task, (rows) => Math.min(...rows) * 100 + Math.max(...rows));
  const byLength = placedBy(task, (rows) => Math.min(...rows) - Math.max(...rows));
  if (!byRow.ok) return byLength;
  return byLength.ok && byLength.plan.edge < byRow.plan.edge ? byLength : byRow;
}

function placedBy(task: WingTask, order: (rows: readonly number[]) => number): Placed {
  const { demand, rows, wing, kept } = task;
  const edge = task.edge ?? MOST_COLUMNS;
  const channel = wing === 0 ? new Channel(edge, 0, -MIDDLE) : new Channel(edge, -1, MIDDLE - ACROSS_CHIP);
  blockChips(channel, demand, rows, wing);
  for (const { row, k } of kept) channel.block(bodyBox(row, k, KEPT, KEPT), [{ name: '', row, k }]);
  const copper = new Copper(rows, wing);
  const place = (ways: readonly Way[]): boolean => {
    const found = cheapest(channel, copper, ways);
    if (found !== null) channel.put(found);
    return found !== null;
  };

  const links = rows.links
    .filter((link) => link.wing === wing)
    .map(({ net, from, to }) => linkWay(demand.nets[net]!, net, from, to, copper));
  const isInner = ({ inner }: Way): boolean => inner.includes(true);
  const twos = demand.twos.filter((each) => each.wing === wing);
  const capacitors = twos.filter(({ mayBeInner }) => mayBeInner);
  const near = (role: string): TwoLeadDemand[] => capacitors.filter(({ part }) => part.role.endsWith(role));
  const far = capacitors.filter(({ part }) => !/(bypass|timing)$/.test(part.role));
  const others = twos.filter(({ mayBeInner }) => !mayBeInner);

  for (const way of links.filter(isInner)) if (!place([way])) return { ok: false, ref: way.at(0).ref };
  // What finds no place before the cuts are known hangs on copper beyond them.
  const later = [...near('bypass'), ...near('timing')].filter((two) => !place(twoWays(two, copper)));
  for (const row of copper.splitRows) {
    const cut = cutBehind(channel, row);
    if (cut > channel.edge) return { ok: false, ref: demand.chips[0].part.ref };
    channel.cut(row, cut);
  }
  for (const trimmer of demand.trimmers)
    if (trimmer.wing === wing && !place(trimmerWays(trimmer, copper)))
      return { ok: false, ref: trimmer.part.ref };
  for (const two of [...later, ...far])
    if (!place(twoWays(two, copper))) return { ok: false, ref: two.part.ref };
  for (const way of sortedBy(
    order,
    links.filter((each) => !isInner(each)),
    ({ rows: its }) => its,
  ))
    if (!place([way])) return { ok: false, ref: way.at(0).ref };
  const waysOf = others.map((two) => ({ two, ways: twoWays(two, copper) }));
  for (const { two, ways } of sortedBy(order, waysOf, ({ ways: all }) => all[0]?.rows ?? [0]))
    if (!place(ways)) return { ok: false, ref: two.part.ref };
  for (const { ref, net } of task.pins)
    if (!place(copper.outer(net).map((row) => pinWay(ref, row)))) return { ok: false, ref };
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

function blockChips(channel: Channel, demand: Demand, rows: Rows, wing: Wing): void {
  for (const [i, chip] of demand.chips.entries()) {
    const first = rows.chipRows[i]!;
    const pins = chip.pins[wing].map((_, strip) => ({ name: '', row: first + strip, k: 0 }));
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
function cheapest(channel: Channel, copper: Copper, ways: readonly Way[]): WingItem | null {
  let best: WingItem | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const way of ways)
    for (let k = channel.first; k <= channel.edge; k++) {
      const cost = way.cost + COLUMN_COST * Math.max(0, k);
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
