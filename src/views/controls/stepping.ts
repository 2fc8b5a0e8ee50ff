/**
 * The arithmetic of moving a control: which key means which step, steps that land on a grid, straight-line drags,
 * wheel turns, and the mapping between a value and its place on a track. Travel is always a fraction 0…1.
 */
import type { Fraction } from '../../quantity/units.ts';

/** How far the three kinds of step go, as fractions of the whole travel. */
export interface StepSizes {
  readonly fine: Fraction;
  readonly normal: Fraction;
  readonly coarse: Fraction;
}

/** What a key asks for. */
export type KeyMove =
  | { readonly kind: 'step'; readonly size: Fraction; readonly direction: 1 | -1 }
  | { readonly kind: 'to'; readonly fraction: Fraction };

/** A drag of this many px along one axis is the full travel. */
const FULL_DRAG_PIXELS = 200;
/** Wheel or touch-pad travel that makes one step; less is kept until it adds up. */
const WHEEL_PIXELS = 50;

/** Steps for a part of so many turns: one turn 1 %, 0.1 %, 10 %; several turns a tenth, a hundredth and a whole turn. */
export function stepSizes(turns: number): StepSizes {
  return turns > 1
    ? { fine: 0.01 / turns, normal: 0.1 / turns, coarse: 1 / turns }
    : { fine: 0.001, normal: 0.01, coarse: 0.1 };
}

export function clampFraction(fraction: number): Fraction {
  return Math.min(1, Math.max(0, fraction));
}

/** What a key does to a range, or null when the key is none of ours. */
export function moveForKey(key: string, shift: boolean, sizes: StepSizes): KeyMove | null {
  const size = shift ? sizes.fine : sizes.normal;
  switch (key) {
    case 'ArrowUp':
    case 'ArrowRight':
      return { kind: 'step', size, direction: 1 };
    case 'ArrowDown':
    case 'ArrowLeft':
      return { kind: 'step', size, direction: -1 };
    case 'PageUp':
      return { kind: 'step', size: sizes.coarse, direction: 1 };
    case 'PageDown':
      return { kind: 'step', size: sizes.coarse, direction: -1 };
    case 'Home':
      return { kind: 'to', fraction: 0 };
    case 'End':
      return { kind: 'to', fraction: 1 };
    default:
      return null;
  }
}

/**
 * The next point of the grid of `size` beyond `fraction` in a direction. Starting between two points it goes to the
 * nearer one on that side, so that steps never carry an odd remainder along. Held inside 0…1.
 */
export function stepped(fraction: Fraction, size: Fraction, direction: 1 | -1): Fraction {
  const points = 1 / size;
  // Where the count is whole but for rounding, use it whole, so that 30 steps of 1 % give exactly 0.3.
  const count = Math.abs(points - Math.round(points)) < 1e-6 ? Math.round(points) : points;
  const here = fraction * count;
  const slack = 1e-6;
  const index = direction > 0 ? Math.floor(here + slack) + 1 : Math.ceil(here - slack) - 1;
  return clampFraction(index / count);
}

export function moved(fraction: Fraction, move: KeyMove): Fraction {
  return move.kind === 'to' ? move.fraction : stepped(fraction, move.size, move.direction);
}

/** Where a drag leads: px to the right and upwards add, 200 px being the full travel; fine is ten times slower. */
export function dragged(fraction: Fraction, right: number, up: number, fine: boolean): Fraction {
  const travel = (right + up) / FULL_DRAG_PIXELS;
  // A millionth of the travel is finer than any hand; beyond it lies only binary dust, which would be saved and shown.
  return clampFraction(Math.round((fraction + (fine ? travel / 10 : travel)) * 1e6) / 1e6);
}

/** Adds a wheel event's px (down positive) to what was left over; steps are counted upwards. */
export function wheelSteps(
  leftOver: number,
  pixels: number,
): { readonly steps: number; readonly leftOver: number } {
  // A change of direction starts afresh, or the first notch back would be swallowed.
  const total = Math.sign(leftOver) === -Math.sign(pixels) ? pixels : leftOver + pixels;
  const whole = Math.trunc(total / WHEEL_PIXELS);
  return { steps: whole === 0 ? 0 : -whole, leftOver: total - whole * WHEEL_PIXELS };
}

/** How a track's places stand for values. */
export interface Track {
  readonly min: number;
  readonly max: number;
  readonly scale: 'log' | 'linear';
  /** The very start of the track means 0 (off) instead of `min`; for log tracks, which cannot reach 0. */
  readonly offAtStart: boolean;
}

/** The value at a place of the track, in the value's own unit. */
export function valueAt(fraction: Fraction, track: Track): number {
  const place = clampFraction(fraction);
  if (track.offAtStart && place === 0) return 0;
  if (place === 1) return track.max;
  if (track.scale === 'linear') return track.min + place * (track.max - track.min);
  return track.min * (track.max / track.min) ** place;
}

/** The place of a value on the track, 0…1; values beyond the ends stand at the ends. */
export function fractionAt(value: number, track: Track): Fraction {
  if (!(value > track.min)) return 0;
  if (track.scale === 'linear') return clampFraction((value - track.min) / (track.max - track.min));
  return clampFraction(Math.log(value / track.min) / Math.log(track.max / track.min));
}
