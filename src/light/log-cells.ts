/**
 * The cells of a recording: a line cut into cells, a cell read as a number or a time. Nothing throws; what
 * cannot be read is null. Numbers come in the unit written, times in seconds from a zero of the format's own.
 */
import type { Seconds } from '../quantity/units.ts';

export const DELIMITERS = ['\t', ';', ','] as const;
export type Delimiter = (typeof DELIMITERS)[number];
export type DecimalMark = '.' | ',';

export const TIME_FORMATS = [
  'seconds',
  'milliseconds',
  'minutes',
  /** h:mm:ss or h:mm, of the day or since the start; past midnight it goes on. */
  'clock',
  /** m:ss since the start. */
  'stopwatch',
  /** Year, month, day, then h:mm:ss, with or without a zone. */
  'iso',
  /** Day, month, year, then h:mm:ss. */
  'day-first',
  /** Month, day, year, then h:mm:ss. */
  'month-first',
] as const;
export type TimeFormat = (typeof TIME_FORMATS)[number];

/** Lines of a text, without its byte order mark; row n is the line at n − 1. */
export function linesOf(text: string): string[] {
  return text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
}

/** A line that holds nothing, a remark, or a spreadsheet's own hint. */
export function isRemark(line: string): boolean {
  return /^[\s;,]*$|^\s*(?:#|\/\/|%|!|"?sep=)/i.test(line);
}

/** No reading is longer, and no recording wider: what goes beyond is not looked at, however much of it there is. */
const LONGEST_CELL = 120;
const MOST_CELLS = 200;

/**
 * Cells of a line, trimmed; quoted cells without their quotes, a doubled quote within them as one. A cell too long to be
 * a reading ends with a `…`, and so reads as none.
 */
export function cellsOf(line: string, delimiter: Delimiter): string[] {
  if (!line.includes('"')) return line.split(delimiter, MOST_CELLS).map(trimmed);
  const cells: string[] = [];
  let cell = '';
  let isQuoted = false;
  const add = (sign: string) => {
    if (cell.length <= LONGEST_CELL) cell += cell.length < LONGEST_CELL ? sign : '…';
  };
  for (let i = 0; i < line.length && cells.length < MOST_CELLS; i++) {
    const sign = line[i]!;
    if (isQuoted) {
      if (sign !== '"') add(sign);
      else if (line[i + 1] === '"') {
        add('"');
        i++;
      } else isQuoted = false;
    } else if (sign === '"' && cell.trim() === '') {
      cell = '';
      isQuoted = true;
    } else if (sign === delimiter) {
      cells.push(trimmed(cell));
      cell = '';
    } else add(sign);
  }
  if (cells.length < MOST_CELLS) cells.push(trimmed(cell));
  return cells;
}

function trimmed(cell: string): string {
  const text = cell.trim();
  return text.length > LONGEST_CELL ? `${text.slice(0, LONGEST_CELL)}…` : text;
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d{1,3})?$/i;
const GROUPED: Readonly<Record<DecimalMark, RegExp>> = {
  '.': /^[+-]?\d{1,3}(?:[, \u00A0\u202F]\d{3})+(?:\.\d+)?$/,
  ',': /^[+-]?\d{1,3}(?:[. \u00A0\u202F]\d{3})+(?:,\d+)?$/,
};

/** A number with this decimal mark; groups of three figures may stand apart. */
export function numberOf(cell: string, decimal: DecimalMark): number | null {
  if (decimal === '.' && NUMBER.test(cell)) return finite(cell);
  let tidy = cell.replace('\u2212', '-');
  if (GROUPED[decimal].test(tidy))
    tidy = tidy.replaceAll(decimal === '.' ? /[, \u00A0\u202F]/g : /[. \u00A0\u202F]/g, '');
  if (decimal === ',') {
    if (tidy.includes('.')) return null;
    tidy = tidy.replace(',', '.');
  }
  return NUMBER.test(tidy) ? finite(tidy) : null;
}

function finite(text: string): number | null {
  const value = Number(text);
  return Number.isFinite(value) ? value : null;
}

/** A level of light: a number, with or without its unit behind it. */
export function luxOf(cell: string, decimal: DecimalMark): number | null {
  return numberOf(cell, decimal) ?? numberOf(cell.replace(/\s*(?:lx|lux)$/i, ''), decimal);
}

/** A time in seconds; where the zero is depends on the format, and only differences count. */
export function timeOf(cell: string, format: TimeFormat, decimal: DecimalMark): Seconds | null {
  switch (format) {
    case 'seconds':
      return scaled(numberOf(cell, decimal) ?? numberOf(cell.replace(/\s*s$/i, ''), decimal), 1);
    case 'milliseconds':
      return scaled(numberOf(cell.replace(/\s*ms$/i, ''), decimal), 1 / 1000);
    case 'minutes':
      return scaled(numberOf(cell.replace(/\s*min$/i, ''), decimal), 60);
    case 'clock':
      return clockOf(cell);
    case 'stopwatch': {
      const match = /^(\d{1,5}):([0-5]\d(?:[.,]\d{1,9})?)$/.exec(cell);
      return match ? Number(match[1]) * 60 + Number(match[2]!.replace(',', '.')) : null;
    }
    case 'iso':
    case 'day-first':
    case 'month-first':
      return dateOf(cell, format);
  }
}

/** Beyond every calendar; the difference of two times must stay a number. */
const MOST_SECONDS: Seconds = 1e12;

function scaled(value: number | null, factor: number): Seconds | null {
  const seconds = (value ?? Number.NaN) * factor;
  return Math.abs(seconds) <= MOST_SECONDS ? seconds : null;
}

/** Seconds since midnight (or since the start): h:mm:ss, h:mm, with fractions, with AM or PM. */
function clockOf(text: string): Seconds | null {
  const match = /^(\d{1,4}):([0-5]\d)(?::([0-5]\d(?:[.,]\d{1,9})?))?(?:\s*([ap])\.?m\.?)?$/i.exec(text);
  if (!match) return null;
  let hours = Number(match[1]);
  const half = match[4]?.toLowerCase();
  if (half !== undefined) {
    if (hours < 1 || hours > 12) return null;
    hours = (hours % 12) + (half === 'p' ? 12 : 0);
  }
  return hours * 3600 + Number(match[2]) * 60 + Number((match[3] ?? '0').replace(',', '.'));
}

const DATE: Readonly<Record<'iso' | 'day-first' | 'month-first', RegExp>> = {
  iso: /^(\d{4})([-/.]?)(\d{1,2})\2(\d{1,2})[T\s,]+(\S.*)$/i,
  'day-first': /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4})[T\s,]+(\S.*)$/i,
  'month-first': /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4})[T\s,]+(\S.*)$/i,
};

