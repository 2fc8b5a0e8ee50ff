/**
 * The log of a batch by kit number, never by name: readings, the fault that was found, minutes, what was lost. As CSV
 * in and out, and back into the loss rates of the next order.
 */
import { BATCH_LIMITS, BATCH_MOST, type Batch, type KitEntry, LOSS_KINDS } from '../design/batch.ts';
import type { Design } from '../design/design.ts';
import type { Fraction } from '../quantity/units.ts';
import { logWords } from '../words/bench.ts';
import { excerpt } from '../words/excerpt.ts';
import type { LossKind } from '../words/order.ts';
import { type CsvCell, csvRows, csvText } from './csv.ts';
import { needsOf } from './order.ts';

/** The log as CSV: one row a kit, readings and losses each in one cell as `point=value; …`. */
export function logCsv(log: readonly KitEntry[]): string {
  const rows = log.map(({ kit, readings, fault, minutes, lost }): readonly CsvCell[] => [
    kit,
    fault,
    minutes,
    readings.map(({ point, value }) => `${escaped(point)}=${Number(value.toPrecision(9))}`).join('; '),
    lost.map(({ kind, count }) => `${kind}=${count}`).join('; '),
  ]);
  return csvText([logWords.columns, ...rows]);
}

/** A name within a cell: signs that part it from the next, and spaces at its ends, by their code. */
const escaped = (name: string): string =>
  name.replace(/[%;]|^\s|\s$/g, (sign) => `%${sign.charCodeAt(0).toString(16).padStart(4, '0')}`);
const unescaped = (name: string): string =>
  name.replace(/%([0-9a-f]{4})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));

export type LogRead =
  | { readonly ok: true; readonly log: readonly KitEntry[] }
  /** More kits than a log holds. */
  | { readonly ok: false; readonly most: number }
  | {
      readonly ok: false;
      /** Line of the table, the headings being line 1. */
      readonly line: number;
      readonly column: (typeof logWords.columns)[number] | null;
      readonly read: string;
    };

/** Reads a log as `logCsv` writes it; the whole of it or nothing. */
export function readLogCsv(text: string): LogRead {
  const [head = [], ...rows] = csvRows(text);
  if (head.join() !== logWords.columns.join())
    return { ok: false, line: 1, column: null, read: excerpt(head.join(',')) };
  if (rows.length > BATCH_MOST.log) return { ok: false, most: BATCH_MOST.log };
  const log: KitEntry[] = [];
  for (const [i, row] of rows.entries()) {
    const entry = entryFrom(row);
    if ('column' in entry) return { ok: false, line: i + 2, column: entry.column, read: excerpt(entry.read) };
    log.push(entry);
  }
  return { ok: true, log };
}

/** What is said of a file that is no log. */
export const logRefusal = (read: Extract<LogRead, { ok: false }>): string =>
  'most' in read ? logWords.tooLong(read.most) : logWords.refused(read.line, read.column, read.read);

type Trouble = { readonly column: (typeof logWords.columns)[number]; readonly read: string };

function entryFrom(row: readonly string[]): KitEntry | Trouble {
  const [kitText = '', fault = '', minutesText = '', readingsText = '', lostText = ''] = row;
  const columns = logWords.columns;
  const kit = Number(kitText);
  const { min, max } = BATCH_LIMITS.kitNumber;
  if (!Number.isInteger(kit) || kit < min || kit > max) return { column: columns[0], read: kitText };
  if (fault.length > BATCH_MOST.fault) return { column: columns[1], read: fault };
  const minutes = minutesText === '' ? null : Number(minutesText);
  if (minutes !== null && !(minutes >= 0 && minutes <= BATCH_LIMITS.minutes.max))
    return { column: columns[2], read: minutesText };
  const readings = pairsFrom(readingsText);
  if (readings === null || readings.length > BATCH_MOST.readings || !readings.every(isReading))
    return { column: columns[3], read: readingsText };
  const losses = pairsFrom(lostText);
  const lost = losses?.flatMap(([name, count]) => {
    const kind = LOSS_KINDS.find((known) => known === name);
    return kind === undefined || !Number.isInteger(count) || count < 0 || count > BATCH_LIMITS.pieces.max
      ? []
      : [{ kind, count }];
  });
  if (losses === null || lost === undefined || lost.length < losses.length || lost.length > BATCH_MOST.lost)
    return { column: columns[4], read: lostText };
  return {
    kit,
    fault: fault === '' ? null : fault,
    minutes,
    readings: readings.map(([point, value]) => ({ point, value })),
    lost,
  };
}

