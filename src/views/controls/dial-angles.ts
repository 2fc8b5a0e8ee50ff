/** Where on a trimmer's dial things stand; degrees clockwise from straight up, px in the dial's own 120 × 120. */
import type { Fraction } from '../../quantity/units.ts';

export const CENTRE = 60;
/** The printed scale of an ordinary trimmer, in degrees. */
export const SWEEP = 270;

/** Degrees clockwise from straight up. */
export function slotAngle(rotation: Fraction, turns: number): number {
  if (turns <= 1) return rotation * SWEEP - SWEEP / 2;
  // A full last turn reads 360, not 0, or the end of the travel would look like its start.
  const within = (rotation * turns) % 1;
  return (within === 0 && rotation > 0 ? 1 : within) * 360;
}

/** A point at a distance from the centre, `degrees` clockwise from straight up. */
export function around(radius: number, degrees: number): { readonly x: number; readonly y: number } {
  const angle = (degrees * Math.PI) / 180;
  return { x: CENTRE + radius * Math.sin(angle), y: CENTRE - radius * Math.cos(angle) };
}
