/** The day of a room as it is shown: stretches of one state, sensors that have the same light, the light at an hour. */
import { type Command, placeCell, setDividerOhms, setVoiceValue, turnThreshold } from '../design/commands.ts';
import { type Design, trimmersOf } from '../design/design.ts';
import type { Room, RoomReading } from '../design/room.ts';
import { ROOM_MOST } from '../design/room-schema.ts';
import type { Hours } from '../light/sun.ts';
import { type Lux, type Pair, pairOf, type VoiceId, type Volts } from '../quantity/units.ts';
import type { EdgeReason } from '../words/room-facts.ts';
import { type DayChart, dayChart, type HourState, type HourVerdict, type Stretch } from './day.ts';
import type { DividerAdvice } from './divider.ts';
import type { HysteresisAdvice } from './hysteresis.ts';
import { type HourLevels, openHours } from './levels.ts';
import { type MeasuredDay, minutesOf } from './measured-day.ts';
import { testPointVolts } from './setting.ts';
import type { Disturbance } from './trip-lux.ts';
import type { Edge, Extremes, Recommended, WindowAnswer } from './window.ts';

/** A stretch of the day in one state. */
export interface Run {
  readonly from: Hours;
  readonly to: Hours;
  readonly state: HourState;
  /** One moment of it that tells why; null where none of the hours asked for falls into it. */
  readonly verdict: HourVerdict | null;
}

/** The day as stretches of one state each, in order. */
export function runsOf({ verdicts, changes }: Pick<DayChart, 'verdicts' | 'changes'>): readonly Run[] {
  const first = verdicts[0];
  const last = verdicts.at(-1);
  if (!first || !last) return [];
  const bounds = [first.hour, ...changes.map(({ hour }) => hour), last.hour];
  const states = [first.state, ...changes.map(({ to }) => to)];
  return states.map((state, i) => {
    const [from, to] = [bounds[i]!, bounds[i + 1]!];
    const own = verdicts.filter(
      ({ hour, state: here }) => here === state && hour >= from - 1e-9 && hour <= to + 1e-9,
    );
    return { from, to, state, verdict: own[own.length >> 1] ?? null };
  });
}

/**
 * The day with a setting of its own for each stretch: stretches that have none keep the one before. Shares are those of
 * the hours asked for: the hour at which a stretch ends is judged by the next one's setting.
 */
export function chartWithResets(
  set: Design,
  stretches: readonly Stretch[],
  levels: readonly HourLevels[],
  disturbance: Disturbance,
): DayChart {
  const pieces = stretchDesigns(set, stretches).map(({ from, to, design }, i, { length }) => {
    const last = i === length - 1;
    const own = levels.filter(({ hour }) => hour >= from - 1e-9 && (last || hour < to - 1e-9));
    // Nothing is played any more at the moment of closing: it goes with the time before.
    const played = last && own.length > 2 ? own.slice(0, -1) : own;
    const chart = dayChart(design, played, disturbance);
    const closing = own.slice(played.length).map(({ hour }) => ({ ...chart.verdicts.at(-1)!, hour }));
    return { from, chart: { ...chart, verdicts: [...chart.verdicts, ...closing] } };
  });
  const verdicts = pieces.flatMap(({ chart }) => chart.verdicts);
  const known = verdicts.filter(({ state }) => state !== 'unknown').length;
  const share = (of: HourState) =>
    known > 0 ? verdicts.filter(({ state }) => state === of).length / known : 0;
  return {
    verdicts,
    changes: pieces.flatMap(({ from, chart }, i) => {
      const before = pieces[i - 1]?.chart.verdicts.at(-1);
      const here = chart.verdicts[0];
      const joint =
        before && here && before.state !== here.state
          ? [{ hour: from, from: before.state, to: here.state, reason: here.reason ?? before.reason }]
          : [];
      return [...joint, ...chart.changes];
    }),
    rightShare: share('right'),
    marginalShare: share('marginal'),
    wrongShare: share('wrong'),
    knownShare: verdicts.length > 0 ? known / verdicts.length : 0,
  };
}

/** The design in each stretch of the day. */
export function stretchDesigns(
  set: Design,
  stretches: readonly Stretch[],
): readonly { readonly from: Hours; readonly to: Hours; readonly design: Design }[] {
  let design = set;
  return stretches.map(({ from, to, settings }) => {
    for (const [trimmer, { rotation }] of Object.entries(settings ?? {}))
      design = turnThreshold(trimmer as VoiceId, rotation)(design);
    return { from, to, design };
  });
}

