/** The arithmetic under the controls: steps, drags, wheel and tracks. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  clampFraction,
  dragged,
  fractionAt,
  moved,
  moveForKey,
  stepped,
  stepSizes,
  type Track,
  valueAt,
  wheelSteps,
} from '../../src/views/controls/stepping.ts';

const one = stepSizes(1);
const press = (key: string, shift: boolean, from: number, sizes = one) => {
  const move = moveForKey(key, shift, sizes);
  return move === null ? null : moved(from, move);
};

describe('steps', () => {
  test('an arrow is 1 % of the travel, with Shift 0.1 %, a page key 10 %', () => {
    expect(press('ArrowUp', false, 0.5)).toBe(0.51);
    expect(press('ArrowRight', true, 0.5)).toBe(0.501);
    expect(press('ArrowDown', false, 0.5)).toBe(0.49);
    expect(press('ArrowLeft', true, 0.5)).toBe(0.499);
    expect(press('PageUp', false, 0.5)).toBe(0.6);
    expect(press('PageDown', false, 0.5)).toBe(0.4);
  });

  test('Home and End reach the exact ends, and a step at an end stays there', () => {
    expect(press('Home', false, 0.213)).toBe(0);
    expect(press('End', false, 0.213)).toBe(1);
    expect(press('ArrowUp', false, 1)).toBe(1);
    expect(press('PageDown', false, 0)).toBe(0);
  });

  test('other keys are left to the page', () => {
    for (const key of ['a', 'Tab', 'Escape', 'Enter', ' ']) expect(moveForKey(key, false, one)).toBeNull();
  });

  test('on 25 turns an arrow is a tenth of a turn and a page key a whole turn', () => {
    const many = stepSizes(25);
    expect(press('ArrowUp', false, 0, many)).toBe(1 / 250);
    expect(press('PageUp', false, 0, many)).toBe(1 / 25);
    expect(press('ArrowUp', true, 0, many)).toBe(1 / 2500);
  });

  test('a step from a typed value lands on the next grid point on that side', () => {
    // 10 kΩ on a 47 kΩ trimmer stands at 0.21276…
    expect(stepped(10 / 47, 0.01, 1)).toBe(0.22);
    expect(stepped(10 / 47, 0.01, -1)).toBe(0.21);
  });

  test('a hundred steps up from 0 pass through every hundredth exactly', () => {
    let at = 0;
    for (let n = 1; n <= 100; n++) {
      at = stepped(at, 0.01, 1);
      expect(at).toBe(n / 100);
    }
  });

  test('from anywhere, a step moves the asked way, by at most one grid width, onto the grid', () => {
    const size = fc.constantFrom(0.001, 0.01, 0.1, 1 / 25, 1 / 250);
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        size,
        fc.constantFrom(1, -1),
        (from, step, way) => {
          const to = stepped(from, step, way);
          const change = (to - from) * way;
          expect(change).toBeGreaterThanOrEqual(
            way > 0 && from === 1 ? 0 : way < 0 && from === 0 ? 0 : -1e-9,
          );
          expect(change).toBeLessThanOrEqual(step * (1 + 1e-5));
          expect(Math.abs(to / step - Math.round(to / step))).toBeLessThan(1e-6);
          if (from > 1e-5 && from < 1 - 1e-5) expect(to).not.toBe(from);
        },
      ),
      { seed: 11 },
    );
  });
});

describe('drag and wheel', () => {
  test('20 px upwards or to the right are a tenth of the travel, with Shift a hundredth', () => {
    expect(dragged(0.5, 0, 20, false)).toBe(0.6);
    expect(dragged(0.5, 20, 0, false)).toBe(0.6);
    expect(dragged(0.5, 0, -20, false)).toBe(0.4);
    expect(dragged(0.5, 0, 20, true)).toBe(0.51);
  });

  test('a drag stops at the ends', () => {
    expect(dragged(0.9, 500, 0, false)).toBe(1);
    expect(dragged(0.1, 0, -500, false)).toBe(0);
    expect(clampFraction(-0.2)).toBe(0);
  });

  test('small wheel movements add up to a step, upwards being more', () => {
    let left = 0;
    let steps = 0;
    for (let n = 0; n < 10; n++) {
      const next = wheelSteps(left, -12);
      left = next.leftOver;
      steps += next.steps;
    }
    expect(steps).toBe(2);
    expect(left).toBe(-20);
  });

  test('a turn the other way starts afresh', () => {
    expect(wheelSteps(-40, 50)).toEqual({ steps: -1, leftOver: 0 });
  });

  test('no wheel movement is ever lost or made up', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -300, max: 0 })), (turns) => {
        let left = 0;
        let steps = 0;
        for (const turn of turns) {
          const next = wheelSteps(left, turn);
          left = next.leftOver;
          steps += next.steps;
        }
        expect(left - steps * 50).toBe(turns.reduce((sum, turn) => sum + turn, 0));
      }),
      { seed: 12 },
    );
  });
});

describe('tracks', () => {
  const lamp: Track = { min: 10, max: 10_000, scale: 'log', offAtStart: true };
  const hand: Track = { min: 0, max: 1, scale: 'linear', offAtStart: false };

  test('equal ways on a logarithmic track are equal ratios', () => {
    expect(valueAt(1 / 3, lamp)).toBeCloseTo(100, 9);
    expect(valueAt(2 / 3, lamp)).toBeCloseTo(1000, 8);
    expect(valueAt(1, lamp)).toBe(10_000);
  });

  test('the start of a track with an off place is 0, of another its least value', () => {
    expect(valueAt(0, lamp)).toBe(0);
    expect(valueAt(0, { ...lamp, offAtStart: false })).toBe(10);
    expect(fractionAt(0, lamp)).toBe(0);
  });

  test('values beyond the track stand at its ends', () => {
    expect(fractionAt(50_000, lamp)).toBe(1);
    expect(fractionAt(3, lamp)).toBe(0);
    expect(fractionAt(1.2, hand)).toBe(1);
  });

  test('a value read back from its place is the same within rounding', () => {
    fc.assert(
      fc.property(fc.double({ min: 10, max: 10_000, noNaN: true }), (value) => {
        fc.pre(value > 10);
        expect(valueAt(fractionAt(value, lamp), lamp) / value).toBeCloseTo(1, 10);
      }),
      { seed: 13 },
    );
  });
});
