/**
 * Things to hear, as light the player already takes: the day in a minute, the event at the edge of the window, and a
 * lamp's chatter that goes as hysteresis grows. Seconds, lux.
 */
import { setVoiceValue } from '../design/commands.ts';
import type { Design } from '../design/design.ts';
import { type LightProgram, type PointsProgram, underLamp } from '../light/program.ts';
import type { Ripple } from '../light/ripple.ts';
import {
  type Lux,
  type Ohms,
  type Pair,
  pairOf,
  type Seconds,
  VOICES,
  type VoiceId,
} from '../quantity/units.ts';
import type { HourLevels } from './levels.ts';
import type { TripLux } from './trip-lux.ts';

interface Row {
  readonly time: Seconds;
  readonly lux: Pair<Lux>;
}

function programOf(rows: readonly Row[]): PointsProgram {
  return {
    kind: 'points',
    times: Float64Array.from(rows, ({ time }) => time),
    lux: pairOf((voice) => Float64Array.from(rows, ({ lux }) => lux[voice])),
  };
}

/** Seconds of an edge of a shadow: soft enough for no click that is not the circuit's. */
const EDGE: Seconds = 0.03;

/**
 * The hours given in `seconds` (a minute unless told), with the event once every `everySeconds`: a shadow over A, then
 * one over B, each a quarter of that long. Which hour it is at a time: `hourInDay`.
 */
export function dayInAMinute(
  levels: readonly HourLevels[],
  { seconds = 60, everySeconds = 2 }: { readonly seconds?: Seconds; readonly everySeconds?: Seconds } = {},
): PointsProgram {
  const at = (time: Seconds, shaded: VoiceId | null): Row => {
    const place = Math.min(1, Math.max(0, time / seconds)) * (levels.length - 1) || 0;
    const before = levels[Math.floor(place)]!;
    const after = levels[Math.min(levels.length - 1, Math.floor(place) + 1)]!;
    const share = place - Math.floor(place);
    return {
      time,
      lux: pairOf((voice) => {
        const lux = before.lit[voice].middle * (1 - share) + after.lit[voice].middle * share;
        return lux * (voice === shaded ? before.shadeShare[voice] : 1);
      }),
    };
  };
  const rows: Row[] = [at(0, null)];
  const long = everySeconds / 4;
  for (let start = everySeconds / 4; start + 2 * long < seconds; start += everySeconds)
    for (const [i, voice] of VOICES.entries()) {
      const begin = start + i * long;
      rows.push(
        at(begin, null),
        at(begin + EDGE, voice),
        at(begin + long - 2 * EDGE, voice),
        at(begin + long - EDGE, null),
      );
    }
  rows.push(at(seconds, null));
  return programOf(rows);
}

/** The hour that sounds at a time of the day in a minute. */
export function hourInDay(levels: readonly HourLevels[], time: Seconds, seconds: Seconds = 60): number {
  const [first, last] = [levels[0]!.hour, levels.at(-1)!.hour];
  return first + (last - first) * Math.min(1, Math.max(0, time / seconds));
}

/** Four passes well inside the window, then four at its very edge: lit light just above, shade just below the trip points. */
export function eventAtTheMargin(
  trips: Pair<TripLux>,
  lit: Pair<Lux>,
  shadeShare: Pair<number>,
  margin = 1.03,
): PointsProgram {
  const rows: Row[] = [];
  let time = 0;
  const hold = (lux: Pair<Lux>, length: Seconds) => {
    rows.push({ time: time + EDGE, lux }, { time: time + length, lux });
    time += length;
  };
  const good = { lit, shade: pairOf((voice) => lit[voice] * shadeShare[voice]) };
  const bare = {
    lit: pairOf((voice) => trips[voice].upper * margin),
    shade: pairOf((voice) => trips[voice].lower / margin),
  };
  for (const { lit: light, shade } of [good, bare])
    for (let pass = 0; pass < 4; pass++) {
      hold(light, 0.7);
      hold(shade, 0.5);
    }
  hold(lit, 0.7);
  return programOf([{ time: 0, lux: lit }, ...rows]);
}

/** One slow pass through the trip points under the lamp, again and again, each time with more hysteresis. */
export interface ChatterShow {
  readonly program: LightProgram;
  readonly seconds: Seconds;
  /** From when each resistor is in; null = none. The designs differ in that alone. */
  readonly steps: readonly {
    readonly startsAt: Seconds;
    readonly hysteresisOhms: Ohms | null;
    readonly design: Design;
  }[];
}

export function chatterShow(
  design: Design,
  trips: Pair<TripLux>,
  ripple: Ripple | null,
  resistors: readonly (Ohms | null)[] = [null, 2.2e6, 680_000, 270_000],
): ChatterShow {
  const each: Seconds = 4;
  const rows = resistors.flatMap((_ohms, i): Row[] => {
    const level = (share: number) =>
      pairOf((voice) => {
        const middle = Math.sqrt(trips[voice].upper * trips[voice].lower);
        return middle * share;
      });
    const start = i * each;
    return [
      { time: start, lux: level(0.6) },
      { time: start + 0.5, lux: level(0.6) },
      { time: start + each / 2, lux: level(1.6) },
      { time: start + each / 2 + 0.5, lux: level(1.6) },
      { time: start + each - 0.01, lux: level(0.6) },
    ];
  });
  const withOhms = (ohms: Ohms | null): Design =>
    VOICES.reduce<Design>((next, voice) => setVoiceValue(voice, 'hysteresisOhms', ohms)(next), design);
  return {
    program: underLamp(programOf(rows), ripple),
    seconds: resistors.length * each,
    steps: resistors.map((hysteresisOhms, i) => ({
      startsAt: i * each,
      hysteresisOhms,
      design: withOhms(hysteresisOhms),
    })),
  };
}
