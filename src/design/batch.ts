/**
 * What the document keeps of the batch: how many kits, where, what is in stock and at what price, how much gets
 * lost, what the bench wrote down, what was asked of the board, and the workshop that builds it. Beside the design, not
 * in it: changing an order changes no sound. SI units; prices in whatever currency the organiser writes.
 */
import * as v from 'valibot';
import type { Limits } from '../quantity/parse.ts';
import type { Fraction } from '../quantity/units.ts';
import type { LossKind, Region } from '../words/order.ts';
import { entries, listOf, oneOf, text, within, yesNo } from './schema.ts';
import { USUAL_WORKSHOP, type Workshop, workshopSchema } from './workshop.ts';

/** What the organiser knows of one line of the order; keyed as the order names its lines. */
export interface LineNote {
  readonly key: string;
  readonly stock: number;
  readonly packSize: number;
  /** Price of one pack; null = not written down. */
  readonly packPrice: number | null;
}

/** A value read at a test point: volts, amperes or hertz. */
export interface LoggedReading {
  readonly point: string;
  readonly value: number;
}

/** One board on the bench, by the number on its bag. No names. */
export interface KitEntry {
  readonly kit: number;
  readonly readings: readonly LoggedReading[];
  /** Id of the fault that was found; null = none. */
  readonly fault: string | null;
  readonly minutes: number | null;
  /** Parts that were lost or spoilt, by kind. */
  readonly lost: readonly { readonly kind: LossKind; readonly count: number }[];
}

/** How resistors are wanted: flat or upright, whichever makes the smaller board; all flat; upright wherever they reach. */
export const LIES = ['as they fit', 'flat', 'upright'] as const;
export type Lie = (typeof LIES)[number];

export interface BoardWishes {
  /** Strips, and holes along each; null = a piece cut to fit. */
  readonly size: { readonly strips: number; readonly holes: number } | null;
  /** Chips in sockets. */
  readonly sockets: boolean;
  readonly resistors: Lie;
  /** Holes that must stay free, counted from 1. */
  readonly free: readonly { readonly strip: number; readonly hole: number }[];
}

export interface Batch {
  readonly kits: number;
  readonly region: Region;
  /** Share of each kind of part that is lost or spoilt on the way to a working kit. */
  readonly losses: Readonly<Record<LossKind, Fraction>>;
  readonly lines: readonly LineNote[];
  readonly log: readonly KitEntry[];
  readonly board: BoardWishes;
  readonly workshop: Workshop;
}

export const BATCH_LIMITS = {
  kits: { min: 1, max: 500 },
  loss: { min: 0, max: 0.5 },
  pieces: { min: 0, max: 100_000 },
  packSize: { min: 1, max: 10_000 },
  price: { min: 0, max: 1e6 },
  kitNumber: { min: 1, max: 9999 },
  minutes: { min: 0, max: 10_000 },
  strips: { min: 5, max: 100 },
  holes: { min: 5, max: 200 },
  strip: { min: 1, max: 100 },
  hole: { min: 1, max: 200 },
  reading: { min: -1e7, max: 1e7 },
} as const;

/** Most of each that a batch keeps, and the longest of its texts. */
export const BATCH_MOST = {
  lines: 200,
  log: 1000,
  readings: 60,
  lost: 20,
  free: 400,
  point: 40,
  fault: 60,
} as const;

/** Kinds of part, in the order they are shown. */
export const LOSS_KINDS = [
  'resistor',
  'capacitor',
  'chip',
  'trimmer',
  'cell',
  'battery lead',
  'other',
] as const satisfies readonly LossKind[];

const whole = (limits: Limits) => within(limits, 'whole');

const loss = within(BATCH_LIMITS.loss);

/** For the entry `batch` of a design. */
export const batchSchema = entries({
  kits: whole(BATCH_LIMITS.kits),
  region: oneOf(['eu', 'uk', 'elsewhere']),
  losses: entries({
    resistor: loss,
    capacitor: loss,
    chip: loss,
    trimmer: loss,
    cell: loss,
    'battery lead': loss,
    other: loss,
  }),
  lines: listOf(
    entries({
      key: text(80),
      stock: whole(BATCH_LIMITS.pieces),
      packSize: whole(BATCH_LIMITS.packSize),
      packPrice: v.nullable(within(BATCH_LIMITS.price)),
    }),
    BATCH_MOST.lines,
  ),
  log: listOf(
    entries({
      kit: whole(BATCH_LIMITS.kitNumber),
      readings: listOf(
        entries({ point: text(BATCH_MOST.point), value: within(BATCH_LIMITS.reading) }),
        BATCH_MOST.readings,
      ),
      fault: v.nullable(text(BATCH_MOST.fault)),
      minutes: v.nullable(within(BATCH_LIMITS.minutes)),
      lost: listOf(entries({ kind: oneOf(LOSS_KINDS), count: whole(BATCH_LIMITS.pieces) }), BATCH_MOST.lost),
    }),
    BATCH_MOST.log,
  ),
  board: entries({
    size: v.nullable(entries({ strips: whole(BATCH_LIMITS.strips), holes: whole(BATCH_LIMITS.holes) })),
    sockets: yesNo,
    resistors: oneOf(LIES),
    free: listOf(
      entries({ strip: whole(BATCH_LIMITS.strip), hole: whole(BATCH_LIMITS.hole) }),
      BATCH_MOST.free,
    ),
  }),
  workshop: workshopSchema,
}) satisfies v.GenericSchema<unknown, Batch>;

/**
 * A class of thirty. Loss rates: judgement from teaching, except that one class lost 3 of 15 units to battery
 * connectors (forum report): resistors dropped or cut short, chips reversed or bent, cells broken at the leads.
 */
export const DEFAULT_BATCH: Batch = {
  kits: 30,
  region: 'eu',
  losses: {
    resistor: 0.03,
    capacitor: 0.03,
    chip: 0.05,
    trimmer: 0.05,
    cell: 0.1,
    'battery lead': 0.1,
    other: 0.02,
  },
  lines: [],
  log: [],
  board: { size: null, sockets: true, resistors: 'as they fit', free: [] },
  workshop: USUAL_WORKSHOP,
};
