/** The links that make one of all the copper of a net, as short as may be, and what they cost. */
import { IMPOSSIBLE } from './bodies.ts';
import type { Wing } from './demand.ts';
import type { Density } from './density.ts';
import { MOST_PIECES, type RowLists } from './row-lists.ts';

const LINK = 24;
const LINK_PER_STRIP = 0.15;
/** What no board can do costs this and a little more the further it is from possible. */
export const BROKEN = 100;

export interface LinkRows {
  readonly net: number;
  readonly wing: Wing;
  readonly from: number;
  readonly to: number;
}

/** Gives what the links of a net cost; they are added to `out`, if any, and told to the density. */
export function netLinks(
  { stub, rows, all }: RowLists,
  density: Density,
  nets: number,
): (net: number, out: LinkRows[] | null) => number {
  const total = stub[0].length;
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

  return linkCost;
}
