/**
 * The light at both sensors through the hours, put together from what was read: lamps that stay, a leak that stays,
 * and daylight that follows the sky. Readings come first; the model only carries them to other hours. Lux; hours of
 * the clock, which run past 24 when a room closes after midnight.
 */
import type { Room, RoomDaylight, SensorLux } from '../design/room.ts';
import { averageDaylightFactor, type Sky, skyLuxAt } from '../light/daylight.ts';
import { SKY_BAND } from '../light/sky.ts';
import { type Day, type Hours, sunCourse } from '../light/sun.ts';
import { type Fraction, type Lux, type Pair, pairOf, VOICES, type VoiceId } from '../quantity/units.ts';
import type { RoomComplaint } from '../words/room-facts.ts';
import { shadeLeft } from './event.ts';

/** Where daylight may be half or double the model, the light is a band around the middle. */
export interface LuxBand {
  readonly low: Lux;
  readonly middle: Lux;
  readonly high: Lux;
}

export interface HourLevels {
  readonly hour: Hours;
  readonly lit: Pair<LuxBand>;
  /** Share of the lit light that the event leaves. */
  readonly shadeShare: Pair<Fraction>;
  /** False where a log has a gap. */
  readonly known: boolean;
}

export interface SensorLight {
  /** Lamps and leaks: the same at every hour. */
  readonly constantLux: Lux;
  /** Daylight at the sensor for a lux of sky outside. */
  readonly skyShare: number;
  readonly shadeShare: Fraction;
  readonly shadeFrom: 'readings' | 'event';
  /** Without daylight, readings at several hours are followed as they are: hour and lux in order. */
  readonly course: readonly (readonly [Hours, Lux])[] | null;
}

export interface RoomLight {
  readonly sensors: Pair<SensorLight>;
  readonly day: Day | null;
  readonly sky: Sky | null;
  /** Share of the model that daylight may fall to or rise to. */
  readonly band: { readonly darker: number; readonly brighter: number };
  readonly complaints: readonly RoomComplaint[];
}

/** Less sky than this is as good as night for telling lamps from daylight. */
const NIGHT_SKY: Lux = 50;

/** When nothing was read at all. */
const NOTHING_READ: Lux = 0;

/** The light of a room; what is missing or impossible is named and the rest still worked out. */
export function roomLight(room: Room): RoomLight {
  const complaints: RoomComplaint[] = [];
  const { day, sky } = daylightOf(room.daylight, complaints);
  if (room.readingsAre === 'guessed' && room.readings.length > 0)
    complaints.push({ kind: 'readings guessed' });
  const factor = factorOf(room.daylight);
  const read = pairOf((voice) => room.readings.some(({ lux }) => lux[voice].lit !== null));
  if (!read.A && !read.B) complaints.push({ kind: 'no readings' });
  else
    for (const voice of VOICES)
      if (!read[voice]) complaints.push({ kind: 'one sensor read', missing: voice });
  const outside = (hour: Hours): Lux => (day && sky ? skyLuxAt(day, sky, hour) : 0);
  const sensors = pairOf((voice) => {
    const source = read[voice] ? voice : voice === 'A' ? 'B' : 'A';
    const isOwn = source === voice;
    const rows = rowsOf(room, source, isOwn ? complaints : []);
    const shade = shadeShareOf(rows, room, voice);
    if (day && sky) {
      const split = splitOf(rows, outside, factor, voice, isOwn ? complaints : []);
      return { ...split, ...shade, course: null };
    }
    const course = rows.map(({ hour, lit }) => [hour, lit] as const);
    return { constantLux: course[0]?.[1] ?? NOTHING_READ, skyShare: 0, ...shade, course };
  });
  return { sensors, day, sky, band: SKY_BAND, complaints };
}

/** The light at an hour. */
export function levelsAt(light: RoomLight, hour: Hours): HourLevels {
  const { day, sky, sensors, band } = light;
  const outside = day && sky ? skyLuxAt(day, sky, hour) : 0;
  const lit = pairOf((voice): LuxBand => {
    const { constantLux, skyShare, course } = sensors[voice];
    if (course) {
      const lux = followed(course, hour);
      return { low: lux, middle: lux, high: lux };
    }
    const daylight = skyShare * outside;
    return {
      low: constantLux + band.darker * daylight,
      middle: constantLux + daylight,
      high: constantLux + band.brighter * daylight,
    };
  });
  return { hour, lit, shadeShare: pairOf((voice) => sensors[voice].shadeShare), known: true };
}

/** Hours the room is open, the second past 24 when it closes after midnight. */
export function openHours({ opens, closes }: Pick<Room, 'opens' | 'closes'>): readonly [Hours, Hours] {
  return closes > opens ? [opens, closes] : [opens, closes + 24];
}

/** The light of the open hours, every `stepHours` (ten minutes unless given), both ends included. */
export function levelsThrough(light: RoomLight, room: Room, stepHours: Hours = 1 / 6): readonly HourLevels[] {
  const [from, to] = openHours(room);
  const count = Math.max(1, Math.round((to - from) / stepHours));
  return Array.from({ length: count + 1 }, (_, i) => levelsAt(light, from + ((to - from) * i) / count));
}

interface Row {
  readonly hour: Hours;
  readonly lit: Lux;
  readonly shaded: Lux | null;
  readonly dark: Lux | null;
}

/** A sensor's readings with light; what cannot be is named and left out. */
function rowsOf(room: Room, voice: VoiceId, complaints: RoomComplaint[]): readonly Row[] {
  return room.readings.flatMap(({ hour, lux }): Row[] => {
    const { lit, shaded, dark }: SensorLux = lux[voice];
    if (lit === null) return [];
    const shadeFits = shaded === null || shaded <= lit;
    const darkFits = dark === null || dark <= lit;
    if (!shadeFits) complaints.push({ kind: 'shade brighter', hour, voice, lit, shaded });
    if (!darkFits) complaints.push({ kind: 'dark brighter', hour, voice, lit, dark });
    return [{ hour, lit, shaded: shadeFits ? shaded : null, dark: darkFits ? dark : null }];
  });
}

