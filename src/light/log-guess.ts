/**
 * A first guess at how a recording of light is written: shown to a person, who corrects it before it is read.
 * Phone light meters and loggers differ in delimiter, decimal mark, header, order of columns and kind of time.
 */
import { excerpt } from '../words/excerpt.ts';
import type { LogRefusal } from '../words/light-log.ts';
import {
  cellsOf,
  DELIMITERS,
  type DecimalMark,
  type Delimiter,
  isRemark,
  linesOf,
  numberOf,
  TIME_FORMATS,
  type TimeFormat,
  timeOf,
} from './log-cells.ts';

export const LUX_UNITS = { lx: 1, klx: 1000, footcandle: 10.763_910_4 } as const;
export type LuxUnit = keyof typeof LUX_UNITS;

/** How a recording is to be read. Columns count from 0, rows from 1. */
export interface LogChoices {
  readonly delimiter: Delimiter;
  readonly decimal: DecimalMark;
  /** Row of the header (or the last above the readings); 0 = none. Rows up to it are not read. */
  readonly header: number;
  readonly columns: { readonly time: number; readonly luxA: number; readonly luxB: number | null };
  readonly timeFormat: TimeFormat;
  readonly unit: LuxUnit;
}

export type LogGuess =
  | {
      readonly ok: true;
      readonly choices: LogChoices;
      /** The header's cells as they may be shown; empty without a header. */
      readonly names: readonly string[];
      /** The first rows below the header, cut into cells, as they may be shown. */
      readonly preview: readonly { readonly row: number; readonly cells: readonly string[] }[];
    }
  | { readonly ok: false; readonly refusal: LogRefusal };

/** A recording is refused beyond these. */
export const LOG_LIMITS = { characters: 5_000_000, rows: 200_000, lux: 200_000, listed: 200 } as const;

/** What the guess looks at, and what it shows. */
const LOOKED_AT = { characters: 40_000, rows: 200, shown: 6 } as const;

interface Line {
  readonly row: number;
  readonly text: string;
}

/** Looks at the beginning of a recording. Never throws. */
export function guessLog(text: string): LogGuess {
  const { characters } = LOG_LIMITS;
  if (text.length > characters) return { ok: false, refusal: { kind: 'too large', most: characters } };
  const lines = beginning(text);
  if (lines.length === 0) return { ok: false, refusal: { kind: 'empty' } };
  const delimiter = hintedDelimiter(text) ?? guessDelimiter(lines);
  const width = usualWidth(lines, delimiter).width;
  const rows = lines.map(({ row, text: line }) => ({ row, cells: cellsOf(line, delimiter) }));
  const decimal = guessDecimal(rows.map(({ cells }) => cells));
  const first = rows.findIndex(({ cells }) => cells.length >= Math.min(2, width) && isData(cells, decimal));
  if (first < 0 || width < 2) return { ok: false, refusal: { kind: 'no columns' } };
  const above = rows.slice(0, first);
  const header = above.findLast(
    ({ cells }) => cells.length >= 2 && cells.every((cell) => figureOf(cell, decimal) === null),
  );
  const lastOfPreamble = above.findLast(({ cells }) => cells.length < 2);
  const data = rows.slice(first).filter(({ cells }) => isData(cells, decimal));
  const names = header?.cells ?? [];
  const columns = guessColumns(
    names,
    data.map(({ cells }) => cells),
    decimal,
  );
  if (columns === null) return { ok: false, refusal: { kind: 'no columns' } };
  const { timeFormat, ...places } = columns;
  return {
    ok: true,
    choices: {
      delimiter,
      decimal,
      header: header?.row ?? lastOfPreamble?.row ?? 0,
      columns: places,
      timeFormat,
      unit: guessUnit(names[places.luxA] ?? ''),
    },
    names: names.map((name) => excerpt(name)),
    preview: rows
      .slice(first, first + LOOKED_AT.shown)
      .map(({ row, cells }) => ({ row, cells: cells.map((cell) => excerpt(cell)) })),
  };
}

