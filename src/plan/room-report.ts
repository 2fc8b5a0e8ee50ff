/**
 * What the place Room works out while the page goes on: hysteresis and divider, the event and what must not count as
 * one, one trimmer for both, the batch, and the recorded day. In steps, so that it can be stopped.
 */
import type { Design } from '../design/design.ts';
import type { Hours } from '../light/sun.ts';
import {
  type Candela,
  type Fraction,
  type Hertz,
  type Lux,
  type Metres,
  type Pair,
  pairOf,
  VOICES,
  type VoiceId,
} from '../quantity/units.ts';
import { type BatchComparison, batchVerdict, drawKits, type KitOutcome } from './batch-room.ts';
import { type DividerAdvice, dividerAdvice } from './divider.ts';
import { type EventAnswer, eventAnswer, type PhantomVerdict, phantomVerdict } from './event-timing.ts';
import { type Gain, lampFor, lampGain, tubeGain } from './help.ts';
import { type HysteresisAdvice, hysteresisAdvice } from './hysteresis.ts';
import { type HourLevels, openHours } from './levels.ts';
import { type LogVerdict, logVerdict, type MeasuredDay } from './measured-day.ts';
import { levelsNear } from './room-shown.ts';
import type { Disturbance } from './trip-lux.ts';
import { type Extremes, sharedVerdict } from './window.ts';

export interface RoomTask {
  readonly design: Design;
  /** The design with its trimmers where they are recommended. */
  readonly set: Design;
  readonly levels: readonly HourLevels[];
  readonly extremes: Pair<Extremes>;
  readonly disturbance: Disturbance;
  readonly day: MeasuredDay | null;
  /** The event is tried in the light of this hour. */
  readonly settingUp: Hours;
}

export interface RoomProgress {
  readonly stage: 'parts' | 'kits' | 'log';
  /** Of the stage. */
  readonly share: Fraction;
}

export interface RoomReport {
  readonly kind: 'room';
  readonly hysteresis: Pair<HysteresisAdvice>;
  readonly dividers: Pair<DividerAdvice>;
  /** Whether one trimmer can serve both sensors. */
  readonly canShare: boolean;
  readonly event: EventAnswer;
  /** One for each phantom of the room. */
  readonly phantoms: readonly Pair<PhantomVerdict>[];
  readonly batch: BatchComparison;
  readonly gains: Gains;
  /** Under the recommended setting; null without a recording. */
  readonly log: LogVerdict | null;
}

/** What a tube around each sensor and a lamp of its own would do to the contrast of the worse sensor. */
export interface Gains {
  /** Null where there is a tube already, or the event is no hand straight above. */
  readonly tube: (Gain & { readonly boreMetres: Metres; readonly depthMetres: Metres }) | null;
  /** Null where the contrast is good enough as it is. */
  readonly lamp: (Gain & { readonly lux: Lux; readonly candela: Candela; readonly metres: Metres }) | null;
}

const KITS_AT_ONCE = 250;
/** A pen's barrel, and a small lamp on a stalk; a contrast that leaves room for hysteresis and spread (common practice). */
const TUBE = { boreRadiusMetres: 0.005, depthMetres: 0.03 } as const;
const LAMP_METRES: Metres = 0.3;
const COMFORTABLE = 4;

export function* roomReport(task: RoomTask): Generator<RoomProgress, RoomReport> {
  const { design, set, levels, extremes, disturbance, day, settingUp } = task;
  const hysteresis: Partial<Record<VoiceId, HysteresisAdvice>> = {};
  const dividers: Partial<Record<VoiceId, DividerAdvice>> = {};
  for (const [i, voice] of VOICES.entries()) {
    yield { stage: 'parts', share: i / VOICES.length };
    hysteresis[voice] = hysteresisAdvice(set, voice, disturbance, contrastFor(task, voice));
    dividers[voice] = dividerAdvice(design, voice, extremes, disturbance);
  }
  const { canShare } = sharedVerdict(design, extremes, disturbance);
  const here = levelsNear(levels, settingUp);
  const lit = pairOf((voice): Lux => here.lit[voice].middle);
  const event = eventAnswer(set, design.room, lit, here.shadeShare);
  const phantoms = design.room.phantoms.map((phantom) =>
    pairOf((voice) => phantomVerdict(set, design.room, phantom, voice, lit[voice])),
  );
  const unsorted = batchVerdict(yield* drawn(task, 1));
  const sorted = batchVerdict(yield* drawn(task, 3));
  if (day !== null) yield { stage: 'log', share: 0 };
  return {
    kind: 'room',
    hysteresis: hysteresis as Pair<HysteresisAdvice>,
    dividers: dividers as Pair<DividerAdvice>,
    canShare,
    event,
    phantoms,
    batch: { unsorted, sorted },
    gains: gainsFor(design, here, lit),
    log: day === null ? null : logVerdict(set, day, here.shadeShare, openHours(design.room), disturbance),
  };
}

/**
 * What the hysteresis must stay below: the day's least light over its brightest shade; where these cross, and the day
 * needs several settings, the event's own contrast.
 */
function contrastFor({ extremes, levels }: RoomTask, voice: VoiceId): number {
  const { lit, shade } = extremes[voice];
  const whole = lit.lux / shade.lux;
  return whole > 1 ? whole : 1 / Math.max(...levels.map(({ shadeShare }) => shadeShare[voice]));
}

/** The batch, its cells sorted into so many bins; the unsorted one is the first half of the work. */
function* drawn(
  { design, extremes, disturbance }: RoomTask,
  bins: 1 | 3,
): Generator<RoomProgress, readonly KitOutcome[]> {
  const { batch } = design.room;
  const kits: KitOutcome[] = [];
  while (kits.length < batch.kits) {
    const count = Math.min(KITS_AT_ONCE, Math.ceil(batch.kits - kits.length));
    kits.push(...drawKits(design, batch, extremes, disturbance, kits.length, count, { bins }));
    yield { stage: 'kits', share: (bins === 1 ? 0 : 0.5) + (0.5 * kits.length) / batch.kits };
  }
  return kits;
}

function gainsFor({ room }: Design, { shadeShare }: HourLevels, lit: Pair<Lux>): Gains {
  const worse = shadeShare.A >= shadeShare.B ? 'A' : 'B';
  const lamp = lampFor(lit[worse], shadeShare[worse], COMFORTABLE, LAMP_METRES);
  return {
    tube:
      room.tube === null && room.event.kind === 'hand'
        ? {
            ...tubeGain(room, TUBE),
            boreMetres: 2 * TUBE.boreRadiusMetres,
            depthMetres: TUBE.depthMetres,
          }
        : null,
    lamp: lamp && {
      ...lampGain(lit[worse], shadeShare[worse], lamp.lux),
      ...lamp,
      metres: LAMP_METRES,
    },
  };
}

/** Of both voices, the one that chatters more. */
export function worstChatterOf({ A, B }: Pair<HysteresisAdvice>): Hertz {
  return Math.max(A.now.chatterHertz, B.now.chatterHertz);
}

/** How many of the things that must not gate do so at one voice or both. */
export function gatingPhantoms(phantoms: RoomReport['phantoms']): number {
  return phantoms.filter(({ A, B }) => A.kind === 'gates' || B.kind === 'gates').length;
}
