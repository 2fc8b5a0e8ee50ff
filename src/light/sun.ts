/**
 * Where the sun stands, from a place, a calendar date and a clock hour with its offset from universal time. Degrees,
 * hours. The position is that of the package suncalc (Meeus, Astronomical Algorithms, chapter 25), good to 0.02°;
 * refraction after NOAA's solar calculator. No clock is read.
 */
import { getPosition, getTimes } from 'suncalc';

/** Degrees; north and east are positive. */
export interface Place {
  readonly latitude: number;
  readonly longitude: number;
}

/** Hours of the clock in use there, 0…24; may run over for the day after. */
export type Hours = number;

export interface Sun {
  /** Above the horizon without the air's refraction, and as seen. */
  readonly trueAltitude: number;
  readonly altitude: number;
  /** Clockwise from north. */
  readonly azimuth: number;
}

/** `date` is written 2026-06-21; `utcOffset` is hours ahead of universal time. */
export interface Day {
  readonly place: Place;
  readonly date: string;
  readonly utcOffset: Hours;
}

/** The course of the sun over one calendar date. */
export type SunCourse =
  | { readonly kind: 'rises'; readonly rise: Hours; readonly noon: Hours; readonly set: Hours }
  | { readonly kind: 'polar day'; readonly noon: Hours }
  | { readonly kind: 'polar night'; readonly noon: Hours };

const HOUR = 3_600_000;
const RADIANS = Math.PI / 180;

/** Where the sun stands at a clock hour of the day. */
export function sunAt({ place, date, utcOffset }: Day, hour: Hours): Sun {
  const when = new Date(midnightOf(date) + (hour - utcOffset) * HOUR);
  const seen = getPosition(when, place.latitude, place.longitude);
  const trueAltitude = withoutPackageRefraction(seen.altitude);
  return { trueAltitude, altitude: trueAltitude + refraction(trueAltitude), azimuth: seen.azimuth };
}

/**
 * Rise, highest stand and set within the calendar date of the place (the sun's upper edge on the horizon, zenith
 * 90.833°), in hours of its clock. Near a polar season a rise or set may fall outside 0…24.
 */
export function sunCourse({ place, date, utcOffset }: Day): SunCourse {
  // The package takes any moment of the solar day: noon by the sun's own longitude.
  const noonThere = midnightOf(date) + (12 - place.longitude / 15) * HOUR;
  const times = getTimes(new Date(noonThere), place.latitude, place.longitude);
  const hourOf = (moment: Date): Hours => (moment.getTime() - midnightOf(date)) / HOUR + utcOffset;
  const noon = hourOf(times.solarNoon);
  if (times.sunrise !== null && times.sunset !== null)
    return { kind: 'rises', rise: hourOf(times.sunrise), noon, set: hourOf(times.sunset) };
  return { kind: times.alwaysUp ? 'polar day' : 'polar night', noon };
}

/** What the air lifts the sun by, degrees, at a true altitude in degrees. NOAA, General Solar Position Calculations. */
export function refraction(trueAltitude: number): number {
  const h = trueAltitude;
  const tan = Math.tan(h * RADIANS);
  if (h > 85) return 0;
  if (h > 5) return (58.1 / tan - 0.07 / tan ** 3 + 0.000086 / tan ** 5) / 3600;
  if (h > -0.575) return (1735 - 518.2 * h + 103.4 * h ** 2 - 12.79 * h ** 3 + 0.711 * h ** 4) / 3600;
  return -20.772 / tan / 3600;
}

/** Day of the year, 1 on the first of January. */
export function dayOfYear(date: string): number {
  return Math.round((midnightOf(date) - midnightOf(`${date.slice(0, 4)}-01-01`)) / (24 * HOUR)) + 1;
}

/**
 * Hours ahead of universal time in a named zone (`Europe/Lisbon`) on a date at noon, daylight saving included; null
 * for a name that is not known.
 */
export function utcOffsetIn(zone: string, date: string): Hours | null {
  try {
    const noon = new Date(midnightOf(date) + 12 * HOUR);
    const parts = new Intl.DateTimeFormat('en-GB', { timeZone: zone, timeZoneName: 'longOffset' });
    const written = parts.formatToParts(noon).find(({ type }) => type === 'timeZoneName')?.value ?? '';
    const match = /^GMT(?:([+-])(\d\d):(\d\d))?$/.exec(written);
    if (!match) return null;
    const hours = Number(match[2] ?? 0) + Number(match[3] ?? 0) / 60;
    return match[1] === '-' ? -hours : hours;
  } catch {
    return null;
  }
}

function midnightOf(date: string): number {
  return Date.parse(`${date}T00:00:00Z`);
}

/** The package lifts the sun by Meeus 16.4, and by that at the horizon wherever it is lower; this takes it off again. */
function withoutPackageRefraction(seen: number): number {
  const lift = (h: number): number => {
    const up = Math.max(0, h) * RADIANS;
    return 0.0002967 / Math.tan(up + 0.00312536 / (up + 0.08901179)) / RADIANS;
  };
  let h = seen - lift(0);
  if (h <= 0) return h;
  for (let i = 0; i < 8; i++) h = seen - lift(h);
  return h;
}
