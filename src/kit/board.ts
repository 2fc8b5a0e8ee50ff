/**
 * The board plan of a connection list, or the reason why there is none and the smallest change that helps. Every plan
 * is proved before it is given: its nets are read back from holes, leads, links and cuts and must be those of the
 * connection list. Pure; the same list and wishes always give the same plan.
 */
import { assembled, type Seat } from './board-assemble.ts';
import type { NoBody } from './board-bodies.ts';
import { type Rows, rowsFor } from './board-cool.ts';
import { ACROSS_CHIP, type Demand, demandOf, type PinDemand, type Wing } from './board-demand.ts';
import { type BoardSize, type Difference, differencesFrom, type Hole } from './board-extract.ts';
import { type Placed, placeWing, type WingPlan } from './board-place.ts';
import { BOARD_SIZES, type BoardPlan, copperOf } from './board-plan.ts';
import type { Connections } from './parts.ts';

export interface BoardWishes {
  /** The piece of stripboard at hand; null = one cut to fit. */
  readonly board: BoardSize | null;
  /** Holes that take no lead, no cut and lie under no body. Names count on the board as it is. */
  readonly kept: readonly Hole[];
  /** Arrangements to find and choose from; more take longer and give fewer links. */
  readonly effort: number;
}

export const USUAL_WISHES: BoardWishes = { board: BOARD_SIZES[1]!, kept: [], effort: 6 };

export type Change =
  | { readonly kind: 'board'; readonly size: BoardSize }
  | { readonly kind: 'capacitor'; readonly ref: string; readonly to: 'film' | 'electrolytic' }
  | { readonly kind: 'free hole'; readonly hole: Hole }
  /** More arrangements tried. */
  | { readonly kind: 'effort'; readonly effort: number };

export type Refusal =
  | { readonly kind: 'part missing'; readonly ref: string; readonly why: NoBody; readonly change: Change }
  | {
      readonly kind: 'board too small';
      readonly needs: BoardSize;
      readonly has: BoardSize;
      readonly change: Change;
    }
  /** Kept holes leave no place for this part. */
  | { readonly kind: 'in the way'; readonly ref: string; readonly change: Change | null }
  /** No arrangement was found that joins these parts or nets. */
  | { readonly kind: 'net impossible'; readonly names: readonly string[]; readonly change: Change }
  /** Never seen: the plan would not have been what the list says. */
  | { readonly kind: 'not proved'; readonly differences: readonly Difference[] };

export type Planned =
  | { readonly ok: true; readonly plan: BoardPlan }
  | { readonly ok: false; readonly refusal: Refusal };

/** Searches given up after. */
const MOST_SEARCHES = 24;
const STEPS = 2000;
/** Strips the search may use when no board is given. */
const MOST_STRIPS = 30;
/** Bodies may reach this far beyond the middle of the last strip. */
const OVERHANG = 0.8;
/** Seats on a board tried around kept holes. */
const MOST_SEATS = 40;
/** Fewer when each kept hole in turn is thought away. */
const FEW_SEATS = 3;

export function planBoard(connections: Connections, wishes: BoardWishes = USUAL_WISHES): Planned {
  const demanded = demandOf(connections);
  if (!demanded.ok) return refused(missingPart(demanded.part.ref, demanded.why));
  const { demand } = demanded;
  const { board } = wishes;
  const arrangements = arrangementsFor(demand, wishes.effort, board?.strips ?? MOST_STRIPS);
  if (arrangements.length === 0) {
    // Perhaps there are only too few strips.
    const roomy = board === null ? [] : arrangementsFor(demand, 1, MOST_STRIPS);
    if (roomy.length > 0) return refused(tooSmall(needsOf(roomy[0]!), board!));
    const names = rowsFor(demand, MOST_STRIPS, 1, STEPS).broken;
    return refused({ kind: 'net impossible', names, change: { kind: 'effort', effort: wishes.effort * 2 } });
  }
  const fitting = arrangements.filter((each) => board === null || fitsOn(needsOf(each), board));
  if (fitting.length === 0) return refused(tooSmall(needsOf(arrangements[0]!), board!));
  let blocked = '';
  for (const arrangement of fitting) {
    const plan = seated(connections, demand, arrangement, wishes, MOST_SEATS);
    if (typeof plan === 'string') {
      blocked = plan;
      continue;
    }
    const differences = differencesFrom(connections, copperOf(plan));
    return differences.length === 0 ? { ok: true, plan } : refused({ kind: 'not proved', differences });
  }
  return refused({ kind: 'in the way', ref: blocked, change: freeing(connections, demand, fitting, wishes) });
}

