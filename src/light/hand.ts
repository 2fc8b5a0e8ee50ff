/**
 * What a hand takes away from the light at a sensor. The hand is a flat round disc held parallel to the
 * table; the sensor lies on the table, faces up and weighs light by the cosine of its angle. Metres,
 * radians, shares 0…1. Shadow laws by similar triangles; the sky share is the textbook view factor from a
 * small flat patch to a parallel disc (Howell, A Catalog of Radiation Heat Transfer Configuration Factors).
 */
import type { Candela, Fraction, Lux, Metres } from '../quantity/units.ts';

/** Radius of a disc as large as palm and fingers together, from memory: 0.8 % of the body's surface. */
export const HAND_RADIUS: Metres = 0.06;

/**
 * Share of the light of an evenly bright half sky (or white ceiling) that a hand leaves at the sensor.
 * `offset` is the hand's centre sideways from the sensor. Straight above it is z²/(z² + R²). Exact for a disc.
 */
export function skyLeft(radius: Metres, height: Metres, offset: Metres): Fraction {
  const near = Math.hypot(height, offset - radius);
  const far = Math.hypot(height, offset + radius);
  // Only a hand lying on the table with its edge over the sensor: half of the sky stays.
  if (near === 0 || far === 0) return 0.5;
  return clampShare((1 + (height * height + offset * offset - radius * radius) / (near * far)) / 2);
}

interface LampShade {
  readonly handRadius: Metres;
  /** Hand above the sensor. */
  readonly height: Metres;
  /** Hand's centre sideways from the sensor; positive to the right. */
  readonly offset: Metres;
  /** A round flat lamp, parallel to the table; 0 = a point. */
  readonly lampDiameter: Metres;
  /** Lamp above the sensor. */
  readonly lampDistance: Metres;
  /** Lamp's centre sideways from the sensor; 0 unless given. */
  readonly lampOffset?: Metres;
}

/**
 * Share of a round flat lamp that is still seen from the sensor past a hand. Every point of the lamp counts
 * alike, which is right within 1 % for a lamp further away than five times its size (the rule of five).
 */
export function lampLeft(shade: LampShade): Fraction {
  const { handRadius, height, offset, lampDiameter, lampDistance, lampOffset = 0 } = shade;
  if (height >= lampDistance) return 1;
  // The lamp is drawn, as seen from the sensor, on the hand's plane: the same shares, and no infinite
  // picture of a hand that lies on the sensor.
  const scale = height / lampDistance;
  const apart = Math.abs(offset - lampOffset * scale);
  return 1 - coveredShare((lampDiameter / 2) * scale, handRadius, apart);
}

/** Share of a disc of radius `small` that lies under a disc of radius `cover` whose centre is `apart` away. */
function coveredShare(small: Metres, cover: Metres, apart: Metres): Fraction {
  if (apart + small <= cover) return 1;
  if (apart >= cover + small) return 0;
  const smallAngle = Math.acos(clampCosine((apart ** 2 + small ** 2 - cover ** 2) / (2 * apart * small)));
  const coverAngle = Math.acos(clampCosine((apart ** 2 + cover ** 2 - small ** 2) / (2 * apart * cover)));
  // Each circle's sector less its triangle, together the lens that both share.
  const lens =
    small ** 2 * (smallAngle - Math.sin(smallAngle) * Math.cos(smallAngle)) +
    cover ** 2 * (coverAngle - Math.sin(coverAngle) * Math.cos(coverAngle));
  return clampShare(lens / (Math.PI * small ** 2));
}

interface Shadow {
  /** Width in full shadow; 0 when the lamp is seen past both sides of the hand from everywhere. */
  readonly umbra: Metres;
  /** Width over which any of the lamp is hidden. */
  readonly outer: Metres;
  /** Width of the soft edge that a lamp of this size gives on each side. */
  readonly softEdge: Metres;
}

/** Size on the table of the shadow of a hand under the middle of a lamp. The hand is below the lamp. */
export function shadowOf(scene: {
  readonly lampDiameter: Metres;
  readonly lampDistance: Metres;
  readonly handWidth: Metres;
  readonly height: Metres;
}): Shadow {
  const { lampDiameter, lampDistance, handWidth, height } = scene;
  const gap = lampDistance - height;
  return {
    umbra: Math.max(0, (handWidth * lampDistance - lampDiameter * height) / gap),
    outer: (handWidth * lampDistance + lampDiameter * height) / gap,
    softEdge: (lampDiameter * height) / gap,
  };
}

/** Half angle, in radians, beyond which a tube around the sensor cuts all light off. */
export function tubeCutOff(boreRadius: Metres, depth: Metres): number {
  return Math.atan2(2 * boreRadius, depth);
}

/** Share of an even sky that a hand straight above takes from a sensor that sees only a cone of this half angle. */
export function tubeBlocked(halfAngle: number, handRadius: Metres, height: Metres): Fraction {
  return Math.min(1, (Math.sin(Math.atan2(handRadius, height)) / Math.sin(halfAngle)) ** 2);
}

/**
 * Illuminance from a small lamp, E = I·cos(tilt)/d²; `tilt` in radians between the light and the sensor's
 * straight-ahead. Within 1 % of a lamp as large as a fifth of the distance. Light from behind gives 0.
 */
export function illuminanceFrom(candela: Candela, distance: Metres, tilt: number): Lux {
  return (candela * Math.max(0, Math.cos(tilt))) / (distance * distance);
}

function clampShare(value: number): Fraction {
  return Math.min(1, Math.max(0, value));
}

/** Rounding, and a hand wholly inside the lamp's outline, lead past ± 1; there the ends are right. */
function clampCosine(value: number): number {
  return Math.min(1, Math.max(-1, value));
}
