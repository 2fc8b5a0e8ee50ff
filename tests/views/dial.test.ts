/** Where the drawn slot of a trimmer points. */
import { expect, test } from 'vitest';
import { around, slotAngle } from '../../src/views/controls/dial-angles.ts';

test('one turn runs from lower left over the top to lower right', () => {
  expect(slotAngle(0, 1)).toBe(-135);
  expect(slotAngle(0.5, 1)).toBe(0);
  expect(slotAngle(1, 1)).toBe(135);
  expect(around(10, -135).x).toBeLessThan(60);
  expect(around(10, -135).y).toBeGreaterThan(60);
  expect(around(10, 0).y).toBe(50);
});

test('a trimmer of several turns goes round once a turn and ends apart from where it began', () => {
  expect(slotAngle(0, 25)).toBe(0);
  expect(slotAngle(0.5 / 25, 25)).toBeCloseTo(180, 9);
  expect(slotAngle(10.25 / 25, 25)).toBeCloseTo(90, 9);
  expect(slotAngle(1, 25)).toBe(360);
});
