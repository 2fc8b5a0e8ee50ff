/**
 * What the place Room works out while the page goes on: when to set again, hysteresis and divider, the event and what
 * must not count as one, what would help, the batch, and the recorded day. In steps, so that it can be stopped.
 */
import { arrangeThreshold, turnThreshold } from '../design/commands.ts';
import type { Design } from '../design/design.ts';
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
import type { Remedy } from '../words/room-facts.ts';
import { type BatchComparison, batchVerdict, drawKits, type KitOutcome } from './batch-room.ts';
import { dayChart, resetPlan, type Stretch } from './day.ts';
import { type DividerAdvice, dividerAdvice } from './divider.ts';
import { type EventAnswer, eventAnswer, type PhantomVerdict, phantomVerdict } from './event-timing.ts';
import { lampFor, tubeGain } from './help.ts';
import { type HysteresisAdvice, hysteresisAdvice } from './hysteresis.ts';
import type { HourLevels } from './levels.ts';
import { type LogVerdict, logVerdict } from './measured-day.ts';
import { contrastOf, levelsNear, type RoomQuestion, type RoomSetting, roomAnswer } from './room-answer.ts';
import type { Disturbance } from './trip-lux.ts';
import { windowsFor } from './window.ts';

export interface RoomTask extends RoomQuestion {
  /** When the instrument is set up: the light of that hour is what the event is tried in. */
  readonly settingUp: Hours;
}

export interface RoomProgress {
  readonly stage: 'hours' | 'parts' | 'kits' | 'log';
  /** Of the stage. */
  readonly share: Fraction;
}

export interface RoomReport {
  readonly kind: 'room';
  readonly resets: readonly Stretch[];
  /** Of the known time, with every re-set done. */
  readonly resetShares: { readonly right: Fraction; readonly marginal: Fraction; readonly wrong: Fraction };
  readonly hysteresis: Pair<HysteresisAdvice>;
  readonly dividers: Pair<DividerAdvice>;
  /** Whether there is a setting with one trimmer for both, and with one each. */
  readonly sharing: { readonly shared: boolean; readonly each: boolean };
  readonly event: EventAnswer;
  /** One for each phantom of the room. */
  readonly phantoms: readonly Pair<PhantomVerdict>[];
  readonly remedies: readonly Remedy[];
  readonly batch: BatchComparison;
  /** Under the advised setting; null without a recording. */
  readonly log: LogVerdict | null;
}

const KITS_AT_ONCE = 250;
/** A contrast that leaves room for everything: three times the light that is needed. */
const GOOD_CONTRAST = 3;
const LAMP_METRES = 0.5;
const TUBE = { boreRadiusMetres: 0.006, depthMetres: 0.03 } as const;

/** Null result = no light is known. */
export function* roomReport(task: RoomTask): Generator<RoomProgress, RoomReport> {
  const { design, day, settingUp } = task;
  const answer = roomAnswer(task);
  const { setting, levels, disturbance } = answer;
  if (setting === null) throw new RangeError('No light is known in this room.');
  const { advised, extremes } = setting;
  yield { stage: 'hours', share: 0 };
  const resets = resetPlan(design, levels, disturbance);
  const resetShares = sharesWith(design, resets, levels, disturbance);
  yield { stage: 'parts', share: 0 };
  const contrast = pairOf((voice) => extremes[voice].lit.lux / extremes[voice].shade.lux);
  const hysteresis: Record<VoiceId, HysteresisAdvice | null> = { A: null, B: null };
  const dividers: Record<VoiceId, DividerAdvice | null> = { A: null, B: null };
  for (const voice of VOICES) {
    hysteresis[voice] = hysteresisAdvice(advised, voice, disturbance, contrast[voice]);
    yield { stage: 'parts', share: voice === 'A' ? 0.25 : 0.75 };
    dividers[voice] = dividerAdvice(design, voice, extremes, disturbance);
    yield { stage: 'parts', share: voice === 'A' ? 0.5 : 1 };
  }
  const works = (arrangement: 'shared' | 'each') =>
    windowsFor(arrangeThreshold(arrangement)(design), extremes, disturbance).every(
      ({ kind }) => kind === 'window',
    );
  const sharing = { shared: works('shared'), each: works('each') };
  const here = levelsNear(levels, settingUp);
  const lit = pairOf((voice): Lux => here.lit[voice].middle);
  const event = eventAnswer(advised, design.room, lit, here.shadeShare);
  const phantoms = design.room.phantoms.map((phantom) =>
    pairOf((voice) => phantomVerdict(advised, design.room, phantom, voice, lit[voice])),
  );
  const draw = function* (bins: number, from: Fraction): Generator<RoomProgress, readonly KitOutcome[]> {
    const { batch } = design.room;
    const kits: KitOutcome[] = [];
    while (kits.length < batch.kits) {
      const count = Math.min(KITS_AT_ONCE, batch.kits - kits.length);
      kits.push(...drawKits(design, batch, extremes, disturbance, kits.length, count, { bins }));
      yield { stage: 'kits', share: from + (0.5 * kits.length) / batch.kits };
    }
    return kits;
  };
  const unsorted = batchVerdict(yield* draw(1, 0));
  const sorted = batchVerdict(yield* draw(3, 0.5));
  if (day !== null) yield { stage: 'log', share: 0 };
  const log = day === null ? null : logVerdict(advised, day, here.shadeShare, answer.hours, disturbance);
  return {
    kind: 'room',
    resets,
    resetShares,
    hysteresis: { A: hysteresis.A!, B: hysteresis.B! },
    dividers: { A: dividers.A!, B: dividers.B! },
    sharing,
    event,
    phantoms,
    remedies: remediesFor(design, setting, { resets, sharing, dividers: { A: dividers.A!, B: dividers.B! } }),
    batch: { unsorted, sorted },
    log,
  };
}

