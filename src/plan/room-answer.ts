/**
 * All that the place Room says at once: the light through the open hours, the windows of the threshold trimmers, the
 * setting they advise, and the day under it. What takes longer is in `room-report.ts`. Lux, hours, volts.
 */
import { turnThreshold } from '../design/commands.ts';
import type { Design } from '../design/design.ts';
import type { Hours } from '../light/sun.ts';
import { type Lux, VOICES } from '../quantity/units.ts';
import type { RoomComplaint } from '../words/room-facts.ts';
import { type DayChart, dayChart, type HourState } from './day.ts';
import { rippleOf } from './event.ts';
import { type HourLevels, levelsThrough, openHours, type RoomLight, roomLight } from './levels.ts';
import { logComplaints, type MeasuredDay, minutesOf, narrowedBy } from './measured-day.ts';
import type { Disturbance } from './trip-lux.ts';
import { type Extremes, extremesOf, type Recommended, type WindowAnswer, windowsFor } from './window.ts';

/** A recorded day, and whether its own levels count or the readings carried through the hours. */
export interface RoomQuestion {
  readonly design: Design;
  readonly day: MeasuredDay | null;
  readonly lightFrom: 'readings' | 'log';
}

export interface RoomSetting {
  readonly extremes: { readonly A: Extremes; readonly B: Extremes };
  readonly answers: readonly WindowAnswer[];
  /** The design with every trimmer at its advised place (or the nearest to one). */
  readonly advised: Design;
  /** The day under the advised setting, and under the present one. */
  readonly chart: DayChart;
  readonly chartNow: DayChart;
}

export interface RoomAnswer {
  readonly light: RoomLight;
  readonly hours: readonly [Hours, Hours];
  readonly levels: readonly HourLevels[];
  readonly lightFrom: 'readings' | 'log';
  readonly complaints: readonly RoomComplaint[];
  readonly disturbance: Disturbance;
  /** Null while no light is known at all. */
  readonly setting: RoomSetting | null;
}

export function roomAnswer({ design, day, lightFrom }: RoomQuestion): RoomAnswer {
  const { room } = design;
  const modelled = roomLight(room);
  const light = day === null ? modelled : narrowedBy(modelled, day);
  const hours = openHours(room);
  const isLog = day !== null && lightFrom === 'log';
  const shares = { A: light.sensors.A.shadeShare, B: light.sensors.B.shadeShare };
  const levels = isLog ? minutesOf(day, shares, hours) : levelsThrough(light, room);
  const complaints = [...light.complaints, ...(day === null ? [] : logComplaints(day, hours))].filter(
    // With a recording that counts, missing readings are no lack.
    ({ kind }) => !(isLog && (kind === 'no readings' || kind === 'one sensor read')),
  );
  const disturbance: Disturbance = { ripple: rippleOf(room), noiseVolts: design.noise.voltsRms };
  const exact = isLog ? null : light;
  return {
    light,
    hours,
    levels,
    lightFrom: isLog ? 'log' : 'readings',
    complaints,
    disturbance,
    setting: brightest(levels) > 0 ? settingFor(design, levels, disturbance, exact) : null,
  };
}

function settingFor(
  design: Design,
  levels: readonly HourLevels[],
  disturbance: Disturbance,
  light: RoomLight | null,
): RoomSetting {
  const extremes = extremesOf(levels);
  const answers = windowsFor(design, extremes, disturbance);
  const advised = turnedTo(design, answers);
  return {
    extremes,
    answers,
    advised,
    chart: dayChart(advised, levels, disturbance, light),
    chartNow: dayChart(design, levels, disturbance, light),
  };
}

/** The advised place of an answer's trimmer, or the one nearest to being right. */
export function adviceOf(answer: WindowAnswer): Recommended {
  return answer.kind === 'window' ? answer.recommended : answer.nearest;
}

/** Every trimmer at its advised place: one change. */
export function turnedTo(design: Design, answers: readonly WindowAnswer[]): Design {
  return answers.reduce(
    (turned, answer) => turnThreshold(answer.window.trimmer, adviceOf(answer).rotation)(turned),
    design,
  );
}

function brightest(levels: readonly HourLevels[]): Lux {
  return levels.reduce(
    (most, { lit, known }) => (known ? Math.max(most, lit.A.middle, lit.B.middle) : most),
    0,
  );
}

/** Lit light over shaded light where the two are nearest, of both voices the less. */
export function contrastOf({ A, B }: RoomSetting['extremes']): number {
  return Math.min(A.lit.lux / A.shade.lux, B.lit.lux / B.shade.lux);
}

/** The levels at an hour: those nearest to it. */
export function levelsNear(levels: readonly HourLevels[], hour: Hours): HourLevels {
  return levels.reduce((best, next) =>
    Math.abs(next.hour - hour) < Math.abs(best.hour - hour) ? next : best,
  );
}

/** Whether both sensors have the same light, within what a meter tells apart. */
export function sensorsAlike(levels: readonly HourLevels[]): boolean {
  const near = (a: number, b: number) => Math.abs(a - b) <= 0.03 * Math.max(a, b);
  return levels.every(
    ({ lit, shadeShare }) => near(lit.A.middle, lit.B.middle) && near(shadeShare.A, shadeShare.B),
  );
}

/** A stretch of the day in one state. */
export interface Run {
  readonly from: Hours;
  readonly to: Hours;
  readonly state: HourState;
  /** Index of the verdict in the middle of it. */
  readonly verdict: number;
}

/** The day as stretches of one state each, in order. */
export function runsOf({ verdicts, changes }: DayChart): readonly Run[] {
  const first = verdicts[0];
  const last = verdicts.at(-1);
  if (!first || !last) return [];
  const bounds = [first.hour, ...changes.map(({ hour }) => hour), last.hour];
  const states = [first.state, ...changes.map(({ to }) => to)];
  return states.map((state, i) => {
    const [from, to] = [bounds[i]!, bounds[i + 1]!];
    const own = verdicts.flatMap((verdict, index) =>
      verdict.state === state && verdict.hour >= from - 1e-9 && verdict.hour <= to + 1e-9 ? [index] : [],
    );
    return { from, to, state, verdict: own[own.length >> 1] ?? 0 };
  });
}

/** Voices whose setting lies on a trimmer of a given answer, and nothing else. */
export function isShared(answers: readonly WindowAnswer[]): boolean {
  return answers.length === 1 && answers[0]!.window.voices.length === VOICES.length;
}
