/** The slowed tone's place on its drawn cycles, and values that are shown as their mean. */
import { expect, test } from 'vitest';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { DEFAULT_DESIGN } from '../../src/design/defaults.ts';
import { firstCyclePoints, type VoicePicture } from '../../src/lesson/picture.ts';
import { luxAtPlace } from '../../src/views/plots/axis-place.ts';
import { placeOn, SLOW_CYCLES, SlowClock } from '../../src/views/plots/slow-cycle.ts';
import { Steadied } from '../../src/views/plots/steadied.ts';

const { astables, voices } = instrumentOf(DEFAULT_DESIGN);
const points = firstCyclePoints(astables.A, SLOW_CYCLES);
const { cycle } = voices.A;
const period = cycle.highSeconds + cycle.lowSeconds;
const whole = cycle.firstHighSeconds + cycle.lowSeconds + 2 * period;

test('the slowed voice begins with its longer first swing and then goes round its steady cycle', () => {
  expect(placeOn(points, 0)?.high).toBe(true);
  expect(placeOn(points, 0.99 * cycle.firstHighSeconds)?.high).toBe(true);
  expect(placeOn(points, 1.01 * cycle.firstHighSeconds)?.high).toBe(false);
  for (const rounds of [0, 1, 7]) {
    const high = placeOn(points, whole + rounds * period + 0.5 * cycle.highSeconds);
    const low = placeOn(points, whole + rounds * period + cycle.highSeconds + 0.5 * cycle.lowSeconds);
    expect([high?.high, low?.high]).toEqual([true, false]);
    // The capacitor swings between a third and two thirds of the supply.
    for (const point of [high!, low!]) {
      expect(point.volts).toBeGreaterThan(astables.A.lowerVolts);
      expect(point.volts).toBeLessThan(astables.A.upperVolts);
    }
  }
});

test('its clock runs a thousand times slower, stands while paused, steps by a twelfth, and starts anew at a release', () => {
  const clock = new SlowClock();
  expect(clock.next(0, true, true, 1000)).toBe(0);
  expect(clock.next(2, true, true, 1000)).toBeCloseTo(2e-3, 12);
  expect(clock.next(5, true, false, 1000)).toBeCloseTo(2e-3, 12);
  clock.nudge(1 / period);
  expect(clock.next(6, true, false, 1000)).toBeCloseTo(2e-3 + period / 12, 12);
  expect(clock.next(7, false, true, 1000)).toBeNull();
  expect(clock.next(8, true, true, 1000)).toBe(0);
});

test('while the light ripples, values are shown as their mean; once it is steady, as they are', () => {
  const steadied = new Steadied();
  const at = (lux: number) => ({ lux, ohms: 1e5 / lux, volts: { node: lux / 100 } }) as VoicePicture;
  expect(steadied.next(0, at(100), true).lux).toBe(100);
  let last = at(100);
  for (let i = 1; i <= 600; i++) last = steadied.next(i / 30, at(i % 2 === 0 ? 150 : 50), true);
  expect(last.lux).toBeGreaterThan(95);
  expect(last.lux).toBeLessThan(105);
  expect(steadied.next(21, at(300), false).lux).toBe(300);
});

test('a press on the light axis gives the light that is drawn there', () => {
  // Ends and middle of a logarithmic line from 0.1 lx to 130 000 lx, drawn 10 px from both sides.
  expect(luxAtPlace(10, 620)).toBeCloseTo(0.1, 10);
  expect(luxAtPlace(610, 620)).toBeCloseTo(130_000, 4);
  expect(luxAtPlace(310, 620)).toBeCloseTo(Math.sqrt(0.1 * 130_000), 6);
  expect(luxAtPlace(-50, 620)).toBeCloseTo(0.1, 10);
});