/** The day as stretches, each with the trimmers at its own setting; where there is none, at the design's. */
export function stretchDesigns(
  design: Design,
  resets: readonly Stretch[],
): readonly { readonly from: Hours; readonly to: Hours; readonly design: Design }[] {
  return resets.map(({ from, to, settings }) => ({
    from,
    to,
    design: Object.entries(settings ?? {}).reduce(
      (turned, [trimmer, at]) => turnThreshold(trimmer as VoiceId, at.rotation)(turned),
      design,
    ),
  }));
}

function sharesWith(
  design: Design,
  resets: readonly Stretch[],
  levels: readonly HourLevels[],
  disturbance: Disturbance,
): RoomReport['resetShares'] {
  let [right, marginal, wrong, known]: [Seconds, Seconds, Seconds, Seconds] = [0, 0, 0, 0];
  for (const { from, to, design: turned } of stretchDesigns(design, resets)) {
    const own = levels.filter(({ hour }) => hour >= from - 1e-9 && hour <= to + 1e-9);
    if (own.length === 0) continue;
    const chart = dayChart(turned, own, disturbance);
    const long = (to - from) * chart.knownShare;
    right += chart.rightShare * long;
    marginal += chart.marginalShare * long;
    wrong += chart.wrongShare * long;
    known += long;
  }
  const share = (time: number) => (known > 0 ? time / known : 0);
  return { right: share(right), marginal: share(marginal), wrong: share(wrong) };
}

/** What would help, the least trouble first; nothing where there is a window. */
export function remediesFor(
  design: Design,
  { answers, extremes, chart }: Pick<RoomSetting, 'answers' | 'extremes' | 'chart'>,
  {
    resets,
    sharing,
    dividers,
  }: Pick<RoomReport, 'resets' | 'sharing'> & { readonly dividers: Pair<DividerAdvice> },
): readonly Remedy[] {
  if (answers.every(({ kind }) => kind === 'window') && chart.wrongShare === 0) return [];
  const remedies: Remedy[] = [];
  if (resets.length > 1 && resets.every(({ settings }) => settings !== null))
    remedies.push({ kind: 'reset in between', hours: resets.slice(1).map(({ from }) => from) });
  if (design.threshold.arrangement === 'shared' && !sharing.shared && sharing.each)
    remedies.push({ kind: 'own trimmers' });
  const contrast = contrastOf(extremes);
  const advised = VOICES.map((voice) => dividers[voice]).find(({ keep }) => !keep);
  if (advised && advised.best.degrees > 0)
    remedies.push({ kind: 'other divider', ohms: advised.best.ohms, cell: advised.best.cell });
  const { event, tube } = design.room;
  const gain = tube === null && event.kind === 'hand' ? tubeGain(design.room, TUBE) : null;
  if (gain !== null && gain.contrastThen > 1.2 * gain.contrastNow)
    remedies.push({
      kind: 'tube',
      boreMetres: 2 * TUBE.boreRadiusMetres,
      depthMetres: TUBE.depthMetres,
      left: gain.litShare,
    });
  const worse = extremes.A.lit.lux / extremes.A.shade.lux <= extremes.B.lit.lux / extremes.B.shade.lux;
  const { lit, shade } = extremes[worse ? 'A' : 'B'];
  const lamp = lampFor(lit.lux, shade.lux / lit.lux, GOOD_CONTRAST, LAMP_METRES);
  if (lamp !== null) remedies.push({ kind: 'local lamp', ...lamp, metres: LAMP_METRES });
  if (contrast < GOOD_CONTRAST)
    remedies.push({
      kind: 'deeper shadow',
      left: shade.lux / lit.lux,
      neededLeft: 1 / GOOD_CONTRAST,
    });
  return remedies;
}
