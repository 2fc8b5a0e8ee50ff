/**
 * The search for an arrangement: how the chips are stacked, on which side stands what serves both voices, which net
 * lies on which strip, and how narrowly both wings can then be filled. The likeliest ways of stacking are searched from
 * several seeds each; what is found is filled, and counts by the board it really takes.
 */

import type { Lie } from '../../design/batch.ts';
import type { Steps } from '../../plan/slices.ts';
import type { Connections } from '../parts.ts';
import { RowSearch, type Rows } from './cool.ts';
import { ACROSS_CHIP, type Demand, demandOf, type Sides, type Wing } from './demand.ts';
import type { BoardSize } from './extract.ts';
import type { WingPlan } from './fill.ts';
import { placeBoth } from './place.ts';
import type { Stack } from './rows.ts';

/** Rows with both wings filled as narrowly as may be. */
export interface Arrangement {
  readonly demand: Demand;
  readonly rows: Rows;
  readonly wings: readonly [WingPlan, WingPlan];
}

/** Bodies may reach this far beyond the middle of the last strip: half of it hangs over the board's edge. */
const OVERHANG = 1.05;
/** Moves of a search. */
const STEPS = 9000;
/** Searches beyond the effort asked for, as long as none has found anything. */
const MOST_MORE = 48;
/** So many of what was found are filled with care, and of those the best few with more, in so many orders for each search. */
const BEST = 20;
const ORDERS = 1.5;
const VERY_BEST = 3;
const MORE_ORDERS = 4;
/** What one link is worth, in holes of board: two joints, and a wire to cut and bend. */
const LINK_HOLES = 120;

interface Way extends Stack, Sides {}

/** The likeliest first: found by trying all of them on the ready designs. */
const WAYS: readonly Way[] = (
  [
    ['comparator', 5, 0, 0],
    ['comparator', 6, 0, 0],
    ['timer', 5, 1, 0],
    ['comparator', 5, 1, 0],
    ['comparator', 7, 0, 0],
    ['comparator', 5, 1, 1],
    ['comparator', 6, 1, 0],
    ['timer', 5, 1, 1],
    ['comparator', 5, 0, 1],
    ['timer', 4, 1, 0],
    ['comparator', 8, 0, 0],
    ['comparator', 4, 0, 0],
  ] as const
).map(([upper, between, threshold, supply]) => ({ upper, between, threshold, supply }));

/**
 * Arrangements, the best first; none when nothing is found. `effort`: searches made. More are made only as long as
 * none has found anything.
 */
export function* arrangementsFor(
  connections: Connections,
  lie: Lie,
  effort: number,
  strips: number,
): Steps<Arrangement[]> {
  const found = new Map<string, Arrangement>();
  for (let i = 0; i < effort || (found.size === 0 && i < effort + MOST_MORE); i++) {
    const way = WAYS[i % WAYS.length]!;
    const demanded = demandOf(connections, lie, way);
    if (!demanded.ok) break;
    const search = new RowSearch(demanded.demand, strips, way, 1 + Math.floor(i / WAYS.length));
    search.cool(STEPS);
    const { rows } = search;
    const arrangement = arranged(demanded.demand, rows, 0);
    if (arrangement !== null) found.set(JSON.stringify([rows.content, way]), arrangement);
    yield;
  }
  const best = yield* bestOf([...found.values()], BEST, ORDERS * effort);
  return [...(yield* bestOf(best, VERY_BEST, MORE_ORDERS * effort)), ...best.slice(VERY_BEST)];
}

/** The best so many, each filled anew with so many orders to choose from. */
function* bestOf(arrangements: readonly Arrangement[], count: number, orders: number): Steps<Arrangement[]> {
  const best: Arrangement[] = [];
  for (const each of arrangements.toSorted((a, b) => worthOf(a) - worthOf(b)).slice(0, count)) {
    best.push(arranged(each.demand, each.rows, orders) ?? each);
    yield;
  }
  return best.sort((a, b) => worthOf(a) - worthOf(b));
}

/** Both wings filled, so many orders tried; null when something finds no place, or copper would lie idle. */
function arranged(demand: Demand, rows: Rows, orders: number): Arrangement | null {
  if (rows.broken.length > 0) return null;
  const placed = placeBoth({ demand, rows, ...ANYWHERE }, orders);
  if (!placed.ok) return null;
  const arrangement: Arrangement = { demand, rows, wings: placed.wings };
  return hasIdleCopper(arrangement) ? null : arrangement;
}

const ANYWHERE = { edges: [null, null], kept: [[], []] } as const;

/** What cannot be joined, as far as a search of fair length finds. */
export function brokenIn(demand: Demand, strips: number): readonly string[] {
  const search = new RowSearch(demand, strips, WAYS[0]!, 1);
  search.cool(STEPS);
  return search.rows.broken;
}

/** Holes of board, and links as holes: the less the better. */
function worthOf(arrangement: Arrangement): number {
  const { strips, holes } = needsOf(arrangement);
  return strips * holes + LINK_HOLES * arrangement.rows.links.length;
}

/** Strips that bodies need above the first row and below the last one; a little may hang over. */
export function margins({ rows, wings }: Pick<Arrangement, 'rows' | 'wings'>): readonly [number, number] {
  const bodies = wings.flatMap(({ items }) => items.map(({ body }) => body.rows));
  const first = Math.min(0, ...bodies.map(([top]) => top));
  const last = Math.max(rows.count - 1, ...bodies.map(([, bottom]) => bottom));
  return [Math.ceil(-first - OVERHANG), Math.ceil(last - (rows.count - 1) - OVERHANG)];
}

export function needsOf(arrangement: Arrangement): BoardSize {
  const { rows, wings } = arrangement;
  const [above, below] = margins(arrangement);
  return { strips: rows.count + above + below, holes: wings[0].edge + wings[1].edge + ACROSS_CHIP + 1 };
}

export const fitsOn = (needs: BoardSize, board: BoardSize): boolean =>
  needs.strips <= board.strips && needs.holes <= board.holes;

/** Copper set apart for a net on which then nothing stands would be a cut or a link for nothing. */
function hasIdleCopper({ rows, wings }: Arrangement): boolean {
  const uses = (wing: Wing, row: number): number => {
    let count = 0;
    const { items, cuts } = wings[wing];
    const cut = cuts.find((each) => each.row === row)?.k ?? Number.NEGATIVE_INFINITY;
    for (const { kind, leads } of items)
      for (const lead of leads) if (lead.row === row && lead.k > cut) count += kind === 'link' ? 0.5 : 1;
    return count;
  };
  for (let row = 0; row < rows.count; row++) {
    const [left, right] = [rows.content[0][row]!, rows.content[1][row]!];
    const isWhole = rows.stub[0][row]! < 0 && left === right;
    const [l, r] = [uses(0, row), uses(1, row)];
    if (isWhole ? left >= 0 && l + r < 1 : (left >= 0 && l < 1) || (right >= 0 && r < 1)) return true;
  }
  return false;
}
