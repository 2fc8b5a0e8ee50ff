/** The hour of the clock at which a recording begins, where its times tell one. Hours 0…24. */
import { cellsOf, isRemark, linesOf, type TimeFormat, timeOf } from './log-cells.ts';
import type { LogChoices } from './log-guess.ts';
import type { Hours } from './sun.ts';

/** Times that say what the clock said; the others only say how long it has been. */
const OF_THE_CLOCK: readonly TimeFormat[] = ['clock', 'iso', 'day-first', 'month-first'];
const DAY = 86_400;

/** The first row that has a time. Null where the times begin at nothing, or no row reads. A zone is left as written. */
export function startHourOf(text: string, choices: LogChoices): Hours | null {
  const { header, delimiter, columns, timeFormat, decimal } = choices;
  if (!OF_THE_CLOCK.includes(timeFormat)) return null;
  for (const line of linesOf(text).slice(Math.max(0, header))) {
    if (isRemark(line)) continue;
    const cell = cellsOf(line, delimiter)[columns.time] ?? '';
    // Whatever the zone, the clock on the wall is the one written.
    const time = timeOf(cell.replace(/\s*(?:Z|[+-]\d\d:?(?:\d\d)?)$/i, ''), timeFormat, decimal);
    if (time !== null) return (((time % DAY) + DAY) % DAY) / 3600;
  }
  return null;
}
