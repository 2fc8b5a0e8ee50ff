/**
 * What can be wrong with a recording of light, and the sentences that say so. A row is named by its number in
 * the file, counted from 1 with every line, as an editor or a spreadsheet shows it.
 */
import { formatNumber } from '../quantity/format.ts';
import { spoken } from './spoken.ts';

export type LogColumn = 'time' | 'luxA' | 'luxB';

export type LogReason =
  /** The row has no such cell, or an empty one. */
  | 'missing'
  | 'unreadable'
  | 'negative'
  /** More light than the sun gives. */
  | 'too bright'
  /** The time of the row before once more. */
  | 'same time'
  /** Earlier than the row before. */
  | 'earlier'
  /** One time far ahead of the rows that follow it. */
  | 'ahead';

export interface LogProblem {
  readonly row: number;
  readonly column: LogColumn;
  /** The cell as it stands there, cut to 40 characters. */
  readonly read: string;
  readonly reason: LogReason;
}

export type LogRefusal =
  | { readonly kind: 'too large'; readonly most: number }
  | { readonly kind: 'too many rows'; readonly most: number }
  | { readonly kind: 'empty' }
  /** No column of times with a column of light beside it. */
  | { readonly kind: 'no columns' }
  /** Not one row could be read; the first problem tells why. */
  | { readonly kind: 'no rows'; readonly first: LogProblem | null };

const COLUMN: Readonly<Record<LogColumn, string>> = { time: 'time', luxA: 'light at A', luxB: 'light at B' };

const whole = (value: number): string => formatNumber(value, 6);

export const STRICT_HEADER = 'time_s,lux_a,lux_b';

export const lightLogWords = spoken('light log', {
  problem({ row, column, read, reason }: LogProblem): string {
    const shown = `“${read}”`;
    switch (reason) {
      case 'missing':
        return `Row ${whole(row)}: the ${COLUMN[column]} is missing.`;
      case 'unreadable':
        return column === 'time'
          ? `Row ${whole(row)}: read ${shown}, which is not a time of the chosen kind.`
          : `Row ${whole(row)}: read ${shown} as ${COLUMN[column]}, which is not a number of lux.`;
      case 'negative':
        return `Row ${whole(row)}: read ${shown} as ${COLUMN[column]}. Light is never below 0 lx.`;
      case 'too bright':
        return `Row ${whole(row)}: read ${shown} as ${COLUMN[column]}. The brightest sun gives about 130 000 lx.`;
      case 'same time':
        return `Row ${whole(row)}: the time ${shown} is that of the row before. Times must rise.`;
      case 'earlier':
        return `Row ${whole(row)}: the time ${shown} is earlier than the row before. Times must rise.`;
      case 'ahead':
        return `Row ${whole(row)}: the time ${shown} is later than the rows that follow. Times must rise.`;
    }
  },

  refusal(refusal: LogRefusal): string {
    switch (refusal.kind) {
      case 'too large':
        return `The recording holds more than ${whole(refusal.most)} characters. Cut it into parts.`;
      case 'too many rows':
        return `The recording holds more than ${whole(refusal.most)} rows. Cut it into parts, or keep every second row.`;
      case 'empty':
        return 'The recording is empty.';
      case 'no columns':
        return `No times with light beside them were found. Needed: a column of times and one or two of lux, such as ${STRICT_HEADER}.`;
      case 'no rows':
        return refusal.first === null
          ? 'The recording has no rows under its header.'
          : `Not one row could be read. ${lightLogWords.problem(refusal.first)}`;
    }
  },

  kept: (kept: number, dropped: number): string =>
    dropped === 0
      ? `All ${whole(kept)} rows read.`
      : `${whole(kept)} ${kept === 1 ? 'row' : 'rows'} read, ${whole(dropped)} left out.`,

  more: (count: number): string => `And ${whole(count)} more.`,
} as const);
