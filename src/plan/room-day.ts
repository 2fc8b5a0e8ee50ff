/** The day as one of its three ways is looked at: the recommended setting, the present one, or set again in between. */
import type { Design } from '../design/design.ts';
import type { Hours } from '../light/sun.ts';
import type { Lux, VoiceId } from '../quantity/units.ts';
import { type DayChart, type HourVerdict, tripsOf, verdictAt } from './day.ts';
import type { HourLevels, LuxBand } from './levels.ts';
import type { RoomAnswer } from './room-answer.ts';
import { chartWithResets, levelsNear, stretchDesigns } from './room-shown.ts';

export type DayWay = 'recommended' | 'now' | 'resets';

/**
 * The way chosen; without a choice, or where there is nothing to set again, the one that serves the day: one setting
 * where one holds, else set again in between.
 */
export function wayShown({ stretches }: Pick<RoomAnswer, 'stretches'>, chosen: DayWay | null): DayWay {
  const several = stretches.length > 1;
  if (chosen === null) return several ? 'resets' : 'recommended';
  return chosen === 'resets' && !several ? 'recommended' : chosen;
}

export function chartShown(answer: RoomAnswer, way: DayWay): DayChart {
  switch (way) {
    case 'recommended':
      return answer.chart;
    case 'now':
      return answer.chartNow;
    case 'resets':
      return chartWithResets(answer.set, answer.stretches, answer.levels, answer.disturbance);
  }
}

/** The design as it is set at an hour. */
function designAt(design: Design, answer: RoomAnswer, way: DayWay, hour: Hours): Design {
  if (way !== 'resets') return way === 'now' ? design : answer.set;
  const stretches = stretchDesigns(answer.set, answer.stretches);
  return stretches.findLast(({ from }) => hour >= from)?.design ?? answer.set;
}

/** A sensor's light through the day, with nothing in the way and under the event's shadow. */
export interface ShownLight {
  readonly hour: Hours;
  readonly lit: LuxBand;
  readonly shade: LuxBand;
  readonly known: boolean;
}

export function lightShown(levels: readonly HourLevels[], voice: VoiceId): readonly ShownLight[] {
  return levels.map(({ hour, lit, shadeShare, known }) => {
    const { low, middle, high } = lit[voice];
    const share = shadeShare[voice];
    const shade = { low: low * share, middle: middle * share, high: high * share };
    return { hour, lit: lit[voice], shade, known };
  });
}

/** Least and most lit light of the hours known. */
export function litSpan(light: readonly ShownLight[]): readonly [Lux, Lux] {
  const known = light.filter((one) => one.known);
  return [Math.min(...known.map(({ lit }) => lit.low)), Math.max(...known.map(({ lit }) => lit.high))];
}

/** Where a voice's threshold stands through the day, in lux of mean light. */
export function thresholdsShown(
  design: Design,
  answer: RoomAnswer,
  way: DayWay,
  voice: VoiceId,
): readonly { readonly from: Hours; readonly to: Hours; readonly upper: Lux; readonly lower: Lux }[] {
  const [from, to] = [answer.levels[0]!.hour, answer.levels.at(-1)!.hour];
  const stretches =
    way === 'resets'
      ? stretchDesigns(answer.set, answer.stretches)
      : [{ from, to, design: designAt(design, answer, way, from) }];
  return stretches.map((stretch) => ({
    from: stretch.from,
    to: stretch.to,
    ...tripsOf(stretch.design, answer.disturbance)[voice],
  }));
}

/** What was read at a sensor, lit and shaded, within the hours shown. */
export function readingsShown(
  { room }: Design,
  { levels }: RoomAnswer,
  voice: VoiceId,
): readonly { readonly hour: Hours; readonly lux: Lux }[] {
  const [first, last] = [levels[0]!.hour, levels.at(-1)!.hour];
  return room.readings.flatMap(({ hour, lux }) =>
    // Past midnight the clock of a late room runs on.
    [hour, hour + 24]
      .filter((at) => at >= first && at <= last)
      .flatMap((at) =>
        [lux[voice].lit, lux[voice].shaded].flatMap((level) =>
          level === null || level <= 0 ? [] : [{ hour: at, lux: level }],
        ),
      ),
  );
}

/** The light and the verdict of the hour nearest to the one asked for. */
export function momentAt(
  design: Design,
  answer: RoomAnswer,
  way: DayWay,
  voice: VoiceId,
  hour: Hours,
): { readonly light: ShownLight; readonly verdict: HourVerdict } {
  const level = levelsNear(answer.levels, hour);
  const turned = designAt(design, answer, way, level.hour);
  return {
    light: lightShown([level], voice)[0]!,
    verdict: verdictAt(tripsOf(turned, answer.disturbance), level),
  };
}
