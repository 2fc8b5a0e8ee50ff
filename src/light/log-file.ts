/**
 * Recordings of light as phone meters and loggers write them, read into rows of time and lux. A row that cannot
 * be used is named by its number in the file and the rest are kept. Nothing throws. Seconds, lux.
 */
import type { Lux, Pair, Seconds } from '../quantity/units.ts';
import { excerpt } from '../words/excerpt.ts';
import type { LogColumn, LogProblem, LogReason, LogRefusal } from '../words/light-log.ts';
import { cellsOf, type DecimalMark, isRemark, linesOf, luxOf, timeOf } from './log-cells.ts';
import { LOG_LIMITS, type LogChoices, LUX_UNITS } from './log-guess.ts';

/** Rows ready to be played; times rise strictly. */
export interface LogPoints {
  readonly times: Float64Array;
  readonly lux: Pair<Float64Array>;
}

export type LogReading =
  | {
      readonly ok: true;
      /** From 0 at the first row kept. With one column of light both sensors get it. */
      readonly points: LogPoints;
      readonly kept: number;
      readonly dropped: number;
      /** In order of rows; at most `LOG_LIMITS.listed` of those dropped. */
      readonly problems: readonly LogProblem[];
    }
  | { readonly ok: false; readonly refusal: LogRefusal };

interface Row {
  readonly row: number;
  readonly read: string;
  readonly time: Seconds;
  readonly luxA: Lux;
  readonly luxB: Lux;
}

type RowReading = Row | LogProblem;

/** Reads a whole recording as chosen. Never throws. */
export function readLog(text: string, choices: LogChoices): LogReading {
  const scanned = scan(text, choices);
  if (!scanned.ok) return scanned;
  const { rows, problems } = scanned;
  if (choices.timeFormat === 'clock') passMidnight(rows);
  const kept = risingRows(rows, problems);
  problems.sort((a, b) => a.row - b.row);
  const first = kept[0];
  if (first === undefined) return { ok: false, refusal: { kind: 'no rows', first: problems[0] ?? null } };
  return {
    ok: true,
    points: pointsOf(kept, first.time, LUX_UNITS[choices.unit], choices.columns.luxB !== null),
    kept: kept.length,
    dropped: problems.length,
    problems: problems.slice(0, LOG_LIMITS.listed),
  };
}

/** Every row below the header: read, or named with what is wrong with it. */
function scan(
  text: string,
  choices: LogChoices,
):
  | { readonly ok: true; readonly rows: Row[]; readonly problems: LogProblem[] }
  | { readonly ok: false; readonly refusal: LogRefusal } {
  const { characters, rows: most } = LOG_LIMITS;
  if (text.length > characters) return { ok: false, refusal: { kind: 'too large', most: characters } };
  const rows: Row[] = [];
  const problems: LogProblem[] = [];
  const lines = linesOf(text);
  for (let i = Math.max(0, choices.header); i < lines.length; i++) {
    const line = lines[i]!;
    if (isRemark(line)) continue;
    const cells = cellsOf(line, choices.delimiter);
    const reading = readRow(i + 1, cells, choices);
    if ('reason' in reading) problems.push(reading);
    else rows.push(reading);
    if (rows.length + problems.length > most) return { ok: false, refusal: { kind: 'too many rows', most } };
  }
  if (rows.length + problems.length === 0 && text.trim() === '')
    return { ok: false, refusal: { kind: 'empty' } };
  return { ok: true, rows, problems };
}

function readRow(row: number, cells: readonly string[], choices: LogChoices): RowReading {
  const { columns, timeFormat, decimal, unit } = choices;
  const timeCell = cells[columns.time] ?? '';
  if (timeCell === '') return problem(row, 'time', '', 'missing');
  const time = timeOf(timeCell, timeFormat, decimal);
  if (time === null) return problem(row, 'time', timeCell, 'unreadable');
  const luxA = readLux(row, 'luxA', cells[columns.luxA] ?? '', decimal, LUX_UNITS[unit]);
  if (typeof luxA !== 'number') return luxA;
  const luxB =
    columns.luxB === null ? luxA : readLux(row, 'luxB', cells[columns.luxB] ?? '', decimal, LUX_UNITS[unit]);
  if (typeof luxB !== 'number') return luxB;
  return { row, read: timeCell, time, luxA, luxB };
}

/** A level in the unit written, or what is wrong with it. */
function readLux(
  row: number,
  column: LogColumn,
  cell: string,
  decimal: DecimalMark,
  factor: number,
): number | LogProblem {
  if (cell === '') return problem(row, column, cell, 'missing');
  const value = luxOf(cell, decimal);
  if (value === null) return problem(row, column, cell, 'unreadable');
  if (value < 0) return problem(row, column, cell, 'negative');
  return value * factor > LOG_LIMITS.lux ? problem(row, column, cell, 'too bright') : value;
}

const DAY: Seconds = 86_400;

/** Clock times that fall by more than half a day have passed midnight. */
function passMidnight(rows: Row[]): void {
  let days = 0;
  for (let i = 0, last = 0; i < rows.length; i++) {
    const row = rows[i]!;
    if (i > 0 && last - row.time > DAY / 2 && last < DAY) days++;
    last = row.time;
    if (days > 0) rows[i] = { ...row, time: row.time + days * DAY };
  }
}

/**
 * Rows whose times rise. Of two that do not, the later row goes; but where one row alone is ahead of the rows
 * that follow it, that one goes, so that one wrong time does not cost all the rest.
 */
function risingRows(rows: readonly Row[], problems: LogProblem[]): Row[] {
  const kept: Row[] = [];
  for (const [i, row] of rows.entries()) {
    const last = kept.at(-1);
    if (last === undefined || row.time > last.time) {
      kept.push(row);
      continue;
    }
    const before = kept.at(-2);
    const next = rows[i + 1];
    const isAhead =
      row.time < last.time &&
      (before === undefined || row.time > before.time) &&
      next !== undefined &&
      next.time > row.time &&
      next.time <= last.time;
    if (isAhead) {
      kept[kept.length - 1] = row;
      problems.push(problem(last.row, 'time', last.read, 'ahead'));
    } else
      problems.push(problem(row.row, 'time', row.read, row.time === last.time ? 'same time' : 'earlier'));
  }
  return kept;
}

function pointsOf(rows: readonly Row[], zero: Seconds, factor: number, two: boolean): LogPoints {
  const a = Float64Array.from(rows, ({ luxA }) => luxA * factor);
  return {
    times: Float64Array.from(rows, ({ time }) => time - zero),
    lux: { A: a, B: two ? Float64Array.from(rows, ({ luxB }) => luxB * factor) : a },
  };
}

function problem(row: number, column: LogColumn, read: string, reason: LogReason): LogProblem {
  return { row, column, read: excerpt(read), reason };
}
