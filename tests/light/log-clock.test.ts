/** The hour at which a recording begins, as its own times tell it. */
import { expect, test } from 'vitest';
import { startHourOf } from '../../src/light/log-clock.ts';
import { guessLog } from '../../src/light/log-guess.ts';

function hourOf(rows: readonly string[]): number | null {
  const text = rows.join('\n');
  const guess = guessLog(text);
  if (!guess.ok) throw new Error(guess.refusal.kind);
  return startHourOf(text, guess.choices);
}

test.each<[string, readonly string[], number | null]>([
  ['clock times', ['time,lux', '09:30:00,100', '09:31:00,110', '09:32:00,120'], 9.5],
  ['a date before the clock', ['time,lux', '2026-03-14T18:45:00,100', '2026-03-14T18:46:00,90'], 18.75],
  [
    'a zone behind it: the clock on the wall counts',
    ['time,lux', '2026-03-14T06:15:00+02:00,1', '2026-03-14T06:16:00+02:00,2'],
    6.25,
  ],
  ['universal time written with Z', ['time,lux', '2026-03-14T22:00:00Z,1', '2026-03-14T22:01:00Z,2'], 22],
  ['day first', ['Zeit;Lux', '14.03.2026 07:00:00;5,5', '14.03.2026 07:01:00;6,5'], 7],
  ['seconds since the start tell no hour', ['time_s,lux_a,lux_b', '0,100,90', '1,101,91'], null],
])('%s', (_title, rows, hour) => {
  const found = hourOf(rows);
  if (hour === null) expect(found).toBeNull();
  else expect(found).toBeCloseTo(hour, 9);
});

test('a first row that does not read is passed over', () => {
  expect(hourOf(['time,lux', 'soon,100', '10:00:00,100', '10:01:00,110', '10:02:00,120'])).toBeCloseTo(10, 9);
});