/** The recommended place of an answer's trimmer, or the one nearest to being right. */
export function adviceOf(answer: WindowAnswer): Recommended {
  return answer.kind === 'window' ? answer.recommended : answer.nearest;
}

/** Both edges of a window with the volts a meter reads at the test point there, both voices lit; the lower first. */
export function edgesOf(
  design: Design,
  { window: { trimmer, low, high } }: WindowAnswer,
): readonly [EdgeRead, EdgeRead] {
  const lit = pairOf((voice) => design.voices[voice].polarity === 'light');
  const read = ({ rotation, reason }: Edge): EdgeRead => ({
    volts: testPointVolts(design, trimmer, Math.min(1, Math.max(0, rotation)), lit),
    reason,
  });
  return [read(low), read(high)];
}

export interface EdgeRead {
  readonly volts: Volts;
  readonly reason: EdgeReason;
}

/** Lit light over shaded light where the two are nearest in the day, of both voices the less. */
export function contrastOf({ A, B }: Pair<Extremes>): number {
  // No light at all is no contrast.
  const of = ({ lit, shade }: Extremes): number => (lit.lux === 0 ? 1 : lit.lux / shade.lux);
  return Math.min(of(A), of(B));
}

/** The levels of the hour nearest to the one asked for; at least one hour. */
export function levelsNear(levels: readonly HourLevels[], hour: Hours): HourLevels {
  return levels.reduce((best, next) =>
    Math.abs(next.hour - hour) < Math.abs(best.hour - hour) ? next : best,
  );
}

/** What a hand-held meter does not tell apart. */
const ALIKE = 0.03;

/** Whether both sensors have the same light and shade. */
export function sensorsAlike(levels: readonly HourLevels[]): boolean {
  const near = (a: number, b: number) => Math.abs(a - b) <= ALIKE * Math.max(a, b);
  return levels.every(
    ({ lit, shadeShare }) => near(lit.A.middle, lit.B.middle) && near(shadeShare.A, shadeShare.B),
  );
}

/** The hour a next reading is likely for: on opening, then two hours after the last one, before closing. */
export function nextReadingHour(room: Pick<Room, 'readings' | 'opens' | 'closes'>): Hours {
  const last = room.readings.at(-1);
  if (last === undefined) return room.opens;
  const [opens, closes] = openHours(room);
  const next = last.hour + 2;
  return (next > opens && next <= closes ? next : last.hour) % 24;
}

/** One reading for each open hour that a recording covers: the middle one of its minutes. Never more than are kept. */
export function readingsFrom(day: MeasuredDay, room: Room): readonly RoomReading[] {
  const whole = { A: 1, B: 1 };
  const [opens, closes] = openHours(room);
  const readings: RoomReading[] = [];
  for (let from = opens; from < closes && readings.length < ROOM_MOST.readings; from++) {
    const known = minutesOf(day, whole, [from, Math.min(closes, from + 1)]).filter((minute) => minute.known);
    if (known.length === 0) continue;
    const lit = pairOf((voice) => middleOf(known.map((minute) => minute.lit[voice].middle)));
    readings.push({
      hour: ((from + Math.min(closes, from + 1)) / 2) % 24,
      lux: pairOf((voice) => ({ lit: lit[voice], shaded: null, dark: null })),
    });
  }
  return readings;
}

function middleOf(values: readonly Lux[]): Lux {
  return values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;
}

/** Every trimmer of the design where another one has it. */
export const setAs =
  (set: Design): Command =>
  (design) =>
    trimmersOf(design).reduce(
      (turned, id) => turnThreshold(id, set.threshold.trimmers[id].trimmer.rotation)(turned),
      design,
    );

/** A thousandth of the turn is no turn. */
const TURNED = 1e-3;

/** Whether the trimmers stand where another design has them, as far as a screwdriver tells. */
export function isSetAs(design: Design, set: Design): boolean {
  return trimmersOf(design).every(
    (id) =>
      Math.abs(design.threshold.trimmers[id].trimmer.rotation - set.threshold.trimmers[id].trimmer.rotation) <
      TURNED,
  );
}

/** Hysteresis and divider of a voice as advised; what is well as it is stays. */
export const fitForRoom =
  (voice: VoiceId, hysteresis: HysteresisAdvice, { keep, best }: DividerAdvice): Command =>
  (design) => {
    const calmed =
      hysteresis.kind === 'fit'
        ? setVoiceValue(voice, 'hysteresisOhms', hysteresis.fitted.ohms)(design)
        : design;
    return keep ? calmed : setDividerOhms(voice, best.ohms)(placeCell(voice, best.cell)(calmed));
  };
