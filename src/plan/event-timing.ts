/**
 * What an event does in time, with the product's own cell: how late each voice answers, the shortest note and gap, the
 * fastest rate it follows, how much longer its notes are than the light, which voice comes first; and whether things
 * that should not gate do. Lights that jump; softer edges only delay. Seconds, hertz, lux.
 */
import { type CellSpeed, MovingCell, steadyConductance } from '../circuit/cell.ts';
import { type Design, thresholdFor } from '../design/design.ts';
import type { Room, RoomEvent } from '../design/room.ts';
import { type Hertz, type Lux, type Pair, pairOf, type Seconds, type VoiceId } from '../quantity/units.ts';
import { type EventTimes, eventTimes, shadeLeft } from './event.ts';
import { rippledBand } from './ripple-band.ts';
import { settingsFor } from './setting.ts';
import { type TripLux, tripLuxAt } from './trip-lux.ts';

/** A voice between two lights; null = it does not answer at all. */
export interface VoiceTiming {
  /** From the jump to lit light, and to shade, until the comparator tips. */
  readonly litDelay: Seconds;
  readonly shadeDelay: Seconds;
  /** Shortest light (or shade) that makes a note, from rest; shortest pause that ends one. */
  readonly shortestNote: Seconds;
  readonly shortestGap: Seconds;
  /** Light and shade in equal turns are followed up to here. */
  readonly fastestHertz: Hertz;
  /** A note lasts this much longer than what makes it; negative = shorter. */
  readonly longerBy: Seconds;
}

/** Of a design as it is set; null where lit or shaded light leaves the voice where it was. */
export function voiceTiming(design: Design, voice: VoiceId, lit: Lux, shade: Lux): VoiceTiming | null {
  const setting = settingsFor(design)[voice];
  const { upper, lower } = tripLuxAt(setting, thresholdFor(design, voice).trimmer.rotation, {
    ripple: null,
    noiseVolts: 0,
  });
  if (!(lit > upper && shade < lower)) return null;
  const { speed } = setting;
  const litDelay = crossSeconds(speed, shade, lit, upper);
  const shadeDelay = crossSeconds(speed, lit, shade, lower);
  const { soundsInLight } = setting;
  return {
    litDelay,
    shadeDelay,
    shortestNote: soundsInLight ? litDelay : shadeDelay,
    shortestGap: soundsInLight ? shadeDelay : litDelay,
    fastestHertz: fastest(speed, lit, shade, { upper, lower }),
    longerBy: soundsInLight ? shadeDelay - litDelay : litDelay - shadeDelay,
  };
}

/** Time a cell settled in one light takes, in another, to pass the conductance that a third would hold it at. */
export function crossSeconds(speed: CellSpeed, from: Lux, to: Lux, passing: Lux): Seconds {
  const cell = new MovingCell(speed, steadyConductance(speed.gamma, from));
  const target = steadyConductance(speed.gamma, passing);
  const rises = to > from;
  cell.setLight(to, to, to);
  let time = 0;
  for (let step = 0; step < 1e6; step++) {
    const length = cell.reach(1 / 3000);
    const [y0, m0] = [cell.y, cell.startSlope * length];
    cell.step(length);
    if (rises ? cell.y >= target : cell.y <= target)
      return time + length * shareAt(y0, cell.y, m0, cell.endSlope * length, target);
    time += length;
  }
  return Number.POSITIVE_INFINITY;
}

function shareAt(y0: number, y1: number, m0: number, m1: number, y: number): number {
  let [low, high] = [0, 1];
  const rises = y1 > y0;
  for (let turn = 0; turn < 50; turn++) {
    const x = (low + high) / 2;
    const rest = 1 - x;
    const at =
      y0 * (1 + 2 * x) * rest * rest + m0 * x * rest * rest + y1 * x * x * (3 - 2 * x) - m1 * x * x * rest;
    if (rises ? at >= y : at <= y) high = x;
    else low = x;
  }
  return high;
}

