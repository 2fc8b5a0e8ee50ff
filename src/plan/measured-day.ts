/**
 * A recorded day: what is wrong with it, its levels minute by minute, the share of right minutes, phantom triggers,
 * and how much it narrows the band of the modelled daylight. Seconds of the recording, hours of the clock, lux.
 */
import type { Design } from '../design/design.ts';
import { skyLuxAt } from '../light/daylight.ts';
import type { LogPoints } from '../light/log-file.ts';
import type { Hours } from '../light/sun.ts';
import {
  type Fraction,
  type Lux,
  type Pair,
  pairOf,
  type Seconds,
  VOICES,
  type VoiceId,
} from '../quantity/units.ts';
import type { RoomComplaint } from '../words/room-facts.ts';
import { tripsOf, verdictAt } from './day.ts';
import type { HourLevels, LuxBand, RoomLight } from './levels.ts';
import { replayLog } from './replay.ts';
import type { Disturbance } from './trip-lux.ts';

export interface MeasuredDay {
  /** Clock at the recording's time 0. */
  readonly startHour: Hours;
  readonly points: LogPoints;
}

/** Rows further apart than this, or than ten times the usual, leave a gap. */
const LEAST_GAP: Seconds = 120;
/** Light that never comes above this is a night. */
const NIGHT_LUX: Lux = 10;
/** A sensor at the end of its range stays there: so many rows in a row, and such a share of all. */
const CLIPPED_ROWS = 20;
const CLIPPED_SHARE = 0.01;
/** Less than this share of the hours missing goes without saying. */
const COVERED_SHARE = 0.005;

/** What a recording cannot tell; all else is still computed from it. */
export function logComplaints(day: MeasuredDay, hours: readonly [Hours, Hours]): readonly RoomComplaint[] {
  const { times, lux } = day.points;
  if (times.length < 2) return [{ kind: 'log empty' }];
  const complaints: RoomComplaint[] = gapsOf(day).map(([from, to]) => ({
    kind: 'log gap',
    fromHour: hourOf(day, from),
    toHour: hourOf(day, to),
  }));
  const most = pairOf((voice) => lux[voice].reduce((best, value) => Math.max(best, value), 0));
  if (Math.max(most.A, most.B) < NIGHT_LUX)
    complaints.push({ kind: 'log at night only', mostLux: Math.max(most.A, most.B) });
  else
    for (const voice of VOICES) {
      const share = clippedShare(lux[voice], most[voice]);
      if (share > CLIPPED_SHARE) complaints.push({ kind: 'log clipped', voice, lux: most[voice], share });
    }
  const [from, to] = hours;
  const covered = Math.min(to, hourOf(day, times.at(-1)!)) - Math.max(from, hourOf(day, times[0]!));
  // A row short of closing is no lack.
  if (covered < (1 - COVERED_SHARE) * (to - from))
    complaints.push({ kind: 'log covers part', share: Math.max(0, covered / (to - from)) });
  return complaints;
}

/** Stretches of time without rows. */
export function gapsOf({ points: { times } }: MeasuredDay): readonly (readonly [Seconds, Seconds])[] {
  const steps = Array.from(times.subarray(1), (time, i) => time - times[i]!);
  const usual = steps.toSorted((a, b) => a - b)[steps.length >> 1] ?? 0;
  const most = Math.max(LEAST_GAP, 10 * usual);
  return steps.flatMap((step, i) => (step > most ? [[times[i]!, times[i + 1]!] as const] : []));
}

/** Levels of each minute of these hours: the least, the mean and the most of its rows; unknown where there are none. */
export function minutesOf(
  day: MeasuredDay,
  shadeShare: Pair<Fraction>,
  [from, to]: readonly [Hours, Hours],
): readonly HourLevels[] {
  const { times, lux } = day.points;
  const gaps = gapsOf(day);
  const count = Math.round((to - from) * 60);
  let row = 0;
  return Array.from({ length: count }, (_, minute) => {
    const begin = (from - day.startHour) * 3600 + 60 * minute;
    while (row < times.length && times[row]! < begin) row++;
    const first = row;
    while (row < times.length && times[row]! < begin + 60) row++;
    const hour = from + minute / 60;
    const bandOf = (voice: VoiceId): LuxBand =>
      row > first ? bandOver(lux[voice], first, row) : heldAt(lux[voice], first);
    const inGap = gaps.some(([start, end]) => start < begin + 60 && end > begin && row === first);
    const outside = row === first && (first === 0 || first === times.length);
    return { hour, lit: pairOf(bandOf), shadeShare, known: !inGap && !outside };
  });
}

