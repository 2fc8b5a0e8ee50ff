/** Hours of the clock as people type them. */
import { expect, test } from 'vitest';
import { readHour } from '../../src/quantity/hour.ts';

test.each([
  ['14:30', 14.5],
  ['14.5', 14.5],
  ['14,5', 14.5],
  ['1430', 14.5],
  ['14h30', 14.5],
  ['2:30 pm', 14.5],
  ['2:30PM', 14.5],
  ['14.30', 14.5],
  ['9', 9],
  ['0', 0],
  ['24:00', 24],
  ['12 am', 0],
  ['12 pm', 12],
  [' 7:05 ', 7 + 5 / 60],
])('%s is hour %d', (text, hour) => {
  expect(readHour(text)).toBeCloseTo(hour, 12);
});

test.each(['', 'noon', '25', '24:30', '13 pm', '0 am', '14:60', '-3', '14:3'])('“%s” is no hour', (text) => {
  expect(readHour(text)).toBeNull();
});
