/**
 * The board plan of a connection list, or the reason why there is none and the smallest change that helps. Every plan
 * is proved before it is given: its nets are read back from holes, leads, links and cuts and must be those of the
 * connection list. Pure; the same list and wishes always give the same plan.
 */

import type { Lie } from '../../design/batch.ts';
import { type Steps, wholeOf } from '../../plan/slices.ts';
import type { Connections } from '../parts.ts';
import { type Arrangement, arrangementsFor, brokenIn, fitsOn, margins, needsOf } from './arrange.ts';
import { assembled, type Seat } from './assemble.ts';
import type { NoBody } from './bodies.ts';
import type { Rows } from './cool.ts';
import { ACROSS_CHIP, type Demand, demandOf } from './demand.ts';
import { type BoardSize, type Difference, differencesFrom, type Hole } from './extract.ts';
import { type KeptInWings, placeBoth } from './place.ts';
import { BOARD_SIZES, type BoardPlan, copperOf } from './plan.ts';

export interface BoardWishes {
  /** The piece of stripboard at hand; null = one cut to fit. */
  readonly board: BoardSize | null;
  /** Holes that take no lead, no cut and lie under no body. Names count on the board as it is. */
  readonly kept: readonly Hole[];
  readonly resistors: Lie;
  /** Searches for an arrangement; more take longer, and give fewer links and a smaller board. */
  readonly effort: number;
}

export const USUAL_WISHES: BoardWishes = {
  board: BOARD_SIZES[1]!,
  kept: [],
  resistors: 'as they fit',
  effort: 54,
};

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

/** Strips the search may use when no board is given. */
const MOST_STRIPS = 30;
/** Seats on a board tried around kept holes. */
const MOST_SEATS = 40;
/** Orders tried in each seat. */
const SEAT_ROUNDS = 20;
/** Fewer when each kept hole in turn is thought away. */
const FEW_SEATS = 3;

export function planBoard(connections: Connections, wishes: BoardWishes = USUAL_WISHES): Planned {
  return wholeOf(boardSteps(connections, wishes));
}

/** A board plan in steps. */
export function* boardSteps(connections: Connections, wishes: BoardWishes): Steps<Planned> {
  const demanded = demandOf(connections, wishes.resistors);
  if (!demanded.ok) return refused(missingPart(demanded.part.ref, demanded.why));
  const { board, resistors, effort } = wishes;
  const arrangements = yield* arrangementsFor(connections, resistors, effort, board?.strips ?? MOST_STRIPS);
  if (arrangements.length === 0) {
    // Perhaps there are only too few strips.
    const roomy = board === null ? [] : yield* arrangementsFor(connections, resistors, 1, MOST_STRIPS);
    if (roomy.length > 0) return refused(tooSmall(needsOf(roomy[0]!), board!));
    const names = brokenIn(demanded.demand, MOST_STRIPS);
    return refused({ kind: 'net impossible', names, change: { kind: 'effort', effort: effort * 2 } });
  }
  const fitting = arrangements.filter((each) => board === null || fitsOn(needsOf(each), board));
  if (fitting.length === 0) return refused(tooSmall(needsOf(arrangements[0]!), board!));
  let blocked = '';
  for (const arrangement of fitting) {
    const plan = yield* seated(connections, arrangement, wishes, MOST_SEATS);
    if (typeof plan === 'string') {
      blocked = plan;
      continue;
    }
    const differences = differencesFrom(connections, copperOf(plan));
    return differences.length === 0 ? { ok: true, plan } : refused({ kind: 'not proved', differences });
  }
  return refused({ kind: 'in the way', ref: blocked, change: yield* freeing(connections, fitting, wishes) });
}

const refused = (refusal: Refusal): Planned => ({ ok: false, refusal });

/** The arrangement on the board, around kept holes; or the reference that found no place on the last seat tried. */
function* seated(
  connections: Connections,
  arrangement: Arrangement,
  { board, kept }: BoardWishes,
  mostSeats: number,
): Steps<BoardPlan | string> {
  const { demand, rows, wings } = arrangement;
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
    const placed = placeBoth({ demand, rows, edges, kept: inWing }, SEAT_ROUNDS);
    if (placed.ok) return assembled(connections, demand, rows, placed.wings, seat, kept);
    blocked = placed.ref;
    yield;
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
): KeptInWings | null {
  const wings: [{ row: number; k: number }[], { row: number; k: number }[]] = [[], []];
  for (const { strip, hole } of kept) {
    const row = strip - 1 - before;
    const across = hole - leftPins;
    // The middle is open to both.
    if (across < ACROSS_CHIP) wings[0].push({ row, k: -across });
    if (across > 0) wings[1].push({ row, k: across - ACROSS_CHIP });
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
function* freeing(
  connections: Connections,
  arrangements: readonly Arrangement[],
  wishes: BoardWishes,
): Steps<Change | null> {
  for (const hole of wishes.kept) {
    const fewer = { ...wishes, kept: wishes.kept.filter((each) => each !== hole) };
    for (const arrangement of arrangements)
      if (typeof (yield* seated(connections, arrangement, fewer, FEW_SEATS)) !== 'string')
        return { kind: 'free hole', hole };
  }
  const size = BOARD_SIZES.find((each) => wishes.board === null || each.strips > wishes.board.strips);
  return size ? { kind: 'board', size } : null;
}
