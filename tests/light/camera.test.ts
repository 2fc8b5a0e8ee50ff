import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  assumedCalibration,
  type Calibration,
  type CalibrationResult,
  type CameraRegion,
  clippedShares,
  DARKEST_REFERENCE,
  DEFAULT_REGIONS,
  type LuminanceSample,
  linearLuminance,
  luxFrom,
  moveRegion,
  resizeRegion,
  SMALLEST_SIDE,
  settlingOf,
  srgbToLinear,
  typedCalibration,
} from '../../src/light/camera.ts';
import { VOICES } from '../../src/quantity/units.ts';

const WHOLE: CameraRegion = { x: 0, y: 0, width: 1, height: 1 };

/** Evenly spread numbers, ends included; a plain double would nearly always be tiny. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 10_000 }).map((step) => min + ((max - min) * step) / 10_000);

/** A picture whose pixels are chosen by column and row. */
function picture(width: number, height: number, codes: (x: number, y: number) => readonly number[]) {
  const rgba = new Uint8ClampedArray(4 * width * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) rgba.set([...codes(x, y), 255], 4 * (y * width + x));
  }
  return rgba;
}

const plain = (...codes: number[]) => picture(4, 4, () => codes);
const lightOf = (code: number) => linearLuminance(plain(code, code, code), 4, 4, WHOLE);

describe('picture codes as light', () => {
  // IEC 61966-2-1 (sRGB), Y weights of ITU-R BT.709.
  test.each([
    ['ls:C1', 0, 0, 1e-7],
    ['ls:C1', 1, 0.0003035, 1e-7],
    ['ls:C1', 10, 0.0030353, 1e-7],
    ['ls:C1', 11, 0.0033465, 1e-7],
    ['ls:C2', 64, 0.0512695, 1e-6],
    ['ls:C2', 128, 0.2158605, 1e-6],
    ['ls:C2', 188, 0.5028865, 1e-6],
    ['ls:C2', 200, 0.5775804, 1e-6],
    ['ls:C2', 255, 1, 1e-6],
  ])('%s: a grey of code %d is %d of the light', (_, code, light, allowance) => {
    expect(Math.abs(lightOf(code) - light)).toBeLessThanOrEqual(allowance);
  });

  test.each([
    ['ls:C3', 0.5, 0.2140411, 1e-6],
    ['ls:C3', 0.04045, 0.0031308, 1e-6],
    // The published encodings read backwards; six printed digits, steepest slope 2.3.
    ['ls:C4', 0.01292, 0.001, 1e-6],
    ['ls:C4', 0.099853, 0.01, 1e-6],
    ['ls:C4', 0.461356, 0.18, 1e-6],
    ['ls:C4', 0.735357, 0.5, 1e-6],
    ['ls:C4', 0.954687, 0.9, 1.2e-6],
  ])('%s: the value %d is %d of the light', (_, value, light, allowance) => {
    expect(Math.abs(srgbToLinear(value) - light)).toBeLessThanOrEqual(allowance);
  });

  test.each([
    ['ls:C5', [255, 128, 0], 0.366983],
    ['ls:C5', [200, 180, 150], 0.471239],
  ])('%s: the colour %j has luminance %d', (_, codes, light) => {
    expect(Math.abs(linearLuminance(plain(...codes), 4, 4, WHOLE) - light)).toBeLessThanOrEqual(1e-5);
  });

  test('ls:C6: code 128 is 4.210 times the light of code 64, not twice', () => {
    expect(Math.abs(lightOf(128) / lightOf(64) - 4.21)).toBeLessThanOrEqual(0.001);
  });

  test('ls:C7: one step is 7.2 % of the light at code 20 and 1.70 % at code 128', () => {
    expect(Math.abs(lightOf(21) / lightOf(20) - 1.072)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(lightOf(129) / lightOf(128) - 1.017)).toBeLessThanOrEqual(0.001);
  });
});

