/**
 * The whole answer for a room, in order: its light through the open hours, the windows, the chart of the recommended
 * setting, when to set again, what would help, and the card. One call for the page; each part can be asked alone.
 */
import { turnThreshold } from '../design/commands.ts';
import { type Design, trimmersOf } from '../design/design.ts';
import type { Room } from '../design/room.ts';
import { type Fraction, type Pair, pairOf, type VoiceId, type Volts } from '../quantity/units.ts';
import type { MeterAnswer, Remedy, RoomComplaint, SettingStep } from '../words/room-facts.ts';
import { type DayChart, dayChart, resetPlan, type Stretch } from './day.ts';
import { dividerAdvice } from './divider.ts';
import { rippleOf } from './event.ts';
import { lampFor, tubeGain } from './help.ts';
import { hysteresisFacts } from './hysteresis.ts';
import { type HourLevels, levelsAt, levelsThrough, openHours, type RoomLight, roomLight } from './levels.ts';
import { logComplaints, type MeasuredDay, narrowedBy } from './measured-day.ts';
import { meterAnswer, rotationAtTestPoint, settingCard } from './setting-card.ts';
import type { Disturbance } from './trip-lux.ts';
import {
  type Extremes,
  extremesOf,
  isAlikeAllDay,
  sharedVerdict,
  type WindowAnswer,
  windowsFor,
} from './window.ts';

export interface RoomAnswer {
  readonly light: RoomLight;
  readonly levels: readonly HourLevels[];
  readonly disturbance: Disturbance;
  readonly extremes: Pair<Extremes>;
  /** One for each trimmer fitted. Over all the open hours; where none suits them all, the nearest. */
  readonly windows: readonly WindowAnswer[];
  /** The design with its trimmers at the recommended (or nearest) places. */
  readonly set: Design;
  /** Of `set`, and of the design as it is. */
  readonly chart: DayChart;
  readonly chartNow: DayChart;
  readonly stretches: readonly Stretch[];
  readonly remedies: readonly Remedy[];
  readonly card: readonly SettingStep[];
  readonly complaints: readonly RoomComplaint[];
}

/** What disturbs the gates of a design in a room. */
export function disturbanceIn(design: Design, room: Pick<Room, 'lamps' | 'mainsHertz'>): Disturbance {
  return { ripple: rippleOf(room), noiseVolts: design.noise.voltsRms };
}

/**
 * `settingUpHour` is when the card is followed: the opening hour unless given. A recorded day narrows the band of the
 * daylight. Null when no light was read: then only `light.complaints` has something to say (`roomLight`).
 */
export function roomAnswer(
  design: Design,
  room: Room,
  measured: MeasuredDay | null = null,
  settingUpHour: number | null = null,
): RoomAnswer | null {
  const modelled = roomLight(room);
  if (!room.readings.some(({ lux }) => lux.A.lit !== null || lux.B.lit !== null)) return null;
  const light = measured === null ? modelled : narrowedBy(modelled, measured);
  const hours = openHours(room);
  const levels = levelsThrough(light, room);
  const disturbance = disturbanceIn(design, room);
  const extremes = extremesOf(levels);
  const windows = windowsFor(design, extremes, disturbance);
  const set = windows.reduce<Design>((next, answer) => {
    const { rotation } = answer.kind === 'window' ? answer.recommended : answer.nearest;
    return turnThreshold(answer.window.trimmer, Math.min(1, Math.max(0, rotation)))(next);
  }, design);
  const stretches = resetPlan(design, levels, disturbance);
  const shadeShare = pairOf((voice) => light.sensors[voice].shadeShare);
  const remedies = windows.some(({ kind }) => kind === 'none')
    ? [...remediesFor(set, extremes, shadeShare, disturbance, stretches), ...tubeRemedy(room)]
    : [];
  // Where no setting serves the whole day, the card begins with the one for its first hours.
  const first = stretches[0];
  const cardAnswers =
    first?.settings && windows.some(({ kind }) => kind === 'none')
      ? windowsFor(design, extremesOf(levels.filter(({ hour }) => hour < first.to)), disturbance)
      : windows;
  const hour = settingUpHour ?? hours[0];
  const here = levelsAt(light, hour);
  const lux = pairOf((voice) => here.lit[voice].middle);
  const shade = pairOf((voice) => lux[voice] * here.shadeShare[voice]);
  const card = settingCard(set, {
    answers: cardAnswers,
    extremes,
    settingUp: { hour: isAlikeAllDay(extremes) ? null : hour, lux, shade },
    stretches,
    remedies,
  });
  return {
    light,
    levels,
    disturbance,
    extremes,
    windows,
    set,
    chart: dayChart(set, levels, disturbance, light),
    chartNow: dayChart(design, levels, disturbance, light),
    stretches,
    remedies,
    card,
    complaints: [...light.complaints, ...(measured === null ? [] : logComplaints(measured, hours))],
  };
}