const isReading = ([point, value]: readonly [string, number]): boolean =>
  point.length <= BATCH_MOST.point && value >= BATCH_LIMITS.reading.min && value <= BATCH_LIMITS.reading.max;

/** `a=1; b=2`; null when a part of it is no name and number. */
function pairsFrom(text: string): readonly (readonly [string, number])[] | null {
  if (text.trim() === '') return [];
  const pairs = text.split(';').map((part): readonly [string, number] | null => {
    const at = part.lastIndexOf('=');
    const [name, value] = [unescaped(part.slice(0, at).trim()), part.slice(at + 1).trim()];
    return at < 0 || value === '' || !Number.isFinite(Number(value)) ? null : [name, Number(value)];
  });
  return pairs.every((pair) => pair !== null) ? pairs : null;
}

/** An entry in its place: the kit's old one goes; by kit number. */
export function withEntry(log: readonly KitEntry[], entry: KitEntry): readonly KitEntry[] {
  return [...log.filter(({ kit }) => kit !== entry.kit), entry].toSorted((a, b) => a.kit - b.kit);
}

/** How many parts the rates of the batch so far are worth, beside what the log counted. */
const PRIOR_PARTS = 40;

/**
 * Loss rates for the next order: the present rates, worth forty parts each, and what the logged kits really lost.
 * The mean of a beta posterior.
 */
export function learnedLosses(design: Design, batch: Batch): Readonly<Record<LossKind, Fraction>> {
  const perKit = new Map<LossKind, number>();
  for (const need of needsOf(design, batch.board.sockets))
    perKit.set(need.loss, (perKit.get(need.loss) ?? 0) + need.perKit);
  const rate = (kind: LossKind): Fraction => {
    const lost = batch.log.reduce(
      (sum, entry) => sum + entry.lost.reduce((own, each) => own + (each.kind === kind ? each.count : 0), 0),
      0,
    );
    // What was fitted and what was lost on the way to it.
    const handled = batch.log.length * (perKit.get(kind) ?? 0) + lost;
    const learned = (batch.losses[kind] * PRIOR_PARTS + lost) / (PRIOR_PARTS + handled);
    return Math.min(BATCH_LIMITS.loss.max, learned);
  };
  return Object.fromEntries(LOSS_KINDS.map((kind) => [kind, rate(kind)])) as Record<LossKind, Fraction>;
}

export interface LogSummary {
  readonly kits: number;
  /** Share that needed no mending; null = no kit yet. */
  readonly firstTimeRight: Fraction | null;
  /** Middle of the minutes written down; null = none. */
  readonly medianMinutes: number | null;
  /** Faults found, commonest first. */
  readonly faults: readonly { readonly fault: string; readonly count: number }[];
}

/** What the log says of the batch so far. */
export function logSummary(log: readonly KitEntry[]): LogSummary {
  const minutes = log
    .flatMap((entry) => (entry.minutes === null ? [] : [entry.minutes]))
    .toSorted((a, b) => a - b);
  const counts = new Map<string, number>();
  for (const { fault } of log) if (fault !== null) counts.set(fault, (counts.get(fault) ?? 0) + 1);
  const { length } = minutes;
  return {
    kits: log.length,
    firstTimeRight: log.length === 0 ? null : log.filter(({ fault }) => fault === null).length / log.length,
    medianMinutes: length === 0 ? null : (minutes[(length - 1) >> 1]! + minutes[length >> 1]!) / 2,
    faults: [...counts]
      .map(([fault, count]) => ({ fault, count }))
      .toSorted((a, b) => b.count - a.count || a.fault.localeCompare(b.fault)),
  };
}
