import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  HAND_RADIUS,
  illuminanceFrom,
  lampLeft,
  shadowOf,
  skyLeft,
  tubeBlocked,
  tubeCutOff,
} from '../../src/light/hand.ts';

const degrees = (angle: number) => (angle * Math.PI) / 180;
const within = (value: number, expected: number, share: number) =>
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(share * expected);

/** Evenly spread numbers, ends included; a plain double would nearly always be tiny. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 10_000 }).map((step) => min + ((max - min) * step) / 10_000);

describe('a small lamp', () => {
  // The inverse-square law and the cosine law (photometry; ls:L1, L2, L5).
  test.each([
    ['ls:L1', 1, 1, 0, 1],
    ['ls:L1', 1, 0.3, 0, 11.111],
    ['ls:L1', 1, 0.1, 0, 100],
    ['ls:L2', 5, 0.2, 0, 125],
    ['ls:L5', 100, 1, 60, 50],
  ])('%s: %d cd at %d m tilted by %d degrees gives %d lx', (_, candela, distance, tilt, lux) => {
    within(illuminanceFrom(candela, distance, degrees(tilt)), lux, 0.001);
  });

  test('from behind the sensor it gives nothing', () => {
    expect(illuminanceFrom(100, 1, degrees(120))).toBe(0);
  });
});

describe('a hand under an even sky', () => {
  // Uniform half sphere, cosine sensor, disc straight above: left = z²/(z² + R²) (ls:L13, L14).
  test.each([
    ['ls:L13', 0.06, 0.02, 0.1],
    ['ls:L13', 0.06, 0.05, 0.4098],
    ['ls:L13', 0.06, 0.1, 0.7353],
    ['ls:L13', 0.06, 0.2, 0.9174],
    ['ls:L13', 0.06, 0.3, 0.9615],
    ['ls:L13', 0.06, 0.5, 0.9858],
    ['ls:L14', 0.04, 0.05, 0.6098],
    ['ls:L14', 0.04, 0.1, 0.8621],
  ])('%s: radius %d m at %d m leaves %d', (_, radius, height, left) => {
    within(skyLeft(radius, height, 0), left, 0.001);
  });

  test('ls:L22: on a cell of slope 0.7 it raises the resistance 1.240 times at 10 cm and 1.867 at 5 cm', () => {
    within(skyLeft(0.06, 0.1, 0) ** -0.7, 1.24, 0.001);
    within(skyLeft(0.06, 0.05, 0) ** -0.7, 1.867, 0.001);
  });

  test.each([
    [0.05, 0.03],
    [0.05, 0.06],
    [0.1, 0.12],
    [0.02, 0.24],
  ])('%d m up and %d m aside it takes what adding up the disc piece by piece gives', (height, offset) => {
    // E/E0 of a patch dA of the disc: cos·cos·dA/(π·r²) with both cosines z/r.
    const steps = 400;
    let blocked = 0;
    for (let ring = 0; ring < steps; ring += 1) {
      const radius = ((ring + 0.5) / steps) * HAND_RADIUS;
      for (let turn = 0; turn < steps; turn += 1) {
        const angle = ((turn + 0.5) / steps) * 2 * Math.PI;
        const x = offset + radius * Math.cos(angle);
        const y = radius * Math.sin(angle);
        const patch = ((radius * HAND_RADIUS) / steps) * ((2 * Math.PI) / steps);
        blocked += (height ** 2 * patch) / (Math.PI * (height ** 2 + x ** 2 + y ** 2) ** 2);
      }
    }
    expect(skyLeft(HAND_RADIUS, height, offset)).toBeCloseTo(1 - blocked, 5);
  });

  test('lying on the table it takes all under it, half at its edge, nothing beside it', () => {
    expect(skyLeft(0.06, 0, 0.05)).toBeCloseTo(0, 12);
    expect(skyLeft(0.06, 0, 0.06)).toBe(0.5);
    expect(skyLeft(0.06, 0, 0.07)).toBeCloseTo(1, 12);
  });

  test('nearer sideways never leaves more light', () => {
    fc.assert(
      fc.property(evenly(0.001, 1), evenly(0, 1), evenly(0, 1), (height, one, other) => {
        const near = skyLeft(HAND_RADIUS, height, Math.min(one, other));
        const far = skyLeft(HAND_RADIUS, height, Math.max(one, other));
        expect(near).toBeGreaterThanOrEqual(0);
        expect(far).toBeLessThanOrEqual(1);
        expect(near).toBeLessThanOrEqual(far + 1e-12);
      }),
    );
  });
});

describe('the shadow of a hand under a lamp of some size', () => {
  // Similar triangles: U = (W·s − D·z)/(s − z), P = (W·s + D·z)/(s − z), edge = D·z/(s − z).
  test.each([
    ['ls:L15', 0.06, 2, 0.1, 86.3, 92.6, 3.16],
    ['ls:L16', 0.6, 2, 0.1, 57.9, 121.1, 31.6],
    ['ls:L18', 0.005, 0.3, 0.05, 101, null, 1.0],
  ])(
    '%s: lamp %d m across at %d m, hand %d m up',
    (_, lampDiameter, lampDistance, height, umbra, outer, edge) => {
      const shadow = shadowOf({ lampDiameter, lampDistance, handWidth: 0.085, height });
      expect(Math.abs(shadow.umbra * 1000 - umbra)).toBeLessThanOrEqual(0.1);
      expect(Math.abs(shadow.softEdge * 1000 - edge)).toBeLessThanOrEqual(0.1);
      if (outer !== null) expect(Math.abs(shadow.outer * 1000 - outer)).toBeLessThanOrEqual(0.1);
    },
  );

  test('ends where the sensor begins to see the lamp, and where it sees it whole', () => {
    const scene = { lampDiameter: 0.06, lampDistance: 0.6, height: 0.1 };
    const shadow = shadowOf({ ...scene, handWidth: 2 * HAND_RADIUS });
    const leftAt = (place: number) =>
      lampLeft({ ...scene, handRadius: HAND_RADIUS, offset: -place, lampOffset: -place });
    expect(leftAt(shadow.umbra / 2 - 1e-6)).toBe(0);
    expect(leftAt(shadow.umbra / 2 + 1e-4)).toBeGreaterThan(0);
    expect(leftAt(shadow.outer / 2 - 1e-4)).toBeLessThan(1);
    expect(leftAt(shadow.outer / 2 + 1e-6)).toBe(1);
  });

  test('has no full shadow once the lamp looks larger than the hand', () => {
    expect(shadowOf({ lampDiameter: 0.6, lampDistance: 1, handWidth: 0.085, height: 0.2 }).umbra).toBe(0);
    const left = lampLeft({ handRadius: 0.06, height: 0.5, offset: 0, lampDiameter: 0.6, lampDistance: 1 });
    // The hand covers a disc of 0.12 m radius of the lamp's 0.30 m.
    expect(left).toBeCloseTo(1 - 0.16, 12);
  });
});

describe('the part of a lamp seen past a hand', () => {
  test('agrees with counting points on the lamp', () => {
    const shade = { handRadius: 0.06, height: 0.15, offset: 0.07, lampDiameter: 0.1, lampDistance: 0.5 };
    const lampOffset = 0.03;
    const steps = 600;
    let seen = 0;
    let all = 0;
    for (let row = 0; row < steps; row += 1) {
      for (let column = 0; column < steps; column += 1) {
        const x = ((column + 0.5) / steps - 0.5) * shade.lampDiameter;
        const y = ((row + 0.5) / steps - 0.5) * shade.lampDiameter;
        if (Math.hypot(x, y) > shade.lampDiameter / 2) continue;
        all += 1;
        // Where the straight line from the sensor to this point passes the hand's height.
        const part = shade.height / shade.lampDistance;
        const distance = Math.hypot((lampOffset + x) * part - shade.offset, y * part);
        if (distance > shade.handRadius) seen += 1;
      }
    }
    const left = lampLeft({ ...shade, lampOffset });
    expect(left).toBeGreaterThan(0.1);
    expect(left).toBeLessThan(0.9);
    expect(Math.abs(left - seen / all)).toBeLessThan(1e-3);
  });

  test('is all or nothing for a point lamp', () => {
    const shade = { handRadius: 0.06, height: 0.1, lampDiameter: 0, lampDistance: 1 };
    expect(lampLeft({ ...shade, offset: 0.0599 })).toBe(0);
    expect(lampLeft({ ...shade, offset: 0.0601 })).toBe(1);
  });

  test('is whole for a hand above the lamp', () => {
    expect(
      lampLeft({ handRadius: 0.06, height: 0.7, offset: 0, lampDiameter: 0.06, lampDistance: 0.6 }),
    ).toBe(1);
  });

  test('never grows as the hand comes nearer, and stays a share', () => {
    fc.assert(
      fc.property(
        evenly(0, 1),
        evenly(0, 1),
        evenly(0, 0.5),
        evenly(0.1, 2),
        evenly(0, 1),
        (one, other, lampDiameter, lampDistance, part) => {
          const shade = { handRadius: 0.06, height: part * lampDistance, lampDiameter, lampDistance };
          const near = lampLeft({ ...shade, offset: Math.min(one, other) });
          const far = lampLeft({ ...shade, offset: Math.max(one, other) });
          expect(near).toBeGreaterThanOrEqual(0);
          expect(far).toBeLessThanOrEqual(1);
          expect(near).toBeLessThanOrEqual(far + 1e-7);
        },
      ),
    );
  });
});

describe('a sensor in a tube', () => {
  test.each([
    ['ls:L20', 5, 45.0],
    ['ls:L20', 10, 26.57],
    ['ls:L20', 20, 14.04],
  ])('%s: a bore of 2.5 mm radius and %d mm depth cuts off at %d degrees', (_, depth, angle) => {
    const found = (tubeCutOff(0.0025, depth / 1000) * 180) / Math.PI;
    expect(Math.abs(found - angle)).toBeLessThanOrEqual(0.05);
  });

  test('ls:L21: with a half angle of 30 degrees a hand blocks all up to 0.1039 m and 33 % at 0.20 m', () => {
    expect(tubeBlocked(degrees(30), 0.06, 0.1039)).toBe(1);
    expect(tubeBlocked(degrees(30), 0.06, 0.1045)).toBeLessThan(1);
    within(tubeBlocked(degrees(30), 0.06, 0.2), 0.33, 0.005);
  });

  test('ls:L21: a bare sensor loses 8.3 % at 0.20 m', () => {
    within(1 - skyLeft(0.06, 0.2, 0), 0.083, 0.006);
  });
});