export interface Tonight {
  readonly meter: MeterAnswer;
  /** From now to closing, with the trimmer as it was read. */
  readonly chart: DayChart;
  /** The first hour at which it is no longer right or marginal; null = it holds until closing. */
  readonly failsAt: number | null;
}

/** What a meter at a trimmer's test point says of the hours still to come. */
export function tonight(
  { set, levels, disturbance, light }: RoomAnswer,
  trimmer: VoiceId,
  volts: Volts,
  fromHour: number,
): Tonight | null {
  const left = levels.filter(({ hour }) => hour >= fromHour);
  if (left.length === 0) return null;
  const answer = windowsFor(set, extremesOf(left), disturbance).find(
    ({ window }) => window.trimmer === trimmer,
  );
  if (answer === undefined) return null;
  const read = turnThreshold(trimmer, rotationAtTestPoint(set, trimmer, volts))(set);
  const chart = dayChart(read, left, disturbance, light);
  const failsNow = chart.verdicts[0]!.state === 'wrong';
  const fails = chart.changes.find(({ to }) => to === 'wrong');
  return {
    meter: meterAnswer(set, answer, volts),
    chart,
    failsAt: failsNow ? left[0]!.hour : (fails?.hour ?? null),
  };
}

/** A local lamp is thought of at arm's length of wire above the sensor. */
const LAMP_METRES = 0.3;
/** Contrast that leaves room for hysteresis, spread and the day: common practice. */
const COMFORTABLE = 4;

/** What would help where no setting suits all the hours, the least effort first. */
function remediesFor(
  design: Design,
  extremes: Pair<Extremes>,
  shadeShare: Pair<Fraction>,
  disturbance: Disturbance,
  stretches: readonly Stretch[],
): readonly Remedy[] {
  const remedies: Remedy[] = [];
  const usable = stretches.filter(({ settings }) => settings !== null);
  if (usable.length > 1 && usable.length === stretches.length)
    remedies.push({ kind: 'reset in between', hours: usable.slice(1).map(({ from }) => from) });
  if (design.threshold.arrangement === 'shared') {
    const { canShare, each } = sharedVerdict(design, extremes, disturbance);
    if (!canShare && !each.A.isEmpty && !each.B.isEmpty) remedies.push({ kind: 'own trimmers' });
  }
  for (const trimmer of trimmersOf(design)) {
    remedies.push(...forVoice(design, trimmer, extremes, shadeShare[trimmer], disturbance));
  }
  return remedies;
}

/** Bore and depth of a tube that a drinking straw or a pen's barrel gives. */
const TUBE = { boreRadiusMetres: 0.0025, depthMetres: 0.01 };

/** A tube helps where much of the light comes from all round and a hand is to block it. */
function tubeRemedy({ event, tube }: Room): readonly Remedy[] {
  if (event.kind !== 'hand' || tube !== null) return [];
  const { contrastNow, contrastThen } = tubeGain({ event }, TUBE);
  if (!(contrastNow < COMFORTABLE && contrastThen > 1.2 * contrastNow)) return [];
  return [
    {
      kind: 'tube',
      boreMetres: 2 * TUBE.boreRadiusMetres,
      depthMetres: TUBE.depthMetres,
      left: 1 / contrastThen,
    },
  ];
}

function forVoice(
  design: Design,
  voice: VoiceId,
  extremes: Pair<Extremes>,
  left: Fraction,
  disturbance: Disturbance,
): readonly Remedy[] {
  const { lit, shade } = extremes[voice];
  // Least light of the hours over their brightest shade: the day's own change is in it.
  const contrast = lit.lux / shade.lux;
  const remedies: Remedy[] = [];
  const { best, keep } = dividerAdvice(design, voice, extremes, disturbance);
  if (!keep && best.degrees > 0) remedies.push({ kind: 'other divider', ohms: best.ohms, cell: best.cell });
  const { ratio, ohms } = hysteresisFacts(design, voice, disturbance);
  if (ohms !== null && contrast > 1 && ratio >= contrast)
    remedies.push({ kind: 'less hysteresis', ohms: 2 * ohms });
  if (contrast < COMFORTABLE) {
    const lamp = lampFor(lit.lux, 1 / contrast, COMFORTABLE, LAMP_METRES);
    if (lamp) remedies.push({ kind: 'local lamp', ...lamp, metres: LAMP_METRES });
    remedies.push({ kind: 'deeper shadow', left, neededLeft: (left * contrast) / COMFORTABLE });
  }
  return remedies;
}
