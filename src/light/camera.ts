/**
 * From the numbers of a camera picture to lux at two sensors. Plain arithmetic: nothing is kept, nothing is
 * sent. A camera sees how bright a surface looks, not how much light falls on it, so only ratios to one known
 * level mean anything; its own tone curve makes the sRGB decoding used here a first guess.
 * Decoding: IEC 61966-2-1 (sRGB). Weights: ITU-R BT.709, on linear light.
 */
import type { Fraction, Lux, Pair, Seconds, VoiceId } from '../quantity/units.ts';
import { pairOf, VOICES } from '../quantity/units.ts';

/** A rectangle on the picture, in shares of its width and height from the top left. */
export interface CameraRegion {
  readonly x: Fraction;
  readonly y: Fraction;
  readonly width: Fraction;
  readonly height: Fraction;
}

/** A on the left half of the picture as the camera sends it, B on the right. */
export const DEFAULT_REGIONS: Pair<CameraRegion> = {
  A: { x: 0.1, y: 0.3, width: 0.3, height: 0.4 },
  B: { x: 0.6, y: 0.3, width: 0.3, height: 0.4 },
};

/** Smallest side of a region: still about 48 pixels of a 160 × 120 picture. */
export const SMALLEST_SIDE: Fraction = 0.05;

/** The region shifted, kept whole inside the picture. */
export function moveRegion(region: CameraRegion, dx: Fraction, dy: Fraction): CameraRegion {
  return {
    ...region,
    x: between(0, region.x + dx, 1 - region.width),
    y: between(0, region.y + dy, 1 - region.height),
  };
}

/** The region made larger or smaller from its top left corner, which stays; it stops at the picture's edge. */
export function resizeRegion(region: CameraRegion, dWidth: Fraction, dHeight: Fraction): CameraRegion {
  return {
    ...region,
    width: between(SMALLEST_SIDE, region.width + dWidth, 1 - region.x),
    height: between(SMALLEST_SIDE, region.height + dHeight, 1 - region.y),
  };
}

/** Linear light 0…1 of an sRGB value 0…1 (IEC 61966-2-1). */
export function srgbToLinear(value: number): number {
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
}

const LINEAR = Float64Array.from({ length: 256 }, (_, code) => srgbToLinear(code / 255));

/** Mean luminance of a region, 0…1 of the picture's white: decoded first, averaged after. */
export function linearLuminance(
  rgba: Uint8ClampedArray,
  pictureWidth: number,
  pictureHeight: number,
  region: CameraRegion,
): number {
  let sum = 0;
  const count = eachPixel(rgba, pictureWidth, pictureHeight, region, (red, green, blue) => {
    sum += 0.2126 * LINEAR[red]! + 0.7152 * LINEAR[green]! + 0.0722 * LINEAR[blue]!;
  });
  return sum / count;
}

/** Codes at and beyond which a pixel says "at least this bright" or "at most this dark", no more. */
const CLIPPED = { bright: 250, dark: 2 } as const;

/** Shares of a region's pixels with a channel at the bright end, and with all three at the dark end. */
export function clippedShares(
  rgba: Uint8ClampedArray,
  pictureWidth: number,
  pictureHeight: number,
  region: CameraRegion,
): { readonly bright: Fraction; readonly dark: Fraction } {
  let bright = 0;
  let dark = 0;
  const count = eachPixel(rgba, pictureWidth, pictureHeight, region, (red, green, blue) => {
    const highest = Math.max(red, green, blue);
    if (highest >= CLIPPED.bright) bright += 1;
    if (highest <= CLIPPED.dark) dark += 1;
  });
  return { bright: bright / count, dark: dark / count };
}

/** What the camera said about its exposure: units of 100 µs (W3C Image Capture) and ISO; null = not told. */
export interface CameraExposure {
  readonly time: number | null;
  readonly iso: number | null;
}

/** One known level per sensor: this luminance was this many lux. */
export interface Calibration {
  readonly luminance: Pair<number>;
  readonly lux: Pair<Lux>;
  readonly exposure: CameraExposure;
  /** Assumed when the camera was switched on, or typed by a person with a meter. */
  readonly source: 'assumed' | 'typed';
}

/** A calibration, or none and why: the picture is too dark there, or the level typed is no usable lux. */
export type CalibrationResult =
  | { readonly calibration: Calibration; readonly reason: null }
  | { readonly calibration: null; readonly reason: 'dark' | 'lux'; readonly voice: VoiceId };

/** Below this (sRGB code 10) one code more or less is over 10 % of the light: no level to scale from. */
export const DARKEST_REFERENCE = LINEAR[10]!;

/** Full sun is about 100 000 lx; twice that is a slip of the keyboard. */
const BRIGHTEST_LUX: Lux = 200_000;