/** Halved in the logarithm: the quicker the turns, the less the conductance swings. */
function fastest(speed: CellSpeed, lit: Lux, shade: Lux, { upper, lower }: TripLux): Hertz {
  const depth = (lit - shade) / (lit + shade);
  const [start, stop] = [steadyConductance(speed.gamma, upper), steadyConductance(speed.gamma, lower)];
  const follows = (hertz: Hertz): boolean => {
    const { low, high } = rippledBand(speed, (lit + shade) / 2, { hertz, depth, shape: 'pulse', duty: 0.5 });
    return high > start && low < stop;
  };
  let [low, high] = [0.1, 1000];
  if (!follows(low)) return 0;
  while (high / low > 1.0005) {
    const middle = Math.sqrt(low * high);
    if (follows(middle)) low = middle;
    else high = middle;
  }
  return low;
}

export interface EventAnswer {
  readonly times: EventTimes;
  readonly voices: Pair<VoiceTiming | null>;
  /** Each voice plays (or pauses) once for every pass. */
  readonly works: Pair<boolean>;
  /** Length of what is heard for one pass; null where nothing is. */
  readonly heardSeconds: Pair<Seconds | null>;
  /** B later than A; negative = B first; null = both at once, or one does not answer. */
  readonly bAfterA: Seconds | null;
}

/** The room's event in its lit light, on a design as it is set. */
export function eventAnswer(
  design: Design,
  room: Pick<Room, 'event' | 'tube' | 'spacingMetres'>,
  lit: Pair<Lux>,
  shadeShare: Pair<number> = shadeLeft(room.event, room.tube),
): EventAnswer {
  const times = eventTimes(room.event, room.spacingMetres);
  const voices = pairOf((voice) => voiceTiming(design, voice, lit[voice], lit[voice] * shadeShare[voice]));
  const firstDelay = (timing: VoiceTiming) =>
    times.brings === 'light' ? timing.litDelay : timing.shadeDelay;
  const lastDelay = (timing: VoiceTiming) => (times.brings === 'light' ? timing.shadeDelay : timing.litDelay);
  const { A, B } = voices;
  return {
    times,
    voices,
    works: pairOf((voice) => {
      const timing = voices[voice];
      if (timing === null || times.seconds <= firstDelay(timing)) return false;
      return times.betweenSeconds === null || times.betweenSeconds > lastDelay(timing);
    }),
    heardSeconds: pairOf((voice) => {
      const timing = voices[voice];
      return timing === null ? null : Math.max(0, times.seconds + lastDelay(timing) - firstDelay(timing));
    }),
    bAfterA:
      A === null || B === null || times.apartSeconds === null
        ? null
        : times.apartSeconds + firstDelay(B) - firstDelay(A),
  };
}

/** Something that must not gate, against a voice: how far its shadow stays from doing so. */
export type PhantomVerdict =
  /** Even at its deepest the light stays this many times above what tips the voice. */
  | { readonly kind: 'too shallow'; readonly margin: number }
  /** Deep enough, but over before the cell has followed. */
  | { readonly kind: 'too short'; readonly seconds: Seconds; readonly neededSeconds: Seconds }
  | { readonly kind: 'gates'; readonly margin: number };

export function phantomVerdict(
  design: Design,
  room: Pick<Room, 'tube' | 'spacingMetres'>,
  phantom: RoomEvent,
  voice: VoiceId,
  lit: Lux,
): PhantomVerdict {
  const setting = settingsFor(design)[voice];
  const { lower } = tripLuxAt(setting, thresholdFor(design, voice).trimmer.rotation, {
    ripple: null,
    noiseVolts: 0,
  });
  const shade = lit * shadeLeft(phantom, room.tube)[voice];
  const margin = shade / lower;
  if (shade >= lower) return { kind: 'too shallow', margin };
  const { seconds, brings } = eventTimes(phantom, room.spacingMetres);
  const neededSeconds = crossSeconds(setting.speed, lit, shade, lower);
  return brings === 'shade' && seconds < neededSeconds
    ? { kind: 'too short', seconds, neededSeconds }
    : { kind: 'gates', margin };
}