const refused = (refusal: Refusal): Planned => ({ ok: false, refusal });

/** Rows with both wings filled as narrowly as may be. */
interface Arrangement {
  readonly rows: Rows;
  readonly wings: readonly [WingPlan, WingPlan];
}

/** What an arrangement is worth: links first, then holes of board. */
function worthOf(arrangement: Arrangement): number {
  const { strips, holes } = needsOf(arrangement);
  return arrangement.rows.cost + (strips * holes) / 25;
}

function arrangementsFor(demand: Demand, effort: number, strips: number): Arrangement[] {
  const found: Arrangement[] = [];
  for (let seed = 1; seed <= MOST_SEARCHES && found.length < effort; seed++) {
    const rows = rowsFor(demand, strips, seed, STEPS);
    if (rows.broken.length > 0) continue;
    const left = placed(demand, rows, 0, null, []);
    const right = placed(demand, rows, 1, null, []);
    if (!left.ok || !right.ok) continue;
    const arrangement: Arrangement = { rows, wings: [left.plan, right.plan] };
    if (!hasIdleCopper(arrangement)) found.push(arrangement);
  }
  return found.sort((a, b) => worthOf(a) - worthOf(b));
}

/** Strips that bodies need above the first row and below the last one; a little may hang over. */
function margins({ rows, wings }: Arrangement): readonly [number, number] {
  const bodies = wings.flatMap(({ items }) => items.map(({ body }) => body.rows));
  const first = Math.min(0, ...bodies.map(([top]) => top));
  const last = Math.max(rows.count - 1, ...bodies.map(([, bottom]) => bottom));
  return [Math.ceil(-first - OVERHANG), Math.ceil(last - (rows.count - 1) - OVERHANG)];
}

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

function needsOf(arrangement: Arrangement): BoardSize {
  const { rows, wings } = arrangement;
  const [above, below] = margins(arrangement);
  return { strips: rows.count + above + below, holes: wings[0].edge + wings[1].edge + ACROSS_CHIP + 1 };
}

const fitsOn = (needs: BoardSize, board: BoardSize): boolean =>
  needs.strips <= board.strips && needs.holes <= board.holes;

function placed(
  demand: Demand,
  rows: Rows,
  wing: Wing,
  edge: number | null,
  kept: readonly { readonly row: number; readonly k: number }[],
): Placed {
  const pins = demand.pins.filter((pin) => pinWing(pin, rows) === wing);
  return placeWing({
    demand,
    rows,
    wing,
    pins: pins.map(({ part, net }) => ({ ref: part.ref, net })),
    edge,
    kept,
  });
}

/** A pin for both voices goes left if its net lies there. */
function pinWing({ wing, net }: PinDemand, { content }: Rows): Wing {
  return wing ?? (content[0].includes(net) ? 0 : 1);
}