/** Lit level taken for the picture at switch-on when nobody says otherwise. */
const ASSUMED_LUX: Lux = 300;

const UNTOLD: CameraExposure = { time: null, iso: null };

/** Takes the picture as it is for the room's lit level. */
export function assumedCalibration(
  luminance: Pair<number>,
  lux: Lux = ASSUMED_LUX,
  exposure: CameraExposure = UNTOLD,
): CalibrationResult {
  return calibrate(luminance, { A: lux, B: lux }, exposure, 'assumed');
}

/** Takes the picture as it is for levels that somebody measured. */
export function typedCalibration(
  luminance: Pair<number>,
  lux: Pair<Lux>,
  exposure: CameraExposure = UNTOLD,
): CalibrationResult {
  return calibrate(luminance, lux, exposure, 'typed');
}

function calibrate(
  luminance: Pair<number>,
  lux: Pair<Lux>,
  exposure: CameraExposure,
  source: Calibration['source'],
): CalibrationResult {
  for (const voice of VOICES) {
    // Written so that a value that is no number is refused too.
    if (!(luminance[voice] >= DARKEST_REFERENCE)) return { calibration: null, reason: 'dark', voice };
    if (!(lux[voice] > 0 && lux[voice] <= BRIGHTEST_LUX)) return { calibration: null, reason: 'lux', voice };
  }
  return { calibration: { luminance, lux, exposure, source }, reason: null };
}

/**
 * Lux at each sensor, E = Eref·(Y/Yref)·(tref/t)·(ISOref/ISO). Exposure counts only where the camera told it
 * both times. A black picture is 0 lx. Expect ± 20 to 30 % with the exposure locked (common practice); with
 * an exposure that moves by itself and is not told, no meaning at all.
 */
export function luxFrom(
  calibration: Calibration,
  luminance: Pair<number>,
  exposure: CameraExposure = UNTOLD,
): Pair<Lux> {
  const reference = calibration.exposure;
  const scale = ratioOf(reference.time, exposure.time) * ratioOf(reference.iso, exposure.iso);
  return pairOf((voice) => {
    const ratio = luminance[voice] / calibration.luminance[voice];
    return ratio > 0 ? calibration.lux[voice] * ratio * scale : 0;
  });
}

function ratioOf(reference: number | null, now: number | null): number {
  return reference !== null && now !== null && reference > 0 && now > 0 ? reference / now : 1;
}

/** Both regions of one picture, and when. */
export interface LuminanceSample {
  readonly seconds: Seconds;
  readonly luminance: Pair<number>;
}

/** Frames that must agree, how closely, and how long to wait for them; from memory of common webcams. */
const SETTLING = { frames: 10, within: 0.03, giveUpSeconds: 2 } as const;

/**
 * Whether the camera's automatic exposure has come to rest, from the samples since it was opened: the last
 * ten frames agree within 3 % in both regions. A black picture never counts as rest, because cameras send
 * black frames while they wake up. After two seconds it gives up: the picture must be taken as it is.
 */
export function settlingOf(samples: readonly LuminanceSample[]): 'settling' | 'settled' | 'gave-up' {
  const first = samples[0];
  const last = samples.at(-1);
  if (first === undefined || last === undefined) return 'settling';
  const recent = samples.slice(-SETTLING.frames);
  const isAtRest = VOICES.every((voice) => {
    const levels = recent.map((sample) => sample.luminance[voice]);
    const lowest = Math.min(...levels);
    return lowest >= DARKEST_REFERENCE && Math.max(...levels) <= lowest * (1 + SETTLING.within);
  });
  if (recent.length === SETTLING.frames && isAtRest) return 'settled';
  return last.seconds - first.seconds >= SETTLING.giveUpSeconds ? 'gave-up' : 'settling';
}

/** Calls `visit` with the codes of every pixel of the region, at least one; returns how many there were. */
function eachPixel(
  rgba: Uint8ClampedArray,
  pictureWidth: number,
  pictureHeight: number,
  region: CameraRegion,
  visit: (red: number, green: number, blue: number) => void,
): number {
  const left = between(0, Math.round(region.x * pictureWidth), pictureWidth - 1);
  const top = between(0, Math.round(region.y * pictureHeight), pictureHeight - 1);
  const right = between(left + 1, Math.round((region.x + region.width) * pictureWidth), pictureWidth);
  const bottom = between(top + 1, Math.round((region.y + region.height) * pictureHeight), pictureHeight);
  for (let row = top; row < bottom; row += 1) {
    for (let column = left; column < right; column += 1) {
      const at = 4 * (row * pictureWidth + column);
      visit(rgba[at]!, rgba[at + 1]!, rgba[at + 2]!);
    }
  }
  return (right - left) * (bottom - top);
}

function between(low: number, value: number, high: number): number {
  return Math.max(low, Math.min(value, high));
}
