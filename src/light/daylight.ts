/**
 * Daylight indoors over the hours of a day: the sky outside times the share of it that reaches the sensor. Lux, hours,
 * degrees, metres, shares 0…1.
 */
import type { Fraction, Lux } from '../quantity/units.ts';
import { outdoors, type SkyKind } from './sky.ts';
import { type Day, dayOfYear, type Hours, sunAt } from './sun.ts';

export interface WindowAndRoom {
  /** Net glazed area, m². */
  readonly glassArea: number;
  /** Of the glass to diffuse light. */
  readonly transmittance: Fraction;
  /** For dirt and frames. */
  readonly maintenance: Fraction;
  /** Angle of sky seen from the middle of the window, degrees; 90 with nothing in front. */
  readonly skyAngle: number;
  readonly length: number;
  readonly width: number;
  readonly height: number;
  /** Mean of all surfaces. */
  readonly reflectance: Fraction;
}

/**
 * Average daylight factor of a room: indoors over outdoors under an unobstructed overcast sky, as a share.
 * T·M·W·θ/(A·(1 − R²)) per cent, A all room surfaces (BS 8206-2, CIBSE LG10; wording from memory, inputs after
 * Tregenza and Sharples, Daylight Algorithms, 2.12). Near the window it can be several times that, at the back less.
 */
export function averageDaylightFactor(room: WindowAndRoom): Fraction {
  const { length, width, height } = room;
  const surfaces = 2 * (length * width + length * height + width * height);
  const through = room.transmittance * room.maintenance * room.glassArea * room.skyAngle;
  return through / (surfaces * (1 - room.reflectance ** 2)) / 100;
}

/** What the sky does: one of the average skies, or overcast in shape and as bright as was measured at an hour. */
export type Sky =
  | { readonly kind: 'modelled'; readonly sky: SkyKind }
  | { readonly kind: 'measured'; readonly outdoorLux: Lux; readonly hour: Hours };

/** Light of the sky on level ground outside, at a clock hour. */
export function skyLuxAt(day: Day, sky: Sky, hour: Hours): Lux {
  const at = (kind: SkyKind, when: Hours) =>
    outdoors(kind, sunAt(day, when).trueAltitude, dayOfYear(day.date)).skyLux;
  if (sky.kind === 'modelled') return at(sky.sky, hour);
  return (sky.outdoorLux * at('overcast', hour)) / at('overcast', sky.hour);
}

export interface DaylightPoint {
  readonly hour: Hours;
  /** On level ground outside, from the sky, and the share of it that comes in. */
  readonly outdoorLux: Lux;
  readonly indoorLux: Lux;
  readonly sunAltitude: number;
}

/** The daylight of one day, from hour to hour, both ends included. `step` in hours. */
export function daylightCurve(
  day: Day,
  sky: Sky,
  factor: Fraction,
  hours: { readonly from: Hours; readonly to: Hours; readonly step: Hours },
): readonly DaylightPoint[] {
  const count = Math.max(1, Math.round((hours.to - hours.from) / hours.step));
  return Array.from({ length: count + 1 }, (_, i) => {
    const hour = hours.from + ((hours.to - hours.from) * i) / count;
    const outdoorLux = skyLuxAt(day, sky, hour);
    return {
      hour,
      outdoorLux,
      indoorLux: outdoorLux * factor,
      sunAltitude: sunAt(day, hour).altitude,
    };
  });
}
