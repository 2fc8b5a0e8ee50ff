/**
 * How long a setting holds: every hour of the day right, marginal or wrong, with the reason, from modelled levels or
 * from a recording; when to set again; and the share of the open time that is right. Hours, lux, shares.
 */
import { type Design, thresholdFor, trimmersOf } from '../design/design.ts';
import type { Hours } from '../light/sun.ts';
import { type Fraction, type Pair, pairOf, VOICES, type VoiceId } from '../quantity/units.ts';
import type { HourReason } from '../words/room-facts.ts';
import { type HourLevels, levelsAt, type RoomLight } from './levels.ts';
import { settingsFor } from './setting.ts';
import { type Disturbance, type TripLux, tripLuxAt } from './trip-lux.ts';
import { extremesOf, type Recommended, voicesOn, windowOf, windowsFor } from './window.ts';

/** Right = the whole band of light gates rightly; marginal = its middle does; unknown = not recorded. */
export type HourState = 'right' | 'marginal' | 'wrong' | 'unknown';

export interface HourVerdict {
  readonly hour: Hours;
  readonly state: HourState;
  /** What goes wrong first; null when right. */
  readonly reason: HourReason | null;
}

/** The trip points of both voices of a design as it is set. */
export function tripsOf(design: Design, disturbance: Disturbance): Pair<TripLux> {
  const settings = settingsFor(design);
  return pairOf((voice) =>
    tripLuxAt(settings[voice], thresholdFor(design, voice).trimmer.rotation, disturbance),
  );
}

/** Whether both voices gate rightly at an hour's levels. */
export function verdictAt(trips: Pair<TripLux>, levels: HourLevels): HourVerdict {
  const { hour, lit, shadeShare, known } = levels;
  if (!known) return { hour, state: 'unknown', reason: { kind: 'not recorded' } };
  let state: HourState = 'right';
  let reason: HourReason | null = null;
  const note = (next: 'marginal' | 'wrong', why: HourReason) => {
    if (state === 'right' || (state === 'marginal' && next === 'wrong')) {
      state = next;
      reason = why;
    }
  };
  for (const voice of VOICES) {
    const { upper, lower } = trips[voice];
    const { low, middle, high } = lit[voice];
    // Where no shade does, none is dark enough, even one that leaves nothing.
    const mostLux = lower === 0 ? 0 : lower / shadeShare[voice];
    if (!(low > upper))
      note(middle > upper ? 'marginal' : 'wrong', { kind: 'too dark', voice, lux: low, neededLux: upper });
    if (!(high < mostLux))
      note(middle < mostLux ? 'marginal' : 'wrong', { kind: 'too bright', voice, lux: high, mostLux });
  }
  return { hour, state, reason };
}

export interface DayChange {
  readonly hour: Hours;
  readonly from: HourState;
  readonly to: HourState;
  readonly reason: HourReason | null;
}

export interface DayChart {
  readonly verdicts: readonly HourVerdict[];
  readonly changes: readonly DayChange[];
  /** Of the time that is known. */
  readonly rightShare: Fraction;
  readonly marginalShare: Fraction;
  readonly wrongShare: Fraction;
  /** Of all the time asked for. */
  readonly knownShare: Fraction;
}

/** The chart of a design as it is set. With the room's light given, the changes are placed to the second. */
export function dayChart(
  design: Design,
  levels: readonly HourLevels[],
  disturbance: Disturbance,
  light: RoomLight | null = null,
): DayChart {
  const trips = tripsOf(design, disturbance);
  const verdicts = levels.map((each) => verdictAt(trips, each));
  const changes: DayChange[] = [];
  const spent: Record<HourState, number> = { right: 0, marginal: 0, wrong: 0, unknown: 0 };
  for (let i = 1; i < verdicts.length; i++) {
    const [before, after] = [verdicts[i - 1]!, verdicts[i]!];
    const middle =
      before.state === after.state || light === null
        ? (before.hour + after.hour) / 2
        : changeBetween(trips, light, before, after);
    spent[before.state] += middle - before.hour;
    spent[after.state] += after.hour - middle;
    if (before.state !== after.state)
      changes.push({
        hour: light === null ? after.hour : middle,
        from: before.state,
        to: after.state,
        reason: after.reason ?? before.reason,
      });
  }
  const known = spent.right + spent.marginal + spent.wrong;
  const share = (time: number) => (known > 0 ? time / known : 0);
  return {
    verdicts,
    changes,
    rightShare: share(spent.right),
    marginalShare: share(spent.marginal),
    wrongShare: share(spent.wrong),
    knownShare: known + spent.unknown > 0 ? known / (known + spent.unknown) : 0,
  };
}

/** Halves an interval until the hour of the change is known to a second. */
function changeBetween(
  trips: Pair<TripLux>,
  light: RoomLight,
  before: HourVerdict,
  after: HourVerdict,
): Hours {
  let [low, high] = [before.hour, after.hour];
  while (high - low > 1 / 3600) {
    const middle = (low + high) / 2;
    if (verdictAt(trips, levelsAt(light, middle)).state === before.state) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** A stretch of the day with one setting for each trimmer; null = in these hours no setting will do. */
export interface Stretch {
  readonly from: Hours;
  readonly to: Hours;
  readonly settings: Readonly<Partial<Record<VoiceId, Recommended>>> | null;
}

/** As few settings as the day needs: each holds for as long as one can. The whole band of light counts. */
export function resetPlan(
  design: Design,
  levels: readonly HourLevels[],
  disturbance: Disturbance,
): readonly Stretch[] {
  const settings = settingsFor(design);
  const suits = (hours: readonly HourLevels[]): boolean => {
    const extremes = extremesOf(hours);
    return trimmersOf(design).every(
      (trimmer) =>
        !windowOf(design, trimmer, voicesOn(design, trimmer), settings, extremes, disturbance).isEmpty,
    );
  };
  const known = levels.filter((each) => each.known);
  const stretches: Stretch[] = [];
  let start = 0;
  // Nobody sets anything at the moment of closing.
  while (start < known.length - 1 || stretches.length === 0) {
    const begin = known[start]!;
    let end = start + 1;
    const works = suits([begin]);
    while (end < known.length && (works ? suits(known.slice(start, end + 1)) : !suits([known[end]!]))) end++;
    const hours = known.slice(start, end);
    stretches.push({
      from: begin.hour,
      to: (known[end] ?? known[end - 1]!).hour,
      settings: works ? settingsOver(design, hours, disturbance) : null,
    });
    start = end;
  }
  return stretches;
}

function settingsOver(
  design: Design,
  hours: readonly HourLevels[],
  disturbance: Disturbance,
): Readonly<Partial<Record<VoiceId, Recommended>>> {
  const answers = windowsFor(design, extremesOf(hours), disturbance);
  return Object.fromEntries(
    answers.flatMap((answer) =>
      answer.kind === 'window' ? [[answer.window.trimmer, answer.recommended] as const] : [],
    ),
  );
}