describe('a region of the picture', () => {
  const halves = picture(160, 120, (x) => (x < 80 ? [200, 200, 200] : [30, 30, 30]));

  test('reads its own half only', () => {
    expect(linearLuminance(halves, 160, 120, DEFAULT_REGIONS.A)).toBeCloseTo(srgbToLinear(200 / 255), 12);
    expect(linearLuminance(halves, 160, 120, DEFAULT_REGIONS.B)).toBeCloseTo(srgbToLinear(30 / 255), 12);
  });

  test('averages light, not codes', () => {
    const mean = linearLuminance(halves, 160, 120, WHOLE);
    expect(mean).toBeCloseTo((srgbToLinear(200 / 255) + srgbToLinear(30 / 255)) / 2, 12);
  });

  test('takes in just the pixels inside its edges', () => {
    const spot = picture(160, 120, (x, y) =>
      x >= 40 && x < 80 && y >= 30 && y < 90 ? [255, 255, 255] : [0, 0, 0],
    );
    const exact = { x: 0.25, y: 0.25, width: 0.25, height: 0.5 };
    expect(linearLuminance(spot, 160, 120, exact)).toBeCloseTo(1, 12);
    expect(linearLuminance(spot, 160, 120, moveRegion(exact, 0.125, 0))).toBeCloseTo(0.5, 12);
    expect(linearLuminance(spot, 160, 120, moveRegion(exact, 0, 0.25))).toBeCloseTo(0.5, 12);
  });

  test('smaller than a pixel still reads one', () => {
    expect(linearLuminance(plain(255, 255, 255), 4, 4, { x: 1, y: 1, width: 0, height: 0 })).toBeCloseTo(
      1,
      12,
    );
  });

  test('tells how much of it is at the bright and at the dark end', () => {
    const mixed = picture(10, 1, (x) =>
      x < 3 ? [250, 0, 0] : x < 5 ? [2, 2, 2] : x < 7 ? [3, 0, 0] : [249, 9, 9],
    );
    const shares = clippedShares(mixed, 10, 1, WHOLE);
    expect(shares.bright).toBeCloseTo(0.3, 12);
    expect(shares.dark).toBeCloseTo(0.2, 12);
  });

  test('stays inside the picture and large enough to see, however it is pushed and pulled', () => {
    const push = fc.record({
      kind: fc.constantFrom('move', 'resize'),
      x: evenly(-1, 1),
      y: evenly(-1, 1),
    });
    fc.assert(
      fc.property(fc.constantFrom(...VOICES), fc.array(push, { maxLength: 20 }), (voice, pushes) => {
        const region = pushes.reduce(
          (now, { kind, x, y }) => (kind === 'move' ? moveRegion(now, x, y) : resizeRegion(now, x, y)),
          DEFAULT_REGIONS[voice],
        );
        for (const [start, side] of [
          [region.x, region.width],
          [region.y, region.height],
        ] as const) {
          expect(start).toBeGreaterThanOrEqual(0);
          expect(side).toBeGreaterThanOrEqual(SMALLEST_SIDE);
          expect(start + side).toBeLessThanOrEqual(1 + 1e-12);
        }
      }),
    );
  });

  test('moves and grows by what is asked while there is room', () => {
    const moved = moveRegion(DEFAULT_REGIONS.A, 0.1, -0.2);
    expect(moved.x).toBeCloseTo(0.2, 12);
    expect(moved.y).toBeCloseTo(0.1, 12);
    expect(moved.width).toBe(DEFAULT_REGIONS.A.width);
    const grown = resizeRegion(DEFAULT_REGIONS.A, 0.1, -0.1);
    expect(grown.width).toBeCloseTo(0.4, 12);
    expect(grown.height).toBeCloseTo(0.3, 12);
    expect(grown.x).toBe(DEFAULT_REGIONS.A.x);
  });
});

function accepted(result: CalibrationResult): Calibration {
  if (result.calibration === null) throw new Error(`refused: ${result.reason}`);
  return result.calibration;
}