/** Seconds since 1970. A time without a zone counts as if it were in universal time: only differences matter. */
function dateOf(text: string, format: 'iso' | 'day-first' | 'month-first'): Seconds | null {
  const match = DATE[format].exec(text);
  if (!match) return null;
  const [first, second, third] = [Number(match[1]), Number(match[3]), Number(match[4])];
  const [year, month, day] =
    format === 'iso'
      ? [first, second, third]
      : format === 'day-first'
        ? [third, second, first]
        : [third, first, second];
  const days = Date.UTC(year, month - 1, day) / 1000;
  const date = new Date(days * 1000);
  if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day) return null;
  const rest = /^(.*?)\s*(?:(Z)|([+-])(\d\d):?(\d\d)?)?$/i.exec(match[5]!);
  const clock = clockOf(spelledClock(rest?.[1] ?? ''));
  if (!rest || clock === null || clock >= 86_400) return null;
  const zone = rest[3] ? Number(rest[4]) * 3600 + Number(rest[5] ?? 0) * 60 : 0;
  return days + clock - (rest[3] === '-' ? -zone : zone);
}

/** ISO's short form, 221503 for 22:15:03. */
function spelledClock(text: string): string {
  return text.replace(/^(\d\d)(\d\d)(\d\d(?:[.,]\d+)?)$/, '$1:$2:$3');
}