/** The arrangement on the board, around kept holes; or the reference that found no place on the last seat tried. */
function seated(
  connections: Connections,
  demand: Demand,
  arrangement: Arrangement,
  { board, kept }: BoardWishes,
  mostSeats: number,
): BoardPlan | string {
  const { rows, wings } = arrangement;
  const needs = needsOf(arrangement);
  const [above] = margins(arrangement);
  const size = board ?? needs;
  if (kept.length === 0 && board === null) {
    const seat = { board: size, before: above, leftPins: wings[0].edge + 1 };
    return assembled(connections, demand, rows, wings, seat, []);
  }
  let blocked = 'U1';
  for (const seat of seatsOn(size, needs, above, wings[0].edge).slice(0, mostSeats)) {
    const edges = [seat.leftPins - 1, size.holes - seat.leftPins - ACROSS_CHIP] as const;
    const inWing = keptIn(kept, seat, demand, rows);
    if (inWing === null) continue;
    const left = placed(demand, rows, 0, edges[0], inWing[0]);
    const right = placed(demand, rows, 1, edges[1], inWing[1]);
    if (left.ok && right.ok) return assembled(connections, demand, rows, [left.plan, right.plan], seat, kept);
    blocked = left.ok ? (right.ok ? blocked : right.ref) : left.ref;
  }
  return blocked;
}

/** Seats from the middle of the board outward. */
function seatsOn(board: BoardSize, needs: BoardSize, above: number, leftEdge: number): Seat[] {
  const outward = (spare: number): number[] =>
    Array.from({ length: spare + 1 }, (_, i) => i).sort(
      (a, b) => Math.abs(a - spare / 2) - Math.abs(b - spare / 2) || a - b,
    );
  const seats = outward(board.strips - needs.strips).flatMap((before) =>
    outward(board.holes - needs.holes).map((left) => ({
      board,
      before: before + above,
      leftPins: left + leftEdge + 1,
    })),
  );
  return seats;
}

/** Kept holes in columns of each wing; null when a chip or its cuts would lie on one. */
function keptIn(
  kept: readonly Hole[],
  { before, leftPins }: Seat,
  demand: Demand,
  rows: Rows,
): readonly [{ row: number; k: number }[], { row: number; k: number }[]] | null {
  const wings: [{ row: number; k: number }[], { row: number; k: number }[]] = [[], []];
  for (const { strip, hole } of kept) {
    const row = strip - 1 - before;
    const across = hole - leftPins;
    if (across <= 0) wings[0].push({ row, k: -across });
    // On the right the strips between the chips begin one hole before the pins.
    else if (across >= ACROSS_CHIP - 1) wings[1].push({ row, k: across - ACROSS_CHIP });
    const isMiddle = across >= 0 && across <= ACROSS_CHIP;
    const isChip = demand.chips.some(
      (chip, i) => row >= rows.chipRows[i]! && row < rows.chipRows[i]! + chip.strips,
    );
    const isCut =
      across === 1 && row >= 0 && row < rows.count && rows.content[0][row] !== rows.content[1][row];
    if (isMiddle && (isChip || isCut)) return null;
  }
  return wings;
}

function missingPart(ref: string, why: NoBody): Refusal {
  const to = why === 'too small for electrolytic' ? 'film' : 'electrolytic';
  return { kind: 'part missing', ref, why, change: { kind: 'capacitor', ref, to } };
}

/** The smallest common board that holds it, or a piece cut to that size. */
function tooSmall(needs: BoardSize, has: BoardSize): Refusal {
  const size = BOARD_SIZES.find((each) => fitsOn(needs, each)) ?? needs;
  return { kind: 'board too small', needs, has, change: { kind: 'board', size } };
}

/** The first kept hole that, freed, lets one of the arrangements lie; else a larger board. */
function freeing(
  connections: Connections,
  demand: Demand,
  arrangements: readonly Arrangement[],
  wishes: BoardWishes,
): Change | null {
  for (const hole of wishes.kept) {
    const fewer = { ...wishes, kept: wishes.kept.filter((each) => each !== hole) };
    for (const arrangement of arrangements)
      if (typeof seated(connections, demand, arrangement, fewer, FEW_SEATS) !== 'string')
        return { kind: 'free hole', hole };
  }
  const size = BOARD_SIZES.find((each) => wishes.board === null || each.strips > wishes.board.strips);
  return size ? { kind: 'board', size } : null;
}
