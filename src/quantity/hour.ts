/** Reads an hour of the clock as people write it. */

const CLOCK = /^(\d{1,2})(?:[:.h]?([0-5]\d)?)?\s*(am|pm|a\.m\.|p\.m\.)?$/i;
const DECIMAL = /^(\d{1,2})[.,](\d{1,4})$/;

/**
 * `14:30`, `1430`, `14h30`, `2:30 pm`, `14`, and `14.5` or `14,5` for half past two. Hours 0…24; null for anything else.
 * `14.30` is half past two, too: two figures behind a point below 60 are minutes, as much of Europe writes them.
 */
export function readHour(text: string): number | null {
  const tidy = text.trim().replaceAll(/\s+/g, ' ');
  const clock = CLOCK.exec(tidy);
  if (clock) {
    const half = clock[3]?.[0]?.toLowerCase();
    const written = Number(clock[1]);
    if (half !== undefined && (written < 1 || written > 12)) return null;
    const hours = half === undefined ? written : (written % 12) + (half === 'p' ? 12 : 0);
    return within(hours + Number(clock[2] ?? 0) / 60);
  }
  const decimal = DECIMAL.exec(tidy);
  return decimal ? within(Number(`${decimal[1]}.${decimal[2]}`)) : null;
}

const within = (hour: number): number | null => (hour >= 0 && hour <= 24 ? hour : null);