describe('from luminance to lux', () => {
  test('ls:C10: half the picture at half the exposure time is the same light', () => {
    const before = { time: 100, iso: 100 };
    const now = { time: 50, iso: 100 };
    const calibration = accepted(typedCalibration({ A: 0.2, B: 0.2 }, { A: 300, B: 300 }, before));
    expect(luxFrom(calibration, { A: 0.1, B: 0.1 }, now)).toEqual({ A: 300, B: 300 });
  });

  test('twice the ISO halves what the same picture means', () => {
    const calibration = accepted(assumedCalibration({ A: 0.2, B: 0.2 }, 300, { time: null, iso: 100 }));
    expect(luxFrom(calibration, { A: 0.2, B: 0.2 }, { time: null, iso: 200 }).A).toBeCloseTo(150, 9);
  });

  test('an exposure the camera does not tell changes nothing', () => {
    const calibration = accepted(assumedCalibration({ A: 0.2, B: 0.4 }, 300, { time: 100, iso: null }));
    expect(luxFrom(calibration, { A: 0.1, B: 0.4 }, { time: null, iso: 400 })).toEqual({ A: 150, B: 300 });
  });

  test('the picture at switch-on counts as 300 lx at both sensors, and says that this is assumed', () => {
    const calibration = accepted(assumedCalibration({ A: 0.5, B: 0.2 }));
    expect(calibration.source).toBe('assumed');
    expect(luxFrom(calibration, { A: 0.5, B: 0.2 })).toEqual({ A: 300, B: 300 });
    expect(luxFrom(calibration, { A: 0.25, B: 0.02 }).A).toBeCloseTo(150, 9);
    expect(luxFrom(calibration, { A: 0.25, B: 0.02 }).B).toBeCloseTo(30, 9);
  });

  test('typed levels may differ between the sensors', () => {
    const calibration = accepted(typedCalibration({ A: 0.5, B: 0.5 }, { A: 120, B: 480 }));
    expect(calibration.source).toBe('typed');
    expect(luxFrom(calibration, { A: 0.25, B: 0.25 })).toEqual({ A: 60, B: 240 });
  });

  test('a black picture is 0 lx', () => {
    const calibration = accepted(assumedCalibration({ A: 0.5, B: 0.5 }));
    expect(luxFrom(calibration, { A: 0, B: 0 })).toEqual({ A: 0, B: 0 });
  });

  test('a picture too dark to scale from is refused, and the sensor named', () => {
    expect(assumedCalibration({ A: 0, B: 0.5 })).toEqual({ calibration: null, reason: 'dark', voice: 'A' });
    const justBelow = DARKEST_REFERENCE * 0.999;
    expect(assumedCalibration({ A: 0.5, B: justBelow })).toMatchObject({ reason: 'dark', voice: 'B' });
    expect(assumedCalibration({ A: Number.NaN, B: 0.5 })).toMatchObject({ reason: 'dark', voice: 'A' });
    expect(assumedCalibration({ A: 0.5, B: DARKEST_REFERENCE }).reason).toBeNull();
  });

  test.each([0, -5, Number.NaN, Number.POSITIVE_INFINITY, 200_001])('a level of %d lx is refused', (lux) => {
    const result = typedCalibration({ A: 0.5, B: 0.5 }, { A: 300, B: lux });
    expect(result).toEqual({ calibration: null, reason: 'lux', voice: 'B' });
  });

  test('any picture on any accepted level is finite and not below zero', () => {
    const bright = evenly(DARKEST_REFERENCE, 1);
    const any = evenly(0, 1);
    fc.assert(
      fc.property(
        fc.record({ A: bright, B: bright }),
        fc.record({ A: any, B: any }),
        evenly(1, 200_000),
        (reference, now, lux) => {
          const calibration = accepted(assumedCalibration(reference, lux));
          for (const voice of VOICES) {
            const found = luxFrom(calibration, now)[voice];
            expect(found >= 0 && Number.isFinite(found)).toBe(true);
          }
        },
      ),
    );
  });
});

describe('waiting for the exposure to come to rest', () => {
  const frames = (count: number, level: (index: number) => number): LuminanceSample[] =>
    Array.from({ length: count }, (_, index) => ({
      seconds: 7 + index / 30,
      luminance: { A: level(index), B: 0.3 },
    }));

  test('is still settling with nothing seen, or too little', () => {
    expect(settlingOf([])).toBe('settling');
    expect(settlingOf(frames(9, () => 0.2))).toBe('settling');
  });

  test('has settled when ten frames agree within 3 %', () => {
    expect(settlingOf(frames(10, (index) => 0.2 + (index % 2) * 0.005))).toBe('settled');
  });

  test('is still settling while either region drifts', () => {
    expect(settlingOf(frames(20, (index) => 0.2 * 0.99 ** index))).toBe('settling');
    const swapped = frames(20, (index) => 0.2 * 0.99 ** index).map(({ seconds, luminance }) => ({
      seconds,
      luminance: { A: luminance.B, B: luminance.A },
    }));
    expect(settlingOf(swapped)).toBe('settling');
  });

  test('forgets the drift once it has stopped', () => {
    expect(settlingOf(frames(30, (index) => Math.max(0.2, 0.9 - index * 0.05)))).toBe('settled');
  });

  test('does not take the black frames of a waking camera for rest', () => {
    expect(settlingOf(frames(20, () => 0))).toBe('settling');
  });

  test('gives up after two seconds', () => {
    const restless = (index: number) => 0.2 + (index % 2) * 0.1;
    expect(settlingOf(frames(60, restless))).toBe('settling');
    expect(settlingOf(frames(62, restless))).toBe('gave-up');
  });
});
