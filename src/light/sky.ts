/**
 * Daylight out of doors on level ground, from the altitude of the sun. Lux, degrees.
 *
 * Above 2°: the averages of the Illuminating Engineering Society (Recommended Practice for the Calculation of
 * Daylight Availability, JIES 13(4), 1984; sky lines after the IES Lighting Handbook, from memory). A real instant
 * may have half or twice as much. Below: twilight after the AMS Glossary of Meteorology, straight in the logarithm
 * between its values, and straight in the logarithm from there to the sky line at 2°, which is a choice of ours.
 */
import type { Lux } from '../quantity/units.ts';

export const SKIES = ['clear', 'partly', 'overcast'] as const;
export type SkyKind = (typeof SKIES)[number];

/** A modelled sky may be this much darker or brighter at an instant (AIT daylighting self-study, chapter 3). */
export const SKY_BAND = { darker: 0.5, brighter: 2 } as const;

export interface Outdoors {
  /** From the sky alone, on level ground. */
  readonly skyLux: Lux;
  /** From the sun on a surface that faces it; 0 under an overcast sky. */
  readonly beamLux: Lux;
  /** Both on level ground. */
  readonly totalLux: Lux;
}

/** Sky on level ground, klx: A + B·sin^C. Beam: the sun outside the air times exp(−c/sin). */
const SKY: Readonly<Record<SkyKind, { a: number; b: number; c: number; extinction: number | null }>> = {
  clear: { a: 0.8, b: 15.5, c: 0.5, extinction: 0.21 },
  partly: { a: 0.3, b: 45, c: 1, extinction: 0.8 },
  overcast: { a: 0.3, b: 21, c: 1, extinction: null },
};

/** Sun outside the air at its mean distance, lx. */
const SUN_LUX: Lux = 127_500;

/** Altitude and level-ground lux of twilight, and darker than all: starlight. */
const TWILIGHT: readonly (readonly [number, Lux])[] = [
  [-0.833, 500],
  [-6, 2.75],
  [-12, 0.008],
  [-18, 0.0006],
];
const LOWEST_LINE = 2;

/** Sun on a surface that faces it outside the air, lx, by the day of the year. */
export function extraterrestrialLux(dayOfYear: number): Lux {
  return SUN_LUX * (1 + 0.034 * Math.cos((2 * Math.PI * (dayOfYear - 2)) / 365));
}

/** Daylight outside. `dayOfYear` null leaves the sun at its mean distance. */
export function outdoors(sky: SkyKind, altitude: number, dayOfYear: number | null = null): Outdoors {
  const skyLux = skyLuxAt(sky, altitude);
  const { extinction } = SKY[sky];
  const sine = Math.sin((altitude * Math.PI) / 180);
  const outside = dayOfYear === null ? SUN_LUX : extraterrestrialLux(dayOfYear);
  const beamLux = extinction === null || altitude <= 0 ? 0 : outside * Math.exp(-extinction / sine);
  return { skyLux, beamLux, totalLux: skyLux + beamLux * Math.max(0, sine) };
}

/** Clear beam after the second published model, Radiance's gensky (CIE clear sky): for the spread between models. */
export function genskyBeamLux(altitude: number): Lux {
  return 90_000 * (1.147 - 0.147 / Math.max(Math.sin((altitude * Math.PI) / 180), 0.16));
}

function skyLuxAt(sky: SkyKind, altitude: number): Lux {
  if (altitude >= LOWEST_LINE) return lineAt(sky, altitude);
  const steps = [[LOWEST_LINE, lineAt(sky, LOWEST_LINE)] as const, ...TWILIGHT];
  for (let i = 1; i < steps.length; i++) {
    const [low, lowLux] = steps[i]!;
    if (altitude < low) continue;
    const [high, highLux] = steps[i - 1]!;
    return lowLux * (highLux / lowLux) ** ((altitude - low) / (high - low));
  }
  return steps.at(-1)![1];
}

function lineAt(sky: SkyKind, altitude: number): Lux {
  const { a, b, c } = SKY[sky];
  return 1000 * (a + b * Math.sin((altitude * Math.PI) / 180) ** c);
}