/** Geometric mean of the shares read; without any, what the event's geometry leaves. */
function shadeShareOf(
  rows: readonly Row[],
  room: Room,
  voice: VoiceId,
): Pick<SensorLight, 'shadeShare' | 'shadeFrom'> {
  const shares = rows.flatMap(({ lit, shaded }) =>
    shaded === null || lit <= 0 ? [] : [Math.max(1e-6, shaded / lit)],
  );
  if (shares.length === 0) return { shadeShare: shadeLeft(room.event, room.tube)[voice], shadeFrom: 'event' };
  const mean = shares.reduce((sum, share) => sum + Math.log(share), 0) / shares.length;
  return { shadeShare: Math.exp(mean), shadeFrom: 'readings' };
}

/**
 * Lamps and daylight told apart: by readings with the lamps off, else by readings at hours of unlike sky (least
 * squares, neither below nothing), else by the daylight factor.
 */
function splitOf(
  rows: readonly Row[],
  outside: (hour: Hours) => Lux,
  factor: Fraction,
  voice: VoiceId,
  complaints: RoomComplaint[],
): Pick<SensorLight, 'constantLux' | 'skyShare'> {
  if (rows.length === 0) return { constantLux: NOTHING_READ, skyShare: factor };
  const withDark = rows.flatMap(({ hour, lit, dark }) => (dark === null ? [] : [{ hour, lit, dark }]));
  const byDay = withDark.filter(({ hour }) => outside(hour) > NIGHT_SKY);
  const atNight = withDark.filter(({ hour }) => outside(hour) <= NIGHT_SKY);
  const leak = mean(atNight.map(({ dark }) => dark));
  if (byDay.length > 0) {
    const skyShare = mean(byDay.map(({ hour, dark }) => Math.max(0, dark - leak) / outside(hour)));
    return { constantLux: mean(withDark.map(({ lit, dark }) => lit - dark)) + leak, skyShare };
  }
  const fit = fitOf(rows.map(({ hour, lit }) => [outside(hour), lit]));
  if (fit) return fit;
  const row = rows.reduce((best, next) => (outside(next.hour) > outside(best.hour) ? next : best));
  const modelled = factor * outside(row.hour);
  if (modelled <= row.lit) return { constantLux: row.lit - modelled, skyShare: factor };
  complaints.push({ kind: 'daylight above reading', hour: row.hour, voice, modelled, read: row.lit });
  return { constantLux: 0, skyShare: row.lit / outside(row.hour) };
}

function fitOf(
  points: readonly (readonly [number, number])[],
): { constantLux: Lux; skyShare: number } | null {
  const skies = points.map(([sky]) => sky);
  const [least, most] = [Math.min(...skies), Math.max(...skies)];
  if (points.length < 2 || most < NIGHT_SKY || most < 1.5 * least) return null;
  const x = mean(skies);
  const y = mean(points.map(([, lit]) => lit));
  const square = points.reduce((sum, [sky]) => sum + (sky - x) ** 2, 0);
  const slope = points.reduce((sum, [sky, lit]) => sum + (sky - x) * (lit - y), 0) / square;
  if (slope <= 0) return { constantLux: y, skyShare: 0 };
  if (y - slope * x >= 0) return { constantLux: y - slope * x, skyShare: slope };
  const through = points.reduce((sum, [sky, lit]) => sum + sky * lit, 0);
  return { constantLux: 0, skyShare: through / points.reduce((sum, [sky]) => sum + sky * sky, 0) };
}

function daylightOf(
  daylight: RoomDaylight | null,
  complaints: RoomComplaint[],
): { readonly day: Day | null; readonly sky: Sky | null } {
  const none = { day: null, sky: null };
  if (daylight === null) return none;
  if (daylight.place === null) {
    complaints.push({ kind: 'place unknown' });
    return none;
  }
  const { place, date, utcOffset, measured } = daylight;
  const day: Day = { place, date, utcOffset };
  const course = sunCourse(day);
  if (course.kind !== 'rises') complaints.push({ kind: course.kind });
  if (daylight.sky !== 'measured') return { day, sky: { kind: 'modelled', sky: daylight.sky } };
  if (measured === null) {
    complaints.push({ kind: 'sky not measured' });
    return { day, sky: { kind: 'modelled', sky: 'overcast' } };
  }
  if (skyLuxAt(day, { kind: 'modelled', sky: 'overcast' }, measured.hour) <= NIGHT_SKY) {
    complaints.push({ kind: 'sky measured in the dark', hour: measured.hour });
    return { day, sky: { kind: 'modelled', sky: 'overcast' } };
  }
  return { day, sky: { kind: 'measured', ...measured } };
}

function factorOf(daylight: RoomDaylight | null): Fraction {
  if (daylight === null) return 0;
  return daylight.factor.kind === 'typed' ? daylight.factor.share : averageDaylightFactor(daylight.factor);
}

/** Straight between readings, held before the first and after the last. */
function followed(course: readonly (readonly [Hours, Lux])[], hour: Hours): Lux {
  if (course.length === 0) return NOTHING_READ;
  const after = course.findIndex(([when]) => when > hour);
  if (after < 0) return course.at(-1)![1];
  if (after === 0) return course[0]![1];
  const [h0, e0] = course[after - 1]!;
  const [h1, e1] = course[after]!;
  return e0 + ((e1 - e0) * (hour - h0)) / (h1 - h0);
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}
