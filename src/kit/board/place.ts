/**
 * Where along the strips everything sits: each wing is filled in left-edge order, then in other orders as long as that
 * makes it narrower.
 */

import { uniformFrom } from '../../quantity/random.ts';
import type { WingItem } from './channel.ts';
import type { Rows } from './cool.ts';
import type { Demand, PinDemand, Wing } from './demand.ts';
import {
  houseOf,
  type KeptHole,
  ordered,
  type Placed,
  placedIn,
  type Thing,
  type WingPlan,
  type WingTask,
} from './fill.ts';

export type BothPlaced =
  | { readonly ok: true; readonly wings: readonly [WingPlan, WingPlan] }
  | { readonly ok: false; readonly ref: string };

/** By wing: holes that must stay free. */
export type KeptInWings = readonly [readonly KeptHole[], readonly KeptHole[]];

export interface BothTask {
  readonly demand: Demand;
  readonly rows: Rows;
  /** Last columns of the board, by wing; null = as near as may be. */
  readonly edges: readonly [number | null, number | null];
  readonly kept: KeptInWings;
}

/** What one column further from the chip weighs against a better span. */
const COLUMN_COST = 0.35;
const COLUMN_COSTS = [0.35, 1, 3];

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
    const placed = placedIn(house, next, COLUMN_COSTS[round % COLUMN_COSTS.length]!, current);
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