function bandOver(lux: Float64Array, from: number, to: number): LuxBand {
  let [low, high, sum] = [Number.POSITIVE_INFINITY, 0, 0];
  for (let i = from; i < to; i++) {
    const value = lux[i]!;
    low = Math.min(low, value);
    high = Math.max(high, value);
    sum += value;
  }
  return { low, middle: sum / (to - from), high };
}

/** Rows more than a minute apart: the row before still stands. */
function heldAt(lux: Float64Array, next: number): LuxBand {
  const value = lux[Math.max(0, next - 1)] ?? 0;
  return { low: value, middle: value, high: value };
}

export interface LogVerdict {
  /** Minutes in which every row gates rightly, over those recorded. */
  readonly rightShare: Fraction;
  readonly rightMinutes: number;
  readonly knownMinutes: number;
  readonly minutes: number;
  /** Times an hour that a voice leaves what it does in lit light, and comes back, by itself. */
  readonly phantomsPerHour: Pair<number>;
  readonly chatterSeconds: Pair<Seconds>;
}

/** A recording without wanted events against a design as it is set. */
export function logVerdict(
  design: Design,
  day: MeasuredDay,
  shadeShare: Pair<Fraction>,
  hours: readonly [Hours, Hours],
  disturbance: Disturbance,
): LogVerdict {
  const trips = tripsOf(design, disturbance);
  const minutes = minutesOf(day, shadeShare, hours);
  const known = minutes.filter((minute) => minute.known);
  const right = known.filter((minute) => verdictAt(trips, minute).state === 'right').length;
  const { changes, chatterSeconds } = replayLog(design, day.points, disturbance.ripple);
  const open = changes.filter(({ time }) => {
    const hour = hourOf(day, time);
    return hour >= hours[0] && hour < hours[1];
  });
  const knownHours = known.length / 60;
  return {
    rightShare: known.length > 0 ? right / known.length : 0,
    rightMinutes: right,
    knownMinutes: known.length,
    minutes: minutes.length,
    phantomsPerHour: pairOf((voice) => {
      const left = open.filter(
        (change) => change.voice === voice && change.sounding !== (design.voices[voice].polarity === 'light'),
      ).length;
      return knownHours > 0 ? left / knownHours : 0;
    }),
    chatterSeconds,
  };
}

/**
 * The room's light with its band of daylight as wide as the recording shows, and its middle where the recording has
 * it. Unchanged where there is no daylight to compare.
 */
export function narrowedBy(light: RoomLight, day: MeasuredDay): RoomLight {
  const { day: date, sky } = light;
  if (date === null || sky === null) return light;
  const { times, lux } = day.points;
  const every = Math.max(1, Math.floor(times.length / 500));
  const ratios = pairOf((): number[] => []);
  for (let i = 0; i < times.length; i += every) {
    const outside = skyLuxAt(date, sky, hourOf(day, times[i]!));
    for (const voice of VOICES) {
      const { constantLux, skyShare } = light.sensors[voice];
      const modelled = skyShare * outside;
      if (modelled < 0.1 * constantLux || outside < 500) continue;
      const ratio = (lux[voice][i]! - constantLux) / modelled;
      if (ratio > 0) ratios[voice].push(ratio);
    }
  }
  if (ratios.A.length < 10 || ratios.B.length < 10) return light;
  const spans = pairOf((voice) => {
    const sorted = ratios[voice].toSorted((a, b) => a - b);
    // One row in fifty either way may be a hand or a cloud's edge.
    const [least, most] = [
      sorted[Math.floor(0.02 * sorted.length)]!,
      sorted[Math.ceil(0.98 * sorted.length) - 1]!,
    ];
    return { least, most, middle: Math.sqrt(least * most) };
  });
  return {
    ...light,
    sensors: pairOf((voice) => ({
      ...light.sensors[voice],
      skyShare: light.sensors[voice].skyShare * spans[voice].middle,
    })),
    band: {
      darker: Math.min(...VOICES.map((voice) => spans[voice].least / spans[voice].middle)),
      brighter: Math.max(...VOICES.map((voice) => spans[voice].most / spans[voice].middle)),
    },
  };
}

function clippedShare(lux: Float64Array, most: Lux): Fraction {
  let [rows, run] = [0, 0];
  for (const value of lux) {
    run = value === most ? run + 1 : 0;
    if (run === CLIPPED_ROWS) rows += CLIPPED_ROWS;
    else if (run > CLIPPED_ROWS) rows++;
  }
  // A light that never moves at all is a steady light, not a sensor at its end.
  return rows === lux.length ? 0 : rows / lux.length;
}

function hourOf(day: MeasuredDay, time: Seconds): Hours {
  return day.startHour + time / 3600;
}