/** The first lines that hold something; the last may be cut off and is left out when there are more. */
function beginning(text: string): Line[] {
  const isCut = text.length > LOOKED_AT.characters;
  const lines = linesOf(isCut ? text.slice(0, LOOKED_AT.characters) : text);
  if (isCut && lines.length > 1) lines.pop();
  return lines
    .map((line, i) => ({ row: i + 1, text: line }))
    .filter((line) => !isRemark(line.text))
    .slice(0, LOOKED_AT.rows);
}

/** Spreadsheets write their delimiter into a first line of its own. */
function hintedDelimiter(text: string): Delimiter | null {
  const sign = /^\uFEFF?"?sep=([;,\t])/i.exec(text)?.[1];
  return DELIMITERS.find((delimiter) => delimiter === sign) ?? null;
}

/**
 * Tabs and semicolons first: commas beside them are decimal marks. The winner cuts most lines into the same
 * number of cells; the comma has to do clearly better than the others to come before them.
 */
function guessDelimiter(lines: readonly Line[]): Delimiter {
  let best: Delimiter = ',';
  let bestShare = 0;
  for (const delimiter of DELIMITERS) {
    const { width, share } = usualWidth(lines, delimiter);
    if (width < 2) continue;
    if (share > bestShare + (best === delimiter ? 0 : 0.2)) {
      best = delimiter;
      bestShare = share;
    }
  }
  return best;
}

/** The commonest number of cells in a line, and the share of lines that have it. */
function usualWidth(
  lines: readonly Line[],
  delimiter: Delimiter,
): { readonly width: number; readonly share: number } {
  const counts = new Map<number, number>();
  for (const { text } of lines) {
    const width = cellsOf(text, delimiter).length;
    counts.set(width, (counts.get(width) ?? 0) + 1);
  }
  let width = 1;
  let most = 0;
  for (const [cells, count] of counts) {
    if (count > most || (count === most && cells > width)) {
      width = cells;
      most = count;
    }
  }
  return { width, share: most / lines.length };
}

function guessDecimal(rows: readonly (readonly string[])[]): DecimalMark {
  let commas = 0;
  let points = 0;
  for (const cell of rows.flat()) {
    if (/^[+-]?\d+,\d+(?:\s*(?:lx|lux|s))?$/i.test(cell)) commas++;
    else if (/^[+-]?\d+\.\d+(?:\s*(?:lx|lux|s))?$/i.test(cell)) points++;
    else if (/^\d{1,3}(?:\.\d{3})+,\d+$/.test(cell)) commas += 2;
  }
  return commas > points ? ',' : '.';
}

/** A number, whatever unit stands behind it. */
function figureOf(cell: string, decimal: DecimalMark): number | null {
  return numberOf(cell.replace(/\s*(?:ms|min|s|lx|lux)$/i, ''), decimal);
}

/** A row of readings has a time and a number beside it. */
function isData(cells: readonly string[], decimal: DecimalMark): boolean {
  const numbers = cells.filter((cell) => figureOf(cell, decimal) !== null).length;
  return numbers >= 2 || (numbers === 1 && cells.some((cell) => dayTimeOf(cell) !== null));
}

/** Formats that are told by the look of a cell. */
const LOOKS: readonly TimeFormat[] = ['iso', 'clock', 'stopwatch', 'day-first', 'month-first'];

function dayTimeOf(cell: string): TimeFormat | null {
  return LOOKS.find((format) => timeOf(cell, format, '.') !== null) ?? null;
}

const TIME_NAME =
  /time|zeit|uhr|date|datum|temps|heure|hora|tiempo|stamp|elapsed|seconds?|sekunde|^t\b|^t_|^s$/i;
const LUX_NAME = /lux|\blx\b|_lx|illum|light|licht|beleucht|helligkeit|bright|lumi|[ée]clair|ilumin/i;

function guessColumns(
  names: readonly string[],
  rows: readonly (readonly string[])[],
  decimal: DecimalMark,
): { time: number; luxA: number; luxB: number | null; timeFormat: TimeFormat } | null {
  const width = Math.max(...rows.slice(0, LOOKED_AT.rows).map((cells) => cells.length), 0);
  const all = Array.from({ length: width }, (_, i) => i);
  const mostly = (column: number, reads: (cell: string) => boolean) =>
    2 * rows.filter((cells) => reads(cells[column] ?? '')).length > rows.length;
  const dayTimes = all.filter((i) => mostly(i, (cell) => dayTimeOf(cell) !== null));
  const numbers = all.filter((i) => mostly(i, (cell) => figureOf(cell, decimal) !== null));
  const lights = numbers.filter((i) => LUX_NAME.test(names[i] ?? ''));
  // A written date or clock is surely the time; else a name says so; else the first column that only rises.
  const rising = numbers.filter((i) => !lights.includes(i) && rises(rows, i, decimal));
  const named = numbers.filter((i) => !lights.includes(i) && TIME_NAME.test(names[i] ?? ''));
  const time =
    dayTimes.find((i) => mostly(i, (cell) => isWholeDate(cell))) ??
    dayTimes[0] ??
    named.find((i) => rising.includes(i)) ??
    named[0] ??
    rising[0] ??
    numbers.find((i) => !lights.includes(i));
  if (time === undefined) return null;
  const others = numbers.filter((i) => i !== time);
  const light =
    lights.length > 0 ? lights : names.length > 0 && others.length > 2 ? others.slice(0, 1) : others;
  const luxA = light[0];
  if (luxA === undefined) return null;
  const timeFormat = dayTimes.includes(time)
    ? guessLook(rows.map((cells) => cells[time] ?? ''))
    : guessRelative(names[time] ?? '', rows, time, decimal);
  return { time, luxA, luxB: light[1] ?? null, timeFormat };
}

function isWholeDate(cell: string): boolean {
  const look = dayTimeOf(cell);
  return look !== null && look !== 'clock' && look !== 'stopwatch';
}

function rises(rows: readonly (readonly string[])[], column: number, decimal: DecimalMark): boolean {
  let last = Number.NEGATIVE_INFINITY;
  let falls = 0;
  for (const cells of rows) {
    const value = figureOf(cells[column] ?? '', decimal);
    if (value === null) continue;
    if (value <= last) falls++;
    last = value;
  }
  return falls * 10 <= rows.length;
}

/** The first look that reads most of the cells; m:ss with fractions is a stopwatch, without them a clock. */
function guessLook(cells: readonly string[]): TimeFormat {
  const count = (format: TimeFormat) => cells.filter((cell) => timeOf(cell, format, '.') !== null).length;
  let best: TimeFormat = 'clock';
  for (const format of TIME_FORMATS) {
    if (LOOKS.includes(format) && count(format) > count(best)) best = format;
  }
  // 03/04/2026 can be either: with strokes the month comes first, with points the day, unless a day says more.
  if (best === 'day-first' && count('month-first') === count('day-first'))
    return cells.some((cell) => /^\d{1,2}\//.test(cell)) ? 'month-first' : 'day-first';
  return best;
}

/** By the unit in the name or behind the figures; a very large number of seconds counts milliseconds since 1970. */
function guessRelative(
  name: string,
  rows: readonly (readonly string[])[],
  column: number,
  decimal: DecimalMark,
): TimeFormat {
  const written = `${name} ${rows[0]?.[column] ?? ''}`;
  if (/milli|msec|(?:^|[^a-z])ms(?:$|[^a-z])/i.test(written)) return 'milliseconds';
  if (/(?:^|[^a-z])min(?:ute)?n?s?(?:$|[^a-z])/i.test(written)) return 'minutes';
  const first = rows.map((cells) => figureOf(cells[column] ?? '', decimal)).find((value) => value !== null);
  return (first ?? 0) > 1e11 ? 'milliseconds' : 'seconds';
}

function guessUnit(name: string): LuxUnit {
  if (/klx|klux|kilolux/i.test(name)) return 'klx';
  return /foot|(?:^|[^a-z])fc(?:$|[^a-z])/i.test(name) ? 'footcandle' : 'lx';
}
